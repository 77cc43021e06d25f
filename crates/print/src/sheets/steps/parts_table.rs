//! The table of a bar's parts: its number, its name, what it becomes, how long, and from which mark to which.

use super::cell::lines_block;
use crate::drawing::{Align, Item, Text, at};
use crate::fonts::{CAP_HEIGHT, Weight};
use crate::pen::{Gray, Pen};
use crate::sheets::flow::{Block, Flow};
use crate::sheets::paragraph::lines;
use crate::sheets::sizes_in_words::mm_words;
use crate::sheets::type_sizes::{BODY, CAPTION};
use crate::typeset;
use fh_core::balance::{BarBalance, SegmentBalance};
use fh_core::describe::{bend_words, made_words, segment_name, side_words, slit_line_words};
use fh_core::plan::{Bar, Form, Plan, Segment, SizeName};
use uom::si::length::millimeter;

/// The em of what stands in a cell.
const CELL: f64 = 3.9;
/// The height of the heads.
const HEAD_MM: f64 = 6.2;
/// Above and below the words of a row.
const PAD_MM: f64 = 0.8;
/// Between two columns.
const GUTTER_MM: f64 = 3.0;
/// How far a part's name is moved to the right for each split that it lies within.
const INDENT_MM: f64 = 3.0;
/// The lines of one cell at most.
const MOST_LINES: usize = 14;
/// The width of the forged length.
const LENGTH_MM: f64 = 22.0;
/// The width of the block on the bar.
const BLOCK_MM: f64 = 33.0;
/// The rows that are kept together at the start of the table.
const FIRST_ROWS: usize = 2;

/// Where the columns start, and how wide each is.
struct Columns {
    width: f64,
    number: [f64; 2],
    name: [f64; 2],
    becomes: [f64; 2],
    length: [f64; 2],
    block: [f64; 2],
}

impl Columns {
    fn fill(width: f64, number_mm: f64) -> Self {
        let rest = width - number_mm - LENGTH_MM - BLOCK_MM - 4.0 * GUTTER_MM;
        let mut left = 0.0;
        let mut column = |width: f64| {
            let column = [left, width];
            left += width + GUTTER_MM;
            column
        };
        Self {
            number: column(number_mm),
            name: column(rest * 0.3),
            becomes: column(rest * 0.7),
            length: column(LENGTH_MM),
            block: column(BLOCK_MM),
            width,
        }
    }
}

/// Puts the parts of a bar on the flow, the heads again on every page.
pub(super) fn put_parts(flow: &mut Flow, plan: &Plan, bar: &Bar, balance: &BarBalance) {
    let width = flow.width();
    let paths = bar.paths();
    let number_mm = paths.iter().map(|path| typeset::width_mm(path, CELL, Weight::SemiBold)).fold(6.0, f64::max);
    let columns = Columns::fill(width, number_mm.min(width * 0.2));
    let parts = bar.flat().into_iter().zip(&balance.segments).zip(&paths).enumerate();
    let rows: Vec<Block> = parts
        .map(|(number, ((flat, segment), path))| {
            let name = segment_name(bar, number);
            columns.row(
                path,
                &name,
                flat.depth,
                &becomes(plan, (bar, balance), number, flat.segment, segment),
                [mm_words(plan.units.length, segment.forged_length.get::<millimeter>()), block_words(balance, number)],
            )
        })
        .collect();
    let first: f64 = rows.iter().take(FIRST_ROWS).map(|row| row.height).sum();
    for (index, row) in rows.into_iter().enumerate() {
        if index == 0 || row.height > flow.room() {
            flow.need(HEAD_MM + if index == 0 { first } else { row.height });
            flow.put(columns.head());
        }
        flow.put(row);
    }
}

/// `219 to 239 mm`.
fn block_words(balance: &BarBalance, number: usize) -> String {
    balance
        .block_shop(number)
        .map_or_else(String::new, |[start, end]| format!("{} to {}", start.bare_text(), end.text()))
}

