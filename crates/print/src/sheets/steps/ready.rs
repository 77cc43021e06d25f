//! What is laid ready before the fire is lit: the tools with the steps that want them, what does in their place, and the gauges.

use super::at_hand::at_hand;
use super::cell::lines_block;
use crate::drawing::{Item, at};
use crate::fonts::Weight;
use crate::pen::Pen;
use crate::sheets::findings::heading;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::paragraph::{lines, paragraph};
use crate::sheets::type_sizes::{BODY, CAPTION};
use crate::typeset;
use fh_core::plan::Plan;
use fh_work::{Gauge, Tool, Worked};

/// The side of a box to tick.
const TICK_MM: f64 = 4.2;
/// From the start of a box to its words.
const WORDS_MM: f64 = 6.2;
/// Between two things in a line.
const BETWEEN_MM: f64 = 6.0;
/// From one line to the next.
const LINE_MM: f64 = 6.6;
/// The lines of one thing at most.
const MOST_LINES: usize = 3;
/// The things that are listed at most.
const MOST: usize = 60;

/// Puts the tools, what does in their place and the gauges on the flow, each with a box to tick when it lies ready.
pub(super) fn put_ready(flow: &mut Flow, plan: &Plan, worked: &Worked) {
    let tools = worked.tools.iter().map(|tool| with_steps(&tool.words, tool_steps(tool)));
    let besides = at_hand(plan, worked).into_iter().map(str::to_owned);
    put_list(flow, "Have ready, for these steps", &tools.chain(besides).collect::<Vec<_>>());
    put_other_ways(flow, &worked.tools);
    let gauges: Vec<String> = worked.gauges.iter().map(gauge_words).collect();
    put_list(flow, "Gauges, and what the caliper measures", &gauges);
}

/// What does in place of a tool that the smith may not own, tools that share it in one line.
fn put_other_ways(flow: &mut Flow, tools: &[Tool]) {
    // Who has not said what they own is not told what to do without it.
    if !tools.iter().any(|tool| tool.owned && !tool.kind.is_in_every_smithy()) {
        flow.skip(3.0);
        return;
    }
    let is_wanting = |tool: &&Tool| !tool.owned && !tool.other_way.is_empty() && !is_told_in_the_name(tool);
    let wanting = || tools.iter().filter(is_wanting);
    let mut ways: Vec<&str> = Vec::new();
    for tool in wanting() {
        if !ways.contains(&tool.other_way) {
            ways.push(tool.other_way);
        }
    }
    for way in ways.into_iter().take(MOST) {
        let mut of: Vec<&str> = wanting().filter(|tool| tool.other_way == way).map(|tool| tool.kind.name()).collect();
        of.dedup();
        let words = format!("No {}? {way}", of.join(", no "));
        flow.put(paragraph(&words, CAPTION, Weight::Regular, flow.width()));
    }
    flow.skip(3.0);
}

/// Whether the tool's own words say what else does.
fn is_told_in_the_name(tool: &Tool) -> bool {
    tool.words.contains(", or ")
}

/// The steps that use a tool, counted from 0.
fn tool_steps(tool: &Tool) -> Vec<usize> {
    let mut steps: Vec<usize> = tool.uses.iter().flat_map(|one| one.steps.iter().copied()).collect();
    steps.sort_unstable();
    steps.dedup();
    steps
}

/// `file: 9`.
fn with_steps(words: &str, steps: Vec<usize>) -> String {
    match steps.as_slice() {
        [] => words.to_owned(),
        steps => format!("{words}: {}", runs(steps).join(", ")),
    }
}

/// `3/8 in: 2 to 5`; how far it may be off is on the cards, and on the gauge strip.
fn gauge_words(gauge: &Gauge) -> String {
    let by = if gauge.caliper { " (caliper)" } else { "" };
    let least = if gauge.go_mm.is_none() { "at least " } else { "" };
    with_steps(&format!("{least}{}{by}", gauge.words), gauge.steps.clone())
}

/// The numbers of steps, counted from 1, those that follow each other as a run.
fn runs(steps: &[usize]) -> Vec<String> {
    let runs = steps.chunk_by(|one, next| one + 1 == *next);
    let words = |run: &[usize]| match run {
        [first, _, .., last] => vec![format!("{} to {}", first + 1, last + 1)],
        few => few.iter().map(|step| (step + 1).to_string()).collect(),
    };
    runs.flat_map(words).collect()
}

/// Things in lines as they have room, each with its box; a line is not broken over two pages.
fn put_list(flow: &mut Flow, head: &str, all: &[String]) {
    let width = flow.width();
    let mut rows: Vec<Block> = Vec::new();
    let mut x = f64::INFINITY;
    for words in all.iter().take(MOST) {
        let wide = WORDS_MM + typeset::width_mm(&typeset::printable(words), BODY, Weight::Regular);
        if x + wide > width {
            rows.push(Block::default());
            x = 0.0;
        }
        if let Some(row) = rows.last_mut() {
            let thing = thing(words, width).indented(x);
            row.height = row.height.max(thing.height);
            row.items.extend(thing.items);
        }
        x += wide + BETWEEN_MM;
    }
    for (index, row) in rows.into_iter().enumerate() {
        flow.put(if index == 0 { heading(head).over(row) } else { row });
    }
    if all.len() > MOST {
        let words = format!("… and {} more: see the plan.", all.len() - MOST);
        flow.put(paragraph(&words, BODY, Weight::SemiBold, width));
    }
    flow.skip(2.0);
}

/// One thing: a box to tick, and what it is.
fn thing(words: &str, width: f64) -> Block {
    let lines = lines(words, BODY, Weight::Regular, width - WORDS_MM, MOST_LINES);
    let words = lines_block(&lines, BODY, Weight::Regular);
    let mut items = vec![Item::rectangle(at(0.2, 0.4), at(0.2 + TICK_MM, 0.4 + TICK_MM), None, Some(Pen::Frame))];
    let height = LINE_MM.max(words.height + 1.4);
    items.extend(words.items.into_iter().map(|item| item.shifted(WORDS_MM, 0.4)));
    Block { height, items }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_that_follow_each_other_are_a_run() {
        assert_eq!(with_steps("file", vec![8]), "file: 9");
        assert_eq!(with_steps("hammer", vec![1, 2, 3, 4, 8, 10, 11]), "hammer: 2 to 5, 9, 11, 12");
        assert_eq!(with_steps("extinguisher", Vec::new()), "extinguisher");
    }
}
