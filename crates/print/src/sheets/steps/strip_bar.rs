//! A bar as its strip shows it: the outline of each part, from the side and from above.

use crate::sheets::templates::space::Plane;
use fh_core::balance::{Balance, BarBalance};
use fh_core::metal::{Bent, FreeEnd, Shape, View};
use fh_core::plan::{Chain, Form, Plan};
use fh_piece::{Line, Quality, piece};
use uom::si::length::millimeter;

/// What is longer than this, in mm, is not drawn.
const LONGEST_MM: f64 = 1e6;

/// A state of a bar with the outlines of its parts.
pub(super) struct StripBar {
    /// The bar.
    pub(super) bar: BarBalance,
    /// The outline of each part from the side and from above, in mm along the bar and across it.
    outlines: Vec<[Vec<[f64; 2]>; 2]>,
}

impl StripBar {
    /// A state of one of a plan's bars.
    pub(super) fn new(plan: &Plan, index: usize, bar: BarBalance) -> Self {
        let is_burnt_in = |at: usize| {
            let form = plan.segment(index, at).map(|segment| &segment.form);
            matches!(form, Some(Form::Weld(_))) && bar.segments.get(at).is_some_and(|segment| !segment.unwelded)
        };
        let outline = |at: usize| {
            if is_burnt_in(at) {
                return [Vec::new(), Vec::new()];
            }
            [View::Side, View::Top]
                .map(|view| bar.segments.get(at).map_or_else(Vec::new, |segment| segment.silhouette_mm(view)))
        };
        let mut outlines: Vec<_> = (0..bar.segments.len()).map(outline).collect();
        if (0..bar.segments.len()).any(|at| open_split(&bar, at).is_some()) {
            for (at, own) in opened(plan, index, &bar) {
                if let Some(outline) = outlines.get_mut(at) {
                    *outline = own;
                }
            }
        }
        Self { bar, outlines }
    }

    /// The outline of a part in a view, in mm along the bar and across it.
    pub(super) fn outline(&self, at: usize, view: View) -> &[[f64; 2]] {
        let own = self.outlines.get(at);
        own.map_or(&[], |[side, top]| if view == View::Side { side.as_slice() } else { top.as_slice() })
    }

    /// From where to where it reaches along its length and across, in mm; none where there is nothing.
    pub(super) fn extent(&self, view: View) -> Option<[[f64; 2]; 2]> {
        let points = (0..self.outlines.len()).flat_map(|at| self.outline(at, view));
        let mut all: Option<[[f64; 2]; 2]> = None;
        for [along, across] in points.filter(|point| point.iter().all(|mm| mm.is_finite())) {
            let [xs, ys] = all.get_or_insert([[*along, *along], [*across, *across]]);
            *xs = [xs[0].min(*along), xs[1].max(*along)];
            *ys = [ys[0].min(*across), ys[1].max(*across)];
        }
        all
    }
}

/// From where to where an outline reaches across the bar at a place along it; none where it does not come there.
pub(super) fn across_at(outline: &[[f64; 2]], along: f64) -> Option<[f64; 2]> {
    let edges = outline.iter().zip(outline.iter().cycle().skip(1));
    let crossing = |([from, to], [next, after]): (&[f64; 2], &[f64; 2])| {
        let (low, high) = (from.min(*next) - 1e-6, from.max(*next) + 1e-6);
        let share = if (next - from).abs() < 1e-9 { 0.0 } else { ((along - from) / (next - from)).clamp(0.0, 1.0) };
        (low..=high).contains(&along).then(|| to + (after - to) * share)
    };
    let ends = edges.filter_map(crossing).map(|across| [across, across]);
    ends.reduce(|all, next| [all[0].min(next[0]), all[1].max(next[1])])
}

/// The outermost split that a part lies in whose branches are bent apart or opened.
fn open_split(bar: &BarBalance, at: usize) -> Option<usize> {
    let (mut found, mut at) = (None, at);
    while let Some(Chain::Branch { split, .. }) = bar.segments.get(at).map(|segment| segment.chain)
        && split < at
    {
        let shape = bar.segments.get(split).and_then(|split| split.shape.as_ref());
        if matches!(shape, Some(Shape::Split(size)) if size.opening.is_some() || size.apart != 0.0) {
            found = Some(split);
        }
        at = split;
    }
    found
}

/// The outlines of the parts of opened splits, as they are seen on the straight bar.
fn opened(plan: &Plan, index: usize, bar: &BarBalance) -> Vec<(usize, [Vec<[f64; 2]>; 2])> {
    let Some(own) = plan.bars.get(index) else { return Vec::new() };
    let mut own = own.clone();
    own.count = None;
    let plan = Plan { bars: vec![own], joints: Vec::new(), underlay: None, ..plan.clone() };
    let mut straight = bar.clone();
    for segment in &mut straight.segments {
        segment.bent = segment.bent.filter(|bent| matches!(bent, Bent::Twist { .. }));
    }
    let balance = Balance::of_bars(vec![straight]);
    let piece = piece(&plan, &balance, Quality::Print);
    let outline = |line: &Line| {
        let split = open_split(bar, line.segment)?;
        let shift = start_of(bar, split)? - root_of(bar, split, &piece.lines)?;
        let surface = piece.surface(line);
        let seen = |up: [f64; 3]| {
            let plane = Plane { origin: [-shift, 0.0, 0.0], right: [1.0, 0.0, 0.0], up };
            let area = plane.seen(&surface).area();
            if area.iter().flatten().all(|mm| mm.abs() < LONGEST_MM) { area } else { Vec::new() }
        };
        Some((line.segment, [seen([0.0, 0.0, 1.0]), seen([0.0, 1.0, 0.0])]))
    };
    piece.lines.iter().filter_map(outline).collect()
}

/// Where the branches of a split hang on the bar, along it in mm.
fn start_of(bar: &BarBalance, split: usize) -> Option<f64> {
    let segment = bar.segments.get(split)?;
    let start = segment.forged_start.get::<millimeter>();
    let Some(Shape::Split(size)) = &segment.shape else { return None };
    Some(if size.opens() == FreeEnd::Datum { start + segment.forged_length.get::<millimeter>() } else { start })
}

/// The same in space, where what is left in the tongs is no part of the piece.
fn root_of(bar: &BarBalance, split: usize, lines: &[Line]) -> Option<f64> {
    let Some(Shape::Split(size)) = bar.segments.get(split).and_then(|segment| segment.shape.as_ref()) else {
        return None;
    };
    // Of a slit that closes again behind a branch that leaves, that branch hangs on the root.
    let leaving = size.branches.iter().position(|branch| branch.free != FreeEnd::Neither).unwrap_or(0);
    let mut own = lines.iter().filter(|line| {
        let chain = bar.segments.get(line.segment).map(|segment| segment.chain);
        chain == Some(Chain::Branch { split, branch: leaving })
    });
    let frame =
        if size.opens() == FreeEnd::Datum { own.next_back()?.frames.last()? } else { own.next()?.frames.first()? };
    Some(frame.at[0])
}
