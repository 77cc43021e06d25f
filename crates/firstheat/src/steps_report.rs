//! The order of work for other programs. The keys and their order are a promise.

use crate::caution_report::{self, CautionReport};
use crate::finding_report::{self, FindingReport};
use crate::marks_report::{self, SegmentReport};
use fh_core::balance::Balance;
use fh_core::plan::{Bar, Plan};
use fh_work::{Hold, LaidLine, MarkLine, Worked, WorkedStep, bar_states};
use serde::Serialize;

/// The order of work of a plan.
#[derive(Serialize)]
pub(crate) struct StepsReport<'a> {
    title: &'a str,
    /// Whether the order is the program's proposal.
    proposed: bool,
    heats: usize,
    steps: Vec<StepReport<'a>>,
    tools: Vec<ToolReport<'a>>,
    gauges: Vec<GaugeReport<'a>>,
    findings: Vec<OrderReport<'a>>,
    heats_of_all: usize,
    /// What the plan asks to beware of.
    cautions: Vec<CautionReport>,
    /// The fewest heats by how long one may last.
    heats_low: usize,
    heats_high: usize,
    /// The same for all pieces: the fewest and the most.
    heats_all_pieces: [usize; 2],
}

#[derive(Serialize)]
struct StepReport<'a> {
    /// Counted from 1.
    step: usize,
    /// The bar's name; empty where the whole piece is meant.
    bar: &'a str,
    title: &'a str,
    work: Vec<DeedReport<'a>>,
    /// The first heat, counted from 1.
    heat: usize,
    /// How many heats; 0 where it is done cold.
    heats: usize,
    minutes: f64,
    place: &'a str,
    tool: &'a str,
    sizes: Vec<SizeReport<'a>>,
    measure: &'a [String],
    leave: &'a str,
    check: &'a str,
    caution: &'a str,
    because: &'a [String],
    lay: &'a str,
    heat_with: &'a str,
    marks: Vec<MarkReport<'a>>,
    /// What has to be hot, in words.
    hot: String,
    laid: Vec<LaidReport<'a>>,
    placed: PlacedReport<'a>,
    held: Option<HeldReport>,
    /// The bar after it; empty where the whole piece is meant.
    shape: Vec<SegmentReport<'a>>,
}

/// Where a step is done, and how the bar lies there.
#[derive(Serialize)]
struct PlacedReport<'a> {
    on: &'a str,
    /// The radius of the edge, in words; empty where it does not matter.
    edge: &'a str,
    /// The side that is up; empty where it does not matter.
    up: &'a str,
}

/// What is held, and how.
#[derive(Serialize)]
struct HeldReport {
    /// The path of the part that is gripped.
    path: String,
    by: &'static str,
    /// From side to side and from top to bottom.
    jaw_mm: [f64; 2],
    /// The middle of the jaws, along the bar as it is before the step.
    at_mm: f64,
    /// From where to where the bar stays cold.
    cold_mm: [f64; 2],
    from_the_side: bool,
    cool_first: bool,
}

#[derive(Serialize)]
struct DeedReport<'a> {
    operation: &'a str,
    /// The part's path; empty where the whole bar is meant.
    path: String,
    /// The shape on the way that it makes, counted from 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    to: Option<usize>,
}

#[derive(Serialize)]
struct MarkReport<'a> {
    /// The path of the part that ends there.
    mark: &'a str,
    at: &'a str,
    ends: &'a str,
    /// Empty at the end of the bar.
    begins: &'a str,
}

#[derive(Serialize)]
struct LaidReport<'a> {
    what: &'a str,
    at: &'a str,
    words: &'a str,
}

#[derive(Serialize)]
struct SizeReport<'a> {
    what: &'a str,
    cold: &'a str,
    hot: &'a str,
    mm: Option<f64>,
    tolerance_mm: f64,
    /// The least and the most that it may be; nothing where that is not said.
    between_mm: Option<[f64; 2]>,
    /// From what its range follows; empty where it is kept by itself.
    follows: &'a str,
}

#[derive(Serialize)]
struct ToolReport<'a> {
    kind: &'a str,
    words: &'a str,
    size_mm: Option<f64>,
    reason: String,
    /// Counted from 1.
    steps: Vec<usize>,
}

#[derive(Serialize)]
struct GaugeReport<'a> {
    what: &'a str,
    size_mm: f64,
    /// None of a least size.
    go_mm: Option<f64>,
    no_go_mm: f64,
    hot_mm: Option<f64>,
    /// Whether it is too thin for a notch.
    caliper: bool,
}

#[derive(Serialize)]
struct OrderReport<'a> {
    #[serde(flatten)]
    finding: FindingReport<'a>,
    reason: &'a str,
    /// Counted from 1.
    steps: Vec<usize>,
    /// Why the smith has it so all the same.
    #[serde(skip_serializing_if = "Option::is_none")]
    accepted: Option<&'a str>,
}

