//! What tolerances make of marks and lengths, in the shop's figures.

use super::words::TableRow;
use fh_core::balance::{Between, SegmentSpread};
use fh_core::plan::Plan;

/// Adds to a row between what figures its mark, its step and its forged length may come out.
pub(super) fn add_tolerances(row: &mut TableRow, plan: &Plan, spread: &SegmentSpread) {
    let words = |between: Between| between.words(plan.units.marks);
    row.total_between = words(spread.mark_end).unwrap_or_default();
    row.step_between = words(spread.stock_length).unwrap_or_default();
    row.becomes.extend(words(spread.forged_length).map(|words| format!("forged length {words}")));
}
