//! Lengths dressed in dies against plane geometry written down anew: circle segments, triangles, and a grid of the section.

use crate::volumes::integrate::gauss;
use serde_json::{Value, json};
use tests::{assert_close, balanced, mm, mm3, one_bar, segment};

/// The share that goes aside under flat tools, by the bite over the width: `0.14 + 0.36 x - 0.054 x²` (A. Tomlinson and J. D.
/// Stringer, *Spread and elongation in flat tool forging*, 1959).
fn aside(bite_over_width: f64) -> f64 {
    0.14 + 0.36 * bite_over_width - 0.054 * bite_over_width * bite_over_width
}

/// A circle's segment so high.
fn segment_area(radius: f64, height: f64) -> f64 {
    let half = (1.0 - height / radius).acos();
    radius * radius * (half - half.sin() * half.cos())
}

fn chord(radius: f64, height: f64) -> f64 {
    2.0 * (height * (2.0 * radius - height)).sqrt()
}

/// What of the metal of a part on 20 mm square goes along it, in mm³: what it holds less than without its dies, and less bar.
fn along(form: &Value, dressed: &Value) -> f64 {
    let part = |dressed: &Value| json!({ "name": "part", "form": form, "dressed": dressed });
    let shank = json!({ "name": "shank", "form": { "plain": { "length": "30 mm" } } });
    let of = |dressed: &Value| {
        let balance = balanced(&one_bar(&json!({ "square": "20 mm" }), &[shank.clone(), part(dressed)]));
        let own = segment(&balance, 1);
        assert_close("its bar holds it", mm(own.stock_length) * 400.0, mm3(own.finished_volume), 1e-9);
        mm3(own.finished_volume)
    };
    of(&json!([])) - of(&json!([dressed]))
}

fn drawn(section: Value) -> Value {
    json!({ "drawn": { "length": "80 mm", "section": section } })
}

#[test]
fn a_fuller_on_a_flat_face_moves_a_circles_segment() {
    for (radius, depth, side) in
        [(3.0, 2.0, "0 deg"), (5.0, 1.0, "90 deg"), (4.0, 0.25, "270 deg"), (2.0, 2.0, "180 deg")]
    {
        let die = json!({ "die": { "fuller": { "radius": format!("{radius} mm") } }, "from": "10 mm", "length": "50 mm",
            "side": side, "depth": format!("{depth} mm") });
        let want = segment_area(radius, depth) * 50.0 * aside(chord(radius, depth) / 50.0);
        let got = along(&drawn(json!({ "flat": { "width": "24 mm", "thickness": "14 mm" } })), &die);
        assert_close(&format!("{radius} {depth} {side}"), got, want, 1e-4);
    }
}

#[test]
fn a_fuller_across_moves_a_segment_as_long_as_the_bar_is_wide() {
    let die = json!({ "die": { "fuller": { "radius": "6 mm", "across": true } }, "from": "40 mm", "depth": "2 mm" });
    let want = segment_area(6.0, 2.0) * 24.0 * (1.0 - aside(chord(6.0, 2.0) / 24.0));
    assert_close(
        "across",
        along(&drawn(json!({ "flat": { "width": "24 mm", "thickness": "14 mm" } })), &die),
        want,
        1e-4,
    );
}

#[test]
fn a_v_knocks_two_triangles_off_a_face_and_all_of_it_goes_along() {
    for degrees in [60.0_f64, 90.0, 120.0] {
        let die =
            json!({ "die": { "v_block": { "angle": format!("{degrees} deg") } }, "length": "30 mm", "depth": "2 mm" });
        let want = 4.0 * (degrees / 2.0).to_radians().tan() * 30.0;
        assert_close(&format!("{degrees}"), along(&drawn(json!({ "square": "14 mm" })), &die), want, 1e-6);
    }
    // From both sides as deep as half the width it is the square on its corner: half the section.
    let both: Vec<Value> = ["0 deg", "180 deg"]
        .iter()
        .map(|side| json!({ "die": { "v_block": {} }, "side": side, "depth": "7 mm" }))
        .collect();
    let form = drawn(json!({ "square": "14 mm" }));
    let plan = one_bar(&json!({ "square": "20 mm" }), &[json!({ "form": form, "dressed": both })]);
    assert_close("diamond", mm3(segment(&balanced(&plan), 0).finished_volume), 14.0 * 14.0 / 2.0 * 80.0, 1e-6);
}

#[test]
fn a_swage_rounds_the_edges_of_a_face() {
    let (radius, width, depth) = (9.0_f64, 14.0_f64, 1.5_f64);
    // It touches at both edges first; a distance x from the middle it stands √(r² - x²) - √(r² - w²/4) higher.
    let edge = (radius * radius - width * width / 4.0).sqrt();
    let inner = (radius * radius - (edge + depth).powi(2)).sqrt();
    let area = 2.0 * gauss(inner, width / 2.0, 50, |x| edge + depth - (radius * radius - x * x).sqrt());
    let die = json!({ "die": { "swage": { "radius": "9 mm" } }, "depth": "1.5 mm" });
    assert_close("swage", along(&drawn(json!({ "square": "14 mm" })), &die), area * 80.0, 1e-4);
}

#[test]
fn a_groove_in_a_round_is_what_two_circles_share() {
    let (round, nose, depth, long) = (8.0_f64, 3.0_f64, 2.0_f64, 50.0);
    // The nose's middle lies over the round's; both circles share two segments (plane geometry).
    let apart = round + nose - depth;
    let own = (apart * apart + round * round - nose * nose) / (2.0 * apart);
    let area = segment_area(round, round - own) + segment_area(nose, nose - (apart - own));
    let die = json!({ "die": { "fuller": { "radius": "3 mm" } }, "from": "10 mm", "length": "50 mm", "depth": "2 mm" });
    let want = area * long * aside(chord(nose, depth) / long);
    assert_close("round", along(&drawn(json!({ "round": "16 mm" })), &die), want, 1e-3);
}

#[test]
fn a_groove_along_a_taper_with_a_flat_face_is_as_on_even_bar() {
    let taper = json!({ "taper": { "length": "80 mm", "from": { "square": "16 mm" }, "to": { "square": "10 mm" } } });
    let die = json!({ "die": { "fuller": { "radius": "3 mm" } }, "from": "10 mm", "length": "50 mm", "depth": "1 mm" });
    let want = segment_area(3.0, 1.0) * 50.0 * aside(chord(3.0, 1.0) / 50.0);
    assert_close("taper", along(&taper, &die), want, 1e-3);
}

#[test]
fn no_die_takes_more_than_there_is() {
    for die in [
        json!({ "fuller": { "radius": "500 mm" } }),
        json!({ "swage": { "radius": "1 mm" } }),
        json!({ "v_block": { "angle": "10 deg" } }),
    ] {
        let dressed = json!([{ "die": die, "depth": "3 m" }, { "die": die, "side": "90 deg", "depth": "3 m" }]);
        let plan = one_bar(
            &json!({ "square": "20 mm" }),
            &[json!({ "form": { "plain": { "length": "90 mm" } }, "dressed": dressed })],
        );
        let volume = mm3(segment(&balanced(&plan), 0).finished_volume);
        assert!(volume > 0.0 && volume < 36000.0, "{die}: {volume}");
    }
}
