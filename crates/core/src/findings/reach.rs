//! Reach: a long bar whose last mark lies farther from the end than one heat covers.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity};
use crate::metal::in_mm;
use crate::plan::{Form, Limits};

pub(super) const CHECK: Check = Check {
    ids: &["beyond-one-heat"],
    summary: "Long bars whose farthest mark lies beyond what one heat covers.",
    run,
};

const RULE: Rule = Rule {
    id: "beyond-one-heat",
    severity: Severity::Note,
    reason: "The fire heats a limited length; the rest is cold when its turn comes.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    if !scene.is_bar() {
        return;
    }
    let reach = scene.limit(scene.plan.limits.reach.as_ref(), Limits::REACH);
    let mut worked = scene.segments().filter(|seen| !seen.segment.form.is_as_stock() || seen.segment.bend.is_some());
    // Where the hold is at the datum, the free end is the other one, and the first worked part is the farthest from it.
    let held_at_datum = matches!(scene.bar.segments.first().map(|first| &first.form), Some(Form::Hold { .. }));
    let farthest = if held_at_datum { worked.next() } else { worked.last() };
    let Some(seen) = farthest else { return };
    let from_free_end = if held_at_datum {
        in_mm(scene.balance.last_mark() - seen.balance.mark_start)
    } else {
        in_mm(seen.balance.mark_end)
    };
    if from_free_end > reach {
        let message = format!(
            "The mark nearest the tongs, at “{}”, is {} from the free end; one heat covers about {}.",
            scene.name(seen.at),
            scene.millimeters(from_free_end),
            scene.millimeters(reach)
        );
        let remedy = "Plan more heats along the bar, and mark each part again from a shoulder if the marks burn off.";
        found.push(RULE.at(scene.place(Some(seen.at)), message, remedy.to_owned()));
    }
}
