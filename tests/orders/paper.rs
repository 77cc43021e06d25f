//! What is told of a step to the hand: sizes that tools come in, each check once, and only what the hand needs.

use crate::orders::{demo, worked};
use fh_core::plan::{Plan, PlanUnit};
use fh_store::demos::DEMOS;
use fh_work::{ToolKind, Worked};

fn all() -> impl Iterator<Item = (&'static str, Plan, Worked)> {
    DEMOS.iter().map(|own| {
        let plan = demo(own.file_name);
        let worked = worked(&plan);
        (own.file_name, plan, worked)
    })
}

/// Punch, drift and drill are as wide as their hole; a monkey tool is bored for its tenon.
#[test]
fn tools_have_sizes_that_a_shop_has() {
    let mut seen = 0;
    for (name, plan, worked) in all() {
        let made_for_it = [ToolKind::Punch, ToolKind::Drift, ToolKind::Drill, ToolKind::MonkeyTool, ToolKind::Tongs];
        for tool in worked.tools.iter().filter(|tool| !made_for_it.contains(&tool.kind)) {
            let Some(mm) = tool.size_mm else { continue };
            let step = if plan.units.length == PlanUnit::Inch { 25.4 / 16.0 } else { 1.0 };
            let is_collar = tool.words.contains('×');
            assert!(is_collar || (mm / step - (mm / step).round()).abs() < 1e-6, "{name}: {} ({mm} mm)", tool.words);
            seen += 1;
        }
    }
    assert!(seen > 20, "{seen}");
}

#[test]
fn a_step_says_each_check_once() {
    for (name, _, worked) in all() {
        for step in &worked.steps {
            let check = step.check.as_deref().unwrap_or_default();
            for told in ["Check the thickness", "the outline", "Check it in three places"] {
                assert!(check.matches(told).count() <= 1, "{name}: {check}");
            }
        }
    }
}

/// How a part swells or grows is wanted in the hand; what to hold it by is told at each step anyway.
#[test]
fn of_the_notes_on_a_plan_those_stand_at_their_step_that_the_hand_needs() {
    let told = |file: &str| {
        let worked = worked(&demo(file));
        worked.steps.into_iter().flat_map(|step| step.part_notes).collect::<Vec<_>>().join(" | ")
    };
    let hoe = told("draw-hoe.plan.json");
    assert!(hoe.contains("comes 11 % fuller on the way") && !hoe.contains("No hold is planned"), "{hoe}");
    assert!(told("lantern-arm.plan.json").contains("“wall plate” grows to about"));
    assert!(!told("weeding-fork.plan.json").contains("marks are rounded to"));
}
