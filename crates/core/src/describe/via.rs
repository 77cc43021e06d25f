//! The shapes on the way in words.

use super::{bend_words, made_words};
use crate::balance::{SegmentBalance, as_by_then};
use crate::plan::{PlanUnit, Segment};

/// A shape that a segment has on the way, with its sizes as they come out: `drawn 45.5 mm to 14 mm × 6 mm`, `curve 60°, …`.
///
/// None where there is no such shape. A form that is no other than that of the shape before it is left out.
pub fn via_words(segment: &Segment, balance: &SegmentBalance, to: usize, unit: PlanUnit) -> Option<String> {
    let (own, then) = as_by_then(segment, balance, to, unit)?;
    let form = segment.via.get(to)?.form.as_ref().map(|_| made_words(&own, &then, unit).form);
    let bend = bend_words(&own, &then.derived);
    Some(form.into_iter().chain(bend).collect::<Vec<_>>().join(", then "))
}
