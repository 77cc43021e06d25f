//! Every finding there can be, brought about by a plan that deserves it; and none of them by one that does not.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests stop where something is wrong")]

use fh_core::balance::balance;
use fh_core::file;
use fh_core::findings::{Finding, Severity, ids};
use std::collections::BTreeSet;

mod cases;
mod places;
mod socket;

use cases::CASES;

/// The findings of a 12 mm square bar with these segments; `plan` and `bar` are further keys.
fn findings(plan: &str, bar: &str, segments: &str) -> Vec<Finding> {
    let bar =
        if bar.contains("stock") { bar.to_owned() } else { format!(r#""stock": {{ "square": "12 mm" }}, {bar}"#) };
    let text = format!(
        r#"{{ "firstheat": 1, {plan} "units": {{ "length": "mm", "marks": "1 mm" }},
              "bars": [{{ "name": "bar", {bar} "segments": [{segments}] }}] }}"#
    );
    let plan = file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}\n{text}"));
    balance(&plan).findings
}

#[test]
fn every_finding_is_brought_about_by_a_plan_that_deserves_it() {
    for (id, plan, bar, segments) in CASES {
        let found = findings(plan, bar, segments);
        let finding = found.iter().find(|finding| finding.id == *id);
        let finding = finding.unwrap_or_else(|| panic!("{id} is not among {found:#?}"));
        assert!(!finding.reason.is_empty() && !finding.remedy.is_empty(), "{id} has a reason and a remedy");
        let doubles = found.iter().filter(|other| other.id == *id && other.place == finding.place).count();
        assert_eq!(doubles, 1, "{id} is told once");
    }
}

#[test]
fn no_finding_is_without_its_case() {
    let covered: BTreeSet<&str> = CASES.iter().map(|(id, ..)| *id).collect();
    assert_eq!(covered, ids().collect::<BTreeSet<&str>>());
}

#[test]
fn a_sound_plan_has_no_finding() {
    let found = findings(
        "",
        "",
        r#"
        { "form": { "taper": { "length": "60 mm", "to": "point" } } },
        { "form": { "plain": { "length": "80 mm" } } },
        { "form": { "hold": { "length": "150 mm" } } }"#,
    );
    assert_eq!(found, []);
}

#[test]
fn parts_that_fit_have_no_finding() {
    let member = |segment: &str| format!(r#"{{ "bar": "bar", "segment": "{segment}" }}"#);
    let joint = |kind: &str, fixed: &str, moved: &[&str]| {
        let moved = moved.iter().map(|name| member(name)).collect::<Vec<_>>().join(", ");
        format!(r#"{{ "kind": "{kind}", "fixed": {}, "moved": [{moved}] }}"#, member(fixed))
    };
    let joints = [
        joint("tenon", "boss", &["tenon"]),
        joint("rivet", "boss", &["strap", "rivet"]),
        joint("collar", "a", &["b", "collar"]),
        joint("hook", "eye", &["pin"]),
    ];
    let boss = |name: &str| {
        format!(
            r#"{{ "name": "{name}", "form": {{ "hole": {{ "outline": {{ "disc": {{ "diameter": "24 mm" }} }},
                "thickness": "6 mm", "hole": {{ "round": "8.2 mm" }}, "made": "drilled" }} }} }}"#
        )
    };
    let segments = [
        &boss("boss"),
        &boss("strap"),
        r#"{ "name": "tenon", "form": { "tenon": { "section": { "round": "8 mm" }, "grip": "6 mm", "allowance": "12 mm" } } }"#,
        r#"{ "name": "rivet", "form": { "rivet": { "diameter": "8 mm", "grip": "12 mm", "allowance": "12 mm" } } }"#,
        r#"{ "name": "a", "form": { "drawn": { "length": "50 mm", "section": { "square": "10 mm" } } } }"#,
        r#"{ "name": "b", "form": { "drawn": { "length": "50 mm", "section": { "round": "10 mm" } } } }"#,
        r#"{ "name": "collar", "form": { "collar": { "section": { "flat": { "width": "12 mm", "thickness": "3 mm" } },
             "width": "10 mm", "height": "20 mm" } } }"#,
        r#"{ "name": "eye", "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "12 mm" } } }"#,
        r#"{ "name": "pin", "form": { "drawn": { "length": "30 mm", "section": { "round": "11 mm" } } } }"#,
    ];
    let plan = format!(r#""joints": [{}],"#, joints.join(", "));
    let found = findings(&plan, "", &segments.join(", "));
    let ids: Vec<_> = found.iter().map(|finding| finding.id).collect();
    let of_joints = ["joint", "tenon", "rivet", "collar", "hook", "weld"];
    assert!(!ids.iter().any(|id| of_joints.iter().any(|word| id.starts_with(word))), "{found:#?}");
}

