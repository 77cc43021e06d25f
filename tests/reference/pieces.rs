//! A whole piece: the wall hook, from the tip of its leaf to its plate.

use crate::cases::{Case, cases, number};
use fh_core::balance::BarBalance;
use serde_json::{Value, json};
use tests::{balanced, kg, mm, mm3, one_bar};

/// The wall hook as a plan. Two things in it are not built yet, and neither moves a mark: the twist is left off its square,
/// and the plate is planned with the slugs of its two holes still in it.
fn wall_hook() -> Value {
    let round = json!({ "round": "9 mm" });
    let curve = |name: &str, angle: &str, inside_radius: &str, side: &str| {
        json!({
            "name": name,
            "form": { "drawn": { "section": round } },
            "bend": { "curve": { "angle": angle, "inside_radius": inside_radius, "side": side } },
        })
    };
    let plate = json!({ "flat": { "width": "30 mm", "thickness": "5 mm" } });
    let leaf = json!({ "leaf": { "length": "60 mm", "width": "24 mm" } });
    one_bar(
        &json!({ "square": "12 mm" }),
        &[
            json!({ "name": "leaf", "form": { "flag": { "outline": leaf, "thickness": "2.5 mm" } } }),
            json!({ "name": "stem", "form": {
                "taper": { "length": "40 mm", "from": { "round": "6 mm" }, "to": round } } }),
            curve("hook", "200 deg", "17.5 mm", "0 deg"),
            curve("offset", "35 deg", "13.5 mm", "270 deg"),
            json!({ "name": "round to square", "form": {
                "taper": { "length": "25 mm", "to": { "square": "12 mm" }, "runout": "eased" } } }),
            json!({ "name": "twist", "form": { "plain": { "length": "50 mm" } } }),
            json!({ "name": "shank", "form": { "plain": { "length": "20 mm" } } }),
            json!({ "name": "spread", "form": {
                "taper": { "length": "30 mm", "to": plate, "runout": { "power": 2 } } } }),
            json!({ "name": "plate", "form": { "drawn": { "length": "55 mm", "section": plate } } }),
        ],
    )
}

/// The one place that knows the interface.
fn check(case: &Case, bar: &BarBalance) {
    for (wanted, got) in case.expected_segments().into_iter().zip(&bar.segments) {
        let slug = number(&wanted["slug_volume"]);
        let part = case.part(wanted["name"].as_str().unwrap(), wanted.clone());
        part.check("volume", mm3(got.finished_volume) - slug);
        part.check("finished_length", mm(got.forged_length));
        part.check("bar_length", mm(got.stock_length));
        part.check("mark_from_datum", mm(got.mark_end));
    }
    case.check("bar_length_total", mm(bar.last_mark()));
    case.check("bar_length_total", mm(bar.stock_length));
    case.check("mass_of_bar_cut_kg", kg(bar.stock_mass));
    case.check("finished_developed_length", mm(bar.forged_length));
    case.check("total_volume", mm3(bar.finished_volume) - case.expected("total_slug"));
}

#[test]
fn the_marks_of_the_wall_hook_are_exact() {
    let case = cases("pieces", "pieces-wall-hook").remove(0);
    let balance = balanced(&wall_hook());
    assert_eq!(balance.bars[0].segments.len(), case.expected_segments().len());
    check(&case, &balance.bars[0]);
}
