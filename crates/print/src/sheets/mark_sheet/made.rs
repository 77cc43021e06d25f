//! What the table tells of a block beside its form and its bend: where the tool is set, and by which rule.

use fh_core::balance::SegmentBalance;
use fh_core::describe::fine_length;
use fh_core::forms;
use fh_core::metal::{Bent, BranchSize};
use fh_core::plan::{Form, Plan, Segment};
use uom::si::f64::Length;

/// Lines for twists and collars; none for other blocks.
pub(super) fn made_lines(plan: &Plan, segment: &Segment, balance: &SegmentBalance) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(Bent::Twist { .. }) = balance.bent {
        let [from, to] = [balance.mark_start_shop, balance.mark_end_shop].map(|mark| mark.text());
        lines.push(format!("mark both ends of the twist, {from} and {to}, so that they can be seen hot"));
    }
    if let Form::Collar(forms::Collar { rule, .. }) = &segment.form {
        let rule = rule.or(plan.practice.collar).unwrap_or(fh_core::plan::CollarRule::Butted);
        lines.push(format!("length by the rule {}", rule.name()));
    }
    lines
}

/// What a branch is as cut, and as forged: `10 mm wide as cut, 126 mm forged`.
pub(super) fn branch_words(plan: &Plan, branch: &BranchSize) -> String {
    format!("{} as cut, {} forged", size_words(plan, branch.raw_width), size_words(plan, branch.forged_length))
}

/// A size that a tool is set to, to the fineness that sizes are told in.
pub(super) fn size_words(plan: &Plan, size: Length) -> String {
    fine_length(size, plan.units.length)
}
