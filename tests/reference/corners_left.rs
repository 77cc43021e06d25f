//! Corners of metal that is left standing between two set-downs.
//!
//! `tests/data/corners_left.json` was computed independently of this project: areas by quadrature and as polygons of 200,000
//! sides (numpy, scipy, shapely, mpmath), as each case says.

use crate::reference::cases::number;
use fh_core::balance::SegmentBalance;
use fh_core::metal::Standing;
use serde_json::{Value, json};
use tests::{Spelling, balanced, mm, mm3, one_bar, read};
use uom::si::f64::Length;
use uom::si::length::millimeter;

fn cases() -> Vec<Value> {
    let all: Value = serde_json::from_str(include_str!("../data/corners_left.json")).unwrap();
    all["cases"].as_array().unwrap().clone()
}

/// The plan of a case, bent toward a side: two legs drawn from the bar that is left as high as it is for the corner.
fn plan(case: &Value, side: u32, write: Spelling) -> Value {
    let size = |key: &str| write.of(number(&case["inputs"]["mm"][key]));
    let flat = |height: &str, width: &str| match side {
        0 | 180 => json!({ "flat": { "width": size(width), "thickness": size(height) } }),
        _ => json!({ "flat": { "width": size(height), "thickness": size(width) } }),
    };
    let edges = case["inputs"]["mm"]["edge_radii"].as_array().unwrap();
    let [near, far] = [0, 1].map(|end| write.of(number(&edges[end])));
    let mut left = json!({ "near_edge": near, "far_edge": far });
    if case["inputs"]["mm"]["base"].is_number() {
        left["base"] = json!(size("base"));
    }
    let angle = format!("{} deg", case["inputs"]["mm"]["angle_deg"]);
    let leg = json!({ "name": "leg", "form": { "drawn": { "length": "100 mm", "section": flat("leg", "across") } } });
    let corner = json!({
        "name": "corner",
        "form": { "peak": { "section": flat("leg", "across"), "left": left } },
        "bend": { "corner": { "angle": angle, "inside_radius": size("inside_radius"), "side": format!("{side} deg") } },
    });
    one_bar(&flat("standing_height", "standing_width"), &[leg.clone(), corner, leg])
}

/// Compares one figure of a case: where it has none, there is to be none.
fn check(case: &Value, expected: &Value, key: &str, got: Option<f64>) {
    let Some(want) = expected.get(key) else { return };
    let (id, want) = (&case["id"], want.as_f64());
    match (got, want) {
        (Some(got), Some(want)) => {
            let near = (number(&case["rel_tol"]) * want.abs()).max(1e-7);
            assert!((got - want).abs() <= near, "{id} {key}: {got} where {want} is right");
        }
        (got, want) => assert!(got.is_none() && want.is_none(), "{id} {key}: {got:?} where {want:?} is right"),
    }
}

fn check_case(case: &Value, peak: &SegmentBalance) {
    let standing = peak.standing.expect("metal that is left");
    let set_downs = Standing { base: None, ..standing }.set_downs();
    let of = |length: Length| Some(mm(length));
    let is_ridge = case["expected"]["shape"].as_str().is_some_and(|shape| shape.starts_with("ridge"));
    let expected = &case["expected"];
    let near = |key: &str, got: Option<f64>| check(case, expected, key, got);
    near("extra_volume", Some(mm3(standing.needed())));
    near("volume_between_tangent_planes", Some(mm3(peak.finished_volume)));
    near("centre_line_length", of(peak.forged_length));
    near("bar_length_that_holds_the_metal_between_the_tangent_planes", of(peak.stock_length));
    near("depth_on_the_bisector", of(standing.depth()));
    near("height_short", of(standing.too_low()));
    near("largest_inside_radius_by_height", standing.largest_inside_radius().map(mm));
    near("largest_angle_deg_by_height", Some(standing.largest_turn().to_degrees()));
    near("outside_left_round_for_this_height", of(standing.outside_left_round()));
    near("least_top_length", set_downs.and_then(|found| found.top).map(mm));
    near("least_base_length", set_downs.map(|found| mm(found.base)));
    assert_eq!(set_downs.is_some_and(|found| found.top.is_none()), is_ridge, "{}", case["id"]);
    if is_ridge {
        near("ridge_height_kept", set_downs.map(|found| mm(found.height)));
        near("base_kept", set_downs.map(|found| mm(found.base)));
    }
    if let Some(given) = expected.get("with_given_base") {
        check(case, given, "standing_volume", Some(mm3(standing.volume())));
        check(case, given, "over_or_short_volume", Some(mm3(standing.volume() - standing.needed())));
    }
}

