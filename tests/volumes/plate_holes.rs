//! Holes through plates: the metal that is left, and the bar that it takes, worked by hand and summed over a grid of points.

use fh_core::balance::Balance;
use fh_core::findings::Severity;
use fh_measure::in_mm;
use serde_json::{Value, json};
use std::f64::consts::PI;
use tests::{assert_close, balanced, mm3, one_bar, segment};

/// A bar of 20 by 10 mm, so that the bar is its metal over 200 mm².
const STOCK_MM2: f64 = 200.0;

/// The one place that knows the interface: such a flag behind a shank, without scale.
fn flag(form: Value) -> Balance {
    let shank = json!({ "name": "shank", "form": { "plain": { "length": "30 mm" } } });
    let flag = json!({ "name": "flag", "form": { "flag": form } });
    balanced(&one_bar(&json!({ "flat": { "width": "20 mm", "thickness": "10 mm" } }), &[shank, flag]))
}

fn rectangle(thickness: Value, holes: Value) -> Value {
    json!({ "outline": { "rectangle": { "length": "80 mm", "width": "40 mm" } }, "thickness": thickness, "holes": holes })
}

/// The metal that is left, and the length of bar that holds what it takes, in mm³ and mm.
fn check(what: &str, form: Value, left: f64, taken: f64) {
    let balance = flag(form);
    let flag = segment(&balance, 1);
    assert!(balance.findings.iter().all(|found| found.severity < Severity::Warning), "{what}: {:?}", balance.findings);
    assert_close(what, mm3(flag.finished_volume), left, 1e-9);
    assert_close(what, mm3(flag.finished_volume + flag.trimmed_volume), taken, 1e-9);
    assert_close(what, in_mm(flag.stock_length), taken / STOCK_MM2, 1e-9);
}

fn round(diameter: &str, made: &str, at: &str) -> Value {
    json!({ "hole": { "round": diameter }, "made": made, "at": at })
}

#[test]
fn what_is_drilled_or_punched_out_is_on_the_bar_and_what_is_drifted_is_not() {
    let (plate, hole) = (80.0 * 40.0 * 4.0, PI * 9.0 * 4.0);
    let even = json!("4 mm");
    let two = |made: &str| json!([round("6 mm", made, "20 mm"), round("6 mm", made, "60 mm")]);
    check("drilled", rectangle(even.clone(), two("drilled")), plate - 2.0 * hole, plate);
    check("punched", rectangle(even.clone(), two("punched")), plate - 2.0 * hole, plate);
    check("drifted", rectangle(even.clone(), two("drifted")), plate - 2.0 * hole, plate - 2.0 * hole);
    let mut slug = round("6 mm", "punched", "20 mm");
    slug["slug"] = json!("4 mm");
    check("a slug of 4 mm", rectangle(even.clone(), json!([slug])), plate - hole, plate - hole + PI * 4.0 * 4.0);
    let slot =
        json!([{ "hole": { "slot": { "length": "20 mm", "width": "8 mm" } }, "made": "drilled", "at": "40 mm" }]);
    check("a slot", rectangle(even.clone(), slot), plate - (12.0 * 8.0 + PI * 16.0) * 4.0, plate);
    let square = json!([{ "hole": { "square": "7 mm" }, "made": "drifted", "at": "40 mm", "across": "-9 mm" }]);
    check("a square", rectangle(even, square), plate - 49.0 * 4.0, plate - 49.0 * 4.0);
}

#[test]
fn a_hole_in_a_plate_that_thins_takes_the_thickness_at_its_middle() {
    // From 6 to 2 mm over 80: 5 mm thick at 20 mm, 2.5 mm at 70 mm.
    let thins = json!({ "root": "6 mm", "tip": "2 mm" });
    let plate = 80.0 * 40.0 * 4.0;
    let both = json!([round("8 mm", "drilled", "20 mm"), round("4 mm", "drilled", "70 mm")]);
    check("thins", rectangle(thins, both), plate - PI * 16.0 * 5.0 - PI * 4.0 * 2.5, plate);
}

#[test]
fn a_blank_holds_all_that_is_cut_off_it_and_out_of_it() {
    let mut form =
        rectangle(json!("4 mm"), json!([round("6 mm", "drilled", "20 mm"), round("6 mm", "drifted", "60 mm")]));
    form["blank"] = json!({ "rectangle": { "length": "84 mm", "width": "46 mm" } });
    let left = 80.0 * 40.0 * 4.0 - 2.0 * PI * 9.0 * 4.0;
    check("blank", form.clone(), left, 84.0 * 46.0 * 4.0);
    // What the drift pushes out is cut away with the rest; what is drilled out is not cut away.
    let balance = flag(form);
    let cut = segment(&balance, 1).shape.as_ref().unwrap().cut().unwrap();
    assert_close("cut away", mm3(cut.away), (84.0 * 46.0 - 80.0 * 40.0) * 4.0 + PI * 9.0 * 4.0, 1e-9);
}

