//! A corner driven up once it is bent: nothing is upset before, and until it is bent its block is plain bar.
//!
//! The figures are plain geometry: 12 mm square, a square corner with an inside radius of 3 mm, legs 100 mm long. The metal between the
//! inside tangent points is 12 × (15² − 3² × π ÷ 4) = 2615.2 mm³, so 18.16 mm of bar go into what measures 9 × π ÷ 2 = 14.14 mm along
//! its middle line.

use crate::orders::{doing, lay, worked};
use fh_core::balance::balance;
use fh_core::plan::{Operation as O, Plan};
use fh_measure::in_mm;
use serde_json::json;

fn piece(driven: bool, stock: &str) -> Plan {
    let leg = |name: &str| json!({ "name": name, "form": { "drawn": { "length": "100 mm", "section": { "square": "12 mm" } } } });
    let corner = json!({ "name": "corner", "form": { "peak": { "section": { "square": "12 mm" }, "driven": driven } },
        "bend": { "corner": { "angle": "90 deg", "inside_radius": "3 mm" } } });
    tests::read(&tests::one_bar(&json!({ "square": stock }), &[leg("shelf leg"), corner, leg("wall leg")]))
}

/// How long the corner's part is after each step, in mm.
fn lengths(plan: &Plan) -> Vec<f64> {
    let (balance, done) = (balance(plan), worked(plan));
    let after = |steps: usize| {
        let bar = fh_work::bar_after(plan, &balance, &done, 0, steps).unwrap();
        in_mm(bar.segments[1].forged_length)
    };
    (0..=done.steps.len()).map(after).collect()
}

#[test]
fn it_is_bent_first_and_takes_three_heats_and_no_upsetting() {
    let done = worked(&piece(true, "12 mm"));
    let upsets = |step: &fh_work::WorkedStep| step.tasks.iter().any(|task| task.operation == O::Upset);
    assert!(!done.steps.iter().any(upsets));
    let step = doing(&done, O::Corner);
    assert!(step.needs >= 3, "{}", step.needs);
    assert!(lay(step).contains("strike both legs towards it by turns"), "{}", lay(step));
    assert!(worked(&piece(false, "12 mm")).steps.iter().any(upsets), "else its metal is upset before");
}

#[test]
fn it_takes_the_metal_of_a_corner_and_is_plain_bar_until_it_is_bent() {
    for (stock, drawn) in [("12 mm", false), ("16 mm", true)] {
        let [driven, upset] = [true, false].map(|driven| piece(driven, stock));
        let marks = |plan: &Plan| in_mm(balance(plan).bars[0].segments[1].stock_length);
        assert!((marks(&driven) - marks(&upset)).abs() < 1e-9, "{stock}");
        let (lengths, done) = (lengths(&driven), worked(&driven));
        let is_at = |wanted: O| {
            let does = |step: &fh_work::WorkedStep| {
                step.tasks.iter().any(|task| task.operation == wanted && task.part == Some(1))
            };
            done.steps.iter().position(does)
        };
        assert_eq!(is_at(O::Draw).is_some(), drawn, "{stock}");
        let corner = is_at(O::Corner).unwrap();
        assert!((lengths[corner] - 18.161).abs() < 2e-3, "{stock}: {lengths:?}");
        assert!((lengths[corner + 1] - 14.137).abs() < 2e-3, "{stock}: {lengths:?}");
    }
}
