//! Slits, the marks on their branches and the middles of holes, as they lie on the starting bar.

use super::sane::sane;
use super::struck::mark_kind;
use super::words::{BranchMark, Root, Slit, StripHole};
use fh_core::balance::{BarBalance, HoleMark, LaidOff, SegmentBalance, SlitMark};
use fh_core::metal::{FreeEnd, RootSize, Shape};
use fh_core::plan::{Bar, Chain, Flat};
use fh_measure::in_mm;

impl Slit {
    /// Draws it so much smaller.
    pub(super) fn reduce(&mut self, share: f64) {
        self.start_mm *= share;
        self.end_mm *= share;
        self.cuts_mm.iter_mut().for_each(|cut| *cut *= share);
        for root in &mut self.roots {
            root.at_mm *= share;
            root.radius_mm *= share;
        }
    }
}

impl BranchMark {
    /// Draws it so much smaller.
    pub(super) fn reduce(&mut self, share: f64) {
        self.at_mm *= share;
        self.band_mm = self.band_mm.map(|mm| mm * share);
    }
}

impl StripHole {
    /// Draws it so much smaller.
    pub(super) fn reduce(&mut self, share: f64) {
        self.at_mm *= share;
        self.across_mm.iter_mut().for_each(|across| *across *= share);
    }
}

/// The slits of a bar.
pub(super) fn slits(worked: &BarBalance, laid: &LaidOff) -> Vec<Slit> {
    laid.slits.iter().map(|slit| drawn(worked, laid, slit)).collect()
}

/// The marks on branches: where the branch ends, its slit's own mark stands already.
pub(super) fn branch_marks(bar: &Bar, worked: &BarBalance, laid: &LaidOff) -> Vec<BranchMark> {
    let flat = bar.flat();
    let all = flat.iter().zip(&worked.segments).zip(&laid.bands_mm).enumerate();
    let on_branch =
        all.filter(|(number, ((flat, _), _))| flat.chain != Chain::Bar && bar.next_in_chain(*number).is_some());
    let mark = |(number, ((flat, balance), band)): (usize, ((&Flat<'_>, &SegmentBalance), &[f64; 2]))| {
        let shop = balance.mark_end_shop;
        let chain = bar.chain(flat.chain).map_or(&[][..], Vec::as_slice);
        BranchMark {
            path: bar.path(number),
            at_mm: sane(shop.mm()),
            total: shop.text(),
            band_mm: *band,
            is_punched: mark_kind(chain, flat.place).is_punched(),
            above: is_above(band.iter().sum()),
        }
    };
    on_branch.map(mark).collect()
}

/// The middles of holes; those at one place that are told on one side stand there once.
pub(super) fn holes(laid: &LaidOff) -> Vec<StripHole> {
    let mut all: Vec<StripHole> = Vec::new();
    for hole in laid.holes.iter().map(strip_hole) {
        match all.iter_mut().find(|other| other.total == hole.total && other.above == hole.above) {
            Some(same) => same.across_mm.extend(hole.across_mm),
            None => all.push(hole),
        }
    }
    all
}

fn strip_hole(hole: &HoleMark) -> StripHole {
    StripHole {
        at_mm: sane(hole.shop.mm()),
        total: hole.shop.text(),
        across_mm: hole.across_mm.clone(),
        above: is_above(hole.across_mm.iter().sum()),
        is_root: hole.root.is_some(),
    }
}

/// Whether what lies so far above the bar's middle is told above the bar.
fn is_above(up_mm: f64) -> bool {
    up_mm >= -1e-9
}

/// A slit from end to end. Where it runs into a hole its line ends in the middle of that.
fn drawn(worked: &BarBalance, laid: &LaidOff, slit: &SlitMark) -> Slit {
    let shape = worked.segments.get(slit.segment).and_then(|segment| segment.shape.as_ref());
    let split = match shape {
        Some(Shape::Split(split)) => Some(split),
        _ => None,
    };
    let ends = worked.block_shop(slit.segment).unwrap_or(slit.ends.map(|end| end.shop));
    let [start_mm, end_mm] = ends.map(|end| sane(end.mm()));
    let holes = laid.holes.iter().filter(|hole| hole.segment == slit.segment);
    let roots = match split.and_then(|split| Some((split.opens(), split.root?))) {
        None => Vec::new(),
        Some((_, RootSize::Hole(diameter))) => {
            let root =
                |hole: &HoleMark| Root { at_mm: sane(hole.shop.mm()), radius_mm: in_mm(diameter) / 2.0, is_hole: true };
            holes.map(root).collect()
        }
        Some((free, RootSize::Radius(radius))) => rounded(free, in_mm(radius), start_mm, end_mm),
    };
    Slit { start_mm, end_mm, cuts_mm: slit.across_mm.clone(), roots, on_face: slit.is_seen }
}

/// The ends of a slit that are rounded: as far as the mark.
fn rounded(free: FreeEnd, radius_mm: f64, start: f64, end: f64) -> Vec<Root> {
    let root = |at_mm| Root { at_mm, radius_mm, is_hole: false };
    let (at_start, at_end) = (root(start + radius_mm), root(end - radius_mm));
    match free {
        FreeEnd::Datum => vec![at_end],
        FreeEnd::Far => vec![at_start],
        FreeEnd::Neither => vec![at_start, at_end],
    }
}
