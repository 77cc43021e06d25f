//! One segment as it is drawn.

use super::cuts::Cuts;
use super::details::Details;
use super::per_view::PerView;
use fh_core::balance::LaidRepeat;
use fh_core::findings::Severity;
use fh_measure::RoundedLength;

/// One segment as it is drawn.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::canvas) struct Block {
    /// What the smith calls it.
    pub(in crate::canvas) name: String,
    /// Its name with its number where others are called the same.
    pub(in crate::canvas) unique_name: String,
    /// Its number: `4`, or `4.2.1` within the second branch of the split at 4.
    pub(in crate::canvas) path: String,
    /// Its lane: 0 for the bar itself.
    pub(in crate::canvas) lane: usize,
    /// From where to where it lies on the starting bar, in mm.
    pub(in crate::canvas) stock: [f64; 2],
    /// From where to where it lies on the forged bar, in mm.
    pub(in crate::canvas) forged: [f64; 2],
    /// From where to where it is drawn on the forged bar, in mm: elsewhere only in a slit that is opened.
    pub(in crate::canvas) drawn: [f64; 2],
    /// What it becomes, with every size as it comes out.
    pub(in crate::canvas) becomes: String,
    /// The mark at its end.
    pub(in crate::canvas) mark: RoundedLength,
    /// The same, not rounded, in mm from the datum end.
    pub(in crate::canvas) mark_mm: f64,
    /// The mark at its end where the smith fixed it.
    pub(in crate::canvas) fixed: Option<Fixed>,
    /// The holes and the slit that are laid off in it, in words.
    pub(in crate::canvas) laid: Vec<String>,
    /// Whether it is no part of the finished piece.
    pub(in crate::canvas) hatched: bool,
    /// Whether its sizes are settled.
    pub(in crate::canvas) settled: bool,
    /// The worst finding that speaks of it.
    pub(in crate::canvas) severity: Option<Severity>,
    /// Its silhouettes on the forged bar, in mm.
    pub(in crate::canvas) outlines: PerView<Vec<[f64; 2]>>,
    /// Its rows of marks.
    pub(in crate::canvas) repeats: Vec<LaidRepeat>,
    /// The cuts of a split.
    pub(in crate::canvas) cuts: Option<Cuts>,
    /// What tells its form or its bend from others of the same outline.
    pub(in crate::canvas) details: Details,
}

/// A mark that the smith fixed.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::canvas) struct Fixed {
    /// Where it lies, in mm from the datum end.
    pub(in crate::canvas) mm: f64,
    /// It as it was typed, without the unit of the plan.
    pub(in crate::canvas) text: String,
}

impl Block {
    /// From where to where it lies on the starting bar, up to its mark where that is fixed, in mm.
    pub(in crate::canvas) fn to_mark(&self) -> [f64; 2] {
        [self.stock[0], self.fixed.as_ref().map_or(self.stock[1], |fixed| fixed.mm)]
    }

    /// Where a place on the forged bar is drawn, both in mm.
    pub(in crate::canvas) fn drawn_at(&self, forged: f64) -> f64 {
        let [start, end] = self.forged;
        let scale = if end > start { (self.drawn[1] - self.drawn[0]) / (end - start) } else { 1.0 };
        self.drawn[0] + (forged - start) * scale
    }
}
