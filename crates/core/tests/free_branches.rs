//! A slit with one free end and a cut line of one's own, against reference values that were computed outside this project.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests stop where something is wrong")]

use crate::blocks::{check, read};
use fh_core::balance::{Balance, balance};
use fh_core::metal::Shape;
use fh_core::plan::Plan;
use serde_json::{Value, json};
use uom::si::f64::Length;
use uom::si::length::millimeter;
use uom::si::volume::cubic_millimeter;

fn mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

/// The reference cases: `tests/data/side_branches.json` says how they were made.
fn cases() -> Vec<Value> {
    let all: Value = serde_json::from_str(include_str!("../../../tests/data/side_branches.json")).unwrap();
    all["cases"].as_array().unwrap().clone()
}

/// A section as the cases name it: `square 16`, `flat 30 x 10`.
fn section(words: &str) -> Value {
    let sizes: Vec<&str> = words.split([' ', 'x']).filter(|word| !word.is_empty()).collect();
    match sizes.as_slice() {
        ["point"] => json!("point"),
        [kind, size] => json!({ *kind: format!("{size} mm") }),
        ["flat", width, thickness] => {
            json!({ "flat": { "width": format!("{width} mm"), "thickness": format!("{thickness} mm") } })
        }
        _ => panic!("{words}"),
    }
}

/// What a branch is forged to: drawn to a section, or a straight taper from one to another.
fn part(words: &str, name: &str) -> Value {
    let form = if let Some(to) = words.strip_prefix("drawn to ") {
        json!({ "drawn": { "length": "60 mm", "section": section(to) } })
    } else {
        let ends = words.strip_prefix("a straight taper from ").unwrap();
        let (from, to) = ends.split_once(" to ").unwrap();
        let to = to.trim_start_matches("a ");
        json!({ "taper": { "length": "60 mm", "from": section(from), "to": section(to) } })
    };
    json!({ "name": name, "form": form })
}

/// The plan of a case, with a part before the slit and one behind it.
fn plan(case: &Value) -> Plan {
    let of = &case["inputs"]["mm"];
    let words = case["inputs"]["words"].as_str().unwrap();
    let after = |text: &str, end: char| {
        let rest = words.split(text).nth(1).unwrap();
        rest[..rest.find(end).unwrap()].to_owned()
    };
    let toward = if words.contains("(toward the datum)") { "datum" } else { "far" };
    let free = after("datum): ", '.');
    let runs_on = words.split("runs on: ").nth(1).unwrap().trim_end_matches('.').to_owned();
    let mut branches =
        [(part(&free, "free"), Some(toward)), (part(&runs_on, "on"), None)].map(|(part, free)| match free {
            Some(free) => json!({ "free": free, "segments": [part] }),
            None => json!({ "segments": [part] }),
        });
    let mut split = json!({ "side": "90 deg" });
    if of["cut"].is_number() {
        split["cut"] = json!(format!("{} mm", of["cut"]));
        split["slit"] = json!(format!("{} mm", of["slit"]));
    } else {
        // Their volumes are given: the lengths are those of a section of that area.
        let lengths = &case["expected"];
        for (branch, key) in branches.iter_mut().zip(["free_branch_length", "running_on_branch_length"]) {
            let form = branch["segments"][0]["form"].as_object_mut().unwrap().values_mut().next().unwrap();
            form["length"] = json!(format!("{} mm", lengths[key]));
        }
    }
    split["branches"] = json!(branches);
    let before = json!({ "form": { "plain": { "length": format!("{} mm", of["slit_starts"]) } } });
    let segments = [
        before,
        json!({ "name": "slit", "form": { "split": split } }),
        json!({ "form": { "plain": { "length": "50 mm" } } }),
    ];
    let scale = format!("{} %", of["scale"].as_f64().unwrap() * 100.0);
    let bar = json!({ "stock": section(of["stock"].as_str().unwrap()), "segments": segments });
    read(&json!({ "firstheat": 1, "scale": scale, "bars": [bar] }).to_string())
}

fn metal(balance: &Balance, part: usize) -> f64 {
    balance.bars[0].segments[part].finished_volume.get::<cubic_millimeter>()
}

