//! The front of a bench sheet: the piece, what it is forged from, its marks, and what is laid ready.

use super::ready::ready;
use crate::drawing::{Text, at};
use crate::fonts::Weight;
use crate::sheets::cautions::own_block;
use crate::sheets::findings::{FindingWords, finding_words};
use crate::sheets::flow::Block;
use crate::sheets::mark_sheet::{ShortTable, one_row, short_table};
use crate::sheets::names::{bar_name, title};
use crate::sheets::paragraph::{lines, paragraph};
use crate::sheets::steps::Job;
use crate::sheets::steps::cell::lines_block;
use crate::sheets::steps::opening::order_problems;
use crate::sheets::steps::piece_picture::{Drawn, Named, Picture};
use crate::sheets::title::title_block;
use crate::sheets::type_sizes::{BELOW_STEP, BODY, CAPTION, FACT};
use fh_core::balance::{Balance, BarBalance};
use fh_core::findings::Severity;
use fh_core::plan::{Bar, Plan};
use fh_work::Worked;

/// With less room than this beside a picture, nothing is put there.
const ASIDE_MM: f64 = 58.0;
/// Between a picture and what stands beside it.
const GUTTER_MM: f64 = 6.0;
/// Between two parts of the sheet.
const BETWEEN_MM: f64 = 2.0;
/// The warnings and the problems that are told at most.
const MOST_FOUND: usize = 5;
/// The lines of a warning at most.
const MOST_LINES: usize = 4;

/// How the front is laid out, from roomy to close.
#[derive(Clone, Copy)]
pub(super) struct Front {
    /// How tall the metal on the picture is at most, in mm.
    pub(super) tall: f64,
    /// How much the table of marks tells.
    pub(super) table: ShortTable,
    /// Whether tools and gauges stand on it.
    pub(super) has_tools: bool,
}

/// The ways to lay it out, the best first.
pub(super) const FRONTS: [Front; 11] = [
    Front { tall: 66.0, table: ShortTable::Whole, has_tools: true },
    Front { tall: 54.0, table: ShortTable::Becomes, has_tools: true },
    Front { tall: 42.0, table: ShortTable::Becomes, has_tools: true },
    Front { tall: 54.0, table: ShortTable::Becomes, has_tools: false },
    Front { tall: 42.0, table: ShortTable::Becomes, has_tools: false },
    Front { tall: 30.0, table: ShortTable::Becomes, has_tools: false },
    Front { tall: 42.0, table: ShortTable::Marks, has_tools: true },
    Front { tall: 42.0, table: ShortTable::Marks, has_tools: false },
    Front { tall: 30.0, table: ShortTable::Marks, has_tools: false },
    Front { tall: 20.0, table: ShortTable::Marks, has_tools: true },
    Front { tall: 20.0, table: ShortTable::Close, has_tools: true },
];

/// The title, what to beware of, the facts, and the warnings.
pub(super) fn head(job: &Job<'_>, width: f64) -> Block {
    let Job { plan, balance, worked, warned } = *job;
    let bar = match &plan.bars[..] {
        [bar] => bar_name(plan, 0, bar),
        _ => String::new(),
    };
    let facts = paragraph(&stock_words(job), FACT, Weight::SemiBold, width);
    let facts = facts.over(paragraph(&work_words(job), BODY, Weight::Regular, width)).then_free(BETWEEN_MM);
    let found = balance.findings.iter().filter(|one| one.severity == Severity::Warning);
    let found = found.map(|one| finding_words(plan, one)).chain(order_problems(worked));
    let block = title_block(&title(plan), &bar, "BENCH SHEET", width).over(facts).over(own_block(warned, width));
    block.over(found_block(&found.collect::<Vec<_>>(), width))
}

/// What is fetched and cut: of one bar all of it, of several how many there are.
fn stock_words(job: &Job<'_>) -> String {
    let Job { plan, balance, .. } = *job;
    match (&plan.bars[..], balance.bars.first()) {
        ([bar], Some(own)) => bar_words(plan, bar, own),
        (bars, _) => format!("{} bars, {}", bars.len(), plan.material_name()),
    }
}

/// How much more of a bar the fire may take than its marks allow for; none where they allow for all.
fn more_words(worked: &Worked, bar: usize) -> Option<&str> {
    worked.scale.iter().find(|loss| loss.bar == bar)?.more.as_deref()
}

/// `1/2 in square · cut 9 1/8 in · make 2`.
pub(super) fn bar_words(plan: &Plan, bar: &Bar, worked: &BarBalance) -> String {
    let length = match &bar.length {
        Some(length) => format!("already cut to {}", length.text()),
        None if worked.segments.is_empty() => "length not known yet".to_owned(),
        None => format!("cut {}", worked.cut_length_shop(plan.units.marks).text()),
    };
    format!("{} · {length} · make {}", bar.stock.describe(), bar.pieces())
}

