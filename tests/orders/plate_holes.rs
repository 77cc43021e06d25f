//! The order of a plate with holes: hot holes before it is cut to its outline, drilled ones last, and the metal of each step.

use crate::orders::worked;
use fh_core::plan::{Operation as O, Plan};
use fh_work::after;
use serde_json::{Value, json};
use uom::si::volume::cubic_millimeter;

fn plan(holes: Value, more: Value) -> Plan {
    let mut form = json!({ "outline": { "rectangle": { "length": "80 mm", "width": "40 mm" } }, "thickness": "4 mm", "holes": holes });
    for (key, value) in more.as_object().unwrap() {
        form[key] = value.clone();
    }
    tests::read(&json!({ "firstheat": 1, "bars": [{ "name": "bar", "stock": { "square": "16 mm" }, "segments": [
        { "name": "shank", "form": { "plain": { "length": "150 mm" } } }, { "name": "plate", "form": { "flag": form } }] }] }))
}

fn hole(diameter: &str, made: &str, at: &str) -> Value {
    json!({ "hole": { "round": diameter }, "made": made, "at": at })
}

fn all_ways() -> Value {
    json!([
        hole("5 mm", "drilled", "10 mm"),
        hole("12 mm", "drifted", "35 mm"),
        hole("6 mm", "punched", "60 mm"),
        hole("5 mm", "drilled", "72 mm")
    ])
}

#[test]
fn hot_holes_come_before_the_outline_is_cut_and_drilled_ones_after_it() {
    let plan = plan(all_ways(), json!({ "blank": { "rectangle": { "length": "84 mm", "width": "46 mm" } } }));
    let worked = worked(&plan);
    let done: Vec<O> = worked.steps.iter().flat_map(|step| &step.tasks).map(|task| task.operation).collect();
    let place =
        |wanted: O| done.iter().position(|own| *own == wanted).unwrap_or_else(|| panic!("no {wanted:?} in {done:?}"));
    let order = [O::Spread, O::Punch, O::Drift, O::Trim, O::Drill].map(place);
    assert!(order.is_sorted(), "{done:?}");
    let drill = worked.steps.iter().find(|step| step.tasks.iter().any(|task| task.operation == O::Drill)).unwrap();
    assert!(drill.lay.as_ref().is_some_and(|words| words.contains("both holes")), "{:?}", drill.lay);
    assert!(drill.sizes.iter().any(|size| size.what == "diameter of the 2 holes"), "{:?}", drill.sizes);
}

/// What each hole loses leaves the bar when it is made, and not before: drilled 2 × π/4 × 25 × 4, punched π/4 × 36 × 4.
#[test]
fn the_metal_of_a_hole_leaves_the_bar_in_the_step_that_makes_it() {
    use std::f64::consts::PI;
    for (holes, lost) in [
        (json!([hole("5 mm", "drilled", "10 mm"), hole("5 mm", "drilled", "72 mm")]), 2.0 * PI / 4.0 * 25.0 * 4.0),
        (json!([hole("6 mm", "punched", "60 mm")]), PI / 4.0 * 36.0 * 4.0),
        (json!([hole("12 mm", "drifted", "35 mm")]), 0.0),
    ] {
        let plan = plan(holes, json!({}));
        let (balance, worked) = (fh_core::balance::balance(&plan), worked(&plan));
        let metal: Vec<f64> = (0..=worked.steps.len())
            .map(|steps| {
                let bars = after(&plan, &balance, &worked, steps);
                let plate = &bars.bars[0].segments[1];
                plate.shape.as_ref().map_or(0.0, |shape| shape.volume().get::<cubic_millimeter>())
            })
            .collect();
        let (first, last) = (metal[0], metal[metal.len() - 1]);
        assert!((first - last - lost).abs() < 1e-6 * first, "{first} to {last}, {lost} lost: {metal:?}");
        assert!(metal.windows(2).all(|two| two[1] <= two[0] + 1e-6 * first), "{metal:?}");
    }
}
