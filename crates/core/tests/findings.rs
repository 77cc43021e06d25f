//! Every finding there can be, brought about by a plan that deserves it; and none of them by one that does not.

#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs, reason = "tests stop where something is wrong")]

use fh_core::balance::balance;
use fh_core::file;
use fh_core::findings::{Finding, Severity, ids};
use std::collections::BTreeSet;

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

/// A part thicker than the bar.
const GATHERED: &str = r#"{ "form": { "drawn": { "length": "20 mm", "section": { "square": "15 mm" } } } }"#;

/// A plan that brings a finding about: its id, further keys of the plan and of the bar, and the segments.
const CASES: &[(&str, &str, &str, &str)] = &[
    ("bar-too-short", "", r#""length": "100 mm","#, r#"{ "form": { "plain": { "length": "120 mm" } } }"#),
    ("bar-left-over", "", r#""length": "400 mm","#, r#"{ "form": { "plain": { "length": "120 mm" } } }"#),
    ("size-doubtful", "", "", r#"{ "form": { "plain": { "length": "1000 m" } } }"#),
    (
        "cold-shut",
        "",
        "",
        r#"{ "form": { "shoulder": { "to": { "square": "4 mm" }, "radius": "1 mm", "sides": "all" } } }"#,
    ),
    ("upset-likely-to-buckle", "", "", GATHERED),
    ("upset-buckles", "", "", r#"{ "form": { "ball": { "diameter": "25 mm" } } }"#),
    ("upset-in-stages", "", "", r#"{ "form": { "drawn": { "length": "20 mm", "section": { "square": "22 mm" } } } }"#),
    (
        "spread-not-drawn",
        "",
        "",
        r#"{ "form": { "drawn": { "length": "50 mm", "section": { "flat": { "width": "20 mm", "thickness": "5 mm" } } } } }"#,
    ),
    ("odd-fraction", "", "", r#"{ "form": { "plain": { "length": "3 1/23 in" } } }"#),
    ("larger-than-stock", "", "", GATHERED),
    (
        "tool-room",
        "",
        "",
        r#"{ "form": { "shoulder": { "to": { "square": "9 mm" }, "radius": "2 mm", "sides": "all" } } },
        { "form": { "drawn": { "length": "10 mm", "section": "same" } } },
        { "form": { "shoulder": { "to": "stock", "radius": "2 mm", "sides": "all" } } }"#,
    ),
    (
        "hold-too-short",
        "",
        "",
        r#"{ "form": { "drawn": { "length": "50 mm", "section": { "square": "9 mm" } } } },
        { "form": { "hold": { "length": "40 mm" } } }"#,
    ),
    ("nothing-to-hold", "", "", r#"{ "form": { "drawn": { "length": "50 mm", "section": { "square": "9 mm" } } } }"#),
    (
        "beyond-one-heat",
        "",
        "",
        r#"{ "form": { "plain": { "length": "400 mm" } } }, { "form": { "cube": { "side": "12 mm" } } }"#,
    ),
    ("below-rounding", "", "", r#"{ "form": { "drawn": { "length": "2 mm", "section": { "square": "6 mm" } } } }"#),
    ("swells", "", "", r#"{ "form": { "taper": { "length": "50 mm", "to": { "diamond": "12 mm" } } } }"#),
    (
        "half-round-too-high",
        "",
        "",
        r#"{ "form": { "drawn": { "length": "50 mm", "section": { "half_round": { "width": "8 mm", "height": "6 mm" } } } } }"#,
    ),
    ("eased-too-far", "", r#""stock": { "square": { "side": "12 mm", "edge_radius": "10 mm" } },"#, ""),
    (
        "shoulder-sides",
        "",
        "",
        r#"{ "form": { "shoulder": { "to": { "square": "6 mm" }, "radius": "2 mm", "sides": [0] } } }"#,
    ),
    (
        "corner-as-box",
        "",
        r#""stock": { "round": "12 mm" },"#,
        r#"{ "form": { "peak": { "section": "stock" } }, "bend": { "corner": { "angle": "90 deg", "inside_radius": "6 mm" } } }"#,
    ),
    ("rated-part", r#""duty": "lifts","#, "", ""),
    ("weld-metal", r#""material": "aluminium","#, "", r#"{ "form": { "weld": { "allowance": "12 mm" } } }"#),
    ("metal-not-hot", r#""material": "phosphor bronze","#, "", POINT),
    ("metal-brittle", r#""material": "brass","#, "", POINT),
    ("metal-no-glow", r#""material": "aluminium","#, "", POINT),
    ("metal-unclear", r#""material": "bronze","#, "", POINT),
    ("coated-stock", r#""coating": "painted","#, "", ""),
    ("poisonous-coating", r#""coating": "galvanised","#, "", ""),
    (
        "unrated-hook",
        "",
        "",
        r#"{ "form": { "plain": { "length": "100 mm" } }, "bend": { "curve": { "inside_radius": "20 mm" } } }"#,
    ),
    ("no-length", "", "", r#"{ "form": { "plain": {} } }"#),
    (
        "over-determined",
        "",
        "",
        r#"{ "form": { "plain": { "length": "100 mm" } }, "bend": { "curve": { "angle": "90 deg", "inside_radius": "20 mm" } } }"#,
    ),
    ("under-determined", "", "", r#"{ "form": { "plain": {} }, "bend": { "curve": { "angle": "90 deg" } } }"#),
    (
        "bend-too-tight",
        "",
        "",
        r#"{ "form": { "plain": { "length": "5 mm" } }, "bend": { "curve": { "angle": "90 deg" } } }"#,
    ),
    (
        "bend-round-nothing",
        "",
        "",
        r#"{ "form": { "taper": { "length": "50 mm", "to": "point" } }, "bend": { "curve": { "inside_radius": "0 mm" } } }"#,
    ),
    ("no-metal", "", "", r#"{ "form": { "taper": { "length": "50 mm", "from": "point", "to": "point" } } }"#),
    ("peak-without-corner", "", "", r#"{ "form": { "peak": { "section": "stock" } } }"#),
    (
        "corner-without-peak",
        "",
        "",
        r#"{ "form": { "plain": { "length": "50 mm" } }, "bend": { "corner": { "angle": "90 deg", "inside_radius": "6 mm" } } }"#,
    ),
    (
        "corner-too-far",
        "",
        "",
        r#"{ "form": { "peak": { "section": "stock" } }, "bend": { "corner": { "angle": "180 deg", "inside_radius": "6 mm" } } }"#,
    ),
    (
        "nothing-gives",
        "",
        r#""length": "300 mm", "takes_up": "a","#,
        r#"{ "name": "a", "form": { "plain": { "length": "50 mm" } }, "gives": "nothing" }"#,
    ),
    (
        "cannot-fit",
        "",
        r#""length": "100 mm", "takes_up": "a","#,
        r#"{ "name": "a", "form": { "plain": {} } }, { "form": { "plain": { "length": "120 mm" } } }"#,
    ),
    (
        "repeats",
        "",
        "",
        r#"{ "form": { "plain": { "length": "30 mm" } }, "repeats": [{ "what": "lines", "step": "6 mm", "count": 7 },
             { "what": "dots", "step": "6 mm", "margin": "20 mm" }] }"#,
    ),
    ("takes-up", "", r#""length": "300 mm", "takes_up": "nobody","#, ""),
    (
        "scroll-too-short",
        "",
        "",
        r#"{ "form": { "plain": { "length": "20 mm" } },
             "bend": { "scroll": { "inner_radius": "5 mm", "outer_radius": "40 mm", "run": "even", "eye": "start" } } }"#,
    ),
    (
        "scroll-from-center",
        "",
        "",
        r#"{ "form": { "plain": {} }, "bend": { "scroll": { "inner_radius": "0 mm", "outer_radius": "40 mm", "turns": 2,
             "run": "opening", "eye": "start" } } }"#,
    ),
    (
        "socket-too-small",
        "",
        "",
        r#"{ "form": { "flag": { "outline": { "rectangle": { "length": "60 mm" } }, "thickness": "3 mm" } },
             "bend": { "socket": { "mandrel": "20 mm", "less": "90 mm", "axis": "along" } } }"#,
    ),
    (
        "socket-without-flag",
        "",
        "",
        r#"{ "form": { "plain": { "length": "60 mm" } }, "bend": { "socket": { "mandrel": "20 mm", "axis": "across" } } }"#,
    ),
    (
        "empty-branch",
        "",
        "",
        r#"{ "form": { "plain": { "length": "100 mm" } } },
             { "form": { "split": { "branches": [{ "segments": [] }, { "segments": [{ "form": { "plain": { "length": "50 mm" } } }] }] } } }"#,
    ),
    (
        "split-whole-bar",
        "",
        "",
        r#"{ "form": { "split": { "branches": [{ "segments": [{ "form": { "plain": { "length": "50 mm" } } }] },
             { "segments": [{ "form": { "plain": { "length": "50 mm" } } }] }] } } }"#,
    ),
    (
        "opening-too-wide",
        "",
        "",
        r#"{ "form": { "plain": { "length": "100 mm" } } },
             { "form": { "split": { "opening": { "width": "90 mm" },
               "branches": [{ "segments": [{ "form": { "plain": { "length": "50 mm" } } }] },
             { "segments": [{ "form": { "plain": { "length": "50 mm" } } }] }] } } },
             { "form": { "plain": { "length": "100 mm" } } }"#,
    ),
    (
        "hole-too-large",
        "",
        "",
        r#"{ "form": { "hole": { "outline": { "disc": { "diameter": "20 mm" } }, "thickness": "6 mm",
             "hole": { "round": "22 mm" }, "made": "punched" } } }"#,
    ),
    (
        "thin-wall",
        "",
        "",
        r#"{ "form": { "hole": { "outline": { "disc": { "diameter": "20 mm" } }, "thickness": "6 mm",
             "hole": { "round": "16 mm" }, "made": "drifted" } } }"#,
    ),
    ("tight-twist", "", "", r#"{ "form": { "plain": { "length": "40 mm" } }, "bend": { "twist": { "turns": 2 } } }"#),
    ("split-root", "", "", FORK),
    ("split-near-shoulder", "", "", FORK),
    (
        "branches-differ",
        "",
        "",
        r#"{ "form": { "plain": { "length": "100 mm" } } },
             { "form": { "split": { "root": { "radius": "2 mm" },
               "branches": [{ "segments": [{ "form": { "drawn": { "length": "50 mm", "section": { "square": "6 mm" } } } }] },
             { "segments": [{ "form": { "drawn": { "length": "60 mm", "section": { "square": "6 mm" } } } }] }] } } },
             { "form": { "plain": { "length": "100 mm" } } }"#,
    ),
    ("branch-as-cut", "", "", FORK),
    (
        "joint-unknown",
        r#""joints": [{ "kind": "tenon", "fixed": { "bar": "bar", "segment": "boss" }, "moved": [{ "bar": "bar", "segment": "nobody" }] }],"#,
        "",
        r#"{ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "24 mm" } }, "thickness": "6 mm", "hole": { "round": "8.2 mm" }, "made": "drilled" } } },
        { "name": "tenon", "form": { "tenon": { "section": { "round": "8 mm" }, "grip": "6 mm", "allowance": "12 mm" } } }"#,
    ),
    (
        "joint-name-twice",
        r#""joints": [{ "kind": "weld", "fixed": { "bar": "bar", "segment": "a" }, "moved": [{ "bar": "bar", "segment": "b" }] }],"#,
        "",
        r#"{ "name": "a", "form": { "plain": { "length": "80 mm" } } },
        { "name": "a", "form": { "plain": { "length": "80 mm" } } },
        { "name": "b", "form": { "plain": { "length": "80 mm" } } }"#,
    ),
    (
        "joint-members",
        r#""joints": [{ "kind": "tenon", "fixed": { "bar": "bar", "segment": "a" }, "moved": [{ "bar": "bar", "segment": "tenon" }] }],"#,
        "",
        r#"{ "name": "a", "form": { "plain": { "length": "80 mm" } } },
        { "name": "tenon", "form": { "tenon": { "section": { "round": "8 mm" }, "grip": "6 mm", "allowance": "12 mm" } } }"#,
    ),
    (
        "joint-loop",
        r#""joints": [{ "kind": "weld", "fixed": { "bar": "bar", "segment": "a" }, "moved": [{ "bar": "bar", "copy": 2, "segment": "a" }] },
           { "kind": "weld", "fixed": { "bar": "bar", "segment": "b" }, "moved": [{ "bar": "bar", "copy": 2, "segment": "b" }] }],"#,
        r#""count": 2,"#,
        r#"{ "name": "a", "form": { "plain": { "length": "80 mm" } } },
        { "name": "b", "form": { "plain": { "length": "80 mm" } } }"#,
    ),
    (
        "weld-side",
        r#""joints": [{ "kind": "weld", "fixed": { "bar": "bar", "segment": "a" }, "moved": [{ "bar": "bar", "segment": "b" }] }],"#,
        "",
        r#"{ "name": "a", "form": { "plain": { "length": "80 mm" } } },
        { "name": "b", "form": { "plain": { "length": "80 mm" } } }"#,
    ),
    (
        "tenon-hole",
        r#""joints": [{ "kind": "tenon", "fixed": { "bar": "bar", "segment": "boss" }, "moved": [{ "bar": "bar", "segment": "tenon" }] }],"#,
        "",
        r#"{ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "24 mm" } }, "thickness": "6 mm", "hole": { "round": "8.2 mm" }, "made": "drilled" } } },
        { "name": "tenon", "form": { "tenon": { "section": { "round": "8.5 mm" }, "grip": "6 mm", "allowance": "12 mm" } } }"#,
    ),
    (
        "tenon-loose",
        r#""joints": [{ "kind": "tenon", "fixed": { "bar": "bar", "segment": "boss" }, "moved": [{ "bar": "bar", "segment": "tenon" }] }],"#,
        "",
        r#"{ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "24 mm" } }, "thickness": "6 mm", "hole": { "square": "10 mm" }, "made": "drilled" } } },
        { "name": "tenon", "form": { "tenon": { "section": { "round": "8 mm" }, "grip": "6 mm", "allowance": "12 mm" } } }"#,
    ),
    (
        "tenon-grip",
        r#""joints": [{ "kind": "tenon", "fixed": { "bar": "bar", "segment": "boss" }, "moved": [{ "bar": "bar", "segment": "tenon" }] }],"#,
        "",
        r#"{ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "24 mm" } }, "thickness": "6 mm", "hole": { "round": "8.2 mm" }, "made": "drilled" } } },
        { "name": "tenon", "form": { "tenon": { "section": { "round": "8 mm" }, "grip": "8 mm", "allowance": "12 mm" } } }"#,
    ),
    (
        "tenon-head",
        r#""#,
        "",
        r#"{ "name": "tenon", "form": { "tenon": { "section": { "round": "8 mm" }, "grip": "6 mm", "allowance": "6 mm" } } }"#,
    ),
    (
        "rivet-hole",
        r#""joints": [{ "kind": "rivet", "fixed": { "bar": "bar", "segment": "boss" }, "moved": [{ "bar": "bar", "segment": "strap" }, { "bar": "bar", "segment": "rivet" }] }],"#,
        "",
        r#"{ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "24 mm" } }, "thickness": "6 mm", "hole": { "round": "8.2 mm" }, "made": "drilled" } } },
        { "name": "strap", "form": { "hole": { "outline": { "disc": { "diameter": "24 mm" } }, "thickness": "6 mm", "hole": { "round": "7 mm" }, "made": "drilled" } } },
        { "name": "rivet", "form": { "rivet": { "diameter": "8 mm", "grip": "12 mm", "allowance": "12 mm" } } }"#,
    ),
    (
        "rivet-loose",
        r#""joints": [{ "kind": "rivet", "fixed": { "bar": "bar", "segment": "boss" }, "moved": [{ "bar": "bar", "segment": "strap" }, { "bar": "bar", "segment": "rivet" }] }],"#,
        "",
        r#"{ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "24 mm" } }, "thickness": "6 mm", "hole": { "round": "8.2 mm" }, "made": "drilled" } } },
        { "name": "strap", "form": { "hole": { "outline": { "disc": { "diameter": "24 mm" } }, "thickness": "6 mm", "hole": { "slot": { "length": "20 mm", "width": "10 mm" } }, "made": "drilled" } } },
        { "name": "rivet", "form": { "rivet": { "diameter": "8 mm", "grip": "12 mm", "allowance": "12 mm" } } }"#,
    ),
    (
        "rivet-grip",
        r#""joints": [{ "kind": "rivet", "fixed": { "bar": "bar", "segment": "boss" }, "moved": [{ "bar": "bar", "segment": "strap" }, { "bar": "bar", "segment": "rivet" }] }],"#,
        "",
        r#"{ "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "24 mm" } }, "thickness": "6 mm", "hole": { "round": "8.2 mm" }, "made": "drilled" } } },
        { "name": "strap", "form": { "hole": { "outline": { "disc": { "diameter": "24 mm" } }, "thickness": "8 mm", "hole": { "round": "8.2 mm" }, "made": "drilled" } } },
        { "name": "rivet", "form": { "rivet": { "diameter": "8 mm", "grip": "12 mm", "allowance": "12 mm" } } }"#,
    ),
    (
        "rivet-head",
        r#""#,
        "",
        r#"{ "name": "rivet", "form": { "rivet": { "diameter": "8 mm", "grip": "12 mm", "allowance": "20 mm" } } }"#,
    ),
    (
        "collar-bundle",
        r#""joints": [{ "kind": "collar", "fixed": { "bar": "bar", "segment": "a" }, "moved": [{ "bar": "bar", "segment": "b", "side": "180 deg" }, { "bar": "bar", "segment": "collar" }] }],"#,
        "",
        r#"{ "name": "a", "form": { "plain": { "length": "80 mm" } } },
        { "name": "b", "form": { "plain": { "length": "80 mm" } } },
        { "name": "collar", "form": { "collar": { "section": { "flat": { "width": "12 mm", "thickness": "3 mm" } }, "width": "12 mm", "height": "23 mm" } } }"#,
    ),
    (
        "collar-loose",
        r#""joints": [{ "kind": "collar", "fixed": { "bar": "bar", "segment": "a" }, "moved": [{ "bar": "bar", "segment": "b", "side": "180 deg" }, { "bar": "bar", "segment": "collar" }] }],"#,
        "",
        r#"{ "name": "a", "form": { "plain": { "length": "80 mm" } } },
        { "name": "b", "form": { "plain": { "length": "80 mm" } } },
        { "name": "collar", "form": { "collar": { "section": { "flat": { "width": "12 mm", "thickness": "3 mm" } }, "width": "12 mm", "height": "26 mm" } } }"#,
    ),
    (
        "hook-eye",
        r#""joints": [{ "kind": "hook", "fixed": { "bar": "bar", "segment": "eye" }, "moved": [{ "bar": "bar", "segment": "a" }] }],"#,
        "",
        r#"{ "name": "eye", "form": { "plain": {} }, "bend": { "ring": { "inside_diameter": "12 mm" } } },
        { "name": "a", "form": { "plain": { "length": "80 mm" } } }"#,
    ),
];

const POINT: &str = r#"{ "form": { "taper": { "length": "60 mm", "to": "point" } } }"#;
/// A fork behind a shoulder whose slit ends sharp; one tine is left as cut, and the other holds more.
const FORK: &str = r#"{ "form": { "plain": { "length": "100 mm" } } },
    { "form": { "shoulder": { "to": { "square": "10 mm" }, "radius": "2 mm", "sides": "all" } } },
    { "form": { "split": { "branches": [{ "segments": [{ "form": { "plain": { "length": "50 mm" } } }] },
      { "segments": [{ "form": { "drawn": { "length": "150 mm", "section": { "square": "8 mm" } } } }] }] } } }"#;

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
    assert!(found.iter().any(|finding| finding.message.contains("steps nowhere")), "{found:?}");
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
