//! Tapers: slices along the length, each the blend of both ends by its touching points.

use crate::volumes::integrate::over_length;
use crate::volumes::sections::{Outline, blended_area, edge, every, flat, octagon, point, round, square};
use serde_json::{Value, json};
use tests::{assert_close, balanced, mm2, mm3, one_bar, segment};

const LENGTH: f64 = 80.0;

/// The one place that knows the interface: a taper behind a shank, its whole volume and its slices.
fn check(from: &Outline, to: &Outline, runout: &Value, share: impl Fn(f64) -> f64) {
    let what = format!("{} to {}, {runout}", from.text, to.text);
    let form = json!({ "taper": { "length": "80 mm", "from": from.text, "to": to.text, "runout": runout } });
    let shank = json!({ "name": "shank", "form": { "plain": { "length": "30 mm" } } });
    let balance = balanced(&one_bar(&json!({ "square": "20 mm" }), &[shank, json!({ "name": "taper", "form": form })]));
    let taper = segment(&balance, 1);
    // The slices' areas are a square law of the share, so three of them give all.
    let (start, middle, end) = (blended_area(from, to, 0.0), blended_area(from, to, 0.5), blended_area(from, to, 1.0));
    let area = |f: f64| start * (1.0 - f) * (1.0 - 2.0 * f) + middle * 4.0 * f * (1.0 - f) + end * f * (2.0 * f - 1.0);
    let volume = LENGTH * over_length(|t| area(share(t)));
    assert_close(&what, mm3(taper.finished_volume), volume, 1e-7);
    for t in [0.0, 0.1, 0.35, 0.5, 0.8, 1.0] {
        let (got, want) = (mm2(taper.area_at(t)), blended_area(from, to, share(t)));
        assert!((got - want).abs() <= 1e-8 * (start + end), "{what} at {t}: {got} where {want} is right");
    }
}

#[test]
fn every_section_runs_straight_into_every_other() {
    for from in every() {
        for to in every().into_iter().chain([point(), edge(12.0), edge(60.0)]) {
            check(&from, &to, &json!("straight"), |t| t);
        }
    }
}

#[test]
fn a_taper_may_start_at_a_point_or_an_edge() {
    for from in [point(), edge(22.0)] {
        for to in every() {
            check(&from, &to, &json!("eased"), |t| t * t * (3.0 - 2.0 * t));
        }
    }
}

#[test]
fn every_runout_runs_as_it_says() {
    let pairs = || [(square(20.0), point()), (octagon(25.0), flat(40.0, 3.0)), (round(9.0), square(21.0))];
    for (from, to) in pairs() {
        check(&from, &to, &json!("straight"), |t| t);
        check(&from, &to, &json!("eased"), |t| t * t * (3.0 - 2.0 * t));
        for power in [0.1, 0.5, 0.8, 1.25, 2.0, 3.0, 10.0] {
            check(&from, &to, &json!({ "power": power }), |t: f64| t.powf(power));
        }
    }
}
