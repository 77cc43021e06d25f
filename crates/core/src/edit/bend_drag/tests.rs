//! Bends dragged, as edits of a plan.

#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use super::*;
use crate::edit::{Edit, Refusal};
use crate::file;
use crate::plan::{Bend, Plan, SizeName};
use std::f64::consts::TAU;

/// A plan of one bent part of 12 mm square bar, marked to 1 mm.
fn plan(form: &str, bend: &str) -> Plan {
    let text = format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }}, "bars": [{{ "name": "hook",
        "stock": {{ "square": "12 mm" }},
        "segments": [{{ "name": "crook", "form": {{ "plain": {form} }}, "bend": {{ {bend} }} }}] }}] }}"#
    );
    file::read(text.as_bytes()).unwrap()
}

fn drag(knob: Knob, to: BendTo) -> BendDrag {
    BendDrag { bar: 0, at: 0, knob, to, free: false }
}

/// The bend after a drag, and what was written.
fn bent(plan: &Plan, drag: BendDrag) -> (Bend, SizeName, String) {
    let (next, mut gave) = Edit::DragBend(drag).applied(plan).unwrap();
    let gave = gave.remove(0);
    (next.bars[0].segments[0].bend.clone().unwrap(), gave.size, gave.text)
}

/// What is written of a bend: its angle or turns, and its radius or diameter.
fn texts(bend: &Bend) -> (Option<String>, Option<String>) {
    let angle_text = |angle: &Option<fh_measure::WrittenAngle>| angle.as_ref().map(|angle| angle.text().to_owned());
    let text = |size: &Option<fh_measure::WrittenLength>| size.as_ref().map(|size| size.text().to_owned());
    match bend {
        Bend::Curve { angle, inside_radius, .. } => (angle_text(angle), text(inside_radius)),
        Bend::Ring { sweep, inside_diameter, .. } => (angle_text(sweep), text(inside_diameter)),
        Bend::Scroll { turns, outer_radius, .. } => (turns.map(|turns| turns.to_string()), text(outer_radius)),
        _ => (None, None),
    }
}

fn some(text: &str) -> Option<String> {
    Some(text.to_owned())
}

const CURVE: &str = r#""curve": { "angle": "90 deg", "inside_radius": "20 mm" }"#;

#[test]
fn a_written_size_is_written_anew_to_its_step() {
    let hook = plan("{}", CURVE);
    let (bend, size, text) = bent(&hook, drag(Knob::Angle, BendTo::Size(95.3_f64.to_radians())));
    assert_eq!((texts(&bend), size, text.as_str()), ((some("95 deg"), some("20 mm")), SizeName::Angle, "95°"));
    let (bend, size, text) = bent(&hook, drag(Knob::Radius, BendTo::Size(23.4)));
    assert_eq!((texts(&bend).1, size, text.as_str()), (some("23 mm"), SizeName::InsideRadius, "23 mm"));
    let free = BendDrag { free: true, ..drag(Knob::Radius, BendTo::Size(23.44)) };
    assert_eq!(texts(&bent(&hook, free).0).1, some("23.44 mm"));
}

#[test]
fn a_step_by_the_keyboard_is_one_step_of_the_plan() {
    let hook = plan("{}", CURVE);
    let (bend, ..) = bent(&hook, drag(Knob::Angle, BendTo::Step { up: true }));
    assert_eq!(texts(&bend).0, some("91 deg"));
    let (bend, ..) = bent(&hook, drag(Knob::Radius, BendTo::Step { up: false }));
    assert_eq!(texts(&bend).1, some("19 mm"));
}

#[test]
fn a_size_that_follows_stays_unwritten_and_the_other_one_is_written() {
    // 12 mm square turns on a center line 6 mm from its inside face: 90° at 20 mm take 40.84 mm.
    let by_angle = plan(r#"{ "length": "40.84 mm" }"#, r#""curve": { "angle": "90 deg" }"#);
    let (bend, size, _) = bent(&by_angle, drag(Knob::Radius, BendTo::Size(14.0)));
    assert_eq!((texts(&bend), size), ((some("117 deg"), None), SizeName::Angle));
    let by_radius = plan(r#"{ "length": "40.84 mm" }"#, r#""curve": { "inside_radius": "20 mm" }"#);
    let (bend, size, _) = bent(&by_radius, drag(Knob::Angle, BendTo::Size(117.0_f64.to_radians())));
    assert_eq!((texts(&bend), size), ((None, some("14 mm")), SizeName::InsideRadius));
}

#[test]
fn a_ring_that_follows_from_its_length_is_dragged_by_how_far_it_goes_round() {
    let eye = plan(r#"{ "length": "200 mm" }"#, r#""ring": {}"#);
    let (bend, size, _) = bent(&eye, drag(Knob::Radius, BendTo::Size(40.0)));
    let Bend::Ring { inside_diameter: None, sweep: Some(sweep), .. } = bend else { panic!("{bend:?}") };
    assert_eq!(size, SizeName::Angle);
    assert!(sweep.radians() < TAU);
}

const SCROLL: &str = r#""scroll": { "inner_radius": "8 mm", SIZES "run": "even", "eye": "end" }"#;

#[test]
fn a_scroll_is_dragged_by_what_is_written_of_it() {
    let both = plan("{}", &SCROLL.replace("SIZES", r#""outer_radius": "40 mm", "turns": 1.5,"#));
    let (bend, size, text) = bent(&both, drag(Knob::Angle, BendTo::Size(1.77 * TAU)));
    assert_eq!((texts(&bend), size, text.as_str()), ((some("1.75"), some("40 mm")), SizeName::Turns, "1.75"));
    assert_eq!(texts(&bent(&both, drag(Knob::Radius, BendTo::Size(44.4))).0).1, some("44 mm"));
    let length = r#"{ "length": "226 mm" }"#;
    let turns_follow = plan(length, &SCROLL.replace("SIZES", r#""outer_radius": "40 mm","#));
    let (bend, size, text) = bent(&turns_follow, drag(Knob::Angle, BendTo::Size(2.0 * TAU)));
    assert_eq!((texts(&bend).0, size), (None, SizeName::OuterRadius));
    assert_ne!(text, "40 mm");
    let radius_follows = plan(length, &SCROLL.replace("SIZES", r#""turns": 1.5,"#));
    let (bend, ..) = bent(&radius_follows, drag(Knob::Radius, BendTo::Size(60.0)));
    let Bend::Scroll { outer_radius: None, turns: Some(turns), .. } = bend else { panic!("{bend:?}") };
    assert!(turns < 1.5, "{turns}");
}

#[test]
fn absurd_wishes_stay_within_what_can_be_bent() {
    let hook = plan("{}", CURVE);
    for wish in [-1e9, 0.0, 1e9, f64::INFINITY] {
        for knob in [Knob::Angle, Knob::Radius] {
            assert!(Edit::DragBend(drag(knob, BendTo::Size(wish))).applied(&hook).is_ok(), "{knob:?} {wish}");
        }
    }
}

#[test]
fn what_is_not_bent_or_not_there_is_not_dragged() {
    let twist = plan(r#"{ "length": "100 mm" }"#, r#""twist": { "turns": 1.5 }"#);
    let wish = drag(Knob::Angle, BendTo::Size(1.0));
    assert!(matches!(Edit::DragBend(wish).applied(&twist), Err(Refusal::CannotBe(_))));
    let nowhere = BendDrag { at: 7, ..wish };
    assert_eq!(Edit::DragBend(nowhere).applied(&twist).err(), Some(Refusal::NoSuchPlace));
}
