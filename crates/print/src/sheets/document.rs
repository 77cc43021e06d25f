//! Several kinds of sheet in one document, its pages counted through.

use super::cautions;
use super::flow::Flow;
use super::names::title;
use super::steps::Job;
use super::{bench, gauges, ladder, mark_sheet as marks, templates};
use crate::drawing::{Drawing, Page};
use crate::paper::{Orientation, Paper};
use fh_core::balance::Balance;
use fh_core::findings::Finding;
use fh_core::plan::{Bar, Plan};
use fh_work::{Shop, work_out};

/// A kind of sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sheet {
    /// The bar at full scale with its marks.
    Marks,
    /// One leaf to forge from: the piece, its marks and every step in a line.
    Bench,
    /// What the hot iron is laid on, at full scale.
    Templates,
    /// How long each segment is where it is left fat or goes thin.
    Ladder,
    /// A card for each step of the work.
    Steps,
    /// The whole work in a table.
    StepList,
    /// A strip of sheet to cut, with a notch for each size.
    Gauges,
}

impl Sheet {
    /// Every kind, in the order they are offered: those of the piece, then those of its order of work.
    pub const ALL: [Self; 7] =
        [Self::Marks, Self::Templates, Self::Ladder, Self::Bench, Self::Steps, Self::StepList, Self::Gauges];

    /// What is printed where nothing else is asked for: where the marks go, and the work.
    pub const USUAL: [Self; 2] = [Self::Marks, Self::Bench];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Marks => "mark sheet",
            Self::Bench => "bench sheet",
            Self::Templates => "templates",
            Self::Ladder => "ladder",
            Self::Steps => "step cards",
            Self::StepList => "steps, short",
            Self::Gauges => "gauge strip",
        }
    }

    /// What it is for, in a line.
    pub fn purpose(self) -> &'static str {
        match self {
            Self::Marks => "The bar at full scale: lay it on and punch the marks.",
            Self::Bench => "One leaf to forge from: the piece, its marks and every step in a line.",
            Self::Templates => "Outlines at full scale to lay the hot iron on.",
            Self::Ladder => "How long a part comes out where it is left fat or goes thin.",
            Self::Steps => "A card for each step, with its picture, sizes and tools.",
            Self::StepList => "All steps in one table, without pictures.",
            Self::Gauges => "A strip to cut from sheet, with a notch for each size.",
        }
    }

    /// The word for it in the name of a file.
    pub fn file_word(self) -> &'static str {
        match self {
            Self::Marks => "marks",
            Self::Bench => "bench",
            Self::Templates => "templates",
            Self::Ladder => "ladder",
            Self::Steps => "steps",
            Self::StepList => "steps-short",
            Self::Gauges => "gauges",
        }
    }

    /// Whether it is words and tables rather than lengths along a bar.
    fn is_read(self) -> bool {
        matches!(self, Self::Steps | Self::StepList | Self::Bench)
    }

    /// Whether it stands upright: the bench sheet always, and what is read where it is printed with what shows a bar.
    fn is_upright(self, all: &[Self]) -> bool {
        self == Self::Bench || (self.is_read() && !all.iter().all(|sheet| sheet.is_read()))
    }

    /// Whether it follows the order of work.
    fn follows_the_order(self) -> bool {
        matches!(self, Self::Bench | Self::Steps | Self::StepList | Self::Gauges)
    }
}

/// Which way the paper lies for these sheets: upright where all of them are read, lying where a bar runs along the page.
pub fn usual_orientation(sheets: &[Sheet]) -> Orientation {
    if !sheets.is_empty() && sheets.iter().all(|sheet| sheet.is_read()) {
        Orientation::Portrait
    } else {
        Orientation::Landscape
    }
}

/// The sheets of a plan in one document, in this order, for a smithy that has what every smithy has.
pub fn document(plan: &Plan, balance: &Balance, sheets: &[Sheet], paper: Paper, orientation: Orientation) -> Drawing {
    document_for(plan, balance, &Shop::default(), sheets, paper, orientation)
}

