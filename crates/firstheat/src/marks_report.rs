//! The marks for other programs: a stable contract. Its keys, their order and their units are a promise.

use crate::caution_report::{self, CautionReport};
use crate::finding_report::{self, FindingReport};
use fh_core::balance::{Balance, BarBalance, Block, SegmentBalance};
use fh_core::metal::Standing;
use fh_core::plan::{Bar, Plan, Segment};
use serde::Serialize;
use uom::si::area::square_millimeter;
use uom::si::length::millimeter;
use uom::si::mass::kilogram;
use uom::si::volume::cubic_millimeter;

/// A plan's marks and balance.
#[derive(Debug, Serialize)]
pub(crate) struct MarksReport<'a> {
    title: &'a str,
    bars: Vec<BarReport<'a>>,
    findings: Vec<FindingReport<'a>>,
    /// What the plan asks to beware of.
    cautions: Vec<CautionReport>,
}

#[derive(Debug, Serialize)]
struct BarReport<'a> {
    name: &'a str,
    count: u32,
    stock_area_mm2: f64,
    stock_length_mm: f64,
    finished_mass_kg: f64,
    stock_mass_kg: f64,
    segments: Vec<SegmentReport<'a>>,
    blocks: Vec<BlockReport>,
}

/// From one fixed mark, or the datum, to the next.
#[derive(Debug, Serialize)]
struct BlockReport {
    mark_start_mm: f64,
    mark_end_mm: f64,
    fixed: [bool; 2],
    over_mm3: f64,
    over_length_mm: f64,
    takes_up: Vec<String>,
}

#[derive(Debug, Serialize)]
struct SegmentReport<'a> {
    path: String,
    name: &'a str,
    finished_volume_mm3: f64,
    trimmed_volume_mm3: f64,
    forged_length_mm: f64,
    stock_length_mm: f64,
    mark_start_mm: f64,
    mark_end_mm: f64,
    mark_end_shop: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    corner: Option<CornerReport>,
    mark_fixed: bool,
}

/// What is left standing for a corner, against what it takes.
#[derive(Debug, Serialize)]
struct CornerReport {
    needed_mm3: f64,
    standing_mm3: f64,
    needed_height_mm: f64,
    standing_height_mm: f64,
    between_walls_mm: Option<f64>,
    base_mm: Option<f64>,
}

impl From<&Standing> for CornerReport {
    fn from(standing: &Standing) -> Self {
        let set_downs = standing.set_downs();
        Self {
            needed_mm3: standing.needed().get::<cubic_millimeter>(),
            standing_mm3: standing.volume().get::<cubic_millimeter>(),
            needed_height_mm: standing.depth().get::<millimeter>(),
            standing_height_mm: standing.height.get::<millimeter>(),
            between_walls_mm: set_downs.and_then(|found| found.top).map(|top| top.get::<millimeter>()),
            base_mm: set_downs.map(|found| found.base.get::<millimeter>()),
        }
    }
}

impl<'a> MarksReport<'a> {
    /// The report of a plan.
    pub(crate) fn new(plan: &'a Plan, balance: &'a Balance) -> Self {
        let bars = plan.bars.iter().zip(&balance.bars).map(|(bar, balance)| BarReport::new(bar, balance)).collect();
        let findings = finding_report::reports(plan, balance);
        Self { title: &plan.title, bars, findings, cautions: caution_report::reports(plan, balance) }
    }
}

impl<'a> BarReport<'a> {
    fn new(bar: &'a Bar, balance: &BarBalance) -> Self {
        let flat = bar.flat();
        let paths = bar.paths();
        let segments = paths.iter().cloned().zip(flat.iter().zip(&balance.segments));
        Self {
            name: &bar.name,
            count: bar.pieces(),
            stock_area_mm2: balance.stock_area.get::<square_millimeter>(),
            stock_length_mm: balance.stock_length.get::<millimeter>(),
            finished_mass_kg: balance.finished_mass.get::<kilogram>(),
            stock_mass_kg: balance.stock_mass.get::<kilogram>(),
            segments: segments.map(|(path, (flat, balance))| SegmentReport::new(path, flat.segment, balance)).collect(),
            blocks: balance.blocks.iter().map(|block| BlockReport::new(block, &paths)).collect(),
        }
    }
}

impl<'a> SegmentReport<'a> {
    fn new(path: String, segment: &'a Segment, balance: &SegmentBalance) -> Self {
        let fixed = balance.fixed_mark.as_ref().map(|fixed| fixed.text.clone());
        Self {
            path,
            name: &segment.name,
            finished_volume_mm3: balance.finished_volume.get::<cubic_millimeter>(),
            trimmed_volume_mm3: balance.trimmed_volume.get::<cubic_millimeter>(),
            forged_length_mm: balance.forged_length.get::<millimeter>(),
            stock_length_mm: balance.stock_length.get::<millimeter>(),
            mark_start_mm: balance.mark_start.get::<millimeter>(),
            mark_end_mm: balance.mark_end.get::<millimeter>(),
            mark_end_shop: fixed.unwrap_or_else(|| balance.mark_end_shop.to_string()),
            corner: balance.standing.as_ref().map(CornerReport::from),
            mark_fixed: balance.fixed_mark.is_some(),
        }
    }
}

impl BlockReport {
    fn new(block: &Block, paths: &[String]) -> Self {
        Self {
            mark_start_mm: block.mark_start.get::<millimeter>(),
            mark_end_mm: block.mark_end.get::<millimeter>(),
            fixed: block.is_fixed,
            over_mm3: block.over.get::<cubic_millimeter>(),
            over_length_mm: block.over_length.get::<millimeter>(),
            takes_up: block.gives.iter().filter_map(|at| paths.get(*at).cloned()).collect(),
        }
    }
}