#[test]
fn a_flat_tenon_goes_into_its_slot_one_way_only() {
    let found = |turn: &str| {
        let joints = format!(
            r#""joints": [{{ "kind": "tenon", "fixed": {{ "bar": "bar", "segment": "boss" }},
                "moved": [{{ "bar": "bar", "segment": "tenon", "turn": "{turn}" }}] }}],"#
        );
        let segments = r#"{ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "40 mm" } }, "thickness": "6 mm",
              "hole": { "slot": { "length": "6.5 mm", "width": "20 mm" } }, "made": "punched" } } },
            { "name": "tenon", "form": { "tenon": { "section": { "flat": { "width": "14 mm", "thickness": "6 mm" } },
              "grip": "6 mm", "allowance": "9 mm" } } }"#;
        findings(&joints, "", segments).iter().any(|finding| finding.id == "tenon-hole")
    };
    assert!(!found("0 deg") && !found("180 deg"));
    assert!(found("90 deg") && found("30 deg"));
}

#[test]
fn limits_are_the_smiths_own() {
    let segments = r#"{ "form": { "drawn": { "length": "50 mm", "section": { "square": "9 mm" } } } },
                      { "form": { "hold": { "length": "40 mm" } } }"#;
    let holds = |plan: &str| findings(plan, "", segments).iter().any(|finding| finding.id == "hold-too-short");
    assert!(holds(""));
    assert!(!holds(r#""limits": { "hold": "30 mm" },"#));
}

#[test]
fn stops_come_first_and_say_what_is_missing() {
    let found = findings("", r#""length": "100 mm","#, r#"{ "form": { "plain": { "length": "141 mm" } } }"#);
    assert_eq!(found[0].severity, Severity::Stop);
    assert!(found[0].message.contains("41 mm too short"), "{}", found[0].message);
}

#[test]
fn a_shoulder_that_steps_nowhere_is_told() {
    let shoulder = r#"{ "form": { "shoulder": { "to": "stock", "radius": "2 mm", "sides": "all" } } }"#;
    let found = findings("", "", shoulder);
    assert!(found.iter().any(|finding| finding.message.contains("has no step")), "{found:?}");
}

#[test]
fn a_hair_too_much_is_no_shortage() {
    let found = findings("", r#""length": "200 mm","#, r#"{ "form": { "plain": { "length": "200.03 mm" } } }"#);
    assert!(found.iter().all(|finding| finding.severity != Severity::Stop), "{found:?}");
}

#[test]
fn the_section_after_a_round_tip_is_the_stock() {
    // Every leaf, whatever its sizes: after it the bar is stock again.
    for tenths in 200..700 {
        let text = format!(
            r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [{{ "stock": {{ "square": "12 mm" }},
              "segments": [ {{ "form": {{ "plain": {{ "length": "10 mm" }} }} }},
              {{ "form": {{ "flag": {{ "outline": {{ "leaf": {{ "length": "{}.{} mm", "width": "21 mm" }} }}, "thickness": "3 mm" }} }} }},
              {{ "form": {{ "drawn": {{ "length": "60 mm", "section": "same" }} }} }} ] }}] }}"#,
            tenths / 10,
            tenths % 10
        );
        let balance = balance(&file::read(text.as_bytes()).unwrap());
        let bar = balance.bars[0].segments[2].stock_length.value * 1000.0;
        assert!((bar - 60.0).abs() < 1e-9, "{bar} at {tenths}");
    }
}

#[test]
fn a_part_as_far_off_as_the_tool_needs_is_far_enough() {
    // 1/3 in and three times 2/9 in are an inch; in millimetres they are a hair less.
    let inches = |last: &str| {
        let part = |length: &str| {
            format!(r#"{{ "form": {{ "drawn": {{ "length": "{length}", "section": {{ "square": "3/8 in" }} }} }} }}"#)
        };
        let shoulder = |to: &str| {
            format!(
                r#"{{ "form": {{ "shoulder": {{ "to": {{ "square": "{to}" }}, "radius": "1/16 in", "sides": "all" }} }} }}"#
            )
        };
        let parts = ["1/3 in", "2/9 in", "2/9 in", last].map(part).join(", ");
        let text = format!(
            r#"{{ "firstheat": 1, "units": {{ "length": "in", "marks": "1/32 in" }}, "bars": [{{ "stock": {{ "square": "1/2 in" }},
              "segments": [{}, {parts}, {}] }}] }}"#,
            shoulder("3/8 in"),
            shoulder("1/4 in")
        );
        let plan = file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}\n{text}"));
        balance(&plan).findings.into_iter().find(|finding| finding.id == "tool-room").map(|finding| finding.message)
    };
    assert_eq!(inches("2/9 in"), None);
    // What is short by less than the usual figures show is shown with more.
    let short = inches("0.2219 in").unwrap();
    assert!(short.contains("0.9997 in apart") && short.contains("needs 1 in"), "{short}");
}

