//! Flags: the width of each outline written down anew, times the thickness, along the length.

use crate::volumes::integrate::{gauss, over_length};
use serde_json::{Value, json};
use tests::{assert_close, balanced, mm2, mm3, one_bar, segment};

/// Even and running thicknesses: root and tip.
const THICKNESSES: [(f64, f64); 4] = [(3.0, 3.0), (6.0, 1.5), (1.0, 5.0), (0.4, 12.0)];

/// The one place that knows the interface: a flag of this outline behind a shank, so that it runs from its root.
fn check(outline: &Value, length: f64, width: impl Fn(f64) -> f64, integral: impl Fn(&dyn Fn(f64) -> f64) -> f64) {
    for (root, tip) in THICKNESSES {
        let thickness = |share: f64| root + (tip - root) * share;
        let volume = integral(&|share| width(share) * thickness(share)) * length;
        let text = if (root - tip).abs() < 1e-12 {
            json!(format!("{root} mm"))
        } else {
            json!({ "root": format!("{root} mm"), "tip": format!("{tip} mm") })
        };
        let flag = json!({ "name": "flag", "form": { "flag": { "outline": outline, "thickness": text } } });
        let shank = json!({ "name": "shank", "form": { "plain": { "length": "30 mm" } } });
        let stock = json!({ "square": "12 mm" });
        let balance = balanced(&one_bar(&stock, &[shank.clone(), flag.clone()]));
        let what = format!("{outline} {root} to {tip}");
        assert_close(&what, mm3(segment(&balance, 1).finished_volume), volume, 1e-7);
        for share in [0.07, 0.31, 0.62, 0.93] {
            let want = width(share) * thickness(share);
            assert_close(&what, mm2(segment(&balance, 1).area_at(share)), want, 1e-9);
        }
        // On the datum end it is read from its tip, and holds the same.
        let first = balanced(&one_bar(&stock, &[flag, shank]));
        assert_close(&what, mm3(segment(&first, 0).finished_volume), volume, 1e-7);
        assert_close(&what, mm2(segment(&first, 0).area_at(0.1)), width(0.9) * thickness(0.9), 1e-9);
    }
}

fn smooth(f: &dyn Fn(f64) -> f64) -> f64 {
    over_length(f)
}

fn two(name: &str, length: f64, width: f64) -> Value {
    json!({ name: { "length": format!("{length} mm"), "width": format!("{width} mm") } })
}

/// Half the chord of a circle of this radius, so far from its middle.
fn half_chord(radius: f64, from_middle: f64) -> f64 {
    (radius * radius - from_middle * from_middle).max(0.0).sqrt()
}

#[test]
fn rectangles_and_trapezoids() {
    check(&two("rectangle", 60.0, 24.0), 60.0, |_| 24.0, smooth);
    let trapezoid = json!({ "trapezoid": { "length": "60 mm", "root": "12 mm", "tip": "40 mm" } });
    check(&trapezoid, 60.0, |share| 12.0 + 28.0 * share, smooth);
    let narrowing = json!({ "trapezoid": { "length": "90 mm", "root": "50 mm", "tip": "1 mm" } });
    check(&narrowing, 90.0, |share| 50.0 - 49.0 * share, smooth);
}

#[test]
fn discs_and_ellipses() {
    let disc = json!({ "disc": { "diameter": "44 mm" } });
    check(&disc, 44.0, |share| 2.0 * half_chord(22.0, 44.0 * share - 22.0), smooth);
    for (length, width) in [(90.0, 40.0), (20.0, 70.0)] {
        let at = move |share: f64| width * 2.0 * half_chord(0.5, share - 0.5);
        check(&two("ellipse", length, width), length, at, smooth);
    }
}

#[test]
fn leaves_slim_and_round() {
    for (length, width) in [(60.0_f64, 24.0_f64), (100.0, 3.0), (60.0, 60.0)] {
        // Both arcs go through the tips and stand width / 2 away from the middle line.
        let radius = (length * length / 4.0 + width * width / 4.0) / width;
        let at = move |share: f64| 2.0 * (half_chord(radius, length * (share - 0.5)) - (radius - width / 2.0));
        check(&two("leaf", length, width), length, at, smooth);
    }
}

#[test]
fn stadiums_along_and_across_the_bar() {
    for (length, width) in [(60.0_f64, 20.0_f64), (20.0, 60.0), (30.0, 30.0)] {
        let radius = length.min(width) / 2.0;
        let at = move |share: f64| {
            let from_end = length * share.min(1.0 - share);
            let short = (radius - from_end).max(0.0);
            width - 2.0 * radius + 2.0 * half_chord(radius, short)
        };
        // In pieces: the ends are round, the middle is straight.
        let pieces = move |f: &dyn Fn(f64) -> f64| {
            let round = radius / length;
            let part = |from: f64, to: f64| (to - from) * over_length(|t| f(from + (to - from) * t));
            part(0.0, round) + part(round, 1.0 - round) + part(1.0 - round, 1.0)
        };
        check(&two("stadium", length, width), length, at, pieces);
    }
}

/// The metal across a polygon: the length of the line across it that lies inside, by its crossings.
fn across(corners: &[[f64; 2]], along: f64) -> f64 {
    let mut crossings = Vec::new();
    for (index, a) in corners.iter().enumerate() {
        let b = corners[(index + 1) % corners.len()];
        if (a[0] - along) * (b[0] - along) < 0.0 {
            crossings.push(a[1] + (b[1] - a[1]) * (along - a[0]) / (b[0] - a[0]));
        }
    }
    crossings.sort_by(f64::total_cmp);
    crossings.chunks(2).map(|pair| pair[1] - pair[0]).sum()
}

#[test]
fn polygons_with_and_without_notches() {
    let leaf: &[[f64; 2]] =
        &[[0.0, -6.0], [20.0, -18.0], [70.0, -14.0], [95.0, 0.0], [70.0, 14.0], [20.0, 18.0], [0.0, 6.0]];
    let fishtail: &[[f64; 2]] = &[[0.0, -6.0], [60.0, -25.0], [40.0, 0.0], [60.0, 25.0], [0.0, 6.0]];
    let lopsided: &[[f64; 2]] = &[[-5.0, 0.0], [50.0, 3.0], [30.0, 9.0], [45.0, 20.0], [10.0, 30.0]];
    for corners in [leaf, fishtail, lopsided] {
        let mut ends: Vec<f64> = corners.iter().map(|corner| corner[0]).collect();
        ends.sort_by(f64::total_cmp);
        let (low, length) = (ends[0], ends[ends.len() - 1] - ends[0]);
        let text: Vec<Value> = corners.iter().map(|[x, y]| json!([format!("{x} mm"), format!("{y} mm")])).collect();
        // Piece by piece between corners the width is a straight line.
        let pieces = |f: &dyn Fn(f64) -> f64| {
            ends.windows(2).map(|pair| gauss((pair[0] - low) / length, (pair[1] - low) / length, 4, f)).sum()
        };
        check(&json!({ "polygon": text }), length, |share| across(corners, low + length * share), pieces);
    }
}
