//! Lanes: the share of the bar that each branch of a split has, and from which side it is seen.

use super::fan::{Fan, Root};
use super::per_view::{PerView, in_mm};
use fh_core::balance::{BarBalance, SegmentBalance};
use fh_core::metal::{Bent, FreeEnd, Shape, SplitSize, View};
use fh_core::plan::{Branch, Chain};
use std::collections::HashMap;

/// A bend counts as one outward from this share of it on, as the cosine of the angle between it and the branch's side.
const LEAST_OUTWARD: f64 = 0.1;

/// How a branch is seen from one side.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(in crate::canvas) enum Seen {
    /// It lies behind another.
    Behind,
    /// It lies before another.
    Front,
    /// Nothing lies before or behind it.
    #[default]
    Apart,
}

/// The chain of the bar itself, or of a branch, as it is drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub(in crate::canvas) struct Lane {
    /// The branch's name; none for the bar itself.
    pub(in crate::canvas) title: Option<String>,
    /// Which lane it is cut from; none for the bar itself.
    pub(in crate::canvas) parent: Option<usize>,
    /// Its segments in their order, counted through the bar.
    pub(in crate::canvas) members: Vec<usize>,
    /// The split that it is a branch of, counted through the bar.
    pub(in crate::canvas) split: Option<usize>,
    /// The side from which it lies beside the other branches of its split.
    pub(in crate::canvas) cut: Option<View>,
    /// At which end it hangs on nothing; none where it is not known.
    pub(in crate::canvas) free: Option<FreeEnd>,
    /// The lower and the upper edge of it on the starting bar, in mm.
    pub(in crate::canvas) bar: PerView<[f64; 2]>,
    /// How it is seen.
    pub(in crate::canvas) seen: PerView<Seen>,
    /// How it is drawn on the forged bar.
    pub(in crate::canvas) fan: Fan,
}

/// The lanes of a bar, the bar itself first, and which of them each chain has.
pub(in crate::canvas) struct Lanes {
    pub(in crate::canvas) all: Vec<Lane>,
    of: HashMap<Chain, usize>,
}

impl Lanes {
    /// Those of a bar without branches yet.
    pub(in crate::canvas) fn new(bar: PerView<[f64; 2]>) -> Self {
        let whole = Lane { bar, ..Lane::default() };
        Self { all: vec![whole], of: HashMap::from([(Chain::Bar, 0)]) }
    }

    /// The lane of a chain; the whole bar where it has none.
    pub(in crate::canvas) fn of(&self, chain: Chain) -> usize {
        self.of.get(&chain).copied().unwrap_or(0)
    }

    /// Adds the branches of a split that is counted `split`.
    pub(in crate::canvas) fn add(&mut self, split: usize, branches: &[Branch], balance: &BarBalance) {
        let Some(of_split) = balance.segments.get(split) else { return };
        let parent = self.of(of_split.chain);
        for (branch, below) in branches.iter().enumerate() {
            let Some(lane) = self.branch(parent, split, branch, branches.len(), balance) else { continue };
            let lane = Lane { title: Some(below.title(branch)), parent: Some(parent), split: Some(split), ..lane };
            self.of.insert(Chain::Branch { split, branch }, self.all.len());
            self.all.push(lane);
        }
    }

    fn branch(&self, parent: usize, split: usize, branch: usize, count: usize, balance: &BarBalance) -> Option<Lane> {
        let (parent, of_split) = (self.all.get(parent)?, balance.segments.get(split)?);
        let size = match &of_split.shape {
            Some(Shape::Split(size)) => Some(size.as_ref()),
            _ => None,
        };
        let cut = cut_view(size);
        let share = shares(size, branch, count);
        let is_nearest = size.is_none_or(|size| nearest(size, cut) == branch);
        Some(Lane {
            cut: Some(cut),
            free: size.map(|size| size.free),
            bar: PerView::each(|view| {
                let whole = *parent.bar.of(view);
                if view == cut { part(whole, share, first_is_upper(size, view)) } else { whole }
            }),
            seen: PerView::each(|view| match *parent.seen.of(view) {
                seen if view == cut => seen,
                seen if is_nearest => seen.min(Seen::Front),
                _ => Seen::Behind,
            }),
            fan: fan(parent, of_split, size, branch, &members(balance, split, branch)),
            ..Lane::default()
        })
    }
}

/// The view in which the branches lie beside each other.
pub(in crate::canvas) fn cut_view(size: Option<&SplitSize>) -> View {
    match size {
        Some(size) if size.side.cos().abs() > size.side.sin().abs() => View::Side,
        _ => View::Top,
    }
}

/// Whether the first branch is the upper one as seen.
fn first_is_upper(size: Option<&SplitSize>, view: View) -> bool {
    size.is_none_or(|size| match view {
        View::Side => size.side.cos() > 0.0,
        View::Top => size.side.sin() < 0.0,
    })
}

/// Which branch is the nearest one in the view along the cut.
fn nearest(size: &SplitSize, cut: View) -> usize {
    let first = match cut {
        // Seen from the side, what lies toward you is near; from above, what lies up.
        View::Top => size.side.sin() > 0.0,
        View::Side => size.side.cos() > 0.0,
    };
    if first { 0 } else { size.branches.len().saturating_sub(1) }
}

