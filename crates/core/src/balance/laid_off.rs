//! What is laid off on the cold bar besides the marks: on which side of it, the middles of holes, and the lines of slits.

use super::{BarBalance, SegmentBalance};
use crate::metal::{FreeEnd, RootSize, Shape, SplitSize, View, in_mm, mm};
use crate::plan::{Chain, SizeName};
use fh_measure::{RoundedLength, Rounding};
use std::collections::HashMap;
use std::f64::consts::{FRAC_1_SQRT_2, FRAC_PI_2};
use uom::si::f64::Length;

/// Sides nearer to each other than this are equally wide, in mm.
const ALIKE_MM: f64 = 1e-6;

/// Marks nearer to each other than this cannot both be struck, in mm: common practice, no source.
pub const MARKS_APART_MM: f64 = 3.0;

/// What is laid off on a bar besides its marks, on the side that is in sight as it lies for marking.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidOff {
    /// How the bar is seen.
    pub view: View,
    /// For each segment the lower and the upper edge of the metal that it is marked on, in mm above the bar's middle as it is
    /// seen.
    pub bands_mm: Vec<[f64; 2]>,
    /// The middles of all holes, in the order of their segments; of a slit with a hole at both ends the one toward the datum
    /// first.
    pub holes: Vec<HoleMark>,
    /// The lines of all slits, in the order of their splits.
    pub slits: Vec<SlitMark>,
}

/// The middle of a hole.
#[derive(Clone, Debug, PartialEq)]
pub struct HoleMark {
    /// The segment that it is in, counted through the bar.
    pub segment: usize,
    /// How far its middle lies from the datum end.
    pub middle: Length,
    /// The same, rounded for the shop.
    pub shop: RoundedLength,
    /// How far it lies above the bar's middle as it is seen, in mm; one hole for each cut of a slit.
    pub across_mm: Vec<f64>,
    /// The diameter of a hole at the end of a slit; none of a boss's hole.
    pub root: Option<Length>,
    /// Whether its boss is forged after it is laid off, so that a punch mark would be hammered away.
    pub is_hammered: bool,
}

/// The line of a slit.
#[derive(Clone, Debug, PartialEq)]
pub struct SlitMark {
    /// The split that it belongs to, counted through the bar.
    pub segment: usize,
    /// From where to where it is cut.
    pub ends: [SlitEnd; 2],
    /// How far each of its cuts lies from the first branch's edge.
    pub cuts: Vec<Length>,
    /// How far each lies above the bar's middle as it is seen, in mm; one line in the middle where they are in an edge.
    pub across_mm: Vec<f64>,
    /// The side of the first branch's edge, in radians around the bar from up by way of toward-you.
    pub side: f64,
    /// Whether its cuts are in sight; otherwise they are in an edge.
    pub is_seen: bool,
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
    /// How the bar is seen as it lies for marking, the side that is punched in sight: its wider side. Of a bar as wide as it is
    /// thick the top, where holes are made, unless its first slit is cut from the near side.
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

    /// What is laid off besides the marks.
    pub fn laid_off(&self) -> LaidOff {
        let view = self.marked_view();
        let half = self.stock_section.seen_mm(view) / 2.0;
        let mut laid = LaidOff { view, bands_mm: Vec::new(), holes: Vec::new(), slits: Vec::new() };
        let mut chains: HashMap<Chain, [f64; 2]> = HashMap::from([(Chain::Bar, [-half, half])]);
        for (index, segment) in self.segments.iter().enumerate() {
            let band = chains.get(&segment.chain).copied().unwrap_or([-half, half]);
            laid.bands_mm.push(band);
            match &segment.shape {
                Some(Shape::Split(split)) => {
                    let line = CutLine::new(split, view, band);
                    let holes = root_holes(index, segment, split, &line.across_mm);
                    laid.slits.extend(self.slit_mark(index, split, &line, &holes));
                    laid.holes.extend(holes);
                    let own = line.bands(band, split.branches.len()).into_iter().enumerate();
                    chains.extend(own.map(|(branch, band)| (Chain::Branch { split: index, branch }, band)));
                }
                _ => laid.holes.extend(boss_hole(index, segment, band).map(|hole| {
                    let bar_mm = [self.stock_section.width(), self.stock_section.thickness()].map(in_mm);
                    let is_hammered = segment.is_forged_boss(bar_mm);
                    HoleMark { is_hammered, ..hole }
                })),
            }
        }
        laid
    }

