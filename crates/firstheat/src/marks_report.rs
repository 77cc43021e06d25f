//! The marks for other programs: a stable contract. Its keys, their order and their units are a promise.

use crate::caution_report::{self, CautionReport};
use crate::finding_report::{self, FindingReport};
use fh_core::balance::{Balance, BarBalance, Block, Grown, SegmentBalance, SizeBalance, ViaBalance};
use fh_core::contents::{Answer, Contents, contents};
use fh_core::describe::{section_words, via_words};
use fh_core::metal::Standing;
use fh_core::plan::{AskedSize, Bar, Plan, PlanUnit, Segment};
use serde::Serialize;
use uom::si::area::square_millimeter;
use uom::si::f64::Length;
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
    sizes: Vec<SizeReport<'a>>,
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
    #[serde(skip_serializing_if = "Vec::is_empty")]
    contents: Vec<ContentsReport>,
}

/// What is in a block that is left open.
#[derive(Debug, Serialize)]
struct ContentsReport {
    path: String,
    metal_mm3: f64,
    answers: Vec<AnswerReport>,
}

/// What it could be made into.
#[derive(Debug, Serialize)]
#[serde(rename_all = "snake_case")]
enum AnswerReport {
    Drawn { section: String, length_mm: f64 },
    Leaf { thickness_mm: f64, length_mm: f64, width_mm: f64 },
    Disc { thickness_mm: f64, diameter_mm: f64 },
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

/// A part with its metal and its marks.
#[derive(Debug, Serialize)]
pub(crate) struct SegmentReport<'a> {
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
    #[serde(skip_serializing_if = "Option::is_none")]
    grown: Option<GrownReport>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    via: Vec<ViaReport>,
    #[serde(skip_serializing_if = "Option::is_none")]
    blank: Option<BlankReport>,
}

/// What is cut off the blank of a plate that is cut to shape, and what of its outline the blank does not hold.
#[derive(Debug, Serialize)]
struct BlankReport {
    cut_away_mm3: f64,
    missing_mm3: f64,
    missing_mm2: f64,
}

impl BlankReport {
    fn new(balance: &SegmentBalance) -> Option<Self> {
        let cut = balance.shape.as_ref()?.cut()?;
        Some(Self {
            cut_away_mm3: cut.away.get::<cubic_millimeter>(),
            missing_mm3: cut.missing.get::<cubic_millimeter>(),
            missing_mm2: cut.missing_area.get::<square_millimeter>(),
        })
    }
}

/// A shape that a part has on the way.
#[derive(Debug, Serialize)]
struct ViaReport {
    words: String,
    metal_mm3: f64,
    length_mm: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    follows: Option<FollowsReport>,
}

/// The size of it that follows from the metal, and what it is where all scale were lost by then.
#[derive(Debug, Serialize)]
struct FollowsReport {
    size: &'static str,
    mm: f64,
    low_mm: f64,
}

impl ViaReport {
    fn all(segment: &Segment, balance: &SegmentBalance, unit: PlanUnit) -> Vec<Self> {
        let one = |(to, via): (usize, &ViaBalance)| {
            let follows = via.follows.map(|it| FollowsReport {
                size: it.name.words(),
                mm: it.size.get::<millimeter>(),
                low_mm: it.low.get::<millimeter>(),
            });
            Self {
                words: via_words(segment, balance, to, unit).unwrap_or_default(),
                metal_mm3: via.metal.get::<cubic_millimeter>(),
                length_mm: via.shape.as_ref().map(|shape| shape.length().get::<millimeter>()),
                follows,
            }
        };
        balance.via.iter().enumerate().map(one).collect()
    }
}

/// A size that the finished piece is asked to have.
#[derive(Debug, Serialize)]
struct SizeReport<'a> {
    name: &'a str,
    asked_mm: f64,
    value_mm: Option<f64>,
    kept_by: Option<String>,
    met: bool,
}

