//! What is laid off on the cold bar besides the marks: on which side of it, the middles of holes, and the lines of slits.

use super::{BarBalance, SegmentBalance};
use crate::metal::{FreeEnd, RootSize, Shape, View, in_mm, mm};
use crate::plan::Chain;
use fh_measure::{RoundedLength, Rounding};
use std::f64::consts::FRAC_1_SQRT_2;
use uom::si::f64::Length;

/// Sides nearer to each other than this are equally wide, in mm.
const ALIKE_MM: f64 = 1e-6;

/// The middle of a hole, as it is laid off on the cold bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoleMark {
    /// The segment that it is in, counted through the bar.
    pub segment: usize,
    /// How far its middle lies from the datum end.
    pub middle: Length,
    /// The same, rounded for the shop.
    pub shop: RoundedLength,
    /// The diameter of a hole at the end of a slit; none of a boss's hole.
    pub root: Option<Length>,
}

/// The line of a slit, as it is laid off on the cold bar.
#[derive(Clone, Debug, PartialEq)]
pub struct SlitMark {
    /// The split that it belongs to, counted through the bar.
    pub segment: usize,
    /// From where to where it is cut.
    pub ends: [SlitEnd; 2],
    /// How far each of its cuts lies from the first branch's edge.
    pub cuts: Vec<Length>,
    /// The side of that edge, in radians around the bar from up by way of toward-you.
    pub side: f64,
}

/// One end of a slit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlitEnd {
    /// How far it is from the datum end, rounded for the shop: the middle of its hole where it has one, a mark where not.
    pub shop: RoundedLength,
    /// Whether it runs into a hole.
    pub is_hole: bool,
}

impl BarBalance {
    /// How the bar is seen for marking, so that the side that is punched is in sight: its wider side. Of a bar as wide as it is
    /// thick the top, where holes are made, unless its slits are cut from the near side.
    pub fn marked_view(&self) -> View {
        let [side, top] = [View::Side, View::Top].map(|view| self.stock_section.seen_mm(view));
        if (side - top).abs() > ALIKE_MM {
            return if side > top { View::Side } else { View::Top };
        }
        let first = self.segments.iter().find_map(|segment| match &segment.shape {
            Some(Shape::Split(split)) => Some(split.side),
            _ => None,
        });
        // Branches over each other: the cut is seen from the side.
        if first.is_some_and(|side| side.cos().abs() > side.sin().abs()) { View::Side } else { View::Top }
    }

    /// The length to cut, rounded up: metal cannot be put back.
    pub fn cut_length_shop(&self, marks: Rounding) -> RoundedLength {
        marks.round_up(in_mm(self.stock_length))
    }

    /// The middles of all holes, in the order of their segments; of a slit with a hole at both ends the one toward the datum
    /// first.
    pub fn hole_marks(&self) -> Vec<HoleMark> {
        self.segments.iter().enumerate().flat_map(|(index, segment)| holes_of(index, segment)).collect()
    }

    /// The lines of all slits, in the order of their splits.
    pub fn slit_marks(&self) -> Vec<SlitMark> {
        let slit = |(index, segment): (usize, &SegmentBalance)| {
            let Some(Shape::Split(split)) = &segment.shape else { return None };
            let at_mark = self.block_shop(index)?.map(|shop| SlitEnd { shop, is_hole: false });
            let at_hole = |hole: &HoleMark| SlitEnd { shop: hole.shop, is_hole: true };
            let holes = holes_of(index, segment);
            let ends = match (split.free, holes.as_slice()) {
                (FreeEnd::Datum, [hole, ..]) => [at_mark[0], at_hole(hole)],
                (FreeEnd::Far, [hole, ..]) => [at_hole(hole), at_mark[1]],
                (FreeEnd::Neither, [first, last, ..]) => [at_hole(first), at_hole(last)],
                _ => at_mark,
            };
            Some(SlitMark { segment: index, ends, cuts: split.cuts.clone(), side: split.side })
        };
        self.segments.iter().enumerate().filter_map(slit).collect()
    }

