//! The bench sheet: one leaf to forge from. On its front the piece, its marks and the tools; on its back every step in a line.

mod alike;
mod beware;
mod front;
mod ready;
mod rows;
mod runs;
mod words;

use self::alike::{alike_words, are_alike};
use self::front::{FRONTS, Front, Pictures, bar_words, head, marks_blocks};
use self::runs::{Run, runs_block};
use self::words::Below;
use crate::drawing::{Align, Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::{Block, Flow};
use crate::sheets::mark_sheet::ShortTable;
use crate::sheets::names::{bar_name, title};
use crate::sheets::paragraph::paragraph;
use crate::sheets::steps::Job;
use crate::sheets::steps::cell::{fitted, in_white};
use crate::sheets::steps::piece_picture::Named;
use crate::sheets::steps::usual_heat::usual_heat;
use crate::sheets::type_sizes::{BELOW_STEP, CAPTION, FACT, STEP};
use fh_core::balance::{Balance, BarBalance};
use fh_core::plan::{Bar, Hangs, Plan, PlanUnit};
use fh_work::checking_celsius;
use std::collections::BTreeSet;
use std::ops::Range;

/// The height of the band over the steps of a bar.
const BAND_MM: f64 = 7.5;
/// The height of a line for a note by hand.
const NOTE_MM: f64 = 6.5;
/// The lines for a note at most.
const MOST_NOTES: usize = 3;
/// Between two parts of the sheet.
const BETWEEN_MM: f64 = 2.0;
/// Kept free below the lines for a note for what holds at every fire.
const FOR_CAUTIONS_MM: f64 = 38.0;
/// A step more that is told less or smaller costs so much more than a picture or a table that is smaller.
const STEPS_COUNT: usize = 2;
/// Steps that begin on the front cost as much as so many smaller pictures or tables.
const BEGUN_COUNT: usize = 5;
/// The steps that are begun on the front at least; fewer are kept for the back.
const FEWEST_ON_FRONT: usize = 2;

/// How the back is laid out: what is told below a step, and with which em.
#[derive(Clone, Copy)]
struct Back {
    below: Below,
    size: f64,
}

impl Back {
    /// Whether everything is told as close as can be.
    fn is_close(self) -> bool {
        self.below == Below::Place
    }
}

/// The ways to lay it out, the best first.
const BACKS: [Back; 6] = [
    Back { below: Below::Ways, size: STEP[1] },
    Back { below: Below::Hot, size: STEP[0] },
    Back { below: Below::Hot, size: STEP[1] },
    Back { below: Below::Hot, size: STEP[2] },
    Back { below: Below::Place, size: STEP[2] },
    Back { below: Below::Place, size: STEP[3] },
];

/// How a piece of several bars is laid out.
#[derive(Clone, Copy)]
struct Several {
    /// How tall the metal is at most on the picture of the piece and on that of each bar, in mm.
    tall: [f64; 2],
    table: ShortTable,
    back: Back,
}

/// Roomy, and closer where that saves a leaf.
const SEVERAL: [Several; 2] = [
    Several { tall: [54.0, 30.0], table: ShortTable::Becomes, back: BACKS[3] },
    Several { tall: [42.0, 24.0], table: ShortTable::Close, back: BACKS[5] },
];

/// Puts the bench sheet of a plan on the flow.
pub(super) fn put(flow: &mut Flow, job: &Job<'_>) {
    flow.start_part(format!("{} · bench sheet", title(job.plan)));
    match (&job.plan.bars[..], &job.balance.bars[..]) {
        ([bar], [worked]) => put_one_bar(flow, job, bar, worked),
        ([], _) => {
            flow.put(head(job, flow.width()));
            flow.put(paragraph("This plan has no bar yet.", FACT, Weight::SemiBold, flow.width()));
        }
        _ => put_several(flow, job),
    }
    put_notes(flow);
}

/// A piece of one bar: front and back each as roomy as one leaf allows; what does not fit runs on.
fn put_one_bar(flow: &mut Flow, job: &Job<'_>, bar: &Bar, worked: &BarBalance) {
    let width = flow.width();
    let top = head(job, width);
    let mut pictures = Pictures::new(job.plan, job.balance, Named::Parts, width);
    let mut front = |front: &Front| {
        let tools = Some(job).filter(|_| front.has_tools);
        let mut blocks = vec![top.clone(), pictures.block(front.tall, tools, width)];
        blocks.extend(marks_blocks(job.plan, bar, worked, front.table, width));
        blocks
    };
    let fronts: Vec<Vec<Block>> = FRONTS.iter().map(&mut front).collect();
    let backs: Vec<Vec<Block>> = BACKS.iter().map(|back| back_blocks(job, *back, width)).collect();
    let feet = [false, true].map(|tools| [false, true].map(|close| foot_blocks(job, tools, close, width)));
    let foot = |i: usize, j: usize| &feet[usize::from(!FRONTS[i].has_tools)][usize::from(BACKS[j].is_close())];
    let rooms = [flow.room(), flow.page_room()];
    let ways = (0..FRONTS.len()).flat_map(|i| (0..BACKS.len()).map(move |j| [i, j]));
    let cost = |[i, j]: [usize; 2]| {
        let begun = one_leaf(&fronts[i], &backs[j], foot(i, j), rooms)?;
        Some((i + STEPS_COUNT * j + if begun { BEGUN_COUNT } else { 0 }, [i, j]))
    };
    let [i, j] = ways.filter_map(cost).min().map_or([FRONTS.len() - 1, BACKS.len() - 1], |(_, way)| way);
    fronts[i].iter().for_each(|block| flow.put(block.clone()));
    flow.skip(BETWEEN_MM);
    put_steps(flow, job, backs[j].clone(), foot(i, j));
}

/// Whether the steps are begun on the front where front and back find room on two pages; none where they do not.
fn one_leaf(front: &[Block], back: &[Block], foot: &[Block], [first, second]: [f64; 2]) -> Option<bool> {
    let left = first - height(front) - BETWEEN_MM;
    let after = height(foot) + 1.0;
    if left < -BETWEEN_MM {
        return None;
    }
    if height(back) + after <= second.max(left) {
        return Some(false);
    }
    let mut sum = 0.0;
    let here = back.iter().take_while(|block| {
        sum += block.height;
        sum <= left
    });
    let here = here.count();
    let head = back.first().map_or(0.0, |head| head.height);
    (here > FEWEST_ON_FRONT && head + height(&back[here..]) + after <= second).then_some(true)
}

fn height(blocks: &[Block]) -> f64 {
    blocks.iter().map(|block| block.height).sum()
}

/// The steps under their heads.
fn back_blocks(job: &Job<'_>, back: Back, width: f64) -> Vec<Block> {
    let heads = rows::head(width, unit_words(job.plan), boxes(job.plan, Some(0)));
    std::iter::once(heads).chain(step_rows(job, 0..job.worked.steps.len(), back, width)).collect()
}

/// What stands below the steps: what to beware of, tools and gauges where they are not on the front, what hot means.
fn foot_blocks(job: &Job<'_>, has_tools: bool, is_close: bool, width: f64) -> Vec<Block> {
    let ready = || ready::ready(job, width);
    let tools = if has_tools { ready() } else { Block::default() };
    let beware = beware::beware(job.worked.steps.iter().enumerate(), width, is_close);
    let blocks = [beware, tools, hot_block(job, is_close, width)];
    blocks.into_iter().filter(|block| block.height > 0.0).map(|block| block.then_free(1.0)).collect()
}

/// The steps and what stands below them: on one page where they find room there.
fn put_steps(flow: &mut Flow, job: &Job<'_>, back: Vec<Block>, foot: &[Block]) {
    if job.worked.steps.is_empty() {
        flow.put(paragraph("This plan has no steps yet.", FACT, Weight::SemiBold, flow.width()));
        return;
    }
    let whole = height(&back) + height(foot) + 1.0;
    if whole <= flow.page_room() {
        flow.need(whole);
    }
    put_rows(flow, back, (job.plan, boxes(job.plan, Some(0))));
    flow.skip(1.0);
    foot.iter().for_each(|block| flow.put(block.clone()));
}

/// Rows under their heads, which are written again on a further page.
fn put_rows(flow: &mut Flow, blocks: Vec<Block>, (plan, bar_boxes): (&Plan, usize)) {
    let mut blocks = blocks.into_iter();
    let mut above = blocks.next();
    for block in blocks {
        if above.is_none() && block.height > flow.room() {
            above = Some(rows::head(flow.width(), unit_words(plan), bar_boxes));
        }
        flow.put(match above.take() {
            Some(head) => head.over(block),
            None => block,
        });
    }
    above.into_iter().for_each(|head| flow.put(head));
}

fn unit_words(plan: &Plan) -> &'static str {
    match plan.units.length {
        PlanUnit::Millimeter => "mm",
        PlanUnit::Inch => "inches",
    }
}

