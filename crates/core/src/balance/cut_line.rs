//! A cut along the bar that is written: what it leaves of the bar for each of its two branches, and what gives in them.

use super::branch_sum::Sum;
use super::solve::solve;
use super::walk::{Give, Pass, Stand, Walk};
use crate::forms::{Split, Surroundings};
use crate::metal::{FreeEnd, SectionSize, View, cut_share, mm};
use crate::plan::{Branch, BranchFree, Form, Gives, Segment};
use fh_measure::WrittenLength;

/// How close a branch takes what it has, as a share of it.
const FILLED: f64 = 1e-9;
/// What a branch takes more or less than this share of what it has is uneven.
const UNEVEN: f64 = 1e-6;

/// A written cut between two branches.
pub(super) struct CutLine {
    /// From the first branch's face, in mm.
    pub(super) offset_mm: f64,
    /// How wide a saw cuts beyond it, in mm.
    pub(super) kerf_mm: f64,
    /// The shares of the section that the branches have.
    pub(super) shares: [f64; 2],
    /// The share that the saw takes.
    pub(super) kerf_share: f64,
    /// How long the slit is on the bar, where it is written, in mm.
    slit: Option<f64>,
    /// The branch that says how long it is where it is not.
    holds: usize,
    /// How long the slit is so that its block is filled, in mm, where it gives to that.
    given: Option<f64>,
}

impl CutLine {
    /// The cut of a split of this section; none where it follows from the metal.
    pub(super) fn new(split: &Split, stock: SectionSize, side: f64, given: Option<f64>) -> Option<Self> {
        let offset = split.cut.as_ref().map(WrittenLength::mm)?;
        let kerf = split.kerf.as_ref().map_or(0.0, WrittenLength::mm);
        let (first, beyond) = (cut_share(&stock, side, offset), cut_share(&stock, side, offset + kerf));
        let holds = split.branches.iter().position(|branch| !branch.segments.iter().any(says_it_gives)).unwrap_or(0);
        Some(Self {
            offset_mm: offset,
            kerf_mm: kerf,
            shares: [first, 1.0 - beyond],
            kerf_share: beyond - first,
            slit: split.slit.as_ref().map(WrittenLength::mm),
            holds,
            given,
        })
    }

    /// How long the slit is on the bar, in mm: as its block leaves it, as written, or as the branch asks that holds.
    pub(super) fn slit_mm(&self, sums: &[Sum]) -> f64 {
        let of_branch = || Some(sums.get(self.holds)?.stock_length / self.shares[self.holds.min(1)]);
        self.given.or(self.slit).or_else(of_branch).filter(|slit| slit.is_finite()).unwrap_or(0.0)
    }
}

fn says_it_gives(segment: &Segment) -> bool {
    segment.gives.is_some_and(|gives| gives != Gives::Nothing)
}

/// The end at which a branch is free: its own, or that of its split.
pub(super) fn free_end_of(branch: &Branch, of_split: FreeEnd) -> FreeEnd {
    match branch.free {
        Some(BranchFree::Datum) => FreeEnd::Datum,
        Some(BranchFree::Far) => FreeEnd::Far,
        None => of_split,
    }
}

/// Where the walk along a branch begins: with what the cut leaves of the bar, or its even share.
pub(super) fn stand(
    split: &Split,
    (branch, free): (usize, FreeEnd),
    (around, side): (Surroundings, f64),
    line: Option<&CutLine>,
) -> Stand {
    let count = split.branches.len().max(1) as f64;
    let stock = match line {
        Some(line) => raw_branch(around.stock, side, around.stock.area() * line.shares[branch.min(1)]),
        None => raw_branch(around.stock, side, around.stock.area() / count),
    };
    let free = split.branches.get(branch).map_or(free, |branch| free_end_of(branch, free));
    let around =
        Surroundings { stock, before: stock, after_a_plate: false, at_free_end: free == FreeEnd::Datum, ..around };
    Stand { around, far_is_free: free == FreeEnd::Far }
}

