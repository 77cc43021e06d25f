//! Hold: enough bar to hold after parting off.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity, is_under};
use crate::metal::in_mm;
use crate::plan::{Form, Limits};

pub(super) const CHECK: Check = Check {
    ids: &["hold-too-short", "nothing-to-hold"],
    summary: "Whether there is enough bar to hold while the rest is forged.",
    run,
};

const SHORT: Rule = Rule {
    id: "hold-too-short",
    severity: Severity::Warning,
    reason: "Tongs slip on a short end, and the hand comes too near the heat.",
};

const NOTHING: Rule = Rule {
    id: "nothing-to-hold",
    severity: Severity::Note,
    reason: "What is held while the rest is forged is a part that still has to be forged itself.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    if !scene.is_bar() {
        return;
    }
    let least = scene.limit(scene.plan.limits.hold.as_ref(), Limits::HOLD);
    let length_of = |holds: fn(&Form) -> bool| {
        scene
            .segments()
            .filter(|seen| holds(&seen.segment.form))
            .map(|seen| (in_mm(seen.balance.stock_length), seen.at))
            .fold(None, |longest: Option<(f64, usize)>, next| match longest {
                Some(longest) if longest.0 >= next.0 => Some(longest),
                _ => Some(next),
            })
    };
    let remedy = |then: &str| format!("Leave {} or more to hold, {then}.", scene.millimeters(least));
    let plain = length_of(|form| matches!(form, Form::Plain(_))).map_or(0.0, |(length, _)| length);
    // What is left over of a bar already cut can be held as well.
    let left_over = scene.bar.length.as_ref().map_or(0.0, |bar| bar.mm() - in_mm(scene.balance.last_mark()));
    let plain = plain.max(left_over);
    match length_of(|form| matches!(form, Form::Hold(_))) {
        Some((hold, at)) if is_under(hold, least) && is_under(plain, least) => {
            let [left, enough] = scene.apart([hold, least]);
            let message = format!("Only {left} is left to hold; {enough} is the least.");
            found.push(SHORT.at(scene.place(Some(at)), message, remedy("or cut it off later")));
        }
        None if is_under(plain, least) && !scene.bar.segments.is_empty() => {
            let message = format!("No hold is planned, and no plain part is as long as {}.", scene.millimeters(least));
            found.push(NOTHING.at(scene.place(None), message, remedy("and cut it off last")));
        }
        _ => {}
    }
}
