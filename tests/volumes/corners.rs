//! Corners and shoulders: rays from the inside center, and the fillet's height along its run.

use crate::volumes::integrate::{gauss, over_length};
use serde_json::{Value, json};
use tests::{assert_close, balanced, mm, mm3, one_bar, segment};

/// The one place that knows the interface, for corners: thickness × width with the thickness in the plane of the bend.
fn check_corner(degrees: f64, thickness: f64, width: f64, inside: f64) {
    let section = json!({ "flat": { "width": format!("{width} mm"), "thickness": format!("{thickness} mm") } });
    let corner = json!({
        "name": "corner",
        "form": { "peak": { "section": section } },
        "bend": { "corner": { "angle": format!("{degrees} deg"), "inside_radius": format!("{inside} mm") } },
    });
    let balance = balanced(&one_bar(&section, &[corner]));
    let peak = segment(&balance, 0);
    // From the inside center each ray runs from the inside radius to the flat outside of its leg, up to the middle ray.
    let half = degrees.to_radians() / 2.0;
    let outside = inside + thickness;
    let area = 2.0 * gauss(0.0, half, 64, |angle| ((outside / angle.cos()).powi(2) - inside * inside) / 2.0);
    let what = format!("corner of {degrees}°, {thickness} × {width}, inside radius {inside}");
    assert_close(&what, mm3(peak.finished_volume), area * width, 1e-9);
    // While the bar is straight it stands over the middle line's length.
    assert_close(&what, mm(peak.forged_length), (inside + thickness / 2.0) * 2.0 * half, 1e-12);
}

#[test]
fn corners_hold_what_lies_between_their_inside_tangent_points() {
    for degrees in [1.0, 30.0, 45.0, 90.0, 120.0, 135.0] {
        for (thickness, width) in [(12.0, 12.0), (8.0, 40.0), (40.0, 8.0)] {
            for inside in [0.0, 3.0, 12.0] {
                check_corner(degrees, thickness, width, inside);
            }
        }
    }
}

/// The one place that knows the interface, for shoulders between flats, given as width and thickness.
fn check_shoulder(before: [f64; 2], after: [f64; 2], radius: f64, sides: &Value, widths: &[f64]) {
    let flat = |[w, t]: [f64; 2]| json!({ "flat": { "width": format!("{w} mm"), "thickness": format!("{t} mm") } });
    let neck = json!({ "name": "before", "form": { "drawn": { "length": "40 mm", "section": flat(before) } } });
    let form = json!({ "shoulder": { "to": flat(after), "radius": format!("{radius} mm"), "sides": sides } });
    let balance = balanced(&one_bar(&json!({ "square": "25 mm" }), &[neck, json!({ "name": "step", "form": form })]));
    let small = (before[0] * before[1]).min(after[0] * after[1]);
    // The fillet is what a round of its radius leaves in the corner, along each side that is set down.
    let height = |along: f64| radius - (radius * radius - (radius - along).powi(2)).max(0.0).sqrt();
    let fillets: f64 = widths.iter().sum::<f64>() * radius * over_length(|t| height(t * radius));
    let what = format!("shoulder {before:?} to {after:?} on {sides}");
    let step = segment(&balance, 1);
    assert_close(&what, mm3(step.finished_volume), small * radius + fillets, 1e-7);
    assert_close(&what, mm(step.forged_length), radius, 1e-12);
}

#[test]
fn shoulders_hold_the_smaller_section_and_their_fillets() {
    let (large, small) = ([20.0, 20.0], [14.0, 12.0]);
    let sides = [
        (json!("all"), vec![14.0, 14.0, 12.0, 12.0]),
        (json!([0, 90, 180, 270]), vec![14.0, 14.0, 12.0, 12.0]),
        (json!([0]), vec![14.0]),
        (json!([180, 0]), vec![14.0, 14.0]),
        (json!([90]), vec![12.0]),
        (json!([0, 270]), vec![14.0, 12.0]),
    ];
    for (sides, widths) in sides {
        check_shoulder(large, small, 3.0, &sides, &widths);
        check_shoulder(small, large, 3.0, &sides, &widths);
        check_shoulder(large, small, 0.25, &sides, &widths);
    }
}
