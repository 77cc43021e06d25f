//! Rings and eyes, from the diameter and from the length.

use crate::reference::cases::{Case, cases};
use fh_core::plan::SizeName;
use serde_json::{Value, json};
use tests::{Spelling, balanced, mm, mm3, one_bar, segment};

/// The section of a case, standing so that its radial size lies in the plane of a bend toward a side.
fn section(case: &Case, side: u32, write: Spelling) -> Value {
    let flat = |radial: f64, axial: f64| match side {
        0 => json!({ "flat": { "width": write.of(axial), "thickness": write.of(radial) } }),
        _ => json!({ "flat": { "width": write.of(radial), "thickness": write.of(axial) } }),
    };
    match case.inputs["section"].as_str() {
        Some("round") => json!({ "round": write.of(case.input("d")) }),
        Some("rect") => flat(case.input("radial"), case.input("axial")),
        _ => flat(case.input("thickness"), case.input("width")),
    }
}

fn ring(case: &Case, section: &Value, side: u32, write: Spelling) -> Value {
    let mut ring = json!({ "inside_diameter": write.of(case.input("inside_diameter")), "side": format!("{side} deg") });
    if case.inputs.get("wrap_deg").is_some() {
        ring["sweep"] = json!(format!("{} deg", case.input("wrap_deg")));
    }
    json!({ "name": "eye", "form": { "drawn": { "section": section } }, "bend": { "ring": ring } })
}

/// The one place that knows the interface.
fn check(case: &Case, ring: Value) {
    let balance = balanced(&one_bar(&json!({ "square": "10 mm" }), &[ring]));
    let ring = segment(&balance, 0);
    case.check("midline_length", mm(ring.forged_length));
    case.check("volume", mm3(ring.finished_volume));
}

fn all() -> Vec<Case> {
    let all: Vec<Case> = cases("curves", "curves-ring-").into_iter().chain(cases("curves", "curves-eye-")).collect();
    assert_eq!(all.len(), 6);
    all
}

#[test]
fn rings_and_eyes_follow_from_their_diameter() {
    for case in all() {
        for write in Spelling::ALL {
            for side in [0, 90] {
                check(&case, ring(&case, &section(&case, side, write), side, write));
            }
        }
    }
}

#[test]
fn rings_and_eyes_follow_from_their_length() {
    for case in all() {
        let (side, write) = (0, Spelling::Millimeters);
        let mut ring = ring(&case, &section(&case, side, write), side, write);
        ring["bend"]["ring"].as_object_mut().unwrap().remove("inside_diameter");
        ring["form"]["drawn"]["length"] = json!(write.of(case.expected("midline_length")));
        let balance = balanced(&one_bar(&json!({ "square": "10 mm" }), &[ring.clone()]));
        let inside = segment(&balance, 0).derived(SizeName::InsideDiameter).unwrap();
        let (got, want) = (mm(inside.length.unwrap()), case.input("inside_diameter"));
        assert!((got - want).abs() <= 1e-9 * want, "{}: {got}, {want}", case.id);
        check(&case, ring);
    }
}