#[test]
fn metal_left_for_a_corner_is_as_high_and_as_long_as_plane_geometry_says() {
    for case in cases() {
        for side in [0, 90, 180, 270] {
            for write in [Spelling::Millimeters, Spelling::Inches] {
                let balance = balanced(&plan(&case, side, write));
                check_case(&case, &balance.bars[0].segments[1]);
            }
        }
    }
}

#[test]
fn a_corner_too_low_is_told_with_what_is_short_and_nothing_is_told_of_one_that_is_high_enough() {
    for case in cases() {
        let balance = balanced(&plan(&case, 0, Spelling::Millimeters));
        let found = balance.findings.iter().find(|finding| finding.id == "corner-too-low");
        let short = number(&case["expected"]["height_short"]);
        assert_eq!(found.is_some(), short > 0.0, "{}", case["id"]);
        let Some(found) = found else { continue };
        assert!(found.message.contains(&format!("{short:.1} mm too low")), "{}", found.message);
        // A larger inside radius makes it worse: none is offered where even a sharp inside is too deep.
        let radius = case["expected"]["largest_inside_radius_by_height"].as_f64();
        assert_eq!(found.remedy.contains("inside radius"), radius.is_some(), "{}", found.remedy);
    }
}

/// Each remedy of a corner that is too low, tried: it is no longer too low.
#[test]
fn what_is_advised_for_a_corner_that_is_too_low_makes_it_high_enough() {
    for case in cases().iter().filter(|case| number(&case["expected"]["height_short"]) > 0.0) {
        let balance = balanced(&plan(case, 0, Spelling::Millimeters));
        let standing = balance.bars[0].segments[1].standing.expect("metal that is left");
        let fits = |try_it: Standing| try_it.too_low().get::<millimeter>() < 1e-9;
        let mut corner = standing.corner;
        assert!(fits(Standing { height: standing.depth(), ..standing }));
        corner.turn = standing.largest_turn();
        assert!(fits(Standing { corner, ..standing }));
        corner = standing.corner;
        if let Some(radius) = standing.largest_inside_radius() {
            corner.inside_radius = radius;
            assert!(fits(Standing { corner, ..standing }));
        }
        corner = standing.corner;
        if let Some(legs) = standing.thickest_legs() {
            corner.thickness = legs;
            assert!(fits(Standing { corner, ..standing }));
        }
    }
}

#[test]
fn only_the_sides_of_what_is_left_are_worked_and_a_peak_without_it_is_upset_as_before() {
    let case = &cases()[0];
    let mut left = plan(case, 0, Spelling::Millimeters);
    let as_left = balanced(&left);
    let peak = left["bars"][0]["segments"][1]["form"]["peak"].as_object_mut().unwrap();
    peak.remove("left");
    let upset = balanced(&left);
    let marks = |balance: &fh_core::balance::Balance| {
        balance.bars[0].segments.iter().map(|segment| mm(segment.mark_end)).collect::<Vec<_>>()
    };
    assert_eq!(marks(&as_left), marks(&upset), "the marks are those of the metal, however it is made");
    assert!(upset.bars[0].segments[1].standing.is_none());
    assert!(fh_core::file::read(fh_core::file::write(&read(&left)).as_bytes()).is_ok());
}
