//! The ladder of a drawn or tapered segment against sizes worked out by hand from the constancy of volume.

#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_core::balance::{Ladder, balance, ladder};
use fh_core::describe::{rung_change_words, rung_size_words};
use fh_core::file;
use fh_core::plan::PlanUnit;
use fh_measure::Rounding;
use uom::si::f64::Length;
use uom::si::length::{inch, millimeter};

fn of(unit: &str, stock: &str, segments: &str, segment: usize) -> Option<Ladder> {
    let marks = if unit == "in" { "1/16 in" } else { "1 mm" };
    let plan = format!(
        r#"{{ "firstheat": 1, "title": "t", "units": {{ "length": "{unit}", "marks": "{marks}" }}, "bars": [{{
            "name": "bar", "stock": {stock}, "segments": [{segments}] }}] }}"#
    );
    let plan = file::read(plan.as_bytes()).unwrap();
    ladder(&plan, &balance(&plan), 0, segment)
}

fn millimeters(ladder: &Ladder, steps: i32) -> (f64, Option<f64>, f64) {
    let rung = ladder.rungs.iter().find(|rung| rung.steps == steps).unwrap();
    let mm = |length: Length| length.get::<millimeter>();
    (mm(rung.size), rung.end_size.map(mm), mm(rung.length))
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.001
}

#[test]
fn a_round_drawn_thinner_gets_longer_as_the_square_of_its_diameter() {
    // 16 mm square to 16 mm round, 200 mm long: 157.08 mm of bar.
    let ladder = of(
        "mm",
        r#"{ "square": "16 mm" }"#,
        r#"{ "form": { "drawn": { "length": "200 mm", "section": { "round": "16 mm" } } } }"#,
        0,
    );
    let ladder = ladder.unwrap();
    assert_eq!((ladder.measured, ladder.rungs.len()), ("diameter", 9));
    assert_eq!(millimeters(&ladder, 0), (16.0, None, 200.0));
    let (size, _, length) = millimeters(&ladder, 1);
    assert!(near(size, 16.5) && near(length, 188.062), "{length}");
    let (_, _, length) = millimeters(&ladder, -1);
    assert!(near(length, 213.111), "{length}");
    assert!(near(ladder.rungs[3].change.get::<millimeter>(), 13.111));
}

#[test]
fn in_inches_the_steps_are_thirty_seconds() {
    let ladder = of(
        "in",
        r#"{ "round": "3/4 in" }"#,
        r#"{ "form": { "drawn": { "length": "4 in", "section": { "round": "1/2 in" } } } }"#,
        0,
    );
    let ladder = ladder.unwrap();
    let thin = ladder.rungs[3];
    // 4 in × (16/15)².
    assert!(near(thin.size.get::<inch>(), 15.0 / 32.0) && near(thin.length.get::<inch>(), 4.551_111));
    assert_eq!(rung_size_words(&thin, PlanUnit::Inch), "15/32 in");
    assert_eq!(rung_change_words(&thin, Rounding::SIXTEENTH_INCH), "+9/16 in");
    assert_eq!(rung_change_words(&ladder.rungs[4], Rounding::SIXTEENTH_INCH), "");
    assert_eq!(rung_change_words(&ladder.rungs[5], Rounding::SIXTEENTH_INCH), "−7/16 in");
}

#[test]
fn a_flat_changes_in_thickness_and_keeps_its_width() {
    let ladder = of(
        "mm",
        r#"{ "square": "12 mm" }"#,
        r#"{ "form": { "drawn": { "length": "100 mm", "section": { "flat": { "width": "20 mm", "thickness": "5 mm" } } } } }"#,
        0,
    );
    let ladder = ladder.unwrap();
    assert_eq!(ladder.measured, "thickness");
    assert!(near(millimeters(&ladder, 1).2, 500.0 / 5.5) && near(millimeters(&ladder, -4).2, 500.0 / 3.0));
}

#[test]
fn a_taper_from_the_bar_changes_at_its_forged_end() {
    // 20 mm square to 8 mm square, 150 mm long: 78 mm of bar, 31 200 mm³.
    let ladder = of(
        "mm",
        r#"{ "square": "20 mm" }"#,
        r#"{ "form": { "plain": { "length": "50 mm" } } },
           { "form": { "taper": { "length": "150 mm", "to": { "square": "8 mm" } } } }"#,
        1,
    );
    let ladder = ladder.unwrap();
    assert_eq!((ladder.measured, ladder.place), ("side", "at its end"));
    let (to, _, length) = millimeters(&ladder, 1);
    // (400 + 170 + 72.25) / 3 = 214.083 mm².
    assert!(near(to, 8.5) && near(length, 145.738), "{length}");
    // (400 + 120 + 36) / 3 = 185.333 mm².
    assert!(near(millimeters(&ladder, -4).2, 168.345));
    assert_eq!(rung_size_words(&ladder.rungs[3], PlanUnit::Millimeter), "7.5 mm");
}

