//! Slits, the marks on their branches and the middles of holes, as they lie on the starting bar.

use super::marks::sane;
use fh_core::balance::{BarBalance, SegmentBalance};
use fh_core::metal::{FreeEnd, RootSize, Shape, SplitSize, View};
use fh_core::plan::{Bar, Chain};
use std::collections::HashMap;
use std::f64::consts::FRAC_PI_2;
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// A slit along the bar.
pub(super) struct Slit {
    /// Where it starts from the datum, in mm.
    pub(super) start_mm: f64,
    /// Where it ends, in mm.
    pub(super) end_mm: f64,
    /// How far each of its cuts lies above the bar's middle on paper, in mm.
    pub(super) cuts_mm: Vec<f64>,
    /// The ends that are rounded or drilled.
    pub(super) roots: Vec<Root>,
    /// Whether the cuts are on the face that is drawn; otherwise they are in its edge.
    pub(super) on_face: bool,
}

/// The end of a slit.
pub(super) struct Root {
    /// Where its middle lies from the datum, in mm.
    pub(super) at_mm: f64,
    /// Its radius in mm.
    pub(super) radius_mm: f64,
    /// Whether it is a hole of its own.
    pub(super) is_hole: bool,
}

/// A mark on one branch of a slit.
pub(super) struct BranchMark {
    /// Its running number: the branch's path.
    pub(super) path: String,
    /// Its place from the datum, as printed beside it, in mm.
    pub(super) at_mm: f64,
    /// The running total beside it.
    pub(super) total: String,
    /// The branch's lower and upper edge above the bar's middle on paper, in mm.
    pub(super) band_mm: [f64; 2],
    /// Whether it is told above the bar; otherwise below.
    pub(super) above: bool,
}

/// The slits of a bar and the marks on their branches.
pub(super) fn slits(bar: &Bar, worked: &BarBalance) -> (Vec<Slit>, Vec<BranchMark>) {
    let [low, high] = face_edges(worked);
    let mut bands: HashMap<Chain, [f64; 2]> = HashMap::from([(Chain::Bar, [low, high])]);
    let (mut slits, mut marks) = (Vec::new(), Vec::new());
    for (number, (flat, balance)) in bar.flat().iter().zip(&worked.segments).enumerate() {
        let Some(band) = bands.get(&flat.chain).copied() else { continue };
        // A branch ends where its slit ends: that mark stands already.
        if flat.chain != Chain::Bar && bar.next_in_chain(number).is_some() {
            marks.push(branch_mark(bar.path(number), balance, band, (low + high) / 2.0));
        }
        if let Some(Shape::Split(split)) = &balance.shape {
            let (slit, branches) = slit(split, balance, band, face(worked, split));
            let chain = |branch| Chain::Branch { split: number, branch };
            bands.extend(branches.into_iter().enumerate().map(|(branch, band)| (chain(branch), band)));
            slits.push(slit);
        }
    }
    (slits, marks)
}

fn branch_mark(path: String, balance: &SegmentBalance, band_mm: [f64; 2], middle: f64) -> BranchMark {
    let shop = balance.mark_end_shop;
    let above = band_mm[0] + band_mm[1] >= 2.0 * middle - 1e-9;
    BranchMark { path, at_mm: sane(shop.mm()), total: shop.text(), band_mm, above }
}

/// The lower and upper edge of the bar as it is drawn: a flat lies on its width.
fn face_edges(worked: &BarBalance) -> [f64; 2] {
    let [side, top] = seen(worked);
    [-side.max(top) / 2.0, side.max(top) / 2.0]
}

/// The size of the starting bar as it is seen from the side and from above, in mm.
fn seen(worked: &BarBalance) -> [f64; 2] {
    [View::Side, View::Top].map(|view| {
        let [low, high] = worked.stock_edges_mm(view);
        high - low
    })
}

/// The face that is drawn: the wider one, or that on which the cuts are seen where both are alike.
fn face(worked: &BarBalance, split: &SplitSize) -> View {
    let [side, top] = seen(worked);
    if (side - top).abs() < 1e-6 {
        return if split.side.cos().abs() > split.side.sin().abs() { View::Side } else { View::Top };
    }
    if side > top { View::Side } else { View::Top }
}

/// A slit in a band of the bar, and the band of each of its branches.
fn slit(split: &SplitSize, balance: &SegmentBalance, band: [f64; 2], face: View) -> (Slit, Vec<[f64; 2]>) {
    // Seen from the side up is up; seen from above it is away from the smith.
    let upward = match face {
        View::Side => split.side.cos(),
        View::Top => -split.side.sin(),
    };
    let on_face = upward.abs() > 0.7;
    let middle = (band[0] + band[1]) / 2.0;
    let half = split.stock.section().extent(FRAC_PI_2 - split.side).get::<millimeter>() / 2.0;
    let place = |cut: &Length| (middle + upward.signum() * (half - in_mm(*cut))).clamp(band[0], band[1]);
    let cuts_mm: Vec<f64> = if on_face { split.cuts.iter().map(place).collect() } else { vec![middle] };
    let bands = if on_face { bands(&cuts_mm, band, upward > 0.0) } else { vec![band; split.branches.len()] };
    let (start_mm, end_mm) = (sane(balance.mark_start_shop.mm()), sane(balance.mark_end_shop.mm()));
    let roots = roots(split, start_mm, end_mm);
    (Slit { start_mm, end_mm, cuts_mm, roots, on_face }, bands)
}

/// The bands between the cuts, the first branch's first.
fn bands(cuts: &[f64], [low, high]: [f64; 2], from_above: bool) -> Vec<[f64; 2]> {
    let (first, last) = if from_above { (high, low) } else { (low, high) };
    let edges: Vec<f64> = std::iter::once(first).chain(cuts.iter().copied()).chain([last]).collect();
    edges.windows(2).map(|pair| [pair[0].min(pair[1]), pair[0].max(pair[1])]).collect()
}

/// The ends of a slit that are rounded or drilled. They reach as far as the mark: before it lies the branches' metal alone.
fn roots(split: &SplitSize, start: f64, end: f64) -> Vec<Root> {
    let (radius_mm, is_hole) = match split.root {
        None => return Vec::new(),
        Some(RootSize::Radius(radius)) => (in_mm(radius), false),
        Some(RootSize::Hole(diameter)) => (in_mm(diameter) / 2.0, true),
    };
    let root = |at_mm| Root { at_mm, radius_mm, is_hole };
    let (at_start, at_end) = (root(start + radius_mm), root(end - radius_mm));
    match split.free {
        FreeEnd::Datum => vec![at_end],
        FreeEnd::Far => vec![at_start],
        FreeEnd::Neither => vec![at_start, at_end],
    }
}

/// Where the middle of a segment's hole lies on the starting bar, in mm from the datum: as far along as on the boss.
pub(super) fn hole_middle_mm(balance: &SegmentBalance) -> Option<f64> {
    let Some(shape @ Shape::Hole { at, .. }) = &balance.shape else { return None };
    let share = (*at / shape.length()).get::<uom::si::ratio::ratio>();
    let share = if balance.reversed { 1.0 - share } else { share };
    Some(sane(in_mm(balance.mark_start + balance.stock_length * share)))
}

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_lie_between_the_cuts() {
        assert_eq!(bands(&[2.0, -4.0], [-10.0, 10.0], true), [[2.0, 10.0], [-4.0, 2.0], [-10.0, -4.0]]);
        assert_eq!(bands(&[-2.0], [-10.0, 10.0], false), [[-10.0, -2.0], [-2.0, 10.0]]);
    }
}
