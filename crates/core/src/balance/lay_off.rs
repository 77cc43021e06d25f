//! Laying the settled segments off one after the other: the running sums are the marks.

use super::trade_sizes::{scarf_to, trade_sizes};
use super::walk::{Give, sane, trimmed_mm3};
use super::{FixedMark, SegmentBalance, Settled, Walk};
use crate::metal::{FreeEnd, Shape, SplitSize, View, in_mm, mm, mm3};
use crate::plan::{Branch, Chain, Form, Segment};
use fh_measure::WrittenLength;
use uom::si::f64::MassDensity;

/// A part that ends this close to the mark of its block ends there, in mm.
const FILLED_MM: f64 = 1e-6;

/// The room that is left between branches when they are drawn beside each other, as a share of the bar's size.
const GAP: f64 = 0.12;

impl Walk<'_> {
    /// Where each segment starts and ends on the starting bar, in mm.
    pub(crate) fn marks(&self, give: Option<Give>) -> Vec<(f64, f64)> {
        let laid = lay_off(self, self.settle(give), MassDensity::default());
        laid.iter().map(|segment| (in_mm(segment.mark_start), in_mm(segment.mark_end))).collect()
    }
}

/// Lays a bar's segments off, counted through the bar.
pub(crate) fn lay_off(walk: &Walk<'_>, settled: Vec<Settled>, density: MassDensity) -> Vec<SegmentBalance> {
    let mut layer = Layer { walk, density, laid: Vec::with_capacity(settled.len()), settled: settled.into_iter() };
    let start = Start { chain: Chain::Bar, mark: 0.0, forged: 0.0, offset: [0.0, 0.0], marks_per_length: 1.0 };
    layer.lay_chain(&walk.bar.segments, start);
    layer.laid
}

/// Where a chain starts.
#[derive(Clone, Copy)]
struct Start {
    chain: Chain,
    /// On the starting bar, in mm.
    mark: f64,
    /// On the forged bar, in mm.
    forged: f64,
    /// Of its middle from the bar's middle: toward you and up, in mm.
    offset: [f64; 2],
    /// How much longer a branch is on the bar than whole bar of its metal would be.
    marks_per_length: f64,
}

struct Layer<'w, 'a> {
    walk: &'w Walk<'a>,
    density: MassDensity,
    settled: std::vec::IntoIter<Settled>,
    laid: Vec<SegmentBalance>,
}

impl Layer<'_, '_> {
    fn lay_chain(&mut self, segments: &[Segment], start: Start) {
        let mut now = start;
        let mut chain: Vec<usize> = Vec::with_capacity(segments.len());
        for segment in segments {
            let Some(settled) = self.settled.next() else { return };
            let index = self.laid.len();
            let laid = self.lay_one(segment, settled, now);
            let shift = laid.shape.as_ref().map_or([0.0, 0.0], Shape::middle_shift);
            self.laid.push(laid);
            chain.push(index);
            if !segment.form.branches().is_empty() {
                self.lay_branches(index, segment.form.branches(), now);
            }
            now.mark = in_mm(self.laid[index].end_on_bar());
            now.forged += in_mm(self.laid[index].forged_length);
            now.offset = [now.offset[0] + shift[0], now.offset[1] + shift[1]];
        }
        self.scarf_ends(segments, &chain);
    }

    /// Scarfs are as long as the bar beside them asks for.
    fn scarf_ends(&mut self, segments: &[Segment], chain: &[usize]) {
        let is_weld = |place: usize| segments.get(place).is_some_and(|it| matches!(it.form, Form::Weld(_)));
        for place in (0..chain.len()).filter(|place| is_weld(*place)) {
            for beside in [place.checked_sub(1), Some(place + 1)].into_iter().flatten() {
                let shape = chain.get(beside).and_then(|at| self.laid[*at].shape.clone());
                if let Some(shape) = shape {
                    scarf_to(&mut self.laid[chain[place]], &shape);
                }
            }
        }
    }

