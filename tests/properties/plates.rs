//! Plates that are spread to a blank and cut to an outline, of any sizes: metal is kept, and what is cut away and what is
//! missing are what lies in the one outline and not in the other.

use crate::properties::forms::outline;
use crate::properties::sizes::{Sizes, Written, length};
use crate::properties::{cases, laws};
use fh_core::balance::balance;
use fh_core::file;
use fh_core::metal::{Outline, Shape};
use fh_core::plan::Plan;
use proptest::prelude::*;
use serde_json::{Value, json};
use tests::{mm, mm2, mm3};

/// A polygon with an arc here and there: one that then crosses itself is no plan.
fn with_arcs(polygon: Value, arcs: &[(u32, bool)]) -> Value {
    let Some(corners) = polygon.get("polygon").and_then(Value::as_array) else { return polygon };
    let mut list = Vec::new();
    for (corner, (degrees, is_out)) in corners.iter().zip(arcs.iter().cycle()) {
        list.push(corner.clone());
        if *degrees > 0 {
            list.push(json!({ "arc": format!("{degrees} deg"), "bulges": if *is_out { "out" } else { "in" } }));
        }
    }
    json!({ "polygon": list })
}

/// A plate between two lengths of bar; none where its outlines can be none.
fn plate(sizes: Sizes) -> impl Strategy<Value = Option<Plan>> {
    let arcs = proptest::collection::vec((prop_oneof![Just(0_u32), 1_u32..80], any::<bool>()), 1..5);
    let base = proptest::option::of(length(sizes));
    (outline(sizes), outline(sizes), arcs, [base.clone(), base], length(sizes), any::<bool>()).prop_map(
        |(outline, blank, arcs, [own, of_blank], thickness, joined)| {
            let by_sizes = |outline: &Value| outline.get("polygon").is_none();
            let mut base = serde_json::Map::new();
            for (key, outline, size) in [("outline", &outline, own), ("blank", &blank, of_blank)] {
                if let Some(size) = size.filter(|_| by_sizes(outline)) {
                    base.insert(key.to_owned(), json!(size));
                }
            }
            let flag = json!({ "outline": with_arcs(outline, &arcs), "blank": with_arcs(blank, &arcs), "base_line": base,
                "thickness": thickness, "joined": joined });
            let plain = json!({ "name": "shank", "form": { "plain": { "length": "60 mm" } } });
            let plan = json!({ "firstheat": 1, "scale": "3 %", "bars": [{ "name": "bar", "stock": { "square": "12 mm" },
                "segments": [plain, { "name": "plate", "form": { "flag": flag } }, plain] }] });
            file::read(Written(plan).0.to_string().as_bytes()).ok()
        },
    )
}

/// The length of a line across the bar that lies in each outline, and in both: from its crossings with their points.
fn across(outlines: [&[[f64; 2]]; 2], along: f64) -> [f64; 3] {
    let spans = outlines.map(|points| {
        let next = points.iter().cycle().skip(1);
        let mut crossings: Vec<f64> = points
            .iter()
            .zip(next)
            .filter(|(a, b)| (a[0] <= along) != (b[0] <= along))
            .map(|(a, b)| a[1] + (b[1] - a[1]) * (along - a[0]) / (b[0] - a[0]))
            .collect();
        crossings.sort_by(f64::total_cmp);
        crossings.chunks_exact(2).map(|pair| [pair[0], pair[1]]).collect::<Vec<_>>()
    });
    let length = |spans: &[[f64; 2]]| spans.iter().map(|[low, high]| high - low).sum::<f64>();
    let both = spans[0].iter().flat_map(|a| spans[1].iter().map(move |b| (a[1].min(b[1]) - a[0].max(b[0])).max(0.0)));
    [length(&spans[0]), length(&spans[1]), both.sum()]
}

/// What two outlines have in common, by lines across them.
fn shared_mm2(outline: &Outline, blank: &Outline) -> f64 {
    const LINES: usize = 4000;
    let [own, other] = [outline, blank].map(Outline::points_mm);
    let far = mm(outline.length()).min(mm(blank.length()));
    let step = far / LINES as f64;
    (0..LINES).map(|line| across([&own, &other], (line as f64 + 0.5) * step)[2] * step).sum()
}

proptest! {
    #![proptest_config(cases(300))]

    #[test]
    fn what_is_cut_and_what_is_missing_is_what_lies_in_one_and_not_in_the_other(plan in plate(Sizes::Usual)) {
        let Some(plan) = plan else { return Ok(()) };
        laws::check(&plan)?;
        let balance = balance(&plan);
        let plate = &balance.bars[0].segments[1];
        let Some(Shape::Flag { outline, blank: Some(blank), .. }) = &plate.shape else { return Ok(()) };
        // A leaf wider than long is drawn beyond its own ends.
        let is_odd = |outline: &Outline| {
            matches!(outline.bare(), Outline::Leaf { length, width } if width > length)
        };
        if is_odd(outline) || is_odd(&blank.outline) {
            return Ok(());
        }
        let cut = plate.shape.as_ref().and_then(Shape::cut).expect("a blank");
        let [own, of_blank] = [mm2(outline.area()), mm2(blank.outline.area())];
        let shared = shared_mm2(outline, &blank.outline);
        let near = 2e-3 * own.max(of_blank) + 0.05;
        prop_assert!((mm2(cut.missing_area) - (own - shared)).abs() < near, "{} of {} missing", mm2(cut.missing_area), own - shared);
        prop_assert!((mm2(cut.away_area) - (of_blank - shared)).abs() < near, "{} of {} away", mm2(cut.away_area), of_blank - shared);
        // The bar holds the blank, whatever is cut of it.
        let bar = mm(plate.stock_length) * 144.0 * 0.97;
        let whole = mm3(plate.shape.as_ref().and_then(Shape::blank).expect("a blank").volume());
        prop_assert!((bar - whole).abs() < 1e-9 * whole);
    }

    #[test]
    fn plates_of_any_sizes_are_balanced_written_and_read_again(plan in plate(Sizes::Absurd)) {
        let Some(plan) = plan else { return Ok(()) };
        laws::check(&plan)?;
        let read = file::read(file::write(&plan).as_bytes());
        prop_assert_eq!(read.ok(), Some(plan));
    }
}
