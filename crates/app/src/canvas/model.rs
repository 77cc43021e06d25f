//! What is to be drawn: the balance of one bar as plain millimetres, with the names that screen readers hear.

use super::cuts::Cuts;
use super::details::Details;
use super::lanes::{Lane, Lanes};
use super::layout::Edges;
use super::{Scene, Views};
use fh_core::balance::{BarBalance, LaidRepeat, SegmentBalance, laid_repeats};
use fh_core::describe::{hole_words, made_words, short_name, slit_line_words};
use fh_core::findings::{Finding, Severity};
use fh_core::metal::View;
use fh_core::plan::{Bar, Chain, Flat, Form, PlanUnit};
use fh_measure::{RoundedLength, Rounding};
use std::collections::HashMap;
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// The millimetres of a length: the painter's border.
pub(super) fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

/// One thing for each side that the bar is seen from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct PerView<T> {
    pub(super) side: T,
    pub(super) top: T,
}

impl<T> PerView<T> {
    /// That of one side.
    pub(super) fn of(&self, view: View) -> &T {
        match view {
            View::Side => &self.side,
            View::Top => &self.top,
        }
    }

    /// Makes one for each side.
    pub(super) fn each(make: impl Fn(View) -> T) -> Self {
        Self { side: make(View::Side), top: make(View::Top) }
    }
}

impl PerView<Vec<[f64; 2]>> {
    /// The lower and the upper edge of an outline as it is seen; none where it has none.
    pub(super) fn edges(&self, view: View) -> Option<[f64; 2]> {
        let ups = self.of(view).iter().map(|[_, up]| *up);
        let edges = ups.fold([f64::INFINITY, f64::NEG_INFINITY], |[a, b], up| [a.min(up), b.max(up)]);
        (edges[0] <= edges[1]).then_some(edges)
    }
}

/// One segment as it is drawn.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Block {
    /// What the smith calls it.
    pub(super) name: String,
    /// Its name with its number where others are called the same.
    pub(super) unique_name: String,
    /// Its number: `4`, or `4.2.1` within the second branch of the split at 4.
    pub(super) path: String,
    /// Its lane: 0 for the bar itself.
    pub(super) lane: usize,
    /// From where to where it lies on the starting bar, in mm.
    pub(super) stock: [f64; 2],
    /// From where to where it lies on the forged bar, in mm.
    pub(super) forged: [f64; 2],
    /// From where to where it is drawn on the forged bar, in mm: elsewhere only in a slit that is opened.
    pub(super) drawn: [f64; 2],
    /// What it becomes, with every size as it comes out.
    pub(super) becomes: String,
    /// The mark at its end.
    pub(super) mark: RoundedLength,
    /// The same, not rounded, in mm from the datum end.
    pub(super) mark_mm: f64,
    /// The holes and the slit that are laid off in it, in words.
    pub(super) laid: Vec<String>,
    /// Whether it is no part of the finished piece.
    pub(super) hatched: bool,
    /// Whether its sizes are settled.
    pub(super) settled: bool,
    /// The gravest finding that speaks of it.
    pub(super) severity: Option<Severity>,
    /// Its silhouettes on the forged bar, in mm.
    pub(super) outlines: PerView<Vec<[f64; 2]>>,
    /// Its rows of marks.
    pub(super) repeats: Vec<LaidRepeat>,
    /// The cuts of a split.
    pub(super) cuts: Option<Cuts>,
    /// What tells its form or its bend from others of the same outline.
    pub(super) details: Details,
}

impl Block {
    /// Where a place on the forged bar is drawn, both in mm.
    pub(super) fn drawn_at(&self, forged: f64) -> f64 {
        let [start, end] = self.forged;
        let scale = if end > start { (self.drawn[1] - self.drawn[0]) / (end - start) } else { 1.0 };
        self.drawn[0] + (forged - start) * scale
    }
}

