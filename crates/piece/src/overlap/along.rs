//! One bar that runs into itself: a ring through its own shank, a scroll whose turns lie in each other.

use super::body::{Body, bodies};
use super::{EVENED_OUT, Overlap, overlaps};
use crate::Piece;
use fh_core::balance::Balance;
use fh_core::plan::{Chain, Plan};
use fh_measure::in_mm;
use std::collections::HashMap;

/// A chain of one copy of a bar.
type Along = (usize, u32, Chain);

/// Where parts of one bar run into each other, or into themselves, on the first of its copies that is shown.
///
/// Unlike [`overlaps`] it looks at neighbors too: places that lie apart along the bar must not lie in each other, places that
/// follow each other do.
pub fn overlaps_along(plan: &Plan, balance: &Balance, piece: &Piece) -> Vec<Overlap> {
    let bodies = bodies(balance, piece);
    let starts = starts(plan, balance);
    let mut chains: HashMap<Along, Vec<(&Body<'_>, f64)>> = HashMap::new();
    for body in bodies.iter().filter(|body| !body.is_split()) {
        if let Some((chain, start)) = starts.get(&(body.part.bar, body.part.segment)) {
            chains.entry((body.part.bar, body.part.copy, *chain)).or_default().push((body, *start));
        }
    }
    let mut found: Vec<Overlap> = chains.values().flat_map(|chain| in_chain(chain)).collect();
    found.extend(overlaps(plan, balance, piece).into_iter().filter(|overlap| {
        let chain = |segment| starts.get(&(overlap.first.bar, segment)).map(|(chain, _)| *chain);
        let (first, second) = (overlap.first, overlap.second);
        (first.bar, first.copy) == (second.bar, second.copy) && chain(first.segment) != chain(second.segment)
    }));
    let first_copy = |bar: usize| bodies.iter().filter(|body| body.part.bar == bar).map(|body| body.part.copy).min();
    found.retain(|overlap| Some(overlap.first.copy) == first_copy(overlap.first.bar));
    found.sort_by_key(|overlap| (overlap.first.bar, overlap.first.segment, overlap.second.segment));
    found
}

/// The overlaps of a chain whose parts start at these places along it, in mm.
fn in_chain(chain: &[(&Body<'_>, f64)]) -> Vec<Overlap> {
    let mut found = Vec::new();
    for (index, (first, start)) in chain.iter().enumerate() {
        for (second, other_start) in chain.iter().skip(index).filter(|(second, _)| first.is_near(second)) {
            let apart = other_start - start;
            let ways = [first.deepest_along(second, apart), second.deepest_along(first, -apart)];
            let deepest = ways.into_iter().flatten().max_by(|a, b| a.0.total_cmp(&b.0));
            let deep = deepest.filter(|(depth_mm, _)| *depth_mm > EVENED_OUT);
            found.extend(deep.map(|(depth_mm, at)| Overlap { first: first.part, second: second.part, depth_mm, at }));
        }
    }
    found
}

/// The chain that each part lies on, by its bar and segment, and where it starts along that, in mm.
fn starts(plan: &Plan, balance: &Balance) -> HashMap<(usize, usize), (Chain, f64)> {
    let mut starts = HashMap::new();
    for (index, (bar, balance)) in plan.bars.iter().zip(&balance.bars).enumerate() {
        let mut ends: HashMap<Chain, f64> = HashMap::new();
        for (at, (flat, segment)) in bar.flat().iter().zip(&balance.segments).enumerate() {
            let end = ends.entry(flat.chain).or_default();
            starts.insert((index, at), (flat.chain, *end));
            *end += in_mm(segment.forged_length);
        }
    }
    starts
}
