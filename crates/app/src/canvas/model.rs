//! What is to be drawn: the balance of one bar as plain millimetres, with the names that screen readers hear.

use super::Scene;
use super::layout::Edges;
use fh_core::balance::{LaidRepeat, SegmentBalance, laid_repeats};
use fh_core::findings::{Finding, Severity};
use fh_core::metal::View;
use fh_core::plan::{Form, PlanUnit, Segment};
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

/// One segment as it is drawn.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Block {
    /// What the smith calls it.
    pub(super) name: String,
    /// Its name with its number where others are called the same.
    pub(super) unique_name: String,
    /// From where to where it lies on the starting bar, in mm.
    pub(super) stock: [f64; 2],
    /// From where to where it lies on the forged bar, in mm.
    pub(super) forged: [f64; 2],
    /// The mark at its end.
    pub(super) mark: RoundedLength,
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
}

/// One bar as it is drawn.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Model {
    pub(super) bar: usize,
    pub(super) blocks: Vec<Block>,
    /// The length of bar to cut, in mm.
    pub(super) cut_mm: f64,
    /// The last mark, in mm.
    pub(super) last_mark_mm: f64,
    /// The length of the forged bar, in mm.
    pub(super) forged_mm: f64,
    pub(super) edges: Edges,
    pub(super) unit: PlanUnit,
    pub(super) marks: Rounding,
    pub(super) datum: String,
}

impl Model {
    /// The model of the shown bar; none where there is no such bar.
    pub(super) fn new(scene: &Scene<'_>) -> Option<Self> {
        let (bar, balance) = (scene.plan.bars.get(scene.bar)?, scene.balance.bars.get(scene.bar)?);
        let graveness = graveness(&scene.balance.findings, scene.bar);
        let mut seen: HashMap<&str, usize> = HashMap::with_capacity(bar.segments.len());
        for segment in &bar.segments {
            *seen.entry(segment.name.trim()).or_default() += 1;
        }
        let both = bar.segments.iter().zip(&balance.segments).enumerate();
        let blocks: Vec<_> = both
            .map(|(index, (segment, balance))| {
                let alone = seen.get(segment.name.trim()).is_none_or(|count| *count == 1);
                block(index, segment, balance, alone, graveness.get(&index).copied())
            })
            .collect();
        let stock = PerView::each(|view| balance.stock_edges_mm(view));
        Some(Self {
            bar: scene.bar,
            cut_mm: in_mm(balance.stock_length),
            last_mark_mm: in_mm(balance.last_mark()),
            forged_mm: in_mm(balance.forged_length),
            edges: Edges { bar: stock, forged: PerView::each(|view| forged_edges(&blocks, view, *stock.of(view))) },
            unit: scene.plan.units.length,
            marks: scene.plan.units.marks,
            datum: bar.datum_name().to_owned(),
            blocks,
        })
    }

    /// The longer of the two bars, in mm.
    pub(super) fn length_mm(&self) -> f64 {
        self.cut_mm.max(self.last_mark_mm).max(self.forged_mm)
    }
}

fn block(index: usize, segment: &Segment, balance: &SegmentBalance, alone: bool, severity: Option<Severity>) -> Block {
    let name = fh_core::describe::segment_name(segment, index);
    let forged = in_mm(balance.forged_start);
    let unnamed = segment.name.trim().is_empty();
    Block {
        unique_name: if alone || unnamed { name.clone() } else { format!("{name} ({})", index + 1) },
        name,
        stock: [in_mm(balance.mark_start), in_mm(balance.mark_end)],
        forged: [forged, forged + in_mm(balance.forged_length)],
        mark: balance.mark_end_shop,
        hatched: matches!(segment.form, Form::Hold { .. } | Form::Trim { .. }),
        settled: balance.shape.is_some(),
        severity,
        outlines: PerView::each(|view| balance.silhouette_mm(view)),
        repeats: laid_repeats(segment, balance),
    }
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