#[test]
fn each_branch_holds_what_the_cut_leaves_it() {
    for case in cases() {
        let (balance, want) = (balance(&plan(&case)), &case["expected"]);
        let parts = &balance.bars[0].segments;
        let Some(Shape::Split(size)) = &parts[1].shape else { panic!("{}", case["id"]) };
        // The files have lengths to 12 figures where the volumes are given.
        check(&case, "start of the slit", mm(parts[1].mark_start), &want["slit_from_mark"]);
        check(&case, "end of the slit", mm(parts[1].mark_end), &want["slit_to_mark"]);
        check(&case, "free branch", mm(parts[2].forged_length), &want["free_branch_length"]);
        check(&case, "what runs on", mm(parts[3].forged_length), &want["running_on_branch_length"]);
        let longer = mm(size.length) - mm(size.slit);
        check(&case, "longer", longer, &want["running_on_longer_than_slit"]);
        for branch in 0..2 {
            check(&case, "metal", metal(&balance, 2 + branch), &want["metal_of_branches_after_scale"][branch]);
            let area = size.branches[branch].share * balance.bars[0].stock_area.value * 1e6;
            check(&case, "area", area, &want["section_areas_after_the_cut"][branch]);
        }
        if want.get("cut_from_side").is_some() {
            check(&case, "cut", mm(size.cuts[0]), &want["cut_from_side"]);
        }
        assert!(balance.findings.iter().all(|finding| finding.id != "cut-uneven" && finding.id != "branches-differ"));
    }
}

#[test]
fn metal_is_kept_whatever_is_cut() {
    for case in cases() {
        let plan = plan(&case);
        let balance = balance(&plan);
        let scale = case["inputs"]["mm"]["scale"].as_f64().unwrap();
        let slit = &balance.bars[0].segments[1];
        let bar = mm(slit.stock_length) * balance.bars[0].stock_area.value * 1e6;
        let both = (metal(&balance, 2) + metal(&balance, 3)) / (1.0 - scale);
        assert!((both - bar).abs() < 1e-6 * bar, "{}: {both} of {bar}", case["id"]);
    }
}

/// A thorn cut off a square bar: `more` goes into the split.
fn thorn(more: &str, free: &str) -> Plan {
    read(&format!(
        r#"{{ "firstheat": 1, "bars": [{{ "stock": {{ "square": "16 mm" }}, "segments": [
          {{ "form": {{ "plain": {{ "length": "90 mm" }} }} }},
          {{ "name": "slit", "form": {{ "split": {{ "side": "0 deg", {more} "branches": [
            {{ "name": "thorn", "free": "{free}", "segments": [{{ "name": "spike", "form": {{ "taper": {{ "length": "150 mm", "from": {{ "square": "8 mm" }}, "to": "point" }} }} }}] }},
            {{ "name": "on", "segments": [{{ "name": "rod", "form": {{ "drawn": {{ "length": "58 mm", "section": {{ "square": "11 mm" }} }} }}, "gives": "length" }}] }}] }} }} }},
          {{ "name": "rest", "form": {{ "plain": {{ "length": "50 mm" }} }} }}] }}] }}"#
    ))
}

#[test]
fn a_branch_that_holds_says_how_long_the_slit_is() {
    // The thorn holds 150 × 64 / 3 = 3200 mm³; 5 of 16 mm leave it 80 mm²: 40 mm of slit.
    let found = balance(&thorn(r#""cut": "5 mm","#, "datum"));
    let parts = &found.bars[0].segments;
    assert!((mm(parts[1].mark_end) - 130.0).abs() < 1e-9);
    assert!((mm(parts[3].forged_length) - 7040.0 / 121.0).abs() < 1e-9);
}

#[test]
fn a_saw_takes_its_kerf() {
    // 2 mm of kerf leave 9 of 16 mm for what runs on.
    let found = balance(&thorn(r#""cut": "5 mm", "kerf": "2 mm", "#, "datum"));
    let parts = &found.bars[0].segments;
    assert!((mm(parts[1].mark_end) - 130.0).abs() < 1e-9);
    assert!((mm(parts[3].forged_length) - 9.0 * 16.0 * 40.0 / 121.0).abs() < 1e-9);
    assert!((parts[1].trimmed_volume.get::<cubic_millimeter>() - 2.0 * 16.0 * 40.0).abs() < 1e-6);
}

#[test]
fn a_free_branch_hangs_by_its_root_and_the_bar_goes_on() {
    use fh_core::balance::SegmentBalance;
    use fh_core::space::{Formed, runs};
    for (free, root) in [("datum", 1.0), ("far", 0.0)] {
        let plan = thorn(r#""cut": "5 mm","#, free);
        let found = balance(&plan);
        let parts = &found.bars[0].segments;
        let formed: Vec<Formed<'_>> = parts.iter().map(SegmentBalance::formed).collect();
        let runs = runs(&plan.bars[0].segments, &formed);
        let spike = runs[2].as_ref().unwrap();
        let ends = [0.0, spike.way.length_mm].map(|along| spike.frame_at(along).at[0]);
        let at_root = if free == "datum" { ends[1] } else { ends[0] };
        let slit = mm(parts[3].forged_length);
        assert!((at_root - (90.0 + root * slit)).abs() < 1e-9, "{free}: {at_root}");
        assert_eq!(parts[2].reversed, free == "datum");
        assert!((runs[4].as_ref().unwrap().start.at[0] - (90.0 + slit)).abs() < 1e-9);
    }
}

#[test]
fn one_branch_at_least_runs_on() {
    let text = r#"{ "firstheat": 1, "bars": [{ "stock": { "square": "16 mm" }, "segments": [{ "form": { "split": { "branches": [
        { "free": "far" }, { "free": "datum" }] } } }] }] }"#;
    let error = fh_core::file::read(text.as_bytes()).unwrap_err();
    assert!(error.message.contains("one at least runs on"), "{error}");
}