/// What the cut leaves of the bar for a branch of this area: a flat.
fn raw_branch(stock: SectionSize, side: f64, area: uom::si::f64::Area) -> SectionSize {
    let is_upright = side.cos().abs() > side.sin().abs();
    let (wide, thick) = (mm(stock.seen_mm(View::Top)), mm(stock.seen_mm(View::Side)));
    if is_upright { SectionSize::flat(wide, area / wide) } else { SectionSize::flat(area / thick, thick) }
}

impl Walk<'_> {
    /// The branches of a written cut, each with what gives in it until it takes what the cut leaves it; and whether one does not.
    pub(super) fn filled_branches(
        &self,
        split: &Split,
        line: &CutLine,
        stands: &[Stand],
        pass: &mut Pass<'_>,
    ) -> (Vec<Sum>, bool) {
        let slit = line.slit_mm(&self.as_written(split, stands, pass));
        let (mut sums, mut is_uneven) = (Vec::with_capacity(stands.len()), false);
        for (index, (branch, stand)) in split.branches.iter().zip(stands).enumerate() {
            let target = slit * line.shares[index.min(1)];
            let holds = line.slit.is_none() && line.given.is_none() && index == line.holds;
            let gives = if holds { Vec::new() } else { self.giving(branch, pass.next(), *stand, target) };
            let first = pass.all.len();
            pass.walk_with(&gives, |inner| {
                self.walk_chain(&branch.segments, 0..branch.segments.len(), *stand, inner);
            });
            let sum = self.sum(branch, first, &pass.all);
            is_uneven |= (sum.stock_length - target).abs() > UNEVEN * target.max(1.0);
            sums.push(sum);
        }
        (sums, is_uneven)
    }

    /// What the branches add up to as they are written.
    fn as_written(&self, split: &Split, stands: &[Stand], pass: &Pass<'_>) -> Vec<Sum> {
        let mut first = pass.next();
        let one = |(branch, stand): (&Branch, &Stand)| {
            let sum = self.tried(branch, first, *stand, &[]);
            first += branch.segments.iter().map(Segment::count).sum::<usize>();
            sum
        };
        split.branches.iter().zip(stands).map(one).collect()
    }

    /// What a branch adds up to whose first segment has this number, with some sizes multiplied.
    fn tried(&self, branch: &Branch, first: usize, stand: Stand, gives: &[Give]) -> Sum {
        let mut pass = Pass::new(first, gives, &[]);
        self.walk_chain(&branch.segments, 0..branch.segments.len(), stand, &mut pass);
        self.sum(branch, 0, &pass.all)
    }

    /// The sizes that give in a branch until it takes so much bar: what has no length, else those that say so, else every part
    /// that can. Nothing where they do not reach it.
    fn giving(&self, branch: &Branch, first: usize, stand: Stand, target: f64) -> Vec<Give> {
        let mut places: Vec<(usize, &Segment)> = Vec::with_capacity(branch.segments.len());
        let mut at = first;
        for segment in &branch.segments {
            places.push((at, segment));
            at += segment.count();
        }
        places.retain(|(_, segment)| segment.giving() != Gives::Nothing && !matches!(segment.form, Form::Split(_)));
        let those = |which: fn(&Segment) -> bool| -> Vec<&(usize, &Segment)> {
            places.iter().filter(|(_, segment)| which(segment)).collect()
        };
        let chosen =
            [those(|it| it.form.one().length_follows() && it.bend.is_none()), those(says_it_gives), those(|_| true)];
        let chosen = chosen.into_iter().find(|chosen| !chosen.is_empty()).unwrap_or_default();
        let gives =
            |factor: f64| -> Vec<Give> { chosen.iter().map(|(at, segment)| (*at, segment.giving(), factor)).collect() };
        let takes = |factor: f64| self.tried(branch, first, stand, &gives(factor)).stock_length;
        let guess = target / takes(1.0);
        let guess = if guess.is_finite() && guess > 0.0 { guess } else { 1.0 };
        let is_close = |factor: &f64| (takes(*factor) - target).abs() <= FILLED * target.max(1.0);
        solve(takes, target, guess).filter(is_close).map(gives).unwrap_or_default()
    }
}
