//! Tool room: two corners or shoulders closer together than the tool that works between them.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity, is_over, is_under};
use crate::metal::{Shape, in_mm};
use crate::plan::Limits;

pub(super) const CHECK: Check = Check {
    ids: &["tool-room"],
    summary: "Corners and shoulders closer together than the tool that works between them.",
    run,
};

const RULE: Rule = Rule {
    id: "tool-room",
    severity: Severity::Warning,
    reason: "The hammer and the anvil's edge do not fit between, and the second step spoils the first.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    let room = scene.limit(scene.plan.limits.tool_room.as_ref(), Limits::TOOL_ROOM);
    let mut last: Option<(usize, f64)> = None;
    for seen in scene.segments() {
        if !matches!(seen.shape, Shape::Shoulder { .. } | Shape::Peak { .. }) {
            continue;
        }
        let start = in_mm(seen.balance.forged_start);
        if let Some((before, end)) = last
            && is_under(start - end, room)
        {
            let gap = (start - end).max(0.0);
            let [apart, needed] = scene.apart([gap, room]);
            let message = format!(
                "“{}” and “{}” are {apart} apart on the forged bar; a tool needs {needed}.",
                scene.name(before),
                scene.name(seen.at)
            );
            let remedy = if is_over(gap, 0.0) {
                format!("Work between them with a fuller of {apart} or narrower, or move them apart.")
            } else {
                "Move them apart, or make them in one step.".to_owned()
            };
            found.push(RULE.at(scene.place(Some(seen.at)), message, remedy));
        }
        last = Some((seen.at, start + in_mm(seen.balance.forged_length)));
    }
}