/// The sheets of a plan in one document, in this order, for a smith who owns these tools.
pub fn document_for(
    plan: &Plan,
    balance: &Balance,
    shop: &Shop,
    sheets: &[Sheet],
    paper: Paper,
    orientation: Orientation,
) -> Drawing {
    let asks = |sheet: &Sheet| sheet.follows_the_order() || (*sheet == Sheet::Marks && is_looked_over(plan));
    let worked = sheets.iter().any(asks).then(|| work_out(plan, balance, shop));
    let warned = &fh_core::cautions::cautions(plan, balance);
    let mut flows: Vec<Flow> = Vec::new();
    for sheet in sheets {
        let flow =
            flow_lying(&mut flows, paper, if sheet.is_upright(sheets) { Orientation::Portrait } else { orientation });
        match (sheet, &worked) {
            (Sheet::Marks, worked) => {
                let short = worked.as_ref().map_or(&[] as &[Finding], |worked| &worked.scale_short);
                marks::put(flow, plan, balance, (warned, short));
            }
            (Sheet::Templates, _) => templates::put(flow, plan, balance, warned),
            (Sheet::Ladder, _) => ladder::put(flow, plan, balance, warned),
            (Sheet::Bench, Some(worked)) => bench::put(flow, &Job { plan, balance, worked, warned }),
            (Sheet::Steps, Some(worked)) => Job { plan, balance, worked, warned }.put_cards(flow),
            (Sheet::StepList, Some(worked)) => Job { plan, balance, worked, warned }.put_table(flow),
            (Sheet::Gauges, Some(worked)) => gauges::put(flow, plan, worked, warned),
            (Sheet::Bench | Sheet::Steps | Sheet::StepList | Sheet::Gauges, None) => {}
        }
    }
    if let Some(first) = flows.first_mut() {
        cautions::put_general(first, warned);
    }
    let names: Vec<&str> = sheets.iter().map(|sheet| sheet.name()).collect();
    let title = format!("{}: {}", title(plan), names.join(", "));
    Drawing { title, paper, orientation, pages: pages(flows) }
}

/// The last flow where its pages lie so, else a further one.
fn flow_lying(flows: &mut Vec<Flow>, paper: Paper, orientation: Orientation) -> &mut Flow {
    if flows.last().is_none_or(|last| last.orientation() != orientation) {
        flows.push(Flow::new(paper, orientation));
    }
    let last = flows.len() - 1;
    &mut flows[last]
}

/// The pages of all flows, counted through.
fn pages(flows: Vec<Flow>) -> Vec<Page> {
    let count = flows.iter().map(Flow::page_count).sum();
    let mut pages = Vec::new();
    for flow in flows {
        pages.extend(flow.finish(pages.len() + 1, count));
    }
    pages
}

/// Whether the order of a plan is worked out for its mark sheet, which tells by it what the fire takes: of a plan that is
/// forged by one smith. Of more parts the order takes seconds.
fn is_looked_over(plan: &Plan) -> bool {
    const MOST_PARTS: usize = 200;
    plan.bars.iter().map(Bar::count_segments).sum::<usize>() <= MOST_PARTS
}

/// The mark sheet of a plan, with a part for each of its bars.
pub fn mark_sheet(plan: &Plan, balance: &Balance, paper: Paper, orientation: Orientation) -> Drawing {
    document(plan, balance, &[Sheet::Marks], paper, orientation)
}

/// The ladder sheet of a plan: how long each segment is where it is left fat or goes thin.
pub fn ladder_sheet(plan: &Plan, balance: &Balance, paper: Paper, orientation: Orientation) -> Drawing {
    document(plan, balance, &[Sheet::Ladder], paper, orientation)
}

/// The templates of a plan: what the hot iron is laid on, at full scale.
pub fn template_sheet(plan: &Plan, balance: &Balance, paper: Paper, orientation: Orientation) -> Drawing {
    document(plan, balance, &[Sheet::Templates], paper, orientation)
}
