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
    let reach = scene.limit(scene.plan.limits.reach.as_ref(), Limits::REACH);
    let forged = |form: &Form| !matches!(form, Form::Plain { .. } | Form::Trim { .. } | Form::Hold { .. });
    let Some(last) = scene.segments().filter(|seen| forged(&seen.segment.form) || seen.segment.bend.is_some()).last()
    else {
        return;
    };
    let end = in_mm(last.balance.mark_end);
    if end > reach {
        let message = format!(
            "The mark nearest the tongs, at the end of “{}”, is {} from the datum end; one heat covers about {}.",
            scene.name(last.at),
            scene.millimeters(end),
            scene.millimeters(reach)
        );
        let remedy = "Plan more heats along the bar, and mark each part again from a shoulder if the marks burn off.";
        found.push(RULE.at(scene.place(Some(last.at)), message, remedy.to_owned()));
    }
}