/// One bar as it is drawn.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Model {
    pub(super) bar: usize,
    /// The segments, counted through the bar.
    pub(super) blocks: Vec<Block>,
    /// The bar itself, and each branch.
    pub(super) lanes: Vec<Lane>,
    /// The blocks in the order they are painted, farthest first, where that is not their own order.
    pub(super) order: Option<PerView<Vec<usize>>>,
    /// The length of bar to cut, in mm.
    pub(super) cut_mm: f64,
    /// The last mark, in mm.
    pub(super) last_mark_mm: f64,
    /// The length of the forged bar, in mm.
    pub(super) forged_mm: f64,
    /// The length that there is room for at least, in mm.
    pub(super) room_mm: f64,
    /// The thickness of the forged bar that there is room for at least, in mm.
    room_across_mm: [f64; 2],
    pub(super) edges: Edges,
    pub(super) unit: PlanUnit,
    pub(super) marks: Rounding,
    pub(super) datum: String,
    /// From where the side that is punched is seen.
    pub(super) marked_view: View,
}

impl Model {
    /// The model of the shown bar; none where there is no such bar.
    pub(super) fn new(scene: &Scene<'_>) -> Option<Self> {
        let (bar, balance) = (scene.plan.bars.get(scene.bar)?, scene.balance.bars.get(scene.bar)?);
        let flat = bar.flat();
        let stock = PerView::each(|view| balance.stock_edges_mm(view));
        let mut lanes = Lanes::new(stock);
        for (index, flat) in flat.iter().enumerate().filter(|(_, flat)| !flat.segment.form.branches().is_empty()) {
            lanes.add(index, flat.segment.form.branches(), balance);
        }
        let mut blocks = blocks(scene, &flat, &balance.segments, &lanes);
        lay_off(&mut blocks, scene, bar, balance);
        for (index, block) in blocks.iter().enumerate() {
            if let Some(lane) = lanes.all.get_mut(block.lane) {
                lane.members.push(index);
            }
        }
        Some(Self {
            bar: scene.bar,
            cut_mm: in_mm(balance.stock_length),
            last_mark_mm: in_mm(balance.last_mark()),
            forged_mm: in_mm(balance.forged_length),
            room_mm: scene.step.map_or(0.0, |step| step.room_mm),
            room_across_mm: scene.step.map_or([0.0; 2], |step| step.room_across_mm),
            edges: Edges { bar: stock, forged: PerView::each(|view| forged_edges(&blocks, view, *stock.of(view))) },
            unit: scene.plan.units.length,
            marks: scene.plan.units.marks,
            datum: bar.datum_name().to_owned(),
            marked_view: balance.marked_view(),
            order: (lanes.all.len() > 1).then(|| PerView::each(|view| painting_order(&balance.segments, view))),
            lanes: lanes.all,
            blocks,
        })
    }

    /// The lane of a segment.
    pub(super) fn lane(&self, segment: usize) -> Option<&Lane> {
        self.lanes.get(self.blocks.get(segment)?.lane)
    }

    /// The segments in the order they are painted.
    pub(super) fn painted(&self, view: View) -> impl DoubleEndedIterator<Item = usize> {
        let order = self.order.as_ref().map(|order| order.of(view));
        (0..self.blocks.len()).map(move |at| order.and_then(|order| order.get(at).copied()).unwrap_or(at))
    }

    /// All thicknesses that lie one above the other, in mm; at least what there is to be room for.
    pub(super) fn across_mm(&self, views: Views) -> f64 {
        let bar = |view: View| self.edges.bar.of(view)[1] - self.edges.bar.of(view)[0];
        let [side, top] = self.room_across_mm;
        let room = match views {
            Views::Side => bar(View::Side) + side,
            Views::Top => bar(View::Top) + top,
            Views::Both => bar(View::Side) + side + bar(View::Top) + top,
        };
        self.edges.across_mm(views).max(room)
    }

    /// The longer of the two bars, in mm.
    pub(super) fn length_mm(&self) -> f64 {
        self.cut_mm.max(self.last_mark_mm).max(self.forged_mm).max(self.room_mm)
    }
}

/// Every segment as it is drawn.
fn blocks(scene: &Scene<'_>, flat: &[Flat<'_>], balance: &[SegmentBalance], lanes: &Lanes) -> Vec<Block> {
    let graveness = graveness(&scene.balance.findings, scene.bar);
    let mut seen: HashMap<&str, usize> = HashMap::with_capacity(flat.len());
    for flat in flat {
        *seen.entry(flat.segment.name.trim()).or_default() += 1;
    }
    let mut blocks: Vec<Block> = Vec::with_capacity(flat.len());
    for (index, (flat, balance)) in flat.iter().zip(balance).enumerate() {
        let path = match flat.chain {
            Chain::Bar => (flat.place + 1).to_string(),
            Chain::Branch { split, branch } => {
                let above = blocks.get(split).map_or("", |block| block.path.as_str());
                format!("{above}.{}.{}", branch + 1, flat.place + 1)
            }
        };
        let alone = seen.get(flat.segment.name.trim()).is_none_or(|count| *count == 1);
        let lane = lanes.of(flat.chain);
        let drawn = lanes.all.get(lane).map(|lane| block(flat, balance, lane, scene.plan.units.length, (&path, alone)));
        blocks.extend(drawn.map(|block| Block { path, lane, severity: graveness.get(&index).copied(), ..block }));
    }
    blocks
}

