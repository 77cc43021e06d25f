//! What is to be drawn: the balance of one bar as plain millimetres, with the names that screen readers hear.

pub(in crate::canvas) mod across;
pub(in crate::canvas) mod block;
pub(in crate::canvas) mod cuts;
pub(in crate::canvas) mod details;
pub(in crate::canvas) mod edges;
pub(in crate::canvas) mod fan;
pub(in crate::canvas) mod lanes;
pub(in crate::canvas) mod per_view;

use super::scene::Scene;
use crate::state::Views;
use block::{Block, Fixed};
use cuts::Cuts;
use details::Details;
use edges::Edges;
use fh_core::balance::{BarBalance, FixedMark, SegmentBalance, laid_repeats};
use fh_core::describe::{hole_words, made_words, short_name, slit_line_words};
use fh_core::findings::{Finding, Severity};
use fh_core::metal::View;
use fh_core::plan::{Bar, Chain, Flat, Form, PlanUnit};
use fh_measure::Rounding;
use lanes::{Lane, Lanes};
use per_view::{PerView, in_mm};
use std::collections::HashMap;

/// One bar as it is drawn.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::canvas) struct Model {
    pub(in crate::canvas) bar: usize,
    /// The segments, counted through the bar.
    pub(in crate::canvas) blocks: Vec<Block>,
    /// The bar itself, and each branch.
    pub(in crate::canvas) lanes: Vec<Lane>,
    /// The blocks in the order they are painted, farthest first, where that is not their own order.
    pub(in crate::canvas) order: Option<PerView<Vec<usize>>>,
    /// The length of bar to cut, in mm.
    pub(in crate::canvas) cut_mm: f64,
    /// The last mark, in mm.
    pub(in crate::canvas) last_mark_mm: f64,
    /// The length of the forged bar, in mm.
    pub(in crate::canvas) forged_mm: f64,
    /// The length that there is room for at least, in mm.
    pub(in crate::canvas) room_mm: f64,
    /// The thickness of the forged bar that there is room for at least, in mm.
    room_across_mm: [f64; 2],
    pub(in crate::canvas) edges: Edges,
    pub(in crate::canvas) unit: PlanUnit,
    pub(in crate::canvas) marks: Rounding,
    pub(in crate::canvas) datum: String,
    /// From where the side that is punched is seen.
    pub(in crate::canvas) marked_view: View,
}

impl Model {
    /// The model of the shown bar; none where there is no such bar.
    pub(in crate::canvas) fn new(scene: &Scene<'_>) -> Option<Self> {
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
    pub(in crate::canvas) fn lane(&self, segment: usize) -> Option<&Lane> {
        self.lanes.get(self.blocks.get(segment)?.lane)
    }

    /// The segments in the order they are painted.
    pub(in crate::canvas) fn painted(&self, view: View) -> impl DoubleEndedIterator<Item = usize> {
        let order = self.order.as_ref().map(|order| order.of(view));
        (0..self.blocks.len()).map(move |at| order.and_then(|order| order.get(at).copied()).unwrap_or(at))
    }

    /// All thicknesses that lie one above the other, in mm; at least what there is to be room for.
    pub(in crate::canvas) fn across_mm(&self, views: Views) -> f64 {
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
    pub(in crate::canvas) fn length_mm(&self) -> f64 {
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
        fixed: balance.fixed_mark.as_ref().map(|mark| fixed(mark, unit)),
        laid: Vec::new(),
        becomes: made_words(segment, balance, unit).form,
        hatched: matches!(segment.form, Form::Hold(_) | Form::Trim(_) | Form::Open(_)),
        settled: balance.shape.is_some(),
        severity: None,
        outlines: PerView::each(|view| lane.fan.outline(balance.silhouette_mm(view), view)),
        repeats: laid_repeats(segment, balance),
        cuts: Cuts::new(balance, lane),
        details: Details::new(segment, balance, lane),
    }
}

fn fixed(mark: &FixedMark, unit: PlanUnit) -> Fixed {
    let unit = format!(" {}", unit.length_unit().symbol());
    Fixed { mm: in_mm(mark.at), text: mark.text.strip_suffix(&unit).unwrap_or(&mark.text).to_owned() }
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

/// The worst finding of each segment of a bar.
fn graveness(findings: &[Finding], bar: usize) -> HashMap<usize, Severity> {
    let mut worst = HashMap::new();
    for finding in findings.iter().filter(|finding| finding.place.bar == Some(bar)) {
        if let Some(segment) = finding.place.segment {
            let entry = worst.entry(segment).or_insert(finding.severity);
            *entry = finding.severity.max(*entry);
        }
    }
    worst
}

/// The lower and the upper edge of the forged bar; the stock's where nothing is forged yet.
fn forged_edges(blocks: &[Block], view: View, stock: [f64; 2]) -> [f64; 2] {
    let all = |block: &Block| [block.outlines.of(view), block.details.blank.of(view)].map(Vec::as_slice).concat();
    let points = blocks.iter().flat_map(all).map(|[_, up]| up);
    let [lower, upper] = points
        .filter(|up| up.is_finite())
        .fold([f64::INFINITY, f64::NEG_INFINITY], |[lower, upper], up| [lower.min(up), upper.max(up)]);
    if lower < upper { [lower, upper] } else { stock }
}
