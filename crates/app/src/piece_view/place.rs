//! A part of the piece: its bar, its place on it, and its name.

use fh_core::describe::segment_name;
use fh_core::plan::{Plan, Segment};
use std::ops::Range;

/// What a segment is called.
pub(super) fn name_of(plan: &Plan, (bar, segment): Place) -> String {
    plan.bars.get(bar).map_or_else(String::new, |bar| segment_name(bar, segment))
}

/// A segment of the piece: its bar, and its place on it.
pub(super) type Place = (usize, usize);

/// A segment with those of its branches.
#[derive(Clone, PartialEq)]
pub(super) struct Whole {
    bar: usize,
    segments: Range<usize>,
}

impl Whole {
    pub(super) fn new(plan: &Plan, (bar, segment): Place) -> Self {
        let count = plan.segment(bar, segment).map_or(1, Segment::count);
        Self { bar, segments: segment..segment + count }
    }

    pub(super) fn holds(&self, (bar, segment): Place) -> bool {
        bar == self.bar && self.segments.contains(&segment)
    }
}
