//! The rows of marks along a segment, for the table: how many at what step, where the first one is, and every place.

use fh_core::balance::{BarBalance, laid_repeats};
use fh_core::describe::{repeat_count_words, repeat_first_words, repeat_places_words, segment_end_words};
use fh_core::plan::{Bar, PlanUnit, Segment};

/// Two lines for each row of marks that fits on a segment.
pub(super) fn repeat_lines(
    unit: PlanUnit,
    bar: &Bar,
    worked: &BarBalance,
    at: usize,
    segment: &Segment,
) -> Vec<String> {
    let Some(balance) = worked.segments.get(at) else { return Vec::new() };
    let ends = segment_end_words(bar, worked, at);
    let mut lines = Vec::new();
    for laid in laid_repeats(segment, balance) {
        let count = repeat_count_words(&laid, unit);
        if laid.places.is_empty() {
            lines.push(format!("{}: {count}", laid.what));
            continue;
        }
        lines.push(format!("{}: {count}, {}", laid.what, repeat_first_words(&laid, unit, ends)));
        let middles = if laid.width.is_some() { "middles at" } else { "at" };
        lines.push(format!("{middles} {} from {}, forged", repeat_places_words(&laid, unit), ends[0]));
    }
    lines
}
