//! Sizes in fractions that no rule is divided in.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity};
use crate::forms;
use crate::plan::{Form, Segment};
use fh_measure::WrittenLength;
use std::borrow::Cow;

pub(super) const CHECK: Check =
    Check { ids: &["odd-fraction"], summary: "Sizes in fractions that no rule is divided in.", run };

const RULE: Rule = Rule {
    id: "odd-fraction",
    severity: Severity::Note,
    reason: "A size that no rule shows is more often a slip in typing than meant.",
};

/// What to do about one.
const REMEDY: &str = "Look at it again; write it in halves, quarters, eighths and so on, or as a decimal.";

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    let mut look = |at: Option<usize>, length: &WrittenLength| {
        if let Some(fraction) = length.odd_fraction() {
            // A name is looked up only where it is said.
            let name = at.map_or_else(|| "The bar".to_owned(), |at| format!("“{}”", scene.name(at)));
            let message = format!("{name} has a size of {}: no rule shows {fraction}.", length.text());
            found.push(RULE.at(scene.place(at), message, REMEDY.to_owned()));
        }
    };
    if scene.is_bar() {
        scene.bar.stock.lengths(&mut |length| look(None, length));
        scene.bar.length.iter().for_each(|length| look(None, length));
    }
    for (at, segment) in scene.written() {
        without_branches(segment).lengths(&mut |length| look(Some(at), length));
    }
}

/// A segment without those of its branches, which are looked at on their own.
fn without_branches(segment: &Segment) -> Cow<'_, Segment> {
    let mut own = Cow::Borrowed(segment);
    if matches!(segment.form, Form::Split(_))
        && let Form::Split(forms::Split { branches, .. }) = &mut own.to_mut().form
    {
        branches.clear();
    }
    own
}
