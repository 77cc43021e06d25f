//! A whole piece: the wall hook, from the tip of its leaf to its plate.

use crate::reference::cases::{Case, cases};
use fh_core::balance::{BarBalance, SegmentBalance};
use serde_json::{Value, json};
use tests::{balanced, kg, mm, mm3, one_bar};

/// The wall hook as a plan. Its plate is planned as two bosses, each half of it with one of the two holes.
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
    let boss = |name: &str| {
        json!({ "name": name, "form": { "hole": {
            "outline": { "rectangle": { "length": "27.5 mm", "width": "30 mm" } }, "thickness": "5 mm",
            "hole": { "round": "6 mm" }, "made": "punched",
        } } })
    };
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
            json!({ "name": "twist", "form": { "plain": { "length": "50 mm" } }, "bend": { "twist": { "turns": 1.25 } } }),
            json!({ "name": "shank", "form": { "plain": { "length": "20 mm" } } }),
            json!({ "name": "spread", "form": {
                "taper": { "length": "30 mm", "to": plate, "runout": { "power": 2 } } } }),
            boss("plate"),
            boss("other half of the plate"),
        ],
    )
}

/// What one part of the case comes to: the plate is two segments.
struct Part {
    volume: f64,
    slug: f64,
    forged: f64,
    stock: f64,
    mark: f64,
}

fn part(segments: &[SegmentBalance]) -> Part {
    let sum = |of: fn(&SegmentBalance) -> f64| segments.iter().map(of).sum();
    Part {
        volume: sum(|segment| mm3(segment.finished_volume)),
        slug: sum(|segment| mm3(segment.trimmed_volume)),
        forged: sum(|segment| mm(segment.forged_length)),
        stock: sum(|segment| mm(segment.stock_length)),
        mark: mm(segments.last().unwrap().mark_end),
    }
}

/// The one place that knows the interface.
fn check(case: &Case, bar: &BarBalance) {
    let wanted = case.expected_segments();
    let (plate, others) = (wanted.len() - 1, bar.segments.len() - 2);
    assert_eq!(plate, others);
    for (at, wanted) in wanted.into_iter().enumerate() {
        let got = part(if at == plate { &bar.segments[plate..] } else { &bar.segments[at..=at] });
        let part = case.part(wanted["name"].as_str().unwrap(), wanted.clone());
        part.check("volume", got.volume);
        part.check("slug_volume", got.slug);
        part.check("finished_length", got.forged);
        part.check("bar_length", got.stock);
        part.check("mark_from_datum", got.mark);
    }
    case.check("bar_length_total", mm(bar.last_mark()));
    case.check("bar_length_total", mm(bar.stock_length));
    case.check("mass_of_bar_cut_kg", kg(bar.stock_mass));
    case.check("mass_finished_kg", kg(bar.finished_mass));
    case.check("finished_developed_length", mm(bar.forged_length));
    case.check("total_volume", mm3(bar.finished_volume));
}

#[test]
fn the_marks_of_the_wall_hook_are_exact() {
    let case = cases("pieces", "pieces-wall-hook").remove(0);
    check(&case, &balanced(&wall_hook()).bars[0]);
}