/// How many boxes a step has to tick: one for each piece of a bar, where they are few.
fn boxes(plan: &Plan, bar: Option<usize>) -> usize {
    const MOST: u32 = 4;
    let bar = match plan.bars.len() {
        1 => plan.bars.first(),
        _ => bar.and_then(|bar| plan.bars.get(bar)),
    };
    bar.map(Bar::pieces).filter(|pieces| (1..=MOST).contains(pieces)).map_or(1, |pieces| pieces as usize)
}

fn step_rows(job: &Job<'_>, numbers: impl Iterator<Item = usize>, back: Back, width: f64) -> Vec<Block> {
    let steps = &job.worked.steps;
    let usual = usual_heat(job.plan, steps);
    let numbers: Vec<usize> = numbers.collect();
    let alike = numbers.chunk_by(|one, next| are_alike(&steps[*one], &steps[*next]));
    let row = |alike: &[usize]| {
        let first = *alike.first()?;
        let words = alike_words(job.plan, (alike, steps), (back.below, usual.as_deref()))?;
        let boxes = if alike.len() > 1 { 1 } else { boxes(job.plan, steps[first].bar) };
        Some(rows::row(&words, ([back.size, width], boxes), begins_a_heat(job, first), back.is_close()))
    };
    alike.filter_map(row).collect()
}

