//! Blocks that are left open.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity};
use crate::metal::in_mm;
use crate::plan::Form;

pub(super) const CHECK: Check = Check { ids: &["not-settled"], summary: "Blocks whose shape is not settled yet.", run };

const RULE: Rule = Rule {
    id: "not-settled",
    severity: Severity::Note,
    reason: "Nothing is worked out for it but how much metal it is.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments().filter(|seen| matches!(seen.segment.form, Form::Open(_))) {
        let bar = scene.millimeters(in_mm(seen.balance.stock_length));
        let message = format!("“{}” is left open: {bar} of bar, not settled.", scene.name(seen.at));
        let remedy = "Choose what it becomes, once you know.".to_owned();
        found.push(RULE.at(scene.place(Some(seen.at)), message, remedy));
    }
}