#[test]
fn a_taper_that_starts_from_a_forged_section_changes_at_both_ends() {
    let ladder = of(
        "mm",
        r#"{ "square": "20 mm" }"#,
        r#"{ "form": { "taper": { "length": "90 mm", "from": { "square": "16 mm" }, "to": { "square": "8 mm" } } } }"#,
        0,
    );
    // (256 + 128 + 64) / 3 × 90 = 13 440 mm³; at 17 and 9 mm (289 + 153 + 81) / 3 = 174.333 mm².
    let ladder = ladder.unwrap();
    assert_eq!((ladder.place, rung_size_words(&ladder.rungs[4], PlanUnit::Millimeter)), ("", "16 → 8 mm".to_owned()));
    let (from, to, length) = millimeters(&ladder, 2);
    assert!(near(from, 17.0) && near(to.unwrap(), 9.0) && near(length, 77.094), "{from} {to:?} {length}");
}

#[test]
fn a_point_or_an_edge_drawn_from_the_bar_is_left_blunt() {
    let segments = |to: &str| {
        format!(
            r#"{{ "form": {{ "plain": {{ "length": "50 mm" }} }} }},
               {{ "form": {{ "taper": {{ "length": "120 mm", "to": {to} }} }} }}"#
        )
    };
    let ladder = of("mm", r#"{ "square": "20 mm" }"#, &segments(r#""point""#), 1).unwrap();
    assert_eq!(ladder.rungs.len(), 5);
    assert_eq!((ladder.place, millimeters(&ladder, 0)), ("at its tip", (0.0, None, 120.0)));
    // 16 000 mm³ at (400 + 20 + 1) / 3 mm².
    let (tip, _, length) = millimeters(&ladder, 2);
    assert!(near(tip, 1.0) && near(length, 114.014), "{length}");
    let ladder = of("mm", r#"{ "square": "20 mm" }"#, &segments(r#"{ "edge": "20 mm" }"#), 1).unwrap();
    // 24 000 mm³ at 20 × (20 + 1) / 2 mm².
    assert!(near(millimeters(&ladder, 2).2, 114.286));
}

#[test]
fn a_segment_within_a_branch_has_its_ladder() {
    let tine = r#"{ "segments": [{ "form": { "drawn": { "length": "120 mm", "section": { "square": "10 mm" } } } }] }"#;
    let segments = format!(r#"{{ "form": {{ "split": {{ "branches": [{tine}, {tine}] }} }} }}"#);
    assert_eq!(of("mm", r#"{ "square": "20 mm" }"#, &segments, 0), None);
    let ladder = of("mm", r#"{ "square": "20 mm" }"#, &segments, 2).unwrap();
    assert!(near(millimeters(&ladder, -2).2, 120.0 * 100.0 / 81.0));
    // A tine of 10 × 20 mm tapered to a point keeps the section it was cut to: only its tip can be left blunt.
    let point = r#"{ "segments": [{ "form": { "taper": { "length": "120 mm", "to": "point" } } }] }"#;
    let segments = format!(r#"{{ "form": {{ "split": {{ "branches": [{point}, {tine}] }} }} }}"#);
    let ladder = of("mm", r#"{ "square": "20 mm" }"#, &segments, 1).unwrap();
    assert_eq!(ladder.rungs[0].steps, 0);
}

#[test]
fn nothing_is_left_fatter_than_the_bar() {
    let drawn = |side: &str| {
        let segment =
            format!(r#"{{ "form": {{ "drawn": {{ "length": "50 mm", "section": {{ "square": "{side} mm" }} }} }} }}"#);
        of("mm", r#"{ "square": "10 mm" }"#, &segment, 0).unwrap().rungs.last().unwrap().steps
    };
    // 9 and 9.5 and 10 mm; what is upset has no such end.
    assert_eq!((drawn("9"), drawn("6"), drawn("11")), (2, 4, 4));
}

#[test]
fn a_taper_that_runs_out_is_told_by_its_start() {
    let point = r#"{ "form": { "taper": { "length": "60 mm", "from": { "square": "8 mm" }, "to": "point" } } }"#;
    let ladder = of("mm", r#"{ "square": "10 mm" }"#, point, 0).unwrap();
    assert_eq!(
        (ladder.place, rung_size_words(&ladder.rungs[3], PlanUnit::Millimeter)),
        ("at its root", "7.5 mm".to_owned())
    );
    assert!(near(millimeters(&ladder, -1).2, 60.0 * 64.0 / 56.25));
}

#[test]
fn sizes_never_run_out() {
    let ladder = of(
        "mm",
        r#"{ "square": "10 mm" }"#,
        r#"{ "form": { "drawn": { "length": "50 mm", "section": { "square": "1.5 mm" } } } }"#,
        0,
    );
    let ladder = ladder.unwrap();
    assert_eq!(ladder.rungs[0].steps, -2);
    assert!(ladder.rungs.iter().all(|rung| rung.size.get::<millimeter>() > 0.0));
}

#[test]
fn what_is_neither_drawn_nor_tapered_has_no_ladder() {
    let segments = r#"{ "form": { "plain": { "length": "50 mm" } } }, { "form": { "ball": { "diameter": "15 mm" } } },
        { "form": { "drawn": { "section": { "round": "8 mm" } } } }"#;
    for segment in 0..4 {
        assert_eq!(of("mm", r#"{ "square": "10 mm" }"#, segments, segment), None);
    }
}
