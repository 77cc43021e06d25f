//! What tolerances make of marks and lengths, in the shop's figures.

use super::words::TableRow;
use fh_core::balance::{Between, SegmentSpread};
use fh_core::plan::Plan;
use uom::si::length::millimeter;

/// Between what lengths something may come out: `1 13/16 to 1 15/16 in`.
pub(super) fn between_words(plan: &Plan, between: Between) -> String {
    plan.units.marks.between_text(between.lowest.get::<millimeter>(), between.highest.get::<millimeter>())
}

/// Adds to a row between what figures its mark, its step and its forged length may come out.
pub(super) fn add_tolerances(row: &mut TableRow, plan: &Plan, spread: &SegmentSpread) {
    let words = |between: Between| if between.is_range() { between_words(plan, between) } else { String::new() };
    row.total_between = words(spread.mark_end);
    row.step_between = words(spread.stock_length);
    if spread.forged_length.is_range() {
        row.becomes.push(format!("forged length {}", words(spread.forged_length)));
    }
}
