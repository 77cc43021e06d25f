//! Settling a split: its branches, each a chain of its own, then the slit and the cuts that give each branch its metal.

use super::branch_sum::Sum;
use super::cut_line::{CutLine, free_end_of, stand};
use super::walk::{Pass, Stand, Walk};
use super::{Settled, Trouble};
use crate::forms;
use crate::forms::Surroundings;
use crate::metal::{
    BranchSize, FreeEnd, OpeningSize, RootSize, SectionSize, Shape, SplitSize, cut_offset_mm, in_mm, mm, mm3, slug_area,
};
use crate::plan::{Branch, Form, Gives, RootSpec, Segment};
use std::f64::consts::FRAC_PI_2;
use uom::si::f64::Length;

/// The side that the first branch lies on where the plan does not say: away from you, in radians from up.
const FIRST_SIDE: f64 = 3.0 * FRAC_PI_2;
/// How many places the branches' areas are added up at.
const AREAS: usize = 33;

impl Walk<'_> {
    /// Settles a split with all its branches.
    pub(super) fn settle_split(
        &self,
        segment: &Segment,
        around: Surroundings,
        free: FreeEnd,
        pass: &mut Pass<'_>,
    ) -> Settled {
        let Form::Split(split) = &segment.form else { return Settled::default() };
        let forms::Split { branches, side, root, opening, .. } = split;
        let free = if split.has_free_branch() { FreeEnd::Neither } else { free };
        let side = side.as_ref().map_or(FIRST_SIDE, fh_measure::WrittenAngle::radians);
        // The size that gives of a slit with a written cut is its length, which the factor counts in mm.
        let own = pass.next().checked_sub(1).map_or(&[][..], |own| pass.given(own));
        let given = own.iter().rev().find(|give| give.1 == Gives::Length).map(|give| give.2);
        let line = CutLine::new(split, around.stock, side, given);
        let start = |at: usize| stand(split, (at, free), (around, side), line.as_ref());
        let stands: Vec<Stand> = (0..branches.len()).map(start).collect();
        let (sums, uneven) = match &line {
            Some(line) => self.filled_branches(split, line, &stands, pass),
            None => (self.sums(branches, &stands, pass), false),
        };
        if sums.iter().all(|sum| sum.stock_length <= 0.0) {
            return Settled::failed(Trouble::EmptyBranch);
        }
        let has_empty = sums.iter().any(|sum| sum.stock_length <= 0.0);
        let told = has_empty.then_some(Trouble::EmptyBranch).or(uneven.then_some(Trouble::BranchUneven));
        let root = root.as_ref().map(|root| match root {
            RootSpec::Radius(radius) => RootSize::Radius(radius.length()),
            RootSpec::Hole(diameter) => RootSize::Hole(diameter.length()),
        });
        let opening = opening
            .as_ref()
            .filter(|_| free == FreeEnd::Neither)
            .map(|opening| OpeningSize { radius: opening.width.length() / 2.0, turns: opening.turns.unwrap_or(0.0) });
        let (length, trouble) = match forged_length(branches, &sums, opening) {
            Ok(length) => (length, told),
            Err((length, trouble)) => (length, Some(trouble)),
        };
        let frees: Vec<FreeEnd> = branches.iter().map(|branch| free_end_of(branch, free)).collect();
        let (slit, cuts, parts) = cut((around.stock, side), &sums, &frees, line.as_ref());
        let mut size = SplitSize {
            length: mm(length),
            volume: mm3(sums.iter().map(|sum| sum.volume).sum()),
            stock: around.stock,
            free,
            side,
            branches: parts,
            slit,
            cuts,
            root,
            opening,
            apart: 0.0,
            lost: mm3(0.0),
            stock_length: slit,
            areas: areas(branches, &sums, &pass.all, length, &frees),
        };
        let at_root = lost_at_root(root, around.stock, side, size.opens());
        let in_kerf = line.as_ref().map_or(0.0, |line| line.kerf_share * in_mm(slit) * self.stock_area);
        size.lost = mm3(at_root + in_kerf);
        size.stock_length = slit + mm(at_root / self.stock_area);
        Settled { shape: Some(Shape::Split(Box::new(size))), trouble, ..Settled::default() }
    }
}