    fn slit_mark(&self, index: usize, split: &SplitSize, line: &CutLine, holes: &[HoleMark]) -> Option<SlitMark> {
        let at_mark = self.block_shop(index)?.map(|shop| SlitEnd { shop, is_hole: false });
        let at_hole = |hole: &HoleMark| SlitEnd { shop: hole.shop, is_hole: true };
        let ends = match (split.opens(), holes) {
            (FreeEnd::Datum, [hole, ..]) => [at_mark[0], at_hole(hole)],
            (FreeEnd::Far, [hole, ..]) => [at_hole(hole), at_mark[1]],
            (FreeEnd::Neither, [first, last, ..]) => [at_hole(first), at_hole(last)],
            _ => at_mark,
        };
        Some(SlitMark {
            segment: index,
            ends,
            cuts: split.cuts.clone(),
            across_mm: line.across_mm.clone(),
            side: split.side,
            is_seen: line.is_seen,
        })
    }

    /// Whether the mark between two segments of the bar is struck. Of the two beside a short shoulder it is only that on its thick
    /// side, and of the two beside a short cut only that on the side of the piece: both cannot be.
    pub fn is_struck(&self, before: usize, after: usize) -> bool {
        !self.is_beside_shoulder(before, after) && !self.is_beside_cut(before, after)
    }

    /// Whether a mark is the one on the thin side of a short shoulder.
    fn is_beside_shoulder(&self, before: usize, after: usize) -> bool {
        let thin_side = |index: usize, is_end: bool| {
            let Some(segment) = self.segments.get(index) else { return false };
            let Some(Shape::Shoulder { from, to, .. }) = &segment.shape else { return false };
            let is_thin = if is_end { to.area() < from.area() } else { from.area() < to.area() };
            is_thin && in_mm(segment.stock_length) < MARKS_APART_MM
        };
        thin_side(before, true) || thin_side(after, false)
    }

    /// Whether a mark is the one beyond what a short cut takes away: that on the side of the piece is struck, and where the piece
    /// is on both sides that nearer to the datum.
    fn is_beside_cut(&self, before: usize, after: usize) -> bool {
        let is_away = |index: usize| self.segments.get(index).is_some_and(SegmentBalance::is_cut_away);
        let is_short = |index: usize| {
            is_away(index) && self.segments.get(index).is_some_and(|cut| in_mm(cut.stock_length) < MARKS_APART_MM)
        };
        // Asked of every mark at every step: the bar is gone through only beside a short cut.
        if !is_short(before) && !is_short(after) {
            return false;
        }
        let chain: Vec<usize> = self.whole().map(|(index, _)| index).collect();
        let place = |index: usize| chain.iter().position(|one| *one == index);
        let ahead = place(before).and_then(|at| chain.get(at.checked_sub(1)?)).copied();
        let beyond = place(after).and_then(|at| chain.get(at + 1)).copied();
        let at_its_end = is_short(before) && ahead.is_some_and(|ahead| !is_away(ahead) || is_away(after));
        let at_its_start = is_short(after) && is_away(before) && beyond.is_some_and(|beyond| !is_away(beyond));
        at_its_end || at_its_start
    }

    /// From which mark to which a segment reaches, rounded for the shop. A branch ends where its slit does: there the slit's
    /// own mark stands, though a root hole leaves the branch less metal than that length.
    pub fn block_shop(&self, index: usize) -> Option<[RoundedLength; 2]> {
        self.block(index, &|segment| [segment.mark_start_shop, segment.mark_end_shop])
    }

    /// The same, not rounded.
    pub fn block_exact(&self, index: usize) -> Option<[Length; 2]> {
        self.block(index, &|segment| [segment.mark_start, segment.end_on_bar()])
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
        let is_last = last.or(first) == Some(index);
        let start = if is_first && size.opens() != FreeEnd::Datum { around[0] } else { own[0] };
        let end = if is_last && size.opens() != FreeEnd::Far { around[1] } else { own[1] };
        Some([start, end])
    }
}

impl SegmentBalance {
    /// Whether nothing of it is in the finished piece: it is trimmed away, or left in the tongs.
    fn is_cut_away(&self) -> bool {
        self.finished_volume.value <= 0.0 && self.trimmed_volume.value > 0.0
    }

