//! The table of marks: where each stands, and what the block that ends at it becomes.

use super::columns::{Column, Columns};
use super::words::TableRow;
use crate::drawing::{Item, Text, at};
use crate::fonts::{CAP_HEIGHT, Weight};
use crate::pen::{Gray, Pen};
use crate::sheets::flow::{Block, Flow};
use crate::sheets::type_sizes::{BODY, CAPTION, FIGURE, LINE_PITCH};
use crate::typeset;

/// Free above and below what stands in a row.
const PAD_MM: f64 = 1.7;
/// From the top of a row to the baseline of its figures.
const BASELINE_MM: f64 = PAD_MM + FIGURE * CAP_HEIGHT;
/// From that baseline to the one of the small words below a figure.
const BELOW_FIGURE_MM: f64 = CAPTION * 1.08;
/// The size of a mark's number.
const NUMBER: f64 = BODY * 1.1;
/// How far the block's name is moved to the right for each split that it lies within.
const INDENT_MM: f64 = 3.5;
/// The height of the heads of the columns.
const HEAD_MM: f64 = 7.5;
/// The rows that are kept together at the start of the table: the datum and three marks, or all there are.
const FIRST_ROWS: usize = 4;

/// Puts the table on the flow, its head again on every page; so many mm are kept free below its last row.
pub(super) fn put_table(flow: &mut Flow, rows: &[TableRow], kept_mm: f64) {
    let width = flow.width();
    let numbers_mm = rows.iter().map(|row| number_mm(&row.number)).fold(0.0, f64::max);
    let sides = rows.iter().filter(|row| !row.side.is_empty()).count();
    let columns = Columns::fill(width, numbers_mm + 1.0, 2 * sides > rows.len());
    let blocks: Vec<Block> = rows.iter().map(|row| row_block(&columns, row, width)).collect();
    let first: f64 = blocks.iter().take(FIRST_ROWS).map(|block| block.height).sum();
    let last = rows.len().saturating_sub(1);
    for (index, block) in blocks.into_iter().enumerate() {
        let kept = if index == last && index > 0 { kept_mm } else { 0.0 };
        if index == 0 || block.height + kept > flow.room() {
            flow.need(HEAD_MM + if index == 0 { first } else { block.height + kept });
            flow.put(head_block(&columns, width));
        }
        flow.put(block);
    }
}

fn head_block(columns: &Columns, width: f64) -> Block {
    let baseline = HEAD_MM - 2.2;
    let head = |column: &Column| column.place(Text::new(at(0.0, baseline), CAPTION, column.head).bold()).into();
    let mut items: Vec<Item> = columns.shown().map(head).collect();
    items.push(Item::line(at(0.0, HEAD_MM), at(width, HEAD_MM), Pen::Frame));
    Block { height: HEAD_MM, items }
}

fn row_block(columns: &Columns, row: &TableRow, width: f64) -> Block {
    let mut items = number_box(row);
    items.extend(figures(columns, row));
    let nothing_below = row.off_by.is_empty() && row.total_between.is_empty() && row.step_between.is_empty();
    let below_figures = if nothing_below { 0.0 } else { BELOW_FIGURE_MM };
    let (words, below_words) = words(columns, row);
    items.extend(words);
    let height = BASELINE_MM + below_words.max(below_figures) + PAD_MM + 0.6;
    items.push(Item::line(at(0.0, height), at(width, height), Pen::Hairline));
    Block { height, items }
}

/// The running total, the exact one with the error below it, and the step; below both what they may come out at.
fn figures(columns: &Columns, row: &TableRow) -> Vec<Item> {
    let mut items = Vec::new();
    items.extend(columns.total.figure(BASELINE_MM, FIGURE, &row.total, Weight::SemiBold));
    items.extend(columns.exact.figure(BASELINE_MM, BODY * 1.15, &row.exact_mm, Weight::Regular));
    items.extend(columns.exact.figure(BASELINE_MM + BELOW_FIGURE_MM, CAPTION, &row.off_by, Weight::Regular));
    items.extend(columns.step.figure(BASELINE_MM, FIGURE, &row.step, Weight::Regular));
    let below = BASELINE_MM + BELOW_FIGURE_MM;
    items.extend(columns.total.figure(below, CAPTION, &row.total_between, Weight::Regular));
    items.extend(columns.step.figure(below, CAPTION, &row.step_between, Weight::Regular));
    items
}

/// The cells of words, and how far the longest reaches below the first baseline.
fn words(columns: &Columns, row: &TableRow) -> (Vec<Item>, f64) {
    let mut becomes = row.becomes.clone();
    if columns.side.width <= 0.0 && !row.side.is_empty() {
        becomes.insert(1.min(becomes.len()), row.side.clone());
    }
    // The block's name runs on into the next column where nothing stands there.
    let free = if becomes.is_empty() { columns.becomes.width } else { 0.0 };
    let block = columns.block.wider(free).indented(INDENT_MM * row.depth as f64);
    let cells = [
        (block, block.lines(&[&row.block], Weight::SemiBold), Weight::SemiBold),
        (columns.becomes, columns.becomes.lines(&becomes, Weight::Regular), Weight::Regular),
        (columns.side, columns.side.lines(&[&row.side], Weight::Regular), Weight::Regular),
        (columns.strike, columns.strike.lines(&[&row.strike], Weight::Regular), Weight::Regular),
    ];
    let most = cells.iter().map(|(_, lines, _)| lines.len()).max().unwrap_or(0);
    let items = cells.iter().flat_map(|(column, lines, weight)| cell_lines(column, lines, *weight)).collect();
    (items, most.saturating_sub(1) as f64 * BODY * LINE_PITCH)
}

fn cell_lines(column: &Column, lines: &[String], weight: Weight) -> Vec<Item> {
    let set = |(index, line): (usize, &String)| {
        let baseline = BASELINE_MM + index as f64 * BODY * LINE_PITCH;
        column.place(Text::new(at(0.0, baseline), BODY, line).weight(weight)).into()
    };
    lines.iter().enumerate().map(set).collect()
}

/// How wide a mark's number is with its box.
fn number_mm(number: &str) -> f64 {
    typeset::width_mm(number, NUMBER, Weight::SemiBold) + 2.2
}

/// The number of a mark in its box, as on the strip: black, or a frame for a mark on a branch and for a hole.
fn number_box(row: &TableRow) -> Vec<Item> {
    if row.number.is_empty() {
        return Vec::new();
    }
    let width = number_mm(&row.number);
    let (top, foot) = (BASELINE_MM - FIGURE * CAP_HEIGHT - 0.3, BASELINE_MM + 0.3);
    let baseline = (top + foot + NUMBER * CAP_HEIGHT) / 2.0;
    let (fill, pen, ink) = match (row.depth, row.is_hole) {
        (0, false) => (Gray::BLACK, None, Gray::WHITE),
        _ => (Gray::WHITE, Some(Pen::Leader), Gray::BLACK),
    };
    vec![
        Item::rectangle(at(0.0, top), at(width, foot), Some(fill), pen),
        Text::new(at(width / 2.0, baseline), NUMBER, &row.number).centered().bold().gray(ink).into(),
    ]
}
