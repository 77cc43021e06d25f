//! What a rule reads on the legs of a bent piece.

use crate::handbook::INCH;
use fh_core::balance::{Leg, legs};
use serde_json::{Value, json};
use tests::{assert_close, balanced, mm, one_bar};

/// The legs of a bar with a bend between two plain parts, in mm.
fn legs_of(stock: &Value, before: &str, bend: Value, after: &str) -> Vec<Leg> {
    let leg = |length: &str| json!({ "form": { "plain": { "length": length } } });
    legs(&balanced(&one_bar(stock, &[leg(before), bend, leg(after)])).bars[0])
}

fn sharp(section: &Value, inside_radius: &str) -> Value {
    json!({
        "form": { "peak": { "section": section } },
        "bend": { "corner": { "angle": "90 deg", "inside_radius": inside_radius } },
    })
}

fn round(angle: &str, inside_radius: &str) -> Value {
    json!({ "form": { "plain": {} }, "bend": { "curve": { "angle": angle, "inside_radius": inside_radius } } })
}

fn assert_leg(what: &str, leg: &Leg, inside: f64, outside: f64) {
    assert_close(&format!("{what}, inside"), mm(leg.inside), inside, 1e-9);
    assert_close(&format!("{what}, outside"), mm(leg.outside), outside, 1e-9);
}

/// Controlled Hand Forging, lesson 14: a 20 in bar of 1/2 in square with a sharp corner; the legs are 3 3/4 in and 15 3/4 in
/// inside, 4 1/4 in and 16 1/4 in outside.
#[test]
fn both_ways_to_measure_a_square_corner() {
    let square = json!({ "square": "1/2 in" });
    let legs = legs_of(&square, "3 3/4 in", sharp(&square, "0 in"), "15 3/4 in");
    assert_leg("short leg", &legs[0], 3.75 * INCH, 4.25 * INCH);
    assert_leg("long leg", &legs[1], 15.75 * INCH, 16.25 * INCH);
    assert_eq!((legs[0].segments, legs[1].segments, legs.len()), ((0, 0), (2, 2), 2));
}

/// Plane geometry: angle of 25 × 6 mm, legs of 100 mm and 80 mm outside, an inside radius of 6 mm.
#[test]
fn the_outside_runs_to_the_apex() {
    let flat = json!({ "flat": { "width": "25 mm", "thickness": "6 mm" } });
    for bend in [sharp(&flat, "6 mm"), round("90 deg", "6 mm")] {
        let legs = legs_of(&flat, "88 mm", bend, "68 mm");
        assert_leg("long leg", &legs[0], 94.0, 100.0);
        assert_leg("short leg", &legs[1], 74.0, 80.0);
    }
}

/// Plane geometry: behind a hook of a half turn the leg reaches out by the radius and the metal, and no farther.
#[test]
fn a_leg_reaches_to_the_back_of_its_hook() {
    let legs = legs_of(&json!({ "round": "12 mm" }), "40 mm", round("180 deg", "25 mm"), "60 mm");
    assert_leg("short leg", &legs[0], 65.0, 77.0);
    assert_leg("long leg", &legs[1], 85.0, 97.0);
}

#[test]
fn a_straight_bar_has_no_legs() {
    let plain = json!({ "form": { "plain": { "length": "100 mm" } } });
    assert!(legs(&balanced(&one_bar(&json!({ "square": "12 mm" }), &[plain])).bars[0]).is_empty());
}