impl<'a> StepsReport<'a> {
    pub(crate) fn new(plan: &'a Plan, balance: &Balance, worked: &'a Worked) -> Self {
        let from_one = |steps: &[usize]| steps.iter().map(|step| step + 1).collect::<Vec<_>>();
        let tools = worked.tools.iter().map(|tool| ToolReport {
            kind: tool.kind.name(),
            words: &tool.words,
            size_mm: tool.size_mm,
            reason: tool.reason(),
            steps: from_one(&tool.steps()),
        });
        let gauges = worked.gauges.iter().map(|gauge| GaugeReport {
            what: &gauge.what,
            size_mm: gauge.size_mm,
            go_mm: gauge.go_mm,
            no_go_mm: gauge.no_go_mm,
            hot_mm: gauge.hot_mm,
            caliper: gauge.caliper,
        });
        let findings = worked.findings.iter().map(|found| OrderReport {
            finding: finding_report::report(plan, &found.finding),
            reason: found.finding.reason,
            steps: from_one(&found.steps),
            accepted: found.accepted.as_deref(),
        });
        let steps = worked.steps.iter().enumerate().map(|(number, step)| step_report(plan, number, step));
        let mut steps: Vec<StepReport<'a>> = steps.collect();
        for (at, bar) in plan.bars.iter().enumerate() {
            for (done, state) in bar_states(plan, balance, worked, at).into_iter().skip(1) {
                steps[done - 1].shape = marks_report::segments(plan, bar, &state);
            }
        }
        Self {
            title: &plan.title,
            proposed: worked.proposed,
            heats: worked.heats,
            steps,
            tools: tools.collect(),
            gauges: gauges.collect(),
            findings: findings.collect(),
            heats_of_all: worked.heats_of_all,
            cautions: caution_report::reports(plan, balance),
            heats_low: worked.heats_between[0],
            heats_high: worked.heats_between[1],
            heats_all_pieces: worked.heats_of_all_between,
        }
    }
}

fn step_report<'a>(plan: &'a Plan, number: usize, step: &'a WorkedStep) -> StepReport<'a> {
    let bar = step.bar.and_then(|bar| plan.bars.get(bar));
    let deed = |task: &fh_work::Task| DeedReport {
        operation: task.operation.name(),
        path: bar.zip(task.part).map_or_else(String::new, |(bar, at)| bar.path(at)),
        to: task.to.map(|to| to + 1),
    };
    let size = |size: &'a fh_work::Size| SizeReport {
        what: &size.what,
        cold: &size.cold,
        hot: size.hot.as_deref().unwrap_or_default(),
        mm: size.mm,
        tolerance_mm: size.tolerance_mm,
        between_mm: size.between_mm,
        follows: size.follows.as_deref().unwrap_or_default(),
    };
    StepReport {
        step: number + 1,
        bar: bar.map_or("", |bar| &bar.name),
        title: &step.title,
        work: step.tasks.iter().map(deed).collect(),
        heat: step.heat,
        heats: step.needs,
        minutes: step.minutes,
        place: step.place.name(),
        tool: &step.tool,
        sizes: step.sizes.iter().map(size).collect(),
        measure: &step.measure,
        leave: step.leave.as_deref().unwrap_or_default(),
        check: step.check.as_deref().unwrap_or_default(),
        caution: step.caution.as_deref().unwrap_or_default(),
        because: &step.because,
        lay: step.lay.as_deref().unwrap_or_default(),
        heat_with: step.heat_with.as_deref().unwrap_or_default(),
        marks: step.marks.iter().map(mark).collect(),
        hot: step.hot_words(plan).unwrap_or_default(),
        laid: step.laid.iter().map(laid).collect(),
        placed: PlacedReport {
            on: step.place.name(),
            edge: step.edge.as_deref().unwrap_or_default(),
            up: step.up.as_deref().unwrap_or_default(),
        },
        held: step.hold.map(|hold| held(step.held_bar.and_then(|bar| plan.bars.get(bar)).or(bar), &hold)),
        shape: Vec::new(),
    }
}

fn held(bar: Option<&Bar>, hold: &Hold) -> HeldReport {
    HeldReport {
        path: bar.map_or_else(String::new, |bar| bar.path(hold.part)),
        by: if hold.by_hand { "hand" } else { "tongs" },
        jaw_mm: hold.jaw_mm,
        at_mm: hold.at_mm,
        cold_mm: hold.cold_mm,
        from_the_side: hold.from_the_side,
        cool_first: hold.cool_first,
    }
}

fn laid(line: &LaidLine) -> LaidReport<'_> {
    LaidReport { what: line.what, at: &line.at, words: &line.words }
}

fn mark(mark: &MarkLine) -> MarkReport<'_> {
    MarkReport {
        mark: &mark.number,
        at: &mark.at,
        ends: &mark.ends,
        begins: mark.begins.as_deref().unwrap_or_default(),
    }
}