/// How long the split is along the forged bar: its longest branch that does not leave it, or from end to end where it is opened.
fn forged_length(branches: &[Branch], sums: &[Sum], opening: Option<OpeningSize>) -> Result<f64, (f64, Trouble)> {
    let runs_on = branches.iter().zip(sums).filter(|(branch, _)| branch.free.is_none());
    let longest = runs_on.map(|(_, sum)| sum.forged_length).fold(0.0, f64::max);
    let Some(opening) = opening else { return Ok(longest) };
    let mean = sums.iter().map(|sum| sum.forged_length).sum::<f64>() / sums.len() as f64;
    let rod = opening.rod();
    match super::solve(|height| rod.length_mm(height), mean, mean) {
        Some(height) => Ok(height),
        None => Err((longest, Trouble::OpeningTooWide(mm(rod.length_mm(0.0))))),
    }
}

/// The length of the slit, where the cuts stand, and what each branch is as cut.
///
/// The slit is as long as the bar that holds all branches, and each branch has its share of the section there.
fn cut(
    (stock, side): (SectionSize, f64),
    sums: &[Sum],
    frees: &[FreeEnd],
    line: Option<&CutLine>,
) -> (Length, Vec<Length>, Vec<BranchSize>) {
    let all: f64 = sums.iter().map(|sum| sum.stock_length).sum();
    let slit = line.map_or(all, |line| line.slit_mm(sums));
    let outline = stock.section();
    let reach = outline.reach_mm(FRAC_PI_2 - side);
    let whole = in_mm(outline.extent(FRAC_PI_2 - side));
    let mut cuts = Vec::with_capacity(sums.len());
    let mut parts = Vec::with_capacity(sums.len());
    let (mut share, mut before) = (0.0, 0.0);
    for (index, sum) in sums.iter().enumerate() {
        let own = line.map_or(sum.stock_length / slit, |line| line.shares[index.min(1)]);
        share += own;
        let after = match line {
            _ if index + 1 == sums.len() => whole,
            Some(line) => line.offset_mm,
            None => cut_offset_mm(&stock, side, share),
        };
        parts.push(BranchSize {
            forged_length: mm(sum.forged_length),
            stock_length: mm(sum.stock_length),
            share: own,
            offset: mm(reach - (before + after) / 2.0),
            raw_width: mm(after - before),
            free: frees.get(index).copied().unwrap_or(FreeEnd::Neither),
        });
        if index + 1 < sums.len() {
            cuts.push(mm(after));
        }
        before = after + line.map_or(0.0, |line| line.kerf_mm);
    }
    (mm(slit), cuts, parts)
}

/// What holes at the ends of the slit lose, in mm³: one, or two where it is closed at both ends.
fn lost_at_root(root: Option<RootSize>, stock: SectionSize, side: f64, free: FreeEnd) -> f64 {
    let Some(RootSize::Hole(diameter)) = root else { return 0.0 };
    let deep = stock.section().extent(-side);
    let count = if free == FreeEnd::Neither { 2.0 } else { 1.0 };
    (slug_area(diameter) * deep / mm3(1.0)).value * count
}

/// The area of all branches together at even steps along the split, in mm².
fn areas(branches: &[Branch], sums: &[Sum], all: &[Settled], length: f64, frees: &[FreeEnd]) -> Vec<f64> {
    let longest = sums.iter().map(|sum| sum.forged_length).fold(0.0, f64::max);
    let area = |along: f64| -> f64 {
        let of_branch = |((branch, sum), free): ((&Branch, &Sum), &FreeEnd)| {
            area_of_branch(
                branch,
                sum,
                all,
                match *free {
                    FreeEnd::Datum => along - (length - sum.forged_length),
                    FreeEnd::Far => along,
                    FreeEnd::Neither if length > 0.0 => along * longest / length,
                    FreeEnd::Neither => 0.0,
                },
            )
        };
        branches.iter().zip(sums).zip(frees).map(of_branch).sum()
    };
    (0..AREAS).map(|step| area(length * step as f64 / (AREAS - 1) as f64)).collect()
}

/// The area of one branch at a distance from its datum side.
fn area_of_branch(branch: &Branch, sum: &Sum, all: &[Settled], along: f64) -> f64 {
    let (mut index, mut start) = (sum.first, 0.0);
    for segment in &branch.segments {
        if let Some(settled) = all.get(index)
            && let Some(shape) = &settled.shape
        {
            let length = in_mm(shape.length());
            if (start..=start + length).contains(&along) && length > 0.0 {
                let share = (along - start) / length;
                let share = if settled.reversed { 1.0 - share } else { share };
                return (shape.area_at(share) / crate::metal::mm2(1.0)).value;
            }
            start += length;
        }
        index += segment.count();
    }
    0.0
}