    /// Whether a boss is anything but the bar itself, so many mm wide and thick: pierced as it is, or opened by its drift.
    fn is_forged_boss(&self, bar_mm: [f64; 2]) -> bool {
        /// A difference of sizes that no hammer is lifted for, as a share: see `forms/forging.rs`.
        const ALIKE: f64 = 0.02;
        let Some(Shape::Hole { outline, thickness, hole, .. }) = &self.shape else { return false };
        let is_drifted = self.derived_length(SizeName::Slit).is_some();
        let before = if is_drifted { outline.width() - hole.width() } else { outline.width() };
        let is = |own: Length, bar: f64| (in_mm(own) / bar - 1.0).abs() < ALIKE;
        let is_wide = is(outline.width(), bar_mm[0]) || is(before, bar_mm[0]);
        self.chain != Chain::Bar || !(is_wide && is(*thickness, bar_mm[1]))
    }

    /// Where the middle of a boss's hole lies along it, as a share of its length from the datum side: as far along on the bar as
    /// on the boss. None without a hole.
    pub fn hole_share(&self) -> Option<f64> {
        let Some(shape @ Shape::Hole { at, .. }) = &self.shape else { return None };
        let share = in_mm(*at) / in_mm(shape.length());
        let share = if self.reversed { 1.0 - share } else { share };
        share.is_finite().then_some(share)
    }
}

fn hole(index: usize, segment: &SegmentBalance, middle_mm: f64, across_mm: Vec<f64>, root: Option<Length>) -> HoleMark {
    let shop = segment.mark_end_shop.rounding().round(middle_mm);
    HoleMark { segment: index, middle: mm(middle_mm), shop, across_mm, root, is_hammered: false }
}

/// The middle of a boss's hole.
fn boss_hole(index: usize, segment: &SegmentBalance, [low, high]: [f64; 2]) -> Option<HoleMark> {
    let middle = in_mm(segment.mark_start + segment.stock_length * segment.hole_share()?);
    Some(hole(index, segment, middle, vec![f64::midpoint(low, high)], None))
}

/// The middles of the holes at the ends of a slit. They reach as far as the mark: before it lies the branches' metal alone.
fn root_holes(index: usize, segment: &SegmentBalance, split: &SplitSize, across_mm: &[f64]) -> Vec<HoleMark> {
    let Some(RootSize::Hole(diameter)) = split.root else { return Vec::new() };
    let radius = in_mm(diameter) / 2.0;
    let hole = |middle: f64| hole(index, segment, middle, across_mm.to_vec(), Some(diameter));
    let at_start = hole(in_mm(segment.mark_start) + radius);
    let at_end = hole(in_mm(segment.mark_end) - radius);
    match split.opens() {
        FreeEnd::Datum => vec![at_end],
        FreeEnd::Far => vec![at_start],
        FreeEnd::Neither => vec![at_start, at_end],
    }
}

/// Where the cuts of a split lie across the bar as it is seen.
struct CutLine {
    across_mm: Vec<f64>,
    is_seen: bool,
    /// Whether the first branch is the upper one.
    from_above: bool,
}

impl CutLine {
    fn new(split: &SplitSize, view: View, band: [f64; 2]) -> Self {
        // Seen from the side up is up; seen from above it is away from the smith.
        let upward = match view {
            View::Side => split.side.cos(),
            View::Top => -split.side.sin(),
        };
        let middle = f64::midpoint(band[0], band[1]);
        let is_seen = upward.abs() > FRAC_1_SQRT_2;
        let half = in_mm(split.stock.section().extent(FRAC_PI_2 - split.side)) / 2.0;
        let place = |cut: &Length| (middle + upward.signum() * (half - in_mm(*cut))).clamp(band[0], band[1]);
        let across_mm = if is_seen { split.cuts.iter().map(place).collect() } else { vec![middle] };
        Self { across_mm, is_seen, from_above: upward > 0.0 }
    }

    /// The bands between the cuts, the first branch's first; where they are in an edge each branch fills the whole band.
    fn bands(&self, [low, high]: [f64; 2], branches: usize) -> Vec<[f64; 2]> {
        if !self.is_seen {
            return vec![[low, high]; branches];
        }
        let (first, last) = if self.from_above { (high, low) } else { (low, high) };
        let edges: Vec<f64> = std::iter::once(first).chain(self.across_mm.iter().copied()).chain([last]).collect();
        edges.windows(2).map(|pair| [pair[0].min(pair[1]), pair[0].max(pair[1])]).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_lie_between_the_cuts() {
        let line = |across_mm: Vec<f64>, from_above| CutLine { across_mm, is_seen: true, from_above };
        let three = line(vec![2.0, -4.0], true).bands([-10.0, 10.0], 3);
        assert_eq!(three, [[2.0, 10.0], [-4.0, 2.0], [-10.0, -4.0]]);
        assert_eq!(line(vec![-2.0], false).bands([-10.0, 10.0], 2), [[-10.0, -2.0], [-2.0, 10.0]]);
    }
}
