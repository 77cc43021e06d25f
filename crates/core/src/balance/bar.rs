//! The balance of one bar.

use super::block::{Fill, blocks};
use super::gave::note_what_gave;
use super::lay_off::lay_off;
use super::{BarTrouble, Block, GaveFor, Met, SegmentBalance, Settled, Trouble, Walk, fill_blocks};
use crate::metal::{Section, SectionSize, View, in_mm, mm, mm3};
use crate::plan::{Bar, Chain, Gives};
use fh_measure::RoundedLength;
use uom::si::f64::{Area, Length, Mass, MassDensity, Volume};

/// Everything that follows for one bar.
#[derive(Clone, Debug, PartialEq)]
pub struct BarBalance {
    /// The sizes of the starting bar.
    pub stock: SectionSize,
    /// The starting bar's section.
    pub stock_section: Section,
    /// The area of the starting bar's section.
    pub stock_area: Area,
    /// One for each segment, counted through the bar: those of a split's branches stand behind the split.
    pub segments: Vec<SegmentBalance>,
    /// From one fixed mark to the next, in order; one block where none is fixed, none on an empty bar.
    pub blocks: Vec<Block>,
    /// The length of bar to cut: the last mark; for a bar already cut, its length.
    pub stock_length: Length,
    /// The length of the whole bar forged and still straight.
    pub forged_length: Length,
    /// The volume of the finished piece.
    pub finished_volume: Volume,
    /// The mass of the finished piece.
    pub finished_mass: Mass,
    /// The mass of the bar that is cut.
    pub stock_mass: Mass,
    /// The largest distance of a rounded mark from its true place; the last, which is rounded up, is left out.
    pub largest_rounding_error: Length,
}

impl BarBalance {
    /// The last mark: the length of bar that the segments need.
    pub fn last_mark(&self) -> Length {
        self.whole().next_back().map_or(mm(0.0), |(_, segment)| segment.end_on_bar())
    }

    /// The segments of the bar itself with their numbers, without those of branches.
    pub fn whole(&self) -> impl DoubleEndedIterator<Item = (usize, &SegmentBalance)> {
        self.segments.iter().enumerate().filter(|(_, segment)| segment.chain == Chain::Bar)
    }

    /// The step from the mark before a segment to the mark at its end: the difference of the rounded totals.
    pub fn step_shop(&self, index: usize) -> Option<RoundedLength> {
        let [start, end] = self.block_shop(index)?;
        Some(end - start)
    }

    /// The lower and the upper edge of the starting bar in mm from its middle, as it is seen.
    pub fn stock_edges_mm(&self, view: View) -> [f64; 2] {
        let half = self.stock_section.seen_mm(view) / 2.0;
        [-half, half]
    }

    /// Where a place on the starting bar comes to lie on the forged bar, both in mm from the datum end.
    pub fn forged_from_stock_mm(&self, stock_mm: f64) -> f64 {
        self.map_mm(
            stock_mm,
            |segment| (segment.mark_start, segment.stock_length),
            |segment| (segment.forged_start, segment.forged_length),
        )
    }

    /// Where a place on the forged bar was on the starting bar, both in mm from the datum end.
    pub fn stock_from_forged_mm(&self, forged_mm: f64) -> f64 {
        self.map_mm(
            forged_mm,
            |segment| (segment.forged_start, segment.forged_length),
            |segment| (segment.mark_start, segment.stock_length),
        )
    }

    /// Carries a place from one straight bar to the other, evenly within each segment.
    fn map_mm(
        &self,
        place: f64,
        from: impl Fn(&SegmentBalance) -> (Length, Length),
        to: impl Fn(&SegmentBalance) -> (Length, Length),
    ) -> f64 {
        let mut end = 0.0;
        for (_, segment) in self.whole() {
            let ((start, length), (to_start, to_length)) = (from(segment), to(segment));
            let (start, length) = (in_mm(start), in_mm(length));
            if place <= start + length && length > 0.0 {
                return in_mm(to_start) + (place - start) / length * in_mm(to_length);
            }
            end = in_mm(to_start + to_length) + place - start - length;
        }
        end
    }
}

