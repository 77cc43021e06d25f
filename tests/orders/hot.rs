//! What has to be hot at a step, and in how many heats it is done, on small plans worked by hand.

use crate::orders::{doing, worked};
use fh_core::plan::{Operation as O, Plan};
use fh_work::WorkedStep;
use serde_json::{Value, json};

/// A plan on 16 mm square, with heats as long as anyone could wish, so that only what is asked for here counts them.
fn of_16_square(segments: &[Value]) -> Plan {
    let mut plan = tests::read(&tests::one_bar(&json!({ "square": "16 mm" }), segments));
    plan.work.heats.minutes = Some(60.0);
    plan
}

fn span(step: &WorkedStep) -> [f64; 2] {
    step.zone_mm.unwrap_or_else(|| panic!("“{}” has nothing hot", step.title))
}

fn with_a_rest(form: &str, length: f64) -> Plan {
    of_16_square(&[
        json!({ "name": "body", "form": { "plain": { "length": "150 mm" } } }),
        json!({ "name": "point", "form": { "taper": { "length": "80 mm", "from": { "square": "12 mm" },
            "to": "point" } } }),
        json!({ "name": "rest", "form": { form: { "length": format!("{length} mm") } } }),
    ])
}

/// A hot cut needs 25 mm of hot bar, half of it on either side, however long the rest is that falls.
#[test]
fn a_cut_heats_the_bar_beside_it_and_not_all_that_falls() {
    for (form, operation) in [("hold", O::PartOff), ("trim", O::Trim)] {
        let of = |length: f64| worked(&with_a_rest(form, length));
        let few = of(20.0).heats;
        for length in [150.0, 1000.0] {
            let worked = of(length);
            let step = doing(&worked, operation);
            let [from, to] = span(step);
            let cut = 150.0 + 80.0 * 12.0 * 12.0 / 3.0 / 256.0;
            // A taper that follows in the heat of the cut needs its 15 mm of bar hot, and a thickness beyond it.
            let last = worked.steps.iter().rfind(|other| other.is_hot() && other.heat == step.heat).unwrap();
            let beyond = if last.tasks == step.tasks { 12.5 } else { cut - 150.0 + 16.0 };
            assert!((from - (cut - beyond)).abs() < 1.5, "{form} of {length}: {from} to {to} for {cut}");
            assert!(
                (to - from - beyond).abs() < 12.5 + 6.0 && to - cut >= 12.0,
                "{form} of {length}: {from} to {to} for {cut}"
            );
            assert_eq!(worked.heats, few, "{form} of {length}");
        }
    }
}

fn gathered() -> Plan {
    of_16_square(&[
        json!({ "name": "shank", "form": { "plain": { "length": "200 mm" } } }),
        json!({ "name": "knob", "form": { "drawn": { "length": "40 mm", "section": { "square": "22 mm" } } } }),
    ])
}

/// 40 × 22² / 16² is 75.6 mm of bar, 4.7 times its thickness: more than 2.5 times, so in two goes of no more than 3 times each.
#[test]
fn an_upset_heats_the_marked_length_alone_and_counts_a_heat_for_each_go() {
    let worked = worked(&gathered());
    let upset = doing(&worked, O::Upset);
    let [from, to] = span(upset);
    assert!((from - 200.0).abs() < 0.1 && (to - 275.625).abs() < 0.1, "{from} to {to}");
    assert_eq!(upset.needs, 2);
    assert!(upset.lay.as_ref().unwrap().contains("in 2 goes"), "{:?}", upset.lay);
}

#[test]
fn a_short_upset_goes_in_one_heat() {
    let plan = of_16_square(&[
        json!({ "name": "shank", "form": { "plain": { "length": "200 mm" } } }),
        json!({ "name": "knob", "form": { "drawn": { "length": "20 mm", "section": { "square": "20 mm" } } } }),
    ]);
    let worked = worked(&plan);
    let upset = doing(&worked, O::Upset);
    assert_eq!(upset.needs, 1);
    assert!(!upset.lay.as_ref().unwrap().contains("goes"), "{:?}", upset.lay);
}

#[test]
fn a_second_welding_heat_is_counted() {
    let mut plan = tests::read(&tests::one_bar(
        &json!({ "round": "10 mm" }),
        &[
            json!({ "name": "ring", "form": { "drawn": { "length": "260 mm", "section": "stock" } },
                "bend": { "ring": {} } }),
            json!({ "name": "lap", "form": { "weld": { "allowance": "12 mm" } } }),
        ],
    ));
    plan.work.heats.minutes = Some(60.0);
    let worked = worked(&plan);
    let weld = doing(&worked, O::Weld);
    assert!(weld.lay.as_ref().unwrap().contains("second welding heat"), "{:?}", weld.lay);
    assert_eq!(weld.needs, 2);
}

#[test]
fn heats_are_told_for_one_of_each_bar_and_for_all_pieces() {
    let mut plan = gathered();
    let one = worked(&plan);
    assert_eq!((one.heats_of_all, one.heats_words()), (one.heats, format!("{} heats", one.heats)));
    plan.bars[0].count = Some(3);
    let three = worked(&plan);
    assert_eq!((three.heats, three.heats_of_all), (one.heats, 3 * one.heats));
    assert_eq!(three.heats_words(), format!("{} heats, {} for all pieces", one.heats, 3 * one.heats));
}

/// A smith's own order on a plain bar.
fn own(steps: &Value) -> Plan {
    let mut plan = tests::one_bar(
        &json!({ "square": "16 mm" }),
        &[
            json!({ "name": "shank", "form": { "plain": { "length": "200 mm" } } }),
            json!({ "name": "end", "form": { "drawn": { "length": "80 mm", "section": { "square": "12 mm" } } },
                "repeats": [{ "what": "line", "count": 3 }] }),
        ],
    );
    plan["work"] = json!({ "steps": steps });
    tests::read(&plan)
}

#[test]
fn a_step_in_the_smiths_own_words_is_hot_where_the_smith_says_so() {
    let worked = worked(&own(&json!([
        { "work": [{ "operation": "draw", "parts": ["2"] }] },
        { "title": "Dish it", "work": [{ "operation": "own", "parts": ["2"] }], "hot": true },
        { "title": "Look at it" },
        { "work": [{ "operation": "stamp", "parts": ["2"] }], "hot": true, "heat": "new" },
        { "title": "Set it back", "heat": "new" },
        { "work": [{ "operation": "draw", "parts": ["2"] }], "hot": false },
    ])));
    let heats: Vec<(bool, usize)> = worked.steps.iter().map(|step| (step.is_hot(), step.heat)).collect();
    assert_eq!(heats.iter().map(|(hot, _)| *hot).collect::<Vec<_>>(), [true, true, false, true, true, false]);
    assert!(heats[3].1 > heats[1].1 && heats[4].1 > heats[3].1, "{heats:?}");
    assert!(worked.steps[1].zone_mm.is_some() && worked.steps[3].zone_mm.is_some());
}
