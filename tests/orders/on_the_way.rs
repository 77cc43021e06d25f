//! Shapes passed through: each is a step of its own, and the bar after it has that shape. The metal is that of the first case of
//! `tests/data/on_the_way.json`.

use crate::orders::{lay, on, with_steps, worked};
use fh_core::balance::balance;
use fh_core::plan::{Deed, Operation as O, Step};
use fh_work::{Worked, WorkedStep, bar_after};
use serde_json::{Value, json};
use tests::{mm, one_bar, read};

fn leaf() -> Value {
    json!({ "name": "leaf", "form": { "flag": { "outline": { "leaf": { "length": "64 mm", "width": "26 mm" } },
        "thickness": "3 mm", "trim": "8 %" } }, "scale": "3 %", "via": [
        { "form": { "drawn": { "section": { "flat": { "width": "14 mm", "thickness": "6 mm" } } } } },
        { "form": { "drawn": { "section": { "flat": { "width": "18 mm", "thickness": "4.5 mm" } } } } } ] })
}

fn rest(length: &str) -> Value {
    json!({ "name": "rest", "form": { "plain": { "length": length } } })
}

/// A neck that is bent out of the way while the leaf beside it is spread, and opened again.
fn neck() -> Value {
    json!({ "name": "neck", "form": { "drawn": { "length": "60 mm", "section": { "round": "9 mm" } } },
        "via": [ { "bend": { "curve": { "angle": "60 deg" } } } ] })
}

fn making(worked: &Worked, operation: O, to: Option<usize>) -> &WorkedStep {
    let does =
        |step: &&WorkedStep| step.tasks.iter().any(|it| it.operation == operation && it.to == to && it.part.is_some());
    worked.steps.iter().find(does).unwrap_or_else(|| panic!("nothing does {operation:?} to {to:?}"))
}

#[test]
fn the_shapes_are_made_in_turn_and_each_step_says_what_it_makes() {
    let plan = read(&one_bar(&json!({ "square": "12 mm" }), &[leaf(), rest("200 mm")]));
    let balance = balance(&plan);
    let worked = worked(&plan);
    let titles: Vec<&str> = worked.steps.iter().map(|step| step.title.as_str()).collect();
    let at = |title: &str| titles.iter().position(|it| *it == title).unwrap_or_else(|| panic!("{title} in {titles:?}"));
    let first = at("Draw out “leaf”, first to 14 mm × 6 mm flat");
    let (isolate, second) = (at("Neck off “leaf”"), at("Spread “leaf”, first to 18 mm × 4.5 mm flat"));
    let (spread, trim) = (at("Spread “leaf”"), at("Trim “leaf”"));
    assert!(isolate < first && first < second && second < spread && spread < trim, "{titles:?}");
    let long = |step: usize| {
        let size = worked.steps[step].sizes.iter().find(|size| size.what.starts_with("length")).unwrap();
        size.mm.unwrap()
    };
    // The bar after each step, and the size that its card has: 3824.973 340 mm³ on 14 × 6 and on 18 × 4.5 mm.
    for (step, length) in [(first, 45.535_396_904), (second, 47.221_893_086)] {
        let bar = bar_after(&plan, &balance, &worked, 0, step + 1).unwrap();
        let got = mm(bar.segments[0].forged_length);
        assert!((got - length).abs() < 1e-6, "{got} after step {}", step + 1);
        assert!((long(step) - length).abs() < 1e-6, "{} on card {}", long(step), step + 1);
    }
    let done = bar_after(&plan, &balance, &worked, 0, worked.steps.len()).unwrap();
    assert_eq!(done.segments[0].shape, balance.bars[0].segments[0].shape);
    assert!(worked.findings.is_empty(), "{:?}", worked.findings);
}