/// Works out one bar of a plan.
pub(super) fn balance_bar(walk: &Walk<'_>, index: usize, density: MassDensity, met: &mut Vec<Met>) -> BarBalance {
    let bar = walk.bar;
    let (mut settled, fills) = settle_to_fit(walk, index, met);
    for (at, gives, _) in walk.kept {
        settled.get_mut(*at).into_iter().for_each(|settled| note_what_gave(settled, *gives, GaveFor::AskedSize));
    }
    for (segment, settled) in settled.iter().enumerate() {
        if let Some(trouble) = settled.trouble {
            met.push(Met { bar: index, segment: Some(segment), trouble: BarTrouble::Segment(trouble) });
        }
    }
    let mut segments = lay_off(walk, settled, density);
    let largest_rounding_error = round_last_up(&mut segments, bar);
    let mut whole = segments.iter().filter(|segment| segment.chain == Chain::Bar);
    let finished_volume = whole.clone().fold(mm3(0.0), |sum, segment| sum + segment.finished_volume);
    let last = whole.next_back();
    let stock_length = match &bar.length {
        Some(length) => length.length(),
        None => last.map_or(mm(0.0), SegmentBalance::end_on_bar),
    };
    let forged_length = last.map_or(mm(0.0), |segment| segment.forged_start + segment.forged_length);
    let stock_section = walk.stock.section();
    let stock_area = walk.stock.area();
    BarBalance {
        stock: walk.stock,
        stock_section,
        stock_area,
        stock_length,
        forged_length,
        finished_volume,
        finished_mass: finished_volume * density,
        stock_mass: stock_area * stock_length * density,
        largest_rounding_error,
        blocks: blocks(bar, &segments, fills, walk.stock_area),
        segments,
    }
}

/// Rounds the last mark of a bar up, for there it is cut, and metal cannot be put back; not beyond the end of a bar that is
/// already cut. Answers how far the others are off at most.
fn round_last_up(segments: &mut [SegmentBalance], bar: &Bar) -> Length {
    let last = segments.iter().rposition(|segment| segment.chain == Chain::Bar);
    let others = segments.iter().enumerate().filter(|(index, _)| Some(*index) != last);
    let largest = others.map(|(_, segment)| segment.rounding_error()).fold(mm(0.0), Length::max);
    if let Some(segment) = last.and_then(|last| segments.get_mut(last)) {
        let up = segment.mark_end_shop.rounding().round_up(in_mm(segment.end_on_bar()));
        if bar.length.as_ref().is_none_or(|length| up.mm() <= length.mm()) {
            segment.mark_end_shop = up;
        }
    }
    largest
}

/// The segments of a bar already cut, settled to fit it, and which of them takes up; none where that cannot be.
pub(crate) fn settled_on_cut_bar(walk: &Walk<'_>) -> Option<(usize, Vec<Settled>)> {
    walk.bar.length.as_ref().filter(|_| !walk.bar.has_fixed_marks())?;
    let name = walk.bar.takes_up.as_ref()?;
    let at = walk.bar.flat().iter().position(|flat| flat.segment.name == *name)?;
    let mut met = Vec::new();
    let (settled, _) = settle_to_fit(walk, 0, &mut met);
    // What is in trouble by itself took nothing up, and says so elsewhere.
    let fits = met.is_empty() && settled[at].trouble.is_none();
    fits.then_some((at, settled))
}

/// Where every segment lies on the bar and on the forged bar, on a bar already cut with what takes up; without masses.
pub(crate) fn laid(walk: &Walk<'_>) -> Vec<SegmentBalance> {
    lay_off(walk, settle_to_fit(walk, 0, &mut Vec::new()).0, MassDensity::default())
}