    /// From which mark to which a segment reaches, rounded for the shop. A branch ends where its slit does: there the slit's
    /// own mark stands, though a root hole leaves the branch less metal than that length.
    pub fn block_shop(&self, index: usize) -> Option<[RoundedLength; 2]> {
        self.block(index, &|segment| [segment.mark_start_shop, segment.mark_end_shop])
    }

    /// The same, not rounded.
    pub fn block_exact(&self, index: usize) -> Option<[Length; 2]> {
        self.block(index, &|segment| [segment.mark_start, segment.mark_end])
    }

    fn block<T: Copy>(&self, index: usize, ends: &dyn Fn(&SegmentBalance) -> [T; 2]) -> Option<[T; 2]> {
        let segment = self.segments.get(index)?;
        let own = ends(segment);
        let Chain::Branch { split, .. } = segment.chain else { return Some(own) };
        let Some(Shape::Split(size)) = &self.segments.get(split)?.shape else { return Some(own) };
        // A split stands before its branches, so this ends.
        let around = if split < index { self.block(split, ends)? } else { own };
        let mut others = self.segments.iter().enumerate().filter(|(_, other)| other.chain == segment.chain);
        let (first, last) = (others.next().map(|(at, _)| at), others.next_back().map(|(at, _)| at));
        let is_first = first == Some(index);
        let is_last = last.unwrap_or(index) == index;
        let start = if is_first && size.free != FreeEnd::Datum { around[0] } else { own[0] };
        let end = if is_last && size.free != FreeEnd::Far { around[1] } else { own[1] };
        Some([start, end])
    }
}

/// The middles of the holes of one segment: of its boss, or at the ends of its slit.
fn holes_of(index: usize, segment: &SegmentBalance) -> Vec<HoleMark> {
    let marks = segment.mark_end_shop.rounding();
    let hole =
        |middle_mm: f64, root| HoleMark { segment: index, middle: mm(middle_mm), shop: marks.round(middle_mm), root };
    let [start, end] = [segment.mark_start, segment.mark_end].map(in_mm);
    match &segment.shape {
        Some(Shape::Split(split)) => {
            let Some(RootSize::Hole(diameter)) = split.root else { return Vec::new() };
            let radius = in_mm(diameter) / 2.0;
            let at_start = hole(start + radius, Some(diameter));
            let at_end = hole(end - radius, Some(diameter));
            match split.free {
                FreeEnd::Datum => vec![at_end],
                FreeEnd::Far => vec![at_start],
                FreeEnd::Neither => vec![at_start, at_end],
            }
        }
        _ => segment.hole_share().map(|share| hole(start + (end - start) * share, None)).into_iter().collect(),
    }
}

impl SegmentBalance {
    /// Where the middle of a boss's hole lies along it, as a share of its length from the datum side: as far along on the bar as
    /// on the boss. None without a hole, or of one that has no place.
    pub fn hole_share(&self) -> Option<f64> {
        let Some(shape @ Shape::Hole { at, .. }) = &self.shape else { return None };
        let share = in_mm(*at) / in_mm(shape.length());
        let share = if self.reversed { 1.0 - share } else { share };
        share.is_finite().then_some(share)
    }
}

impl SlitMark {
    /// Whether its cuts are in sight as the bar is marked; otherwise they are in an edge.
    pub fn is_seen(&self, view: View) -> bool {
        self.upward(view).abs() > FRAC_1_SQRT_2
    }

    /// How far up on the picture the first branch's side points, from -1 to 1: seen from the side up is up, seen from above it
    /// is away from the smith.
    pub fn upward(&self, view: View) -> f64 {
        match view {
            View::Side => self.side.cos(),
            View::Top => -self.side.sin(),
        }
    }
}