#[test]
fn where_the_bar_has_no_hold_the_nearer_end_goes_into_the_fire() {
    let plain = |mm: u32| format!(r#"{{ "form": {{ "plain": {{ "length": "{mm} mm" }} }} }}"#);
    let cube = r#"{ "form": { "cube": { "side": "12 mm" } } }"#;
    let hold = r#"{ "form": { "hold": { "length": "120 mm" } } }"#;
    let told = |segments: &[&str]| {
        let found = findings("", "", &segments.join(", "));
        found.into_iter().find(|finding| finding.id == "beyond-the-fire").map(|finding| finding.message)
    };
    // From the nearer end it is 100 mm and the cube.
    assert_eq!(told(&[&plain(400), cube, &plain(100)]), None);
    // The tongs are on that end: the other one goes in, 412 mm and the hair that the cube takes.
    assert!(
        told(&[&plain(400), cube, &plain(100), hold]).is_some_and(|words| words.contains("412 mm in from the end"))
    );
    assert_eq!(told(&[hold, &plain(400), cube, &plain(100)]), None);
}

#[test]
fn a_blank_may_run_on_where_nothing_hangs_on_it() {
    let plate = |more: &str| {
        format!(
            r#"{{ "name": "plate", "form": {{ "flag": {{ "outline": {{ "rectangle": {{ "length": "50 mm", "width": "30 mm" }} }},
            "thickness": "4 mm", "blank": {{ "rectangle": {{ "length": "60 mm", "width": "30 mm" }} }} {more} }} }} }}"#
        )
    };
    let bar = |name: &str| format!(r#"{{ "name": "{name}", "form": {{ "plain": {{ "length": "90 mm" }} }} }}"#);
    let held = r#"{ "form": { "trim": { "length": "5 mm" } } }, { "form": { "hold": { "length": "120 mm" } } }"#;
    let told = |segments: &[String]| {
        let found = findings("", "", &segments.join(", "));
        found.into_iter().find(|finding| finding.id == "blank-runs-on").map(|finding| finding.message)
    };
    // On the first part the tip lies at the datum; what is held is no part of the piece.
    assert_eq!(told(&[plate(""), bar("stem")]), None);
    assert_eq!(told(&[bar("stem"), plate("")]), None);
    assert_eq!(told(&[bar("stem"), plate(""), held.to_owned()]), None);
    let words = "“plate” is cut 50 mm long from a blank of 60 mm, and “stem” goes on from the end of the blank.";
    assert_eq!(told(&[bar("stalk"), plate(""), bar("stem")]).as_deref(), Some(words));
    // A zone of the same plate hangs on it as well, and so does the bar behind a branch that is closed.
    let zone = plate(r#", "joined": true"#).replace("\"plate\"", "\"zone\"");
    assert!(told(&[bar("stalk"), plate(""), zone]).is_some_and(|words| words.contains("“zone” goes on")));
    let split = |after: &str| {
        let branch = format!(r#"{{ "segments": [{}, {}] }}"#, bar("leg"), plate(""));
        let split = format!(r#"{{ "form": {{ "split": {{ "branches": [{branch}, {branch}] }} }} }}"#);
        told(&[bar("root"), format!("{split}{after}")])
    };
    assert_eq!(split(""), None);
    assert!(split(&format!(", {}", bar("stem"))).is_some_and(|words| words.contains("the bar goes on")));
}