    fn lay_one(&self, segment: &Segment, settled: Settled, start: Start) -> SegmentBalance {
        let marks = self.walk.plan.units.marks;
        let volume = mm3(settled.volume_mm3());
        let (finished_volume, trimmed_volume) = match &settled.shape {
            // Filled in when its branches are laid off.
            Some(Shape::Split(split)) => (mm3(0.0), split.lost),
            _ if segment.form.is_finished() => (volume, mm3(trimmed_mm3(segment, &settled))),
            _ => (mm3(0.0), volume),
        };
        let cut = settled.shape.as_ref().and_then(Shape::cut);
        let missing_volume = cut.map_or(mm3(0.0), |cut| cut.missing * settled.swell.unwrap_or(1.0));
        let lost = settled.shape.as_ref().map_or(mm3(0.0), Shape::lost_to_holes);
        // Where the outline runs out of its blank more is cut away than the one is larger than the other.
        let trimmed_volume = cut.map_or(trimmed_volume, |cut| (cut.away + lost) * settled.swell.unwrap_or(1.0));
        let stock_length = sane(self.walk.stock_length(segment, &settled) * start.marks_per_length);
        let forged_length = settled.shape.as_ref().map_or(mm(0.0), Shape::length);
        let fixed = segment.ends_at.as_ref().filter(|_| start.chain == Chain::Bar);
        let fixed_mark = fixed.map(|mark| FixedMark { at: mark.length(), text: mark.text().to_owned() });
        let own_end = start.mark + in_mm(stock_length);
        // What fills its block ends at the mark, not a hair beside it.
        let mark_end = fixed.map(WrittenLength::mm).filter(|at| (at - own_end).abs() <= FILLED_MM).unwrap_or(own_end);
        let on_bar = fixed.map_or(mark_end, WrittenLength::mm);
        let mut derived = settled.derived;
        trade_sizes(segment, (settled.shape.as_ref(), settled.bent), self.walk.plan.practice, &mut derived);
        SegmentBalance {
            chain: start.chain,
            reversed: settled.reversed,
            bent: settled.bent,
            swell: settled.swell.unwrap_or(1.0),
            finished_volume,
            trimmed_volume,
            missing_volume,
            scale_share: self.walk.scale_share(segment),
            finished_mass: finished_volume * self.density,
            forged_length,
            forged_start: mm(start.forged),
            stock_length,
            mark_start: mm(start.mark),
            mark_start_shop: marks.round(start.mark),
            mark_end: mm(mark_end),
            mark_end_shop: marks.round(on_bar),
            fixed_mark,
            derived,
            offset_mm: start.offset,
            shape: settled.shape,
            unwelded: false,
            standing: settled.standing,
            grown: settled.grown,
            via: settled.via,
            dressed: settled.dressed,
            moved: settled.moved,
        }
    }

    /// Lays the branches of a split off, and adds their metal up.
    fn lay_branches(&mut self, split: usize, branches: &[Branch], start: Start) {
        let size = match &self.laid[split].shape {
            Some(Shape::Split(size)) => Some(size.clone()),
            _ => None,
        };
        let middles = size.as_ref().map_or_else(Vec::new, |size| self.middles(size, branches));
        for (branch, below) in branches.iter().enumerate() {
            let chain = Chain::Branch { split, branch };
            let own = size.as_ref().and_then(|size| start_of_branch(size, branch, chain, start, &middles));
            let first = self.laid.len();
            self.lay_chain(&below.segments, own.unwrap_or(Start { chain, ..start }));
            let (mut finished, mut trimmed, mut missing) = (mm3(0.0), mm3(0.0), mm3(0.0));
            for laid in self.laid[first..].iter().filter(|laid| laid.chain == chain) {
                finished += laid.finished_volume;
                trimmed += laid.trimmed_volume;
                missing += laid.missing_volume;
            }
            let of_split = &mut self.laid[split];
            of_split.finished_volume += finished;
            of_split.trimmed_volume += trimmed;
            of_split.missing_volume += missing;
            of_split.finished_mass = of_split.finished_volume * self.density;
        }
    }

    /// How far each branch's middle is drawn from the bar's middle, toward the first branch's side, in mm.
    fn middles(&self, size: &SplitSize, branches: &[Branch]) -> Vec<f64> {
        let view = if size.side.cos().abs() > size.side.sin().abs() { View::Side } else { View::Top };
        let gap = size.stock.seen_mm(view) * GAP;
        let mut ahead = self.settled.as_slice().iter();
        let halves: Vec<f64> = branches
            .iter()
            .zip(&size.branches)
            .map(|(branch, part)| {
                let count: usize = branch.segments.iter().map(Segment::count).sum();
                let shapes = ahead.by_ref().take(count).filter_map(|settled| settled.shape.as_ref());
                shapes.map(|shape| half_size(shape, view)).fold(in_mm(part.raw_width) / 2.0, f64::max)
            })
            .collect();
        let whole: f64 = halves.iter().map(|half| 2.0 * half).sum::<f64>() + gap * (halves.len() as f64 - 1.0);
        let mut edge = whole / 2.0;
        halves
            .iter()
            .map(|half| {
                let middle = edge - half;
                edge -= 2.0 * half + gap;
                middle
            })
            .collect()
    }
}

/// Where a branch starts on the bar and on the forged bar.
fn start_of_branch(size: &SplitSize, branch: usize, chain: Chain, start: Start, middles: &[f64]) -> Option<Start> {
    let part = size.branches.get(branch)?;
    let middle = middles.get(branch)?;
    let root = in_mm(size.stock_length - size.slit) * start.marks_per_length;
    let before = match size.opens() {
        FreeEnd::Datum => 0.0,
        FreeEnd::Far => root,
        FreeEnd::Neither => root / 2.0,
    };
    // An empty branch has no length of its own to be stretched.
    let stretched = if part.stock_length > mm(0.0) { (size.slit / part.stock_length).value } else { 1.0 };
    let hangs_back = if part.free == FreeEnd::Datum { in_mm(size.length - part.forged_length) } else { 0.0 };
    Some(Start {
        chain,
        mark: start.mark + before,
        forged: start.forged + hangs_back,
        offset: [start.offset[0] + middle * size.side.sin(), start.offset[1] + middle * size.side.cos()],
        marks_per_length: start.marks_per_length * stretched,
    })
}

/// Half of a shape's size as it is seen.
fn half_size(shape: &Shape, view: View) -> f64 {
    shape.silhouette(view).iter().map(|point| point[1].abs()).fold(0.0, f64::max)
}