/// The segments settled, and what fills each block: on a bar with fixed marks the parts that give in it.
pub(super) fn settle_to_fit(walk: &Walk<'_>, index: usize, met: &mut Vec<Met>) -> (Vec<Settled>, Vec<Fill>) {
    if !walk.bar.has_fixed_marks() {
        return settle_one_block(walk, index, met);
    }
    let filled = fill_blocks(walk, None);
    let mut report = |segment, trouble| met.push(Met { bar: index, segment, trouble });
    if let Some(name) = walk.bar.takes_up.as_ref().filter(|_| !filled.takes_up) {
        let is_there = walk.bar.flat().iter().any(|flat| flat.segment.name == *name);
        report(None, if is_there { BarTrouble::TakesUpWithoutLength } else { BarTrouble::TakesUpUnknown });
    }
    for at in filled.cannot {
        report(Some(at), BarTrouble::Segment(Trouble::NothingGives));
    }
    (filled.settled, filled.fills)
}

/// The segments of a bar without fixed marks settled; on one already cut, the one that takes up gives until the sum fits.
fn settle_one_block(walk: &Walk<'_>, index: usize, met: &mut Vec<Met>) -> (Vec<Settled>, Vec<Fill>) {
    let as_written = || (walk.settle(None), Vec::new());
    let Some(name) = &walk.bar.takes_up else { return as_written() };
    let mut report = |segment, trouble| met.push(Met { bar: index, segment, trouble });
    let Some(length) = &walk.bar.length else {
        report(None, BarTrouble::TakesUpWithoutLength);
        return as_written();
    };
    let flat = walk.bar.flat();
    let Some(at) = flat.iter().position(|flat| flat.segment.name == *name) else {
        report(None, BarTrouble::TakesUpUnknown);
        return as_written();
    };
    let gives = flat[at].segment.giving();
    match factor_to_fit(walk, at, gives, length.mm()) {
        Ok(factor) => {
            let mut settled = walk.settle(Some((at, gives, factor)));
            // Where it is in trouble its sizes are as written, and none of them gave.
            if settled[at].trouble.is_none() {
                note_what_gave(&mut settled[at], gives, GaveFor::Bar);
                return (settled, vec![Fill { gives: vec![at], factor: Some(factor), limit: None }]);
            }
            (settled, vec![Fill { gives: vec![at], ..Fill::default() }])
        }
        Err(trouble) => {
            let settled = walk.settle(None);
            // A segment that is in this trouble by itself says so once.
            if settled[at].trouble != Some(trouble) {
                report(Some(at), BarTrouble::Segment(trouble));
            }
            (settled, vec![Fill { gives: vec![at], ..Fill::default() }])
        }
    }
}

/// The factor on the size that gives of one segment at which the whole bar needs `target` mm.
fn factor_to_fit(walk: &Walk<'_>, at: usize, gives: Gives, target: f64) -> Result<f64, Trouble> {
    let is_of_bar = walk.bar.place_of(at).is_some_and(|(chain, _)| chain == Chain::Bar);
    if gives == Gives::Length && is_of_bar {
        // A length that gives leaves every section as it is, so the other segments keep their lengths of bar.
        let settled = walk.settle(Some((at, gives, 1.0)));
        let own = walk.bar.segment(at).map_or(0.0, |segment| walk.stock_length(segment, &settled[at]));
        let others = walk.total(&settled) - own;
        return if target > others { walk.factor_for(at, gives, mm(target - others)) } else { Err(Trouble::CannotFit) };
    }
    if let Some(trouble) = walk.settle(Some((at, gives, 1.0)))[at].trouble {
        return Err(trouble);
    }
    super::solve(|factor| walk.total(&walk.settle(Some((at, gives, factor)))), target, 1.0).ok_or(Trouble::CannotFit)
}
