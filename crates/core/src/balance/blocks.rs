//! Filling the blocks between fixed marks, from the datum outward: in each the parts that give share one factor.
//!
//! A part that gives by width or thickness hands its section on, so what follows is settled after it; a block never looks
//! back. One unknown for each block, and the bar that it takes grows with it: a bracketed root.

use super::block::Fill;
use super::filling::Filling;
use super::stretch::{Done, Stretch};
use super::walk::Give;
use super::{Settled, Walk};
use crate::forms::Surroundings;
use crate::plan::{Chain, Flat, Form, Gives, Segment};
use std::ops::Range;

/// A bar with fixed marks, settled.
pub(crate) struct Filled {
    /// Its segments, counted through the bar.
    pub(crate) settled: Vec<Settled>,
    /// What fills each block.
    pub(crate) fills: Vec<Fill>,
    /// What was asked to give and cannot, counted through the bar.
    pub(super) cannot: Vec<usize>,
    /// Whether the segment that the bar names to take up lies in a block with an end.
    pub(super) takes_up: bool,
}

/// Settles a bar with fixed marks; `give` multiplies a size of one segment as it is written.
pub(crate) fn fill_blocks(walk: &Walk<'_>, give: Option<Give>) -> Filled {
    fill(walk, give, None).0
}

/// What a segment finds in a bar with fixed marks, after all before it.
pub(crate) fn surroundings(walk: &Walk<'_>, index: usize) -> Option<Surroundings> {
    fill(walk, None, Some(index)).1
}

fn fill(walk: &Walk<'_>, give: Option<Give>, seek: Option<usize>) -> (Filled, Option<Surroundings>) {
    let flat = walk.bar.flat();
    let named = walk.bar.takes_up.as_ref().and_then(|name| flat.iter().position(|it| it.segment.name == *name));
    let settled = Vec::with_capacity(flat.len());
    let mut filled = Filled { settled, fills: Vec::new(), cannot: Vec::new(), takes_up: false };
    let mut stand = walk.stand();
    let mut start = 0.0;
    for places in walk.bar.block_places() {
        let first = filled.settled.len();
        let segments = walk.bar.segments.get(places.clone()).unwrap_or_default();
        let own = first..first + segments.iter().map(Segment::count).sum::<usize>();
        let end = block_end(walk, &places);
        let give = give.filter(|give| own.contains(&give.0));
        let block = Stretch { walk, flat: &flat, places, segments, first, stand, give };
        let done = match end {
            Some(end) => {
                filled.takes_up |= named.is_some_and(|at| own.contains(&at));
                filled_block(&block, asked(&flat, own.clone(), named), end - start, &mut filled.cannot)
            }
            None => block.settle(&[], &[]),
        };
        if let Some(index) = seek.filter(|index| own.contains(index)) {
            return (filled, block.surroundings(index, &done.fill));
        }
        start = end.unwrap_or(start);
        stand = done.stand;
        filled.settled.extend(done.settled);
        filled.fills.push(done.fill);
    }
    (filled, None)
}

/// Where a block ends whatever its parts take: at a fixed mark, or where a bar already cut does.
fn block_end(walk: &Walk<'_>, places: &Range<usize>) -> Option<f64> {
    let last = walk.bar.segments.get(places.end.checked_sub(1)?)?;
    let cut = walk.bar.length.as_ref().filter(|_| places.end == walk.bar.segments.len());
    last.ends_at.as_ref().or(cut).map(fh_measure::WrittenLength::mm)
}

/// The segments of a block that are asked to give: those that say so, and the one that the bar names to take up.
///
/// Of a split it is what is in its branches that gives: what says so there, else all of it.
fn asked(flat: &[Flat<'_>], own: Range<usize>, named: Option<usize>) -> Vec<usize> {
    let says = |at: usize| {
        let gives = flat.get(at).and_then(|it| it.segment.gives);
        gives.is_some_and(|gives| gives != Gives::Nothing) || Some(at) == named
    };
    let segment = |at: usize| flat.get(at).map(|it| it.segment);
    let is_cut = |at: usize| is_beside_a_cut(flat, at);
    let is_split = |at: &usize| segment(*at).is_some_and(|it| matches!(it.form, Form::Split(_)));
    let mut all: Vec<usize> = own.clone().filter(|at| says(*at) && !is_split(at) && !is_cut(*at)).collect();
    for split in own.filter(|at| is_split(at) && says(*at)) {
        let below = split + 1..split + segment(split).map_or(1, Segment::count);
        if !all.iter().any(|at| below.contains(at)) {
            let gives = |at: &usize| segment(*at).is_some_and(|it| it.giving() != Gives::Nothing);
            all.extend(below.filter(|at| !is_split(at) && !is_cut(*at) && gives(at)));
        }
    }
    all.sort_unstable();
    all.dedup();
    all
}

/// Whether a part lies beside a written cut: it gives to that, not to a block.
fn is_beside_a_cut(flat: &[Flat<'_>], at: usize) -> bool {
    let Some(Chain::Branch { split, .. }) = flat.get(at).map(|it| it.chain) else { return false };
    flat.get(split).is_some_and(|it| matches!(&it.segment.form, Form::Split(split) if split.cut.is_some()))
}

/// The block with its giving parts at the factor that fills `target` mm of bar.
fn filled_block(block: &Stretch<'_, '_>, mut asked: Vec<usize>, target: f64, cannot: &mut Vec<usize>) -> Done {
    let mut written = block.settle(&[], &asked);
    let mut without = block.without_length(&written);
    without.retain(|at| !is_beside_a_cut(block.flat, *at));
    if !without.is_empty() {
        // What has no length takes what the others leave.
        asked = without;
        written = block.settle(&[], &asked);
    }
    let givers = block.givers(&asked, &mut written, cannot);
    written.fill.gives = givers.iter().map(|giver| giver.at).collect();
    if givers.is_empty() {
        return block.filled_by_slit(target).unwrap_or(written);
    }
    Filling::new(block, &givers, &written, target).done(written)
}