/// Whether a step begins another heat than the last hot one before it.
fn begins_a_heat(job: &Job<'_>, number: usize) -> bool {
    let steps = &job.worked.steps;
    let Some(step) = steps.get(number).filter(|step| step.is_hot()) else { return false };
    let before = steps[..number].iter().rev().find(|before| before.is_hot());
    before.is_none_or(|before| before.heat + before.needs - 1 != step.heat)
}

/// At which heat hot sizes are meant, where any is told.
fn hot_block(job: &Job<'_>, is_close: bool, width: f64) -> Block {
    let sizes = || job.worked.steps.iter().flat_map(|step| &step.sizes);
    match checking_celsius(job.plan).filter(|_| !is_close && sizes().any(words::is_told_hot)) {
        Some(celsius) => runs_block(&[Run::plain(&format!("Hot is {celsius:.0} °C."))], BELOW_STEP, width, 0.0),
        None => Block::default(),
    }
}

/// A piece of several bars, closer where that saves a leaf.
fn put_several(flow: &mut Flow, job: &Job<'_>) {
    let [roomy, close] = SEVERAL.map(|several| {
        let mut tried = flow.clone();
        put_all_bars(&mut tried, job, several);
        tried
    });
    let before = flow.page_count() - 1;
    let leaves = |flow: &Flow| (flow.page_count() - before).div_ceil(2);
    *flow = if leaves(&close) < leaves(&roomy) { close } else { roomy };
}

/// The piece, then strip, marks and steps of each bar under its band, then what is done to the whole.
fn put_all_bars(flow: &mut Flow, job: &Job<'_>, several: Several) {
    let Job { plan, balance, worked, .. } = *job;
    let width = flow.width();
    flow.put(head(job, width));
    if plan.joints.is_empty() {
        flow.put(ready::ready(job, width));
    } else {
        flow.put(Pictures::new(plan, balance, Named::Bars, width).block(several.tall[0], Some(job), width));
    }
    let mut told = BTreeSet::new();
    let mut first = 0;
    for steps in worked.steps.chunk_by(|one, next| one.bar == next.bar) {
        let heading = match steps.first().and_then(|step| step.bar) {
            Some(index) if told.insert(index) => {
                put_bar(flow, job, index, several);
                None
            }
            bar => Some(band(&band_words(job, bar), width)),
        };
        put_own_steps(flow, job, first..first + steps.len(), (heading, several.back));
        first += steps.len();
    }
    (0..plan.bars.len()).filter(|bar| !told.contains(bar)).for_each(|bar| put_bar(flow, job, bar, several));
    foot_blocks(job, false, several.back.is_close(), width).into_iter().for_each(|block| flow.put(block));
}

