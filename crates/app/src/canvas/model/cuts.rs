//! The cuts of a split on the starting bar: where they stand, how far they run, and how their ends are made.

use super::lanes::{Lane, cut_view};
use super::per_view::in_mm;
use fh_core::balance::SegmentBalance;
use fh_core::metal::{FreeEnd, RootSize, Shape as Metal, SplitSize, View};

/// The cuts of one split, in mm.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::canvas) struct Cuts {
    /// The side from which they are seen as lines.
    pub(in crate::canvas) view: View,
    /// From where to where they run.
    pub(in crate::canvas) slit: [f64; 2],
    /// How far up they stand, as seen.
    pub(in crate::canvas) ups: Vec<f64>,
    /// Whether each end of the slit is in the bar.
    pub(in crate::canvas) closed: [bool; 2],
    pub(in crate::canvas) root: Option<RootSize>,
}

impl Cuts {
    /// Those of a split; none for other segments.
    pub(in crate::canvas) fn new(balance: &SegmentBalance, lane: &Lane) -> Option<Self> {
        let Some(Metal::Split(size)) = &balance.shape else { return None };
        let view = cut_view(Some(size));
        let (from, taken) = (in_mm(balance.mark_start), in_mm(balance.stock_length));
        let whole = in_mm(size.stock_length);
        let stretched = if whole > 0.0 { taken / whole } else { 1.0 };
        let root = taken - in_mm(size.slit) * stretched;
        let (before, after) = match size.opens() {
            FreeEnd::Datum => (0.0, root),
            FreeEnd::Far => (root, 0.0),
            FreeEnd::Neither => (root / 2.0, root / 2.0),
        };
        Some(Self {
            view,
            slit: [from + before, from + taken - after],
            ups: ups(size, *lane.bar.of(view), view),
            closed: [size.opens() != FreeEnd::Datum, size.opens() != FreeEnd::Far],
            root: size.root,
        })
    }
}

/// How far up the cuts stand within a lane.
fn ups(size: &SplitSize, [lower, upper]: [f64; 2], view: View) -> Vec<f64> {
    let whole: f64 = size.branches.iter().map(|branch| in_mm(branch.raw_width)).sum();
    let from_upper = match view {
        View::Side => size.side.cos() > 0.0,
        View::Top => size.side.sin() < 0.0,
    };
    let up = |cut: f64| {
        let off = (upper - lower) * cut / whole;
        if from_upper { upper - off } else { lower + off }
    };
    size.cuts.iter().map(|cut| up(in_mm(*cut))).filter(|up| up.is_finite()).collect()
}