/// The same thorn between two fixed marks, its slit giving to its block; `more` goes into the split.
fn thorn_in_a_block(more: &str) -> Plan {
    let mut plan = thorn(more, "datum");
    let mark = |text: &str| Some(crate::blocks::written(text));
    let parts = &mut plan.bars[0].segments;
    (parts[0].ends_at, parts[1].ends_at) = (mark("90 mm"), mark("128 mm"));
    parts[1].gives = Some(fh_core::plan::Gives::Length);
    plan
}

#[test]
fn a_slit_is_as_long_as_its_block_leaves_it() {
    // 38 mm of bar: 5 × 16 × 38 = 3040 mm³ for the thorn, 3 × 3040 / 64 = 142.5 mm of it; 11 × 16 × 38 / 121 for what runs on.
    // A root hole of 5 mm takes π/4 × 5² / 16 = 1.2272 mm of the 38.
    let hole = 25.0 * std::f64::consts::PI / 64.0;
    for (more, slit) in [
        (r#""cut": "5 mm","#, 38.0),
        (r#""cut": "5 mm", "slit": "20 mm","#, 38.0),
        (r#""cut": "5 mm", "root": { "hole": "5 mm" },"#, 38.0 - hole),
    ] {
        let found = balance(&thorn_in_a_block(more));
        let (bar, parts) = (&found.bars[0], &found.bars[0].segments);
        assert!((mm(parts[1].mark_end) - 128.0).abs() < 1e-9, "{more}");
        assert!((mm(parts[2].forged_length) - 3.0 * 80.0 * slit / 64.0).abs() < 1e-6, "{more}");
        assert!((mm(parts[3].forged_length) - 176.0 * slit / 121.0).abs() < 1e-6, "{more}");
        assert_eq!((bar.blocks[1].gives.as_slice(), mm(bar.blocks[1].over_length)), (&[1][..], 0.0), "{more}");
    }
}

#[test]
fn a_slit_whose_block_is_loosened_keeps_its_length() {
    use fh_core::edit::{Edit, History, MarkEdit};
    let start = thorn_in_a_block(r#""cut": "5 mm","#);
    let mut history = History::new(start.clone());
    history.apply(&Edit::Mark(MarkEdit::Loosen { bar: 0, segment: 1 })).unwrap();
    let parts = balance(history.plan()).bars[0].segments.clone();
    assert!((mm(parts[1].mark_end) - 128.0).abs() < 0.01 && parts[1].fixed_mark.is_none());
    assert!(history.undo() && *history.plan() == start);
}

#[test]
fn there_is_no_slit_where_a_block_has_no_room() {
    let mut plan = thorn_in_a_block(r#""cut": "5 mm","#);
    plan.bars[0].segments[0].ends_at = None;
    plan.bars[0].segments[1].ends_at = Some(crate::blocks::written("80 mm"));
    let found = balance(&plan);
    assert!(found.findings.iter().any(|finding| finding.id == "block-short"), "{:?}", found.findings);
}

#[test]
fn what_lies_beside_a_cut_gives_to_that_and_not_to_a_block() {
    // The spike has no length, and what runs on cannot take what the cut leaves it: nothing of it fills the block.
    let plan = read(
        r#"{ "firstheat": 1, "bars": [{ "stock": { "square": "16 mm" }, "segments": [
          { "form": { "plain": { "length": "90 mm" } } },
          { "name": "slit", "form": { "split": { "side": "0 deg", "cut": "5 mm", "slit": "30 mm", "branches": [
            { "free": "datum", "segments": [
              { "name": "spike", "form": { "taper": { "from": { "round": "3 mm" }, "to": { "round": "8 mm" } } } },
              { "form": { "drawn": { "section": { "round": "8 mm" } } },
                "bend": { "curve": { "angle": "120 deg", "inside_radius": "70 mm" } } }] },
            { "segments": [{ "form": { "plain": {} } }] }] } } },
          { "name": "head", "form": { "plain": { "length": "50 mm" } }, "ends_at": "300 mm" }] }] }"#,
    );
    let found = balance(&plan);
    let block = &found.bars[0].blocks[0];
    // 90 + 30 + 50 mm of 300 are used.
    assert!(block.gives.is_empty() && (mm(block.over_length) - 130.0).abs() < 1e-6, "{block:?}");
}
