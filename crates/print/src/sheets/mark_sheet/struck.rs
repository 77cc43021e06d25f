//! What becomes of a block, and how the mark at its end is struck.

use super::words::{Fate, MarkKind};
use fh_core::plan::{Form, Segment};

/// What becomes of a block.
pub(super) fn fate(segment: &Segment) -> Fate {
    match segment.form {
        Form::Trim(_) => Fate::CutAway,
        Form::Hold(_) => Fate::Held,
        Form::Open(_) => Fate::Open,
        _ => Fate::Stays,
    }
}

/// How the mark at the end of a segment is struck (common practice, no source): the bar's end is cut now; what is
/// trimmed or held is cut off later; a set-down has an edge; anything else is a punch mark, which is seen when hot.
pub(super) fn mark_kind(chain: &[Segment], place: usize) -> MarkKind {
    let (before, after) = (chain.get(place), chain.get(place + 1));
    let beside = |test: fn(&Segment) -> bool| before.is_some_and(test) || after.is_some_and(test);
    if after.is_none() {
        MarkKind::Cut
    } else if beside(|segment| matches!(fate(segment), Fate::CutAway | Fate::Held)) {
        MarkKind::CutLater
    } else if beside(|segment| matches!(segment.form, Form::Shoulder(_))) {
        MarkKind::SetDownEdge
    } else {
        MarkKind::CentrePunch
    }
}
