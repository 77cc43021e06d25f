//! A bar that is already cut: too short for the plan, or with some left over.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity};
use crate::metal::in_mm;

pub(super) const CHECK: Check = Check {
    ids: &["bar-too-short", "bar-left-over"],
    summary: "Whether a bar that is already cut is long enough, and what is left of it.",
    run,
};

const SHORT: Rule = Rule {
    id: "bar-too-short",
    severity: Severity::Stop,
    reason: "The last part would come up short, and nothing can be put back.",
};

const LEFT_OVER: Rule =
    Rule { id: "bar-left-over", severity: Severity::Note, reason: "What is left over belongs to no part." };

/// Less than this cannot be said in the words of a finding, nor cut in a shop.
const NOTHING_MM: f64 = 0.05;

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    if !scene.is_bar() {
        return;
    }
    let Some(length) = &scene.bar.length else { return };
    let ends_with_a_mark = scene.bar.segments.last().is_some_and(|last| last.ends_at.is_some());
    if scene.bar.has_fixed_marks() && !ends_with_a_mark {
        // The last block ends where the bar does: what it has over or is short of is told of it.
        return;
    }
    let needed = in_mm(scene.balance.last_mark());
    let over = needed - length.mm();
    if over > NOTHING_MM {
        let [needed, long] = scene.apart([needed, length.mm()]);
        let over = scene.millimeters_or_more(over);
        let message = format!("The plan needs {needed} of bar; this bar is {long} long: {over} too short.");
        let remedy = "Take a longer bar, shorten a part, or let one part take up the difference.";
        found.push(SHORT.at(scene.place(None), message, remedy.to_owned()));
    } else if over < -NOTHING_MM {
        let message = format!("{} of the bar is left over.", scene.millimeters(-over));
        let remedy = "Name a part that takes it up, or add it as a hold or a trim.";
        found.push(LEFT_OVER.at(scene.place(None), message, remedy.to_owned()));
    }
}