#[test]
fn a_trimmed_share_is_of_what_is_left_and_comes_on_top_of_what_is_drilled() {
    let mut form = rectangle(json!("4 mm"), json!([round("6 mm", "drilled", "20 mm")]));
    form["trim"] = json!("5 %");
    let (plate, hole) = (80.0 * 40.0 * 4.0, PI * 9.0 * 4.0);
    check("trimmed", form, plate - hole, (plate - hole) * 1.05 + hole);
}

/// Whether a place along and across lies inside an outline.
type Inside<'a> = &'a dyn Fn(f64, f64) -> bool;

/// Leaf, fishtail and an outline by its corners, each with a slot off its middle line, summed over a grid of points.
#[test]
fn holes_in_any_outline_agree_with_a_sum_over_a_grid() {
    let (length, width) = (100.0_f64, 60.0_f64);
    let radius = (length * length + width * width) / (4.0 * width);
    let leaf = move |x: f64, y: f64| {
        (x - length / 2.0).hypot(y.abs() + radius - width / 2.0) < radius && (0.0..length).contains(&x)
    };
    let fishtail = |x: f64, y: f64| (0.0..100.0).contains(&x) && y.abs() < 10.0 + 0.2 * x;
    let notched = |x: f64, y: f64| (0.0..100.0).contains(&x) && (-10.0..30.0).contains(&y) && !(x > 60.0 && y > 20.0);
    let slot = |x: f64, y: f64| ((x - 50.0).abs() - 8.0).max(0.0).hypot(y - 4.0) < 5.0;
    let holes = json!([{ "hole": { "slot": { "length": "26 mm", "width": "10 mm" } }, "made": "drilled",
        "at": "50 mm", "across": "4 mm" }]);
    let cases: [(&str, Value, Inside<'_>); 3] = [
        ("leaf", json!({ "leaf": { "length": "100 mm", "width": "60 mm" } }), &leaf),
        ("fishtail", json!({ "trapezoid": { "length": "100 mm", "root": "20 mm", "tip": "60 mm" } }), &fishtail),
        (
            "notched",
            json!({ "polygon": [["0 mm", "-10 mm"], ["100 mm", "-10 mm"], ["100 mm", "20 mm"], ["60 mm", "20 mm"],
                ["60 mm", "30 mm"], ["0 mm", "30 mm"]] }),
            &notched,
        ),
    ];
    for (what, outline, inside) in cases {
        let step = 0.1;
        let mut sum = 0.0;
        for i in 0..1000 {
            for j in -400..400 {
                let (x, y) = ((f64::from(i) + 0.5) * step, (f64::from(j) + 0.5) * step);
                if inside(x, y) && !slot(x, y) {
                    sum += step * step * (5.0 - 0.03 * x);
                }
            }
        }
        let balance =
            flag(json!({ "outline": outline, "thickness": { "root": "5 mm", "tip": "2 mm" }, "holes": holes }));
        assert_close(what, mm3(segment(&balance, 1).finished_volume), sum, 1e-3);
    }
}

#[test]
fn the_thickness_gives_so_that_plate_and_holes_take_the_bar_that_is_left() {
    // 60 mm of 200 mm² hold 12 000 mm³: a plate of 80 × 40 mm that is drilled is 3.75 mm thick, drifted 12 000 ÷ (3200 − 9 π).
    for (made, thick) in [("drilled", 3.75), ("drifted", 12_000.0 / (3200.0 - 9.0 * PI))] {
        let shank = json!({ "name": "shank", "form": { "plain": { "length": "40 mm" } } });
        let form = rectangle(json!("5 mm"), json!([round("6 mm", made, "20 mm")]));
        let flag = json!({ "name": "flag", "form": { "flag": form }, "gives": "thickness" });
        let mut plan = one_bar(&json!({ "flat": { "width": "20 mm", "thickness": "10 mm" } }), &[shank, flag]);
        plan["bars"][0]["length"] = json!("100 mm");
        plan["bars"][0]["takes_up"] = json!("flag");
        let balance = balanced(&plan);
        let flag = segment(&balance, 1);
        assert_close(made, in_mm(flag.stock_length), 60.0, 1e-9);
        assert_close(made, mm3(flag.finished_volume), (3200.0 - 9.0 * PI) * thick, 1e-9);
    }
}
