//! A block: the bar from one fixed mark, or from the datum, to the next.

use super::SegmentBalance;
use crate::metal::{in_mm, mm, mm3};
use crate::plan::{Bar, Chain};
use std::ops::Range;
use uom::si::f64::{Length, Volume};

/// The bar between two marks that stay where they are, and what its parts make of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Block {
    /// The places of its segments on the bar itself, counted from 0.
    pub places: Range<usize>,
    /// Where it starts on the starting bar.
    pub mark_start: Length,
    /// Where it ends: at a fixed mark or at the end of a bar that is cut; else where its last part ends.
    pub mark_end: Length,
    /// Whether its start and its end stay where they are, whatever its parts take; the datum end does.
    pub is_fixed: [bool; 2],
    /// The segments that give to fill it, counted through the bar.
    pub gives: Vec<usize>,
    /// The factor on each size that gives; none where nothing gives or none of their sizes fills it.
    pub factor: Option<f64>,
    /// How much more bar it has than its parts take; below 0 where it is short. 0 where it is filled.
    pub over_length: Length,
    /// The same as metal of the bar.
    pub over: Volume,
}

impl Block {
    /// Whether what is over or short is more than half a step of the marks, in mm.
    pub fn is_uneven(&self, step_mm: f64) -> bool {
        // A sum that is half a step to the last figures is no more than half a step.
        in_mm(self.over_length).abs() > step_mm / 2.0 * (1.0 + 1e-9)
    }
}

/// What fills a block: the segments that give, and by what factor.
#[derive(Clone, Debug, Default)]
pub(crate) struct Fill {
    /// The segments, counted through the bar.
    pub(crate) gives: Vec<usize>,
    /// The factor that fills it.
    pub(crate) factor: Option<f64>,
    /// The factor as far as its parts give, where that does not fill it.
    pub(super) limit: Option<f64>,
}

/// The blocks of a bar whose segments are laid off.
pub(super) fn blocks(bar: &Bar, segments: &[SegmentBalance], fills: Vec<Fill>, stock_area: f64) -> Vec<Block> {
    let whole: Vec<&SegmentBalance> = segments.iter().filter(|segment| segment.chain == Chain::Bar).collect();
    let mut fills = fills.into_iter();
    let mut start = mm(0.0);
    let mut is_fixed = true;
    let mut all = Vec::new();
    for places in bar.block_places() {
        let Some(last) = places.end.checked_sub(1).and_then(|last| whole.get(last)) else { continue };
        let fixed = last.fixed_mark.as_ref().map(|fixed| fixed.at);
        let is_last = places.end == bar.segments.len();
        let cut = bar.length.as_ref().filter(|_| is_last).map(fh_measure::WrittenLength::length);
        let end = fixed.or(cut);
        let fill = fills.next().unwrap_or_default();
        let over = end.map_or(0.0, |end| in_mm(end - last.mark_end));
        let over = if fill.factor.is_some() { 0.0 } else { over };
        let mark_end = end.unwrap_or(last.mark_end);
        all.push(Block {
            places,
            mark_start: start,
            mark_end,
            is_fixed: [is_fixed, end.is_some()],
            gives: fill.gives,
            factor: fill.factor,
            over_length: mm(over),
            over: mm3(over * stock_area),
        });
        start = mark_end;
        is_fixed = end.is_some();
    }
    all
}
