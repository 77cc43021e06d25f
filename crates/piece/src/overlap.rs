//! Parts of the piece that run into each other.
//!
//! Each part is taken as its section carried along its center line. Places on the surface of the one are looked for within
//! the other; the deepest of them counts. Parts that touch are no overlap, nor are neighbours on a bar or what one joint holds.

mod along;
mod body;
mod outlines;
mod pairs;
mod part;

pub use along::overlaps_along;
pub use part::PartOf;

use crate::Piece;
use body::Body;
use fh_core::balance::Balance;
use fh_core::plan::Plan;
use pairs::Pairs;

/// Less than this is evened out by the hammer, in mm; common practice, no source.
const EVENED_OUT: f64 = 0.5;

/// Two parts that run into each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Overlap {
    /// The one.
    pub first: PartOf,
    /// The other.
    pub second: PartOf,
    /// How deep the one reaches into the other, in mm.
    pub depth_mm: f64,
    /// Where it is deepest, in mm.
    pub at: [f64; 3],
}

/// The parts of a piece that run into each other.
pub fn overlaps(plan: &Plan, balance: &Balance, piece: &Piece) -> Vec<Overlap> {
    let bodies = body::bodies(balance, piece);
    let pairs = Pairs::new(plan);
    let mut found = Vec::new();
    for (index, first) in bodies.iter().enumerate() {
        let after = bodies.iter().skip(index + 1);
        for second in after.filter(|second| first.is_near(second) && pairs.may_not_meet(first, second)) {
            found.extend(overlap(first, second));
        }
    }
    found
}

/// The deeper of the two ways to look at it.
fn overlap(first: &Body<'_>, second: &Body<'_>) -> Option<Overlap> {
    let ways = [first.deepest_in(second), second.deepest_in(first)];
    let (depth_mm, at) = ways.into_iter().flatten().max_by(|a, b| a.0.total_cmp(&b.0))?;
    (depth_mm > EVENED_OUT).then_some(Overlap { first: first.part, second: second.part, depth_mm, at })
}

#[cfg(test)]
mod tests;
