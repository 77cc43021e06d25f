//! The mark sheet: the bar at full scale with its marks, and the table of what they are.

mod block_names;
mod columns;
mod facts;
mod from_plan;
mod header;
mod labels;
mod made;
mod marks;
mod one_row;
mod rows;
mod sane;
mod short_table;
mod slit_lines;
mod slits;
mod strip;
mod strip_row;
mod struck;
mod table;
mod tolerances;
mod words;

pub(super) use self::one_row::one_row;
pub(super) use self::short_table::{ShortTable, short_table};
use self::words::BarWords;
use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::Gray;
use crate::sheets::fact_boxes::facts_block;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::{BODY, FACT};
use crate::sheets::{cautions, findings};
use crate::typeset;
use fh_core::balance::Balance;
use fh_core::cautions::Cautions;
use fh_core::findings::Finding;
use fh_core::plan::Plan;

/// Between two parts of a sheet.
const BETWEEN_MM: f64 = 4.0;

/// Puts the mark sheet of a plan on the flow, with a part for each of its bars.
///
/// What the plan asks to beware of stands under its first title.
/// Marks are drawn at the rounded totals that are printed beside them; the table tells how far each is off. `short` are
/// the parts whose marks allow for less scale than their heats take.
pub(super) fn put(flow: &mut Flow, plan: &Plan, balance: &Balance, (warned, short): (&Cautions, &[Finding])) {
    let words = from_plan::sheet_words(plan, balance, short);
    let (first, last) = (flow.page_count(), words.bars.len().saturating_sub(1));
    let notes = notes_blocks(&words.notes, flow.width());
    for (index, bar) in words.bars.iter().enumerate() {
        flow.start_part(format!("{} · {}", words.title, bar.name));
        let own = notes.as_ref().filter(|_| index == last && bar.findings.is_empty());
        put_bar(flow, &words.title, bar, Some(warned).filter(|_| index == 0));
        let kept = own.map_or(0.0, |notes| kept_for_notes(flow, first, notes));
        put_table(flow, bar, kept);
    }
    if words.bars.is_empty() {
        flow.start_part(words.title.clone());
        flow.put(findings::heading("This plan has no bar yet."));
    }
    if let Some(notes) = &notes {
        put_notes(flow, first, notes);
    }
}

/// The smith's notes, and closer.
fn notes_blocks(notes: &str, width: f64) -> Option<[Block; 2]> {
    let blocks = || [findings::notes_block(notes, width), findings::close_notes_block(notes, width)];
    (!notes.trim().is_empty()).then(blocks)
}

/// Puts the smith's notes below the last bar; where its page is full, closer, or on an earlier page from the `first` on.
fn put_notes(flow: &mut Flow, first: usize, notes: &[Block; 2]) {
    let places = (first..flow.page_count()).rev().flat_map(|page| notes.each_ref().map(|block| (page, block)));
    let place = places.into_iter().find(|(page, block)| block.height <= flow.room_below(*page));
    match place {
        Some((page, block)) => flow.put_below(page, block.clone()),
        None => flow.put(notes[0].clone()),
    }
}

/// What is kept free below the last row of the table so that the notes do not have a page to themselves; nothing where an
/// earlier page has room for them.
fn kept_for_notes(flow: &Flow, first: usize, [_, close]: &[Block; 2]) -> f64 {
    let before = first..flow.page_count().saturating_sub(1);
    let has_room = before.into_iter().any(|page| close.height <= flow.room_below(page));
    if has_room { 0.0 } else { close.height + BETWEEN_MM }
}

fn put_bar(flow: &mut Flow, title: &str, bar: &BarWords, warned: Option<&Cautions>) {
    let width = flow.width();
    flow.put(header::title_block(title, bar, width));
    if let Some(warned) = warned {
        cautions::put_own(flow, warned);
    }
    flow.put(facts_block(&bar.facts, width).then_free(BETWEEN_MM));
    if warned.is_none() && bar.findings.iter().any(|finding| finding.stop) {
        flow.put(stop_banner(width).then_free(BETWEEN_MM));
    }
    match &bar.strip {
        Some(strip) => strip::put_strip(flow, strip),
        None => flow.put(findings::heading("Nothing is marked on this bar yet: it has no parts.")),
    }
}

/// The table of a bar, with so many mm free below its last row, and its findings.
fn put_table(flow: &mut Flow, bar: &BarWords, kept_mm: f64) {
    table::put_table(flow, &bar.rows, kept_mm);
    flow.skip(BETWEEN_MM);
    put_sizes(flow, &bar.sizes);
    if !bar.findings.is_empty() {
        findings::put_findings(flow, "Before you light the fire", &bar.findings);
        flow.skip(BETWEEN_MM);
    }
}

/// The asked sizes, to be measured when the piece is cold.
fn put_sizes(flow: &mut Flow, sizes: &[String]) {
    let line = |words: &String| paragraph(&typeset::printable(words), BODY, Weight::Regular, flow.width());
    let blocks: Vec<Block> = sizes.iter().map(line).collect();
    for (index, block) in blocks.into_iter().enumerate() {
        flow.put(if index == 0 { findings::heading("Measure cold").over(block) } else { block });
    }
    if !sizes.is_empty() {
        flow.skip(BETWEEN_MM);
    }
}

/// A black band that cannot be overlooked.
fn stop_banner(width: f64) -> Block {
    let words = "STOP: this plan cannot be forged as it stands. Read the findings under the table.";
    let items = vec![
        Item::rectangle(at(0.0, 0.0), at(width, 8.5), Some(Gray::BLACK), None),
        Text::new(at(3.0, 6.1), FACT, words).bold().gray(Gray::WHITE).into(),
    ];
    Block { height: 8.5, items }
}