impl<'a> SizeReport<'a> {
    fn new(plan: &Plan, size: &'a AskedSize, balance: &SizeBalance) -> Self {
        let bar = balance.bar.and_then(|bar| plan.bars.get(bar));
        Self {
            name: &size.name,
            asked_mm: size.size.mm(),
            value_mm: balance.value.map(|value| value.get::<millimeter>()),
            kept_by: bar.zip(balance.kept_by).map(|(bar, part)| bar.path(part)),
            met: balance.met,
        }
    }
}

/// What a section grows to that is left as it grows.
#[derive(Debug, Serialize)]
struct GrownReport {
    low_mm: f64,
    likely_mm: f64,
    high_mm: f64,
}

impl GrownReport {
    fn new(grown: &Grown) -> Option<Self> {
        let [low_mm, likely_mm, high_mm] = grown.size?.map(|size| size.get::<millimeter>());
        Some(Self { low_mm, likely_mm, high_mm })
    }
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
        let bars =
            plan.bars.iter().zip(&balance.bars).map(|(bar, balance)| BarReport::new(plan, bar, balance)).collect();
        let findings = finding_report::reports(plan, balance);
        let sizes = plan.sizes.iter().zip(&balance.sizes).map(|(size, of)| SizeReport::new(plan, size, of)).collect();
        Self { title: &plan.title, bars, sizes, findings, cautions: caution_report::reports(plan, balance) }
    }
}

impl<'a> BarReport<'a> {
    fn new(plan: &Plan, bar: &'a Bar, balance: &BarBalance) -> Self {
        let paths = bar.paths();
        Self {
            name: &bar.name,
            count: bar.pieces(),
            stock_area_mm2: balance.stock_area.get::<square_millimeter>(),
            stock_length_mm: balance.stock_length.get::<millimeter>(),
            finished_mass_kg: balance.finished_mass.get::<kilogram>(),
            stock_mass_kg: balance.stock_mass.get::<kilogram>(),
            segments: segments(plan, bar, balance),
            blocks: balance.blocks.iter().map(|block| BlockReport::new(block, &paths)).collect(),
            contents: contents(plan, bar, balance).iter().map(|of| ContentsReport::new(plan, &paths, of)).collect(),
        }
    }
}

/// The parts of a bar, on the bar as it is planned or as far as it has come.
pub(crate) fn segments<'a>(plan: &Plan, bar: &'a Bar, balance: &BarBalance) -> Vec<SegmentReport<'a>> {
    let flat = bar.flat();
    let all = bar.paths().into_iter().zip(flat.iter().zip(&balance.segments));
    all.map(|(path, (flat, balance))| SegmentReport::new(path, flat.segment, balance, plan.units.length)).collect()
}

impl<'a> SegmentReport<'a> {
    fn new(path: String, segment: &'a Segment, balance: &SegmentBalance, unit: PlanUnit) -> Self {
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
            grown: balance.grown.as_ref().and_then(GrownReport::new),
            via: ViaReport::all(segment, balance, unit),
            blank: BlankReport::new(balance),
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

impl ContentsReport {
    fn new(plan: &Plan, paths: &[String], of: &Contents) -> Self {
        let mm = |length: Length| length.get::<millimeter>();
        let answer = |answer: &Answer| match *answer {
            Answer::Drawn { section, length } => {
                AnswerReport::Drawn { section: section_words(section, plan.units.length), length_mm: mm(length) }
            }
            Answer::Leaf { thickness, length, width } => {
                AnswerReport::Leaf { thickness_mm: mm(thickness), length_mm: mm(length), width_mm: mm(width) }
            }
            Answer::Disc { thickness, diameter } => {
                AnswerReport::Disc { thickness_mm: mm(thickness), diameter_mm: mm(diameter) }
            }
        };
        Self {
            path: paths.get(of.segment).cloned().unwrap_or_default(),
            metal_mm3: of.metal.get::<cubic_millimeter>(),
            answers: of.answers.iter().map(answer).collect(),
        }
    }
}
