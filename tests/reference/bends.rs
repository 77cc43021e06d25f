//! Plain bends, sharp corners and pieces with two legs.

use crate::reference::cases::{Case, cases};
use fh_core::metal::Shape;
use fh_core::plan::SizeName;
use serde_json::{Value, json};
use tests::{Spelling, balanced, figures, mm, mm3, one_bar, segment};

/// A section of a case, standing so that its thickness lies in the plane of a bend toward a side.
fn section(case: &Case, side: u32, write: Spelling) -> Value {
    let (thickness, width) = (write.of(case.input("thickness")), write.of(case.input("width")));
    match side {
        0 | 180 => json!({ "flat": { "width": width, "thickness": thickness } }),
        _ => json!({ "flat": { "width": thickness, "thickness": width } }),
    }
}

fn curve(section: &Value, angle: &str, inside_radius: &str, side: u32) -> Value {
    json!({
        "name": "bend",
        "form": { "drawn": { "section": section } },
        "bend": { "curve": { "angle": angle, "inside_radius": inside_radius, "side": format!("{side} deg") } },
    })
}

fn corner(section: &Value, angle: &str, inside_radius: &str, side: u32) -> Value {
    json!({
        "name": "corner",
        "form": { "peak": { "section": section } },
        "bend": { "corner": { "angle": angle, "inside_radius": inside_radius, "side": format!("{side} deg") } },
    })
}

/// The sizes of a case as text: the angle in one of its spellings, and the inside radius.
fn sizes(case: &Case, side: u32, write: Spelling) -> (String, String) {
    let degrees = case.input("deviation_deg");
    let angle = match side {
        0 => format!("{degrees} deg"),
        90 => format!("{degrees}°"),
        180 => format!("{} rad", figures(degrees.to_radians())),
        _ => format!("{degrees}/360 turn"),
    };
    (angle, write.of(case.input("inside_radius")))
}

/// The one place that knows the interface, for plain bends.
fn check_curve(case: &Case, section: &Value, curve: Value, keys: (&str, &str)) {
    let balance = balanced(&one_bar(section, &[curve]));
    let bend = segment(&balance, 0);
    let (volume, length) = keys;
    case.check(volume, mm3(bend.finished_volume));
    case.check(length, mm(bend.forged_length));
    case.check(length, mm(bend.stock_length));
}

/// The one place that knows the interface, for sharp corners.
fn check_corner(case: &Case, section: &Value, segment_text: Value) {
    let balance = balanced(&one_bar(section, &[segment_text]));
    let peak = segment(&balance, 0);
    case.check("sharp_corner_volume", mm3(peak.finished_volume));
    case.check("plain_midline_length", mm(peak.forged_length));
    case.check("corner_block_bar_length", mm(peak.stock_length));
    let apex = peak.derived(SizeName::BendToApex).unwrap();
    case.check("outside_setback", mm(apex.length.unwrap()));
    let Some(Shape::Peak { corner, .. }) = &peak.shape else { panic!("{} is no peak", case.id) };
    case.check("extra_volume", mm3(corner.peak_volume()));
    case.check("extra_bar_length", mm(peak.stock_length) - mm(peak.forged_length));
}

fn corner_cases() -> impl Iterator<Item = Case> {
    cases("bends", "bends-").into_iter().filter(|case| case.expects("sharp_corner_volume"))
}

#[test]
fn sharp_corners_are_exact_toward_every_side() {
    let mut count = 0;
    for case in corner_cases() {
        for (side, write) in [0, 90, 180, 270].into_iter().zip(Spelling::ALL) {
            let section = section(&case, side, write);
            let (angle, radius) = sizes(&case, side, write);
            check_corner(&case, &section, corner(&section, &angle, &radius, side));
        }
        count += 1;
    }
    assert_eq!(count, 18);
}

#[test]
fn plain_bends_are_exact_toward_every_side() {
    for case in corner_cases() {
        for (side, write) in [0, 90, 180, 270].into_iter().zip(Spelling::ALL) {
            let section = section(&case, side, write);
            let (angle, radius) = sizes(&case, side, write);
            let curve = curve(&section, &angle, &radius, side);
            check_curve(&case, &section, curve, ("plain_bend_volume", "plain_midline_length"));
        }
    }
}

#[test]
fn a_bend_follows_the_centroid_of_its_section() {
    let all = cases("bends", "bends-pappus-");
    assert_eq!(all.len(), 2);
    for case in all {
        // Bent toward its round side, a half-round has its flat face outside.
        let section = match case.inputs["section"].as_str().unwrap() {
            "round" => json!({ "round": "12 mm" }),
            "half_round_flat_outside" => json!({ "half_round": { "width": "20 mm", "height": "10 mm" } }),
            section => panic!("the section {section} is not known here"),
        };
        let (angle, radius) = sizes(&case, 0, Spelling::Millimeters);
        check_curve(&case, &section, curve(&section, &angle, &radius, 0), ("volume", "centroid_path_length"));
    }
}

/// The one place that knows the interface, for two legs and what joins them.
fn check_legs(case: &Case, section: &Value, between: Value, sharp: bool) {
    let legs = case.inputs["straight_to_inside_tangent"].as_array().unwrap().clone();
    let leg = |index: usize| json!({ "name": "leg", "form": { "plain": { "length": format!("{} mm", legs[index]) } } });
    let balance = balanced(&one_bar(section, &[leg(0), between, leg(1)]));
    let bar = &balance.bars[0];
    if !sharp {
        case.check("bar_length_plain", mm(bar.last_mark()));
        return;
    }
    case.check("bar_length_sharp", mm(bar.last_mark()));
    case.check("volume_sharp", mm3(bar.finished_volume));
    let Some(Shape::Peak { corner, .. }) = &bar.segments[1].shape else { panic!("{} has no peak", case.id) };
    for (index, at) in [0, 2].into_iter().enumerate() {
        let outside = mm(bar.segments[at].forged_length) + mm(corner.to_apex());
        let want = case.apex(index);
        assert!((outside - want).abs() <= 1e-9 * want, "{} leg {index}: {outside}, {want}", case.id);
    }
}

#[test]
fn two_legs_take_as_much_bar_as_they_and_their_corner_hold() {
    let all = cases("bends", "bends-legs-");
    assert_eq!(all.len(), 2);
    for case in all {
        let section = section(&case, 0, Spelling::Millimeters);
        let (angle, radius) = sizes(&case, 0, Spelling::Millimeters);
        check_legs(&case, &section, curve(&section, &angle, &radius, 0), false);
        check_legs(&case, &section, corner(&section, &angle, &radius, 0), true);
    }
}
