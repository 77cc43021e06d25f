//! Drawing and spreading pass by pass, of the steps of a plan.
#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_core::balance::balance;
use fh_core::plan::{Operation, Plan};
use fh_work::{Passes, Shop, passes, work_out};

fn of(stock: &str, form: &str, operation: Operation) -> Option<Passes> {
    let text = format!(
        r#"{{ "firstheat": 1, "bars": [{{ "stock": {stock}, "segments": [
            {{ "name": "part", "form": {form} }}, {{ "form": {{ "plain": {{ "length": "300 mm" }} }} }} ] }}] }}"#
    );
    let plan: Plan = fh_core::file::read(text.as_bytes()).unwrap();
    let balance = balance(&plan);
    let worked = work_out(&plan, &balance, &Shop::default());
    let does = |step: &fh_work::WorkedStep| step.tasks.iter().any(|task| task.operation == operation);
    passes(&plan, &balance, &worked, worked.steps.iter().position(does).unwrap())
}

/// 20 to 10 mm square in passes of 20 %: 12 passes at a bite of 10 mm, 15 at one of 15 mm, and 100 mm become about 395 (worked
/// example in the reference notes on heats).
#[test]
fn a_square_is_drawn_to_half_its_side_in_a_dozen_passes_or_so() {
    let drawn = of(
        r#"{ "square": "20 mm" }"#,
        r#"{ "drawn": { "length": "395 mm", "section": { "square": "10 mm" } } }"#,
        Operation::Draw,
    )
    .unwrap();
    assert!((12..=15).contains(&drawn.after.len()), "{drawn:?}");
    assert!((9.0..=15.0).contains(&drawn.bite_mm) && !drawn.spreads && drawn.doubts.is_empty(), "{drawn:?}");
    let [height, width, longer] = *drawn.after.last().unwrap();
    assert!((height * width * longer / 400.0 - 1.0).abs() < 1e-9, "metal is kept");
    assert!((3.8..=4.0).contains(&longer), "{longer}");
}

#[test]
fn a_block_under_the_peen_grows_wider_more_than_longer_and_keeps_its_metal() {
    let spread = of(
        r#"{ "square": "16 mm" }"#,
        r#"{ "flag": { "outline": { "leaf": { "length": "80 mm", "width": "40 mm" } }, "thickness": "4 mm" } }"#,
        Operation::Spread,
    )
    .unwrap();
    let [height, width, longer] = *spread.after.last().unwrap();
    assert!(spread.spreads && (height - 4.0).abs() < 1e-9, "{spread:?}");
    assert!((height * width * longer / 256.0 - 1.0).abs() < 1e-9, "metal is kept");
    assert!(width / 16.0 > longer, "{spread:?}");
}

#[test]
fn what_the_formula_does_not_know_is_told() {
    let flat = r#"{ "flat": { "width": "40 mm", "thickness": "8 mm" } }"#;
    let round = r#"{ "drawn": { "length": "100 mm", "section": { "round": "8 mm" } } }"#;
    assert!(!of(flat, round, Operation::Draw).unwrap().doubts.is_empty());
    assert!(of(flat, r#"{ "taper": { "length": "60 mm", "to": "point" } }"#, Operation::Taper).is_none());
}