/// What a part becomes: its form and its bend, the side it is on, the sizes that follow, and the smith's notes on it.
fn becomes(
    plan: &Plan,
    (bar, whole): (&Bar, &BarBalance),
    number: usize,
    segment: &Segment,
    balance: &SegmentBalance,
) -> Vec<(String, f64)> {
    let bend = bend_words(segment, &balance.derived).map_or_else(String::new, |bend| format!(", then {bend}"));
    let gone = match segment.form {
        Form::Trim(_) => ", cut off later",
        Form::Hold(_) => ", for the tongs, cut off later",
        _ => "",
    };
    let made = made_words(segment, balance, plan.units.length);
    let mut all = vec![(made.form + &bend + gone, CELL)];
    let side = side_words(segment).map(|side| match segment.form {
        Form::Shoulder(_) => format!("set down: {side}"),
        Form::Peak(_) => format!("peak: {side}"),
        _ => side,
    });
    all.extend(side.map(|side| (side, CELL)));
    // Its length has a column.
    let slit = slit_line_words(plan.units.length, bar, whole, number);
    let follows = if slit.is_some() { Vec::new() } else { made.follows };
    all.extend(slit.map(|slit| (slit, CELL)));
    let sizes = follows.into_iter().filter(|size| size.name != SizeName::Length);
    let sizes: Vec<String> = sizes.map(|size| size.words).collect();
    if !sizes.is_empty() {
        all.push((sizes.join(", "), CELL));
    }
    all.extend(segment.notes.iter().filter(|notes| !notes.trim().is_empty()).map(|notes| (notes.clone(), CAPTION)));
    all
}

impl Columns {
    fn head(&self) -> Block {
        let baseline = HEAD_MM - 1.9;
        let head = |x: f64, words: &str, align: Align| {
            let text = Text::new(at(x, baseline), CAPTION, words).gray(Gray::DARK);
            Item::from(if align == Align::Right { text.right() } else { text })
        };
        let items = vec![
            head(self.number[0], "no.", Align::Left),
            head(self.name[0], "part", Align::Left),
            head(self.becomes[0], "what it becomes", Align::Left),
            head(self.length[0] + self.length[1], "forged length", Align::Right),
            head(self.block[0] + self.block[1], "between marks", Align::Right),
            Item::line(at(0.0, HEAD_MM), at(self.width, HEAD_MM), Pen::Frame),
        ];
        Block { height: HEAD_MM, items }
    }

    fn row(&self, path: &str, name: &str, depth: usize, becomes: &[(String, f64)], right: [String; 2]) -> Block {
        let indent = (INDENT_MM * depth as f64).min(self.name[1] / 2.0);
        let cell = |words: &str, size: f64, weight: Weight, width: f64| {
            lines_block(&lines(words, size, weight, width, MOST_LINES), size, weight)
        };
        let mut items = cell(path, CELL, Weight::SemiBold, self.number[1]).items;
        let name = cell(name, CELL, Weight::SemiBold, self.name[1] - indent).indented(self.name[0] + indent);
        let words = becomes.iter().fold(Block::default(), |all, (words, size)| {
            all.over(cell(words, *size, Weight::Regular, self.becomes[1]))
        });
        let words = words.indented(self.becomes[0]);
        let mut height = name.height.max(words.height);
        items.extend(name.items.into_iter().chain(words.items));
        for (words, column) in right.iter().zip([self.length, self.block]) {
            let lines = lines(words, CELL, Weight::SemiBold, column[1], 3);
            let block = lines_block(&lines, CELL, Weight::SemiBold);
            height = height.max(block.height);
            items.extend(block.items.into_iter().map(|item| at_the_right(item, column[0] + column[1])));
        }
        let height = height.max(BODY * CAP_HEIGHT) + 2.0 * PAD_MM;
        let mut items: Vec<Item> = items.into_iter().map(|item| item.shifted(0.0, PAD_MM)).collect();
        items.push(Item::line(at(0.0, height), at(self.width, height), Pen::Hairline));
        Block { height, items }
    }
}

/// The same words with their end at a place.
fn at_the_right(item: Item, right: f64) -> Item {
    match item {
        Item::Text(text) => {
            let y = text.at.y;
            text.right().moved_to(at(right, y)).into()
        }
        other => other,
    }
}