/// The metal, the heats, and how several of one bar are worked.
fn work_words(job: &Job<'_>) -> String {
    let Job { plan, worked, .. } = *job;
    let heats = worked.heats_words();
    let own = match &plan.bars[..] {
        [_] => {
            // Not in the length to cut: what is measured from the far end would be out by it.
            let more = more_words(worked, 0).map(|more| format!(" Scale may take {more} more of the bar."));
            format!("{} · {heats}.{}", plan.material_name(), more.unwrap_or_default())
        }
        _ => format!("{heats}."),
    };
    let most = plan.bars.iter().map(Bar::pieces).max().unwrap_or(1);
    let (fire, both) = match most {
        0 | 1 => return own,
        2 => ("both in the fire", "both"),
        _ => ("two or three in the fire", "all"),
    };
    let which = if plan.bars.len() == 1 { both } else { "all of a kind" };
    format!("{own} Each step on {which} before the next, {fire}.")
}

/// The warnings and the problems with the order, the gravest word before each.
fn found_block(found: &[FindingWords], width: f64) -> Block {
    let one = |found: &FindingWords| {
        let word = if found.stop { "STOP" } else { "Warning" };
        let words = lines(&format!("{word}: {}", found.message), BELOW_STEP, Weight::SemiBold, width, MOST_LINES);
        lines_block(&words, BELOW_STEP, Weight::SemiBold).then_free(0.8)
    };
    let block = found.iter().take(MOST_FOUND).map(one).fold(Block::default(), Block::over);
    match found.len().checked_sub(MOST_FOUND) {
        Some(more @ 1..) => {
            let words = format!("… and {more} more: see the mark sheet and the step cards.");
            block.over(paragraph(&words, BELOW_STEP, Weight::SemiBold, width))
        }
        _ => block,
    }
}

/// A plan's pictures, each height drawn once.
pub(super) struct Pictures<'a> {
    picture: Option<Picture<'a>>,
    drawn: Vec<(f64, Drawn)>,
}

impl<'a> Pictures<'a> {
    /// The pictures of a plan, for a page so wide.
    pub(super) fn new(plan: &'a Plan, balance: &'a Balance, named: Named, width: f64) -> Self {
        Self { picture: Picture::new(plan, balance, named, [width, FRONTS[0].tall]), drawn: Vec::new() }
    }

    /// The one whose metal is no taller than `tall` mm, with tools and gauges beside it or below where they are wanted.
    pub(super) fn block(&mut self, tall: f64, tools: Option<&Job<'_>>, width: f64) -> Block {
        let known = self.drawn.iter().find(|(height, _)| *height == tall).map(|(_, drawn)| drawn.clone());
        let drawn = known.unwrap_or_else(|| {
            let drawn = self.picture.as_ref().map(|picture| picture.drawn(width, tall)).unwrap_or_default();
            self.drawn.push((tall, drawn.clone()));
            drawn
        });
        let left_out = drawn.left_out;
        let mut block = with_tools(drawn, tools, width);
        if left_out {
            let words = "The parts are in the order of the table; a number is left out where it has no room.";
            block = block.over(paragraph(words, CAPTION, Weight::Regular, width));
        }
        if block.height > 0.0 { block.then_free(BETWEEN_MM) } else { block }
    }
}

fn with_tools(drawn: Drawn, tools: Option<&Job<'_>>, width: f64) -> Block {
    let (left, top) = (drawn.free[0] + GUTTER_MM, drawn.free[1]);
    let mut block = drawn.block;
    let Some(job) = tools else { return block };
    if width - left >= ASIDE_MM {
        let aside = ready(job, width - left);
        // Below the words over the picture.
        let top = top + CAPTION;
        if top + aside.height <= block.height {
            block.items.extend(aside.items.into_iter().map(|item| item.shifted(left, top)));
            return block;
        }
    }
    block.then_free(1.0).over(ready(job, width))
}

/// The strip of a bar and the table of its marks, row by row.
pub(super) fn marks_blocks(plan: &Plan, bar: &Bar, worked: &BarBalance, table: ShortTable, width: f64) -> Vec<Block> {
    let Some(strip) = one_row(plan, bar, worked, width, table == ShortTable::Close) else {
        let words = Text::new(at(0.0, FACT), FACT, "Nothing is marked on this bar yet.").bold();
        return vec![Block { height: FACT * 1.5, items: vec![words.into()] }];
    };
    let mut blocks = vec![strip.then_free(BETWEEN_MM)];
    blocks.extend(short_table(plan, bar, worked, width, table));
    blocks
}
