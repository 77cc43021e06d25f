//! Slits, the marks on their branches and the middles of holes, as they lie on the starting bar.

use super::marks::{mark_kind, sane};
use fh_core::balance::{BarBalance, HoleMark, LaidOff, SegmentBalance, SlitMark};
use fh_core::metal::{FreeEnd, RootSize, Shape};
use fh_core::plan::{Bar, Chain, Flat};
use fh_measure::in_mm;

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
    /// Whether it is punched; otherwise it is only scribed.
    pub(super) is_punched: bool,
}

/// The middle of a hole, or of all holes across the bar at one end of a slit.
pub(super) struct StripHole {
    /// Its place from the datum, as printed beside it, in mm.
    pub(super) at_mm: f64,
    /// The running total beside it.
    pub(super) total: String,
    /// How far each lies above the bar's middle on paper, in mm.
    pub(super) across_mm: Vec<f64>,
    /// Whether it is told above the bar; otherwise below.
    pub(super) above: bool,
    /// Whether its own line crosses it: a root hole is drawn with its slit.
    pub(super) is_root: bool,
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
    let roots = match split.and_then(|split| Some((split.free, split.root?))) {
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