#[test]
fn a_bend_that_helps_is_made_before_what_it_makes_room_for_and_opened_after() {
    let plan = read(&one_bar(&json!({ "square": "12 mm" }), &[leaf(), neck(), rest("200 mm")]));
    let (balance, worked) = (balance(&plan), worked(&plan));
    let place = |operation: O, to: Option<usize>, part: usize| {
        let does = |step: &WorkedStep| {
            step.tasks.iter().any(|it| (it.operation, it.to, it.part) == (operation, to, Some(part)))
        };
        worked.steps.iter().position(does).unwrap_or_else(|| panic!("{operation:?} {to:?} {part}"))
    };
    let (bend, open) = (place(O::Bend, Some(0), 1), place(O::Straighten, None, 1));
    assert!(place(O::Draw, Some(0), 1) < bend);
    assert!(bend < place(O::Spread, None, 0) && place(O::Spread, None, 0) < open, "{bend} {open}");
    let trues = |step: &WorkedStep| step.tasks.iter().any(|it| it.operation == O::Straighten && it.part.is_none());
    assert!(worked.steps.iter().position(trues).is_none_or(|trues| open < trues));
    assert!(worked.steps[bend].leave.as_ref().unwrap().contains("It is opened again"));
    assert!(lay(&worked.steps[open]).contains("look inside it for a gall"));
    let bent = |steps: usize| bar_after(&plan, &balance, &worked, 0, steps).unwrap().segments[1].bent.is_some();
    assert_eq!([bent(bend), bent(bend + 1), bent(open), bent(open + 1)], [false, true, true, false]);
}

#[test]
fn a_roll_that_is_begun_is_finished_later_and_no_shape_is_forged_twice() {
    let roll = json!({ "name": "socket", "form": { "flag": { "outline": { "rectangle": { "length": "60 mm" } },
        "thickness": "3 mm" } }, "bend": { "socket": { "mandrel": "24 mm", "axis": "along" } },
        "via": [ { "bend": { "socket": { "sweep": "180 deg", "axis": "along" } } } ] });
    let worked = on(json!({ "square": "20 mm" }), &[roll, rest("200 mm")]);
    let count = |operation: O| {
        let tasks = worked.steps.iter().flat_map(|step| &step.tasks);
        tasks.filter(|task| task.operation == operation && task.part == Some(0)).count()
    };
    assert_eq!((count(O::Spread), count(O::Roll), count(O::Straighten)), (1, 2, 0));
    let [begun, finished] = [Some(0), None].map(|to| making(&worked, O::Roll, to).title.clone());
    let at = |to: Option<usize>| {
        let does = |step: &WorkedStep| step.tasks.iter().any(|it| it.operation == O::Roll && it.to == to);
        worked.steps.iter().position(does).unwrap()
    };
    assert!(at(Some(0)) < at(None), "{begun} {finished}");
}

#[test]
fn an_order_of_ones_own_names_the_shape_or_leaves_it_to_be_found() {
    let plan = read(&one_bar(&json!({ "square": "12 mm" }), &[leaf(), rest("200 mm")]));
    let deed = |operation: O, to: Option<u32>| Deed { to, ..Deed::new(operation, vec!["1".to_owned()]) };
    let step = |deed: Deed| Step { work: vec![deed], ..Step::default() };
    let found = |steps: Vec<Step>| {
        let worked = with_steps(&plan, steps);
        worked.findings.iter().map(|found| found.finding.id).collect::<Vec<_>>()
    };
    let all = |second: Option<u32>| {
        vec![
            step(deed(O::Isolate, None)),
            step(deed(O::Draw, Some(1))),
            step(deed(O::Spread, second)),
            step(deed(O::Spread, None)),
            step(deed(O::Trim, None)),
            step(Deed::new(O::Straighten, Vec::new())),
        ]
    };
    assert_eq!(found(all(Some(2))), [""; 0]);
    // The second shape comes before the first: told once, as one shape out of turn.
    let mut turned = all(Some(2));
    turned.swap(1, 2);
    assert_eq!(found(turned), ["wrong-order"]);
    assert!(found(all(Some(3))).contains(&"part-unknown"));
}
