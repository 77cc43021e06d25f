//! Two plans side by side: each difference on its line, with by how much.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use fh_core::balance::balance;
use fh_core::edit::{Edit, WholeChange};
use fh_core::file;
use fh_core::plan::{Plan, SectionSpec};
use fh_work::{ComparedLine, Shop, Version, compare, work_out};

const HOOK: &str = r#"{ "firstheat": 1, "title": "hook", "units": { "length": "mm", "marks": "1 mm" }, "bars": [{ "name": "hook",
    "stock": { "square": "10 mm" }, "segments": [
    { "name": "tip", "form": { "taper": { "length": "60 mm", "to": { "round": "4 mm" } } },
      "bend": { "curve": { "angle": "120 deg", "inside_radius": "15 mm" } } },
    { "name": "shank", "form": { "plain": { "length": "100 mm" } } } ] }] }"#;

fn plan(text: &str) -> Plan {
    file::read(text.as_bytes()).expect("a plan")
}

fn held(first: &Plan, second: &Plan) -> Vec<(String, ComparedLine)> {
    let shop = Shop::default();
    let [a, b] = [first, second].map(balance);
    let [one, other] = [work_out(first, &a, &shop), work_out(second, &b, &shop)];
    let first = Version { plan: first, balance: &a, worked: &one };
    let second = Version { plan: second, balance: &b, worked: &other };
    let groups = compare(first, second).into_iter();
    groups.flat_map(|group| group.lines.into_iter().map(move |line| (group.title.clone(), line))).collect()
}

fn line<'a>(all: &'a [(String, ComparedLine)], group: &str, what: &str) -> &'a ComparedLine {
    let found = all.iter().find(|(title, line)| title == group && line.what == what);
    &found.unwrap_or_else(|| panic!("no line {what} in {all:#?}")).1
}

#[test]
fn a_plan_beside_itself_differs_in_nothing() {
    let plan = plan(HOOK);
    let all = held(&plan, &plan);
    assert!(all.len() > 8 && all.iter().all(|(_, line)| !line.differs() && line.by.is_none()), "{all:#?}");
}

#[test]
fn a_groove_and_a_hole_are_seen() {
    let flag = |hole: &str| {
        HOOK.replace(
            r#"{ "plain": { "length": "100 mm" } } }"#,
            &format!(r#"{{ "flag": {{ "outline": {{ "disc": {{ "diameter": "40 mm" }} }}, "thickness": "3 mm"{hole} }} }} }}"#),
        )
    };
    let hole = r#", "holes": [{ "hole": { "round": "6 mm" }, "made": "drilled", "at": "20 mm" }]"#;
    let [first, second] = [flag(""), flag(hole)].map(|text| plan(&text));
    assert!(line(&held(&first, &second), "Parts", "shank").differs());
    let groove = r#"{ "plain": { "length": "100 mm" } },
        "dressed": [{ "die": { "fuller": { "radius": "3 mm" } }, "depth": "1 mm" }] }"#;
    let second = plan(&HOOK.replace(r#"{ "plain": { "length": "100 mm" } } }"#, groove));
    assert!(line(&held(&plan(HOOK), &second), "Parts", "shank").differs());
}

/// 20 mm more of 10 mm square: 20 mm more to cut, and 7.85 g/cm³ × 2 cm³ = 15.7 g more of bar (density of steel from memory).
#[test]
fn a_longer_shank_moves_its_mark_and_the_weight() {
    let (first, second) = (plan(HOOK), plan(&HOOK.replace("\"100 mm\"", "\"120 mm\"")));
    let all = held(&first, &second);
    assert_eq!(line(&all, "Metal", "to cut").by.as_deref(), Some("+ 20 mm"));
    assert_eq!(line(&all, "Metal", "bar weighs").by.as_deref(), Some("+ 15.7 g"));
    assert_eq!(line(&all, "Marks", "end of shank").by.as_deref(), Some("+ 20 mm"));
    assert!(!line(&all, "Marks", "end of tip").differs());
    let shank = line(&all, "Parts", "shank");
    assert_eq!(
        (shank.first.as_deref(), shank.second.as_deref()),
        (Some("shank; plain 100 mm"), Some("shank; plain 120 mm"))
    );
    assert!(!line(&all, "Parts", "tip").differs());
}

#[test]
fn a_part_that_only_one_has_stands_alone() {
    let first = plan(HOOK);
    let ring = r#"{ "name": "eye", "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "20 mm" } } }, { "name": "shank""#;
    let all = held(&first, &plan(&HOOK.replace(r#"{ "name": "shank""#, ring)));
    let eye = line(&all, "Parts", "eye");
    assert_eq!((&eye.first, eye.second.is_some()), (&None, true));
    assert_eq!(line(&all, "Marks", "end of eye").first, None);
    let heats = line(&all, "Heats", "heats");
    assert!(heats.differs() && heats.by.as_deref().is_some_and(|by| by.starts_with('+')), "{heats:?}");
}

/// From 16 mm square the shank is drawn down too: less bar, more heats, the finished weight the same.
#[test]
fn another_bar_takes_other_heats_and_leaves_the_finished_weight() {
    let first = plan(HOOK);
    let section = Box::new(SectionSpec::said("16 mm square", None).expect("a section"));
    let (second, _) = Edit::Whole(WholeChange::OtherBar { bar: 0, section }).applied(&first).expect("done");
    let all = held(&first, &second);
    assert!(!line(&all, "Metal", "finished weight").differs());
    assert!(line(&all, "Metal", "to cut").by.as_deref().is_some_and(|by| by.starts_with('−')));
    assert!(line(&all, "Heats", "heats").by.as_deref().is_some_and(|by| by.starts_with('+')));
}
