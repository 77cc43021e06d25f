//! What holds the bar, on small plans worked by hand: jaws for what is in them, and no tongs in the middle of a long bar.

use fh_core::balance::balance;
use fh_core::plan::{Operation as O, Plan};
use fh_work::{Shop, ToolKind, Worked, WorkedStep, work_out};
use serde_json::{Value, json};

fn on_12_square(segments: &[Value]) -> (Plan, Worked) {
    let plan = tests::read(&tests::one_bar(&json!({ "square": "12 mm" }), segments));
    let worked = work_out(&plan, &balance(&plan), &Shop::default());
    (plan, worked)
}

fn doing(worked: &Worked, operation: O) -> &WorkedStep {
    let does = |step: &&WorkedStep| step.tasks.iter().any(|task| task.operation == operation);
    worked.steps.iter().find(does).unwrap_or_else(|| panic!("nothing does {}", operation.name()))
}

fn body(length: &str) -> Value {
    json!({ "name": "body", "form": { "plain": { "length": length } } })
}

#[test]
fn a_long_cold_bar_is_held_by_hand_and_a_longer_one_is_propped() {
    let point = json!({ "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } });
    let held = |length: &str| {
        let (plan, worked) = on_12_square(&[body(length), point.clone()]);
        let words = doing(&worked, O::Taper).held_words(&plan).unwrap();
        (words, worked.tools.iter().any(|tool| tool.kind == ToolKind::Tongs))
    };
    assert_eq!(held("300 mm"), ("hold “body”: tongs, jaw 12.0 mm".to_owned(), true));
    assert_eq!(held("600 mm"), ("hold “body” by hand".to_owned(), false));
    assert_eq!(held("1400 mm"), ("hold “body” by hand, the bar on a stand or with a helper".to_owned(), false));
}

/// The taper runs from 12 to 6 mm thick over 100 mm; 30 mm in from its end it is 7.8 mm thick.
#[test]
fn jaws_are_for_what_is_in_them_by_then() {
    let (_, worked) = on_12_square(&[
        json!({ "name": "end", "form": { "taper": { "length": "100 mm", "from": { "flat": { "width": "12 mm",
            "thickness": "6 mm" } }, "to": { "square": "12 mm" } } } }),
        body("150 mm"),
        json!({ "name": "other", "form": { "drawn": { "length": "300 mm", "section": { "square": "8 mm" } } } }),
    ]);
    let taper = worked.steps.iter().position(|step| step.tasks[0].operation == O::Taper).unwrap();
    let draw = worked.steps.iter().position(|step| step.tasks[0].operation == O::Draw).unwrap();
    let (first, then) = (taper.min(draw), taper.max(draw));
    assert_eq!(worked.steps[first].hold.unwrap().jaw_mm, [12.0, 12.0]);
    let jaw = worked.steps[then].hold.unwrap().jaw_mm;
    let wanted = if then == draw { [12.0, 7.8] } else { [8.0, 8.0] };
    assert!((jaw[0] - wanted[0]).abs() < 0.01 && (jaw[1] - wanted[1]).abs() < 0.01, "{jaw:?} for {wanted:?}");
}

/// Between parts at the ends of a bar of 400 mm jaws never go round its middle.
#[test]
fn tongs_grip_within_reach_of_the_end() {
    let flat = |name: &str| {
        json!({ "name": name, "form": { "hole": { "outline": { "disc": { "diameter": "18 mm" } },
        "thickness": "7 mm", "hole": { "round": "6 mm" }, "made": "punched" } } })
    };
    let (_, worked) = on_12_square(&[flat("one"), body("370 mm"), flat("other"), body("150 mm"), flat("last")]);
    for step in worked.steps.iter().filter(|step| step.hold.is_some_and(|hold| !hold.by_hand && hold.length_mm > 0.0)) {
        let (hold, zone) = (step.hold.unwrap(), step.zone_mm);
        assert!([0, 1, 3, 4].contains(&hold.part), "{}: {hold:?} with {zone:?} hot", step.title);
    }
}