/// From which to which share of the bar's width a branch reaches, from the first branch's edge.
fn shares(size: Option<&SplitSize>, branch: usize, count: usize) -> [f64; 2] {
    let count = count.max(1) as f64;
    let even = [branch as f64 / count, (branch as f64 + 1.0) / count];
    let Some(size) = size else { return even };
    let widths = || size.branches.iter().map(|branch| in_mm(branch.raw_width));
    let whole: f64 = widths().sum();
    let before: f64 = widths().take(branch).sum();
    let own = widths().nth(branch).unwrap_or_default();
    if whole > 0.0 { [before / whole, (before + own) / whole] } else { even }
}

/// A part of a stretch from its upper or from its lower edge on.
fn part([lower, upper]: [f64; 2], [from, to]: [f64; 2], from_upper: bool) -> [f64; 2] {
    let height = upper - lower;
    if from_upper { [upper - to * height, upper - from * height] } else { [lower + from * height, lower + to * height] }
}

/// The segments of a branch, without those of splits within it.
fn members(balance: &BarBalance, split: usize, branch: usize) -> Vec<&SegmentBalance> {
    let chain = Chain::Branch { split, branch };
    let after = balance.segments.get(split + 1..).unwrap_or_default();
    after.iter().filter(|segment| segment.chain == chain).collect()
}

/// How a branch is drawn on the forged bar.
fn fan(
    parent: &Lane,
    split: &SegmentBalance,
    size: Option<&SplitSize>,
    branch: usize,
    members: &[&SegmentBalance],
) -> Fan {
    let (Some(size), Some(first)) = (size, members.first()) else { return parent.fan.clone() };
    let Some(part) = size.branches.get(branch) else { return parent.fan.clone() };
    let start = in_mm(split.forged_start);
    let (length, own) = (in_mm(size.length), in_mm(part.forged_length));
    let is_closed = part.free == FreeEnd::Neither;
    let fan = parent.fan.branch(start, if is_closed { length / own } else { 1.0 });
    let [toward, up] = [first.offset_mm[0] - split.offset_mm[0], first.offset_mm[1] - split.offset_mm[1]];
    let as_cut = in_mm(part.offset);
    let shift = PerView { side: as_cut * size.side.cos() - up, top: toward - as_cut * size.side.sin() };
    let Some(parts_at) = parts_at(size, as_cut, members) else { return fan.moved(shift) };
    let parts_at = parts_at * parent.fan.scale;
    let ends = [start, start + length].map(|at| parent.fan.along(at));
    let drawn = ends[1] - ends[0];
    let reach = reach(size, drawn, is_closed && size.opening.is_some());
    let at_start = Root { at: ends[0] + parts_at, way: 1.0, reach, shift };
    let at_end = Root { at: ends[1] - parts_at, way: -1.0, reach, shift };
    match part.free {
        FreeEnd::Far => fan.with_root(at_start),
        FreeEnd::Datum => fan.with_root(at_end),
        FreeEnd::Neither => fan.with_root(at_start).with_root(at_end),
    }
}

/// How far from its root a branch parts from the others, in mm along it: at the root where the slit is opened or the branches
/// are bent apart there, else at its first bend outward; none where it stays as it was cut.
fn parts_at(size: &SplitSize, as_cut: f64, members: &[&SegmentBalance]) -> Option<f64> {
    if size.opening.is_some() || size.apart != 0.0 {
        return Some(0.0);
    }
    let is_outward = |side: f64| as_cut != 0.0 && (side - size.side).cos() * as_cut.signum() > LEAST_OUTWARD;
    let is_bent = |member: &&&SegmentBalance| member.bent.and_then(bent_toward).is_some_and(is_outward);
    let begins = |member: &&SegmentBalance| in_mm(member.forged_start);
    let ends = |member: &&SegmentBalance| begins(member) + in_mm(member.forged_length);
    match size.free {
        FreeEnd::Far => Some(begins(members.iter().find(is_bent)?) - begins(members.first()?)),
        FreeEnd::Datum => Some(ends(members.last()?) - ends(members.iter().rfind(is_bent)?)),
        FreeEnd::Neither => members.iter().any(|member| is_bent(&member)).then_some(0.0),
    }
}

/// The side that a bend turns the bar toward; none where the bar goes straight on.
fn bent_toward(bent: Bent) -> Option<f64> {
    match bent {
        Bent::Curve { side, .. } | Bent::Ring { side, .. } | Bent::Corner { side } | Bent::Scroll { side, .. } => {
            Some(side)
        }
        Bent::Socket { .. } | Bent::Twist { .. } => None,
    }
}

/// Over what length the branches part: about as far as the bar is wide; an opened slit parts to its middle.
fn reach(size: &SplitSize, drawn: f64, is_opened: bool) -> f64 {
    let half = drawn / 2.0;
    let width: f64 = size.branches.iter().map(|branch| in_mm(branch.raw_width)).sum();
    if is_opened { half } else { (1.5 * width).min(half) }
}