/// One bar of several under its band: its picture, where it has more parts than one, its strip and its marks.
fn put_bar(flow: &mut Flow, job: &Job<'_>, index: usize, several: Several) {
    let Job { plan, balance, .. } = *job;
    let width = flow.width();
    let Some((bar, worked)) = plan.bars.get(index).zip(balance.bars.get(index)) else { return };
    let mut alone = bar.clone();
    alone.count = None;
    // One bar of several hangs nowhere by itself.
    let hangs = Hangs::default();
    let alone = Plan { bars: vec![alone], joints: Vec::new(), underlay: None, hangs, ..plan.clone() };
    let own = Balance::of_bars(vec![worked.clone()]);
    let mut top = band(&band_words(job, Some(index)), width);
    if worked.segments.len() > 1 {
        top = top.over(Pictures::new(&alone, &own, Named::Parts, width).block(several.tall[1], None, width));
    }
    let mut blocks = marks_blocks(plan, bar, worked, several.table, width).into_iter();
    let strip = blocks.next().unwrap_or_default();
    if top.height + strip.height <= flow.page_room() {
        top = top.over(strip);
    } else {
        flow.put(std::mem::replace(&mut top, strip));
    }
    flow.put(top);
    blocks.for_each(|block| flow.put(block));
    flow.skip(BETWEEN_MM);
}

/// What stands in the band over a bar, or over what is done to the whole piece.
fn band_words(job: &Job<'_>, bar: Option<usize>) -> String {
    let Job { plan, balance, .. } = *job;
    let own = bar.and_then(|index| Some((index, plan.bars.get(index)?, balance.bars.get(index)?)));
    own.map_or_else(
        || "The whole piece".to_owned(),
        |(index, bar, own)| format!("{}: {}", bar_name(plan, index, bar), bar_words(plan, bar, own)),
    )
}

/// Some steps under their heads, and under a band where they have one.
fn put_own_steps(flow: &mut Flow, job: &Job<'_>, steps: Range<usize>, (band, back): (Option<Block>, Back)) {
    let width = flow.width();
    let bar = job.worked.steps.get(steps.start).and_then(|step| step.bar);
    let boxes = boxes(job.plan, bar);
    let head = rows::head(width, unit_words(job.plan), boxes);
    let mut blocks = vec![band.map_or_else(|| head.clone(), |band| band.over(head.clone()))];
    blocks.extend(step_rows(job, steps, back, width));
    put_rows(flow, blocks, (job.plan, boxes));
    flow.skip(BETWEEN_MM);
}

/// White words on a dark band.
fn band(words: &str, width: f64) -> Block {
    let mut items = vec![Item::rectangle(at(0.0, 0.0), at(width, BAND_MM), Some(Gray::DARK), None)];
    let words = fitted(words, FACT, Weight::SemiBold, width - 6.0, at(3.0, 5.4), Align::Left);
    items.extend(words.map(in_white));
    Block { height: BAND_MM, items }.then_free(1.5)
}

/// Lines for a note by hand below the steps, as many as the page has room for; where it has none, beside the check lines.
fn put_notes(flow: &mut Flow) {
    let width = flow.width();
    let last = flow.page_count() - 1;
    let beside = flow.free_beside_the_check_lines().filter(|_| last > 0 && flow.room() < NOTE_MM);
    if let Some([width, height]) = beside {
        let lines = (height / NOTE_MM).floor() as usize;
        let block = (0..lines.max(1)).fold(Block::default(), |all, line| all.over(note(width, line == 0)));
        flow.put_beside_the_check_lines(last, block);
        return;
    }
    let more = ((flow.room() - NOTE_MM - FOR_CAUTIONS_MM) / NOTE_MM).floor().max(0.0) as usize;
    for line in 0..(1 + more).min(MOST_NOTES) {
        flow.put(note(width, line == 0));
    }
}

fn note(width: f64, is_first: bool) -> Block {
    let baseline = NOTE_MM - 1.5;
    let mut items = vec![Item::line(at(0.0, baseline + 0.6), at(width, baseline + 0.6), Pen::Hairline)];
    if is_first {
        items.push(Text::new(at(0.0, baseline), CAPTION, "your note").gray(Gray::DARK).into());
    }
    Block { height: NOTE_MM, items }
}