/// Where the mark at each block's end stands, and what is laid off in the block besides.
fn lay_off(blocks: &mut [Block], scene: &Scene<'_>, bar: &Bar, balance: &BarBalance) {
    let unit = scene.plan.units.length;
    let laid = balance.laid_off();
    for (index, block) in blocks.iter_mut().enumerate() {
        if let Some(([_, shop], [_, exact])) = balance.block_shop(index).zip(balance.block_exact(index)) {
            (block.mark, block.mark_mm) = (shop, in_mm(exact));
        }
        let holes = laid.holes.iter().filter(|hole| hole.segment == index);
        let told = holes.map(|hole| format!("{} {} from the datum", hole_words(hole, unit), hole.shop.text()));
        block.laid = told.chain(slit_line_words(unit, bar, balance, index)).collect();
    }
}

fn block(flat: &Flat<'_>, balance: &SegmentBalance, lane: &Lane, unit: PlanUnit, (path, alone): (&str, bool)) -> Block {
    let segment = flat.segment;
    let unnamed = segment.name.trim().is_empty();
    let name = if unnamed { format!("part {path}") } else { short_name(&segment.name) };
    let start = in_mm(balance.forged_start);
    let forged = [start, start + in_mm(balance.forged_length)];
    Block {
        unique_name: if alone || unnamed { name.clone() } else { format!("{name} ({path})") },
        name,
        path: String::new(),
        lane: 0,
        stock: [in_mm(balance.mark_start), in_mm(balance.mark_end)],
        forged,
        drawn: forged.map(|mm| lane.fan.along(mm)),
        mark: balance.mark_end_shop,
        mark_mm: in_mm(balance.mark_end),
        laid: Vec::new(),
        becomes: made_words(segment, balance, unit).form,
        hatched: matches!(segment.form, Form::Hold(_) | Form::Trim(_)),
        settled: balance.shape.is_some(),
        severity: None,
        outlines: PerView::each(|view| lane.fan.outline(balance.silhouette_mm(view), view)),
        repeats: laid_repeats(segment, balance),
        cuts: Cuts::new(balance, lane),
        details: Details::new(segment, balance, lane),
    }
}

/// The segments from the farthest to the nearest: by the place of their middle toward the eye.
fn painting_order(segments: &[SegmentBalance], view: View) -> Vec<usize> {
    let near = |index: &usize| {
        let [toward, up] = segments.get(*index).map_or([0.0, 0.0], |segment| segment.offset_mm);
        if view == View::Side { toward } else { up }
    };
    let mut order: Vec<usize> = (0..segments.len()).collect();
    order.sort_by(|a, b| near(a).total_cmp(&near(b)));
    order
}

/// The gravest finding of each segment of a bar.
fn graveness(findings: &[Finding], bar: usize) -> HashMap<usize, Severity> {
    let mut gravest = HashMap::new();
    for finding in findings.iter().filter(|finding| finding.place.bar == Some(bar)) {
        if let Some(segment) = finding.place.segment {
            let entry = gravest.entry(segment).or_insert(finding.severity);
            *entry = finding.severity.max(*entry);
        }
    }
    gravest
}

/// The lower and the upper edge of the forged bar; the stock's where nothing is forged yet.
fn forged_edges(blocks: &[Block], view: View, stock: [f64; 2]) -> [f64; 2] {
    let points = blocks.iter().flat_map(|block| block.outlines.of(view)).map(|[_, up]| *up);
    let [lower, upper] = points
        .filter(|up| up.is_finite())
        .fold([f64::INFINITY, f64::NEG_INFINITY], |[lower, upper], up| [lower.min(up), upper.max(up)]);
    if lower < upper { [lower, upper] } else { stock }
}
