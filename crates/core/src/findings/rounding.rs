//! Rounding: a segment smaller on the bar than the rounding of the marks.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity, is_under};
use crate::metal::in_mm;

pub(super) const CHECK: Check =
    Check { ids: &["below-rounding"], summary: "Segments shorter on the bar than the rounding of the marks.", run };

const RULE: Rule = Rule {
    id: "below-rounding",
    severity: Severity::Note,
    reason: "Two marks fall in the same place, or the rounding is larger than the part.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    let step = scene.plan.units.marks;
    for seen in scene.segments() {
        let length = in_mm(seen.balance.stock_length);
        if is_under(length, step.step_mm()) {
            let message = format!(
                "“{}” takes {} of bar; marks are rounded to {}.",
                scene.name(seen.at),
                scene.millimeters(length),
                step.text()
            );
            let remedy = "Round the marks more finely, or join it to its neighbour.";
            found.push(RULE.at(scene.place(Some(seen.at)), message, remedy.to_owned()));
        }
    }
}
