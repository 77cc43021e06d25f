//! Heats are filled: what is done in one place is one heat's work until the heat runs out.

use crate::orders::{demo, worked};
use fh_core::plan::{Operation as O, Plan};
use fh_store::demos::DEMOS;
use fh_work::Worked;
use serde_json::{Value, json};

/// A smith's own order on one bar, in heats of one minute, all in one place.
fn own(steps: &Value) -> Worked {
    let mut plan = tests::one_bar(
        &json!({ "square": "16 mm" }),
        &[
            json!({ "name": "shank", "form": { "plain": { "length": "200 mm" } } }),
            json!({ "name": "end", "form": { "drawn": { "length": "80 mm", "section": { "square": "12 mm" } } },
                "bend": { "curve": { "angle": "90 deg" } } }),
        ],
    );
    plan["work"] = json!({ "steps": steps, "heats": { "minutes": 1 } });
    worked(&tests::read(&plan))
}

fn step(operation: &str, minutes: f64) -> Value {
    json!({ "work": [{ "operation": operation, "parts": ["2"] }], "minutes": minutes })
}

fn heats(worked: &Worked) -> Vec<[usize; 2]> {
    worked.steps.iter().map(|step| [step.heat, step.needs]).collect()
}

/// Five times 0.4 minutes are two heats of a minute: the third begins in the first heat and ends in the second.
#[test]
fn a_step_is_cut_where_the_heat_ends_and_goes_on_in_the_next() {
    let drawn =
        own(&json!([step("draw", 0.4), step("draw", 0.4), step("draw", 0.4), step("draw", 0.4), step("draw", 0.4)]));
    assert_eq!(heats(&drawn), [[1, 1], [1, 1], [1, 2], [2, 1], [2, 1]]);
    assert_eq!(drawn.heats, 2);
    assert_eq!(drawn.steps[2].warmth().words(), "heats 1 and 2");
}

#[test]
fn a_bend_is_made_in_one_go() {
    let bent = own(&json!([step("draw", 0.4), step("draw", 0.4), step("bend", 0.4), step("bend", 0.55)]));
    assert_eq!(heats(&bent), [[1, 1], [1, 1], [2, 1], [2, 1]]);
}

/// What is left over is not begun on, and what is over is struck a little colder, but not again and again.
#[test]
fn a_few_blows_neither_begin_a_heat_nor_take_one() {
    let little = own(&json!([step("draw", 0.9), step("draw", 0.5)]));
    assert_eq!(heats(&little), [[1, 1], [2, 1]]);
    let over = own(&json!([step("draw", 0.9), step("draw", 0.15), step("draw", 0.05), step("draw", 0.05)]));
    assert_eq!(heats(&over), [[1, 1], [1, 1], [1, 1], [2, 1]]);
}

/// The bar is measured cold after it.
#[test]
fn straightening_belongs_to_the_heat_before_it_and_lets_the_bar_cool() {
    let trued = own(&json!([step("draw", 0.3), { "work": [{ "operation": "straighten" }] }, step("bend", 0.2)]));
    assert_eq!(heats(&trued), [[1, 1], [1, 1], [2, 1]]);
    let own_heat = own(&json!([step("draw", 0.3), { "work": [{ "operation": "straighten" }], "heat": "new" }]));
    assert_eq!(heats(&own_heat), [[1, 1], [2, 1]]);
}

/// Ten heats' work are nine where each lasts a fifth longer, and thirteen where it lasts a fifth less.
#[test]
fn the_range_is_by_how_long_a_heat_lasts() {
    let long = own(&json!([step("draw", 10.0)]));
    assert_eq!((long.heats, long.heats_between), (10, [9, 13]));
    assert_eq!(long.heats_words(), "9 to 13 heats");
}

/// No step of a demo begins before the heat of the one before it, and none of them takes a heat more than its minutes ask for, but
/// where it is done in goes or is longer than the fire.
#[test]
fn no_step_of_a_demo_is_rounded_up_by_more_than_the_heat_that_it_shares() {
    for own in DEMOS {
        let worked = worked(&demo(own.file_name));
        let mut last = 0;
        for step in worked.steps.iter().filter(|step| step.is_hot()) {
            assert!(step.heat >= last, "{}: “{}”", own.file_name, step.title);
            last = step.heat + step.needs - 1;
            let Some(gives) = step.heat_minutes else { continue };
            let is_drawn = step.tasks.iter().all(|task| task.operation.is_shaping() && task.operation != O::Upset);
            let by_time = (step.minutes / gives).ceil() as usize;
            let zone = step.zone_mm.map_or(0.0, |[from, to]| to - from);
            assert!(!is_drawn || zone > 150.0 || step.needs <= by_time + 1, "{}: “{}”", own.file_name, step.title);
        }
        assert_eq!(last, worked.heats, "{}", own.file_name);
        let [low, high] = worked.heats_between;
        assert!(low <= worked.heats && worked.heats <= high, "{}: {low} to {high}", own.file_name);
    }
}

/// What practised smiths take for these by our judgment, less and more by a quarter (no source), meets the range.
#[test]
fn the_demos_take_the_heats_that_a_practised_smith_would_believe() {
    for (file, [low, high]) in [
        ("herb-bracket", [14.0, 16.0]),
        ("weeding-fork", [15.0, 17.0]),
        ("trowel", [14.0, 16.0]),
        ("draw-hoe", [25.0, 25.0]),
    ] {
        let [least, most] = worked(&demo(&format!("{file}.plan.json"))).heats_between.map(|heats| heats as f64);
        assert!(least <= 1.25 * high && most >= 0.75 * low, "{file}: {least} to {most}");
    }
}

/// A plate is drilled where it costs no heat: what is flattened beside it goes first, and the bar is trued.
#[test]
fn cold_work_waits_while_the_bar_is_hot() {
    let bracket: Plan = demo("trellis-bracket.plan.json");
    let worked = worked(&bracket);
    for pair in worked.steps.windows(3) {
        let is_between =
            pair[0].is_hot() && pair[2].is_hot() && pair[1].tasks.iter().any(|task| task.operation == O::Drill);
        let trued = pair[0].tasks.iter().any(|task| task.operation == O::Straighten);
        assert!(!is_between || trued || pair[2].heat > pair[0].heat, "“{}” between two hot steps", pair[1].title);
    }
    let flattened = worked.steps.iter().rposition(|step| step.tasks.iter().any(|task| task.operation == O::Flatten));
    let drilled = worked.steps.iter().position(|step| step.tasks.iter().any(|task| task.operation == O::Drill));
    assert!(flattened < drilled, "{flattened:?} {drilled:?}");
}
