//! A plain table: rows of words and figures under heads, each row as high as its words.

use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::{Block, Flow};
use crate::sheets::paragraph::lines;
use crate::sheets::type_sizes::{BODY, CAPTION, LINE_PITCH};

/// Free between two columns.
const GUTTER_MM: f64 = 3.0;
/// Free above and below the words of a row.
const PAD_MM: f64 = 0.75;
/// The lines of one cell at most.
const MOST_LINES: usize = 5;

/// A column: its head, its share of the width, and whether figures stand in it.
pub(super) struct Col {
    pub(super) head: &'static str,
    pub(super) share: f64,
    pub(super) is_figures: bool,
}

/// A row of the table.
#[derive(Default)]
pub(super) struct Row {
    pub(super) cells: Vec<String>,
    /// Whether it sums up what stands over it.
    pub(super) is_sum: bool,
    /// Whether a box to tick stands before it.
    pub(super) is_ticked: bool,
}

/// The room of a box to tick.
const TICK_MM: f64 = 6.5;

/// Puts a table on the flow; its heads again on every further page.
pub(super) fn put_rows(flow: &mut Flow, columns: &[Col], rows: &[Row]) {
    let width = flow.width();
    let heads = || {
        let cells = columns.iter().map(|column| column.head.to_owned()).collect();
        row_block(columns, &Row { cells, ..Row::default() }, width, CAPTION, rows.iter().any(|row| row.is_ticked))
    };
    let has_ticks = rows.iter().any(|row| row.is_ticked);
    for (at, row) in rows.iter().enumerate() {
        let block = row_block(columns, row, width, BODY, has_ticks);
        if at == 0 || block.height > flow.room() {
            let head = heads();
            flow.put(head.over(block));
        } else {
            flow.put(block);
        }
    }
}

fn row_block(columns: &[Col], row: &Row, width: f64, size: f64, has_ticks: bool) -> Block {
    let before = if has_ticks { TICK_MM } else { 0.0 };
    let room = width - before - GUTTER_MM * columns.len().saturating_sub(1) as f64;
    let shares: f64 = columns.iter().map(|column| column.share).sum();
    let weight = if row.is_sum { Weight::SemiBold } else { Weight::Regular };
    let (mut items, mut left, mut most) = (Vec::new(), before, 1);
    for (column, words) in columns.iter().zip(&row.cells) {
        let own = room * column.share / shares;
        let set = lines(words, size, weight, own, MOST_LINES);
        most = most.max(set.len());
        for (index, line) in set.iter().enumerate() {
            let baseline = PAD_MM + size * 0.85 + size * LINE_PITCH * index as f64;
            let text = Text::new(at(left, baseline), size, line).weight(weight);
            let text = if size < BODY { text.gray(Gray::DARK) } else { text };
            items.push(Item::from(if column.is_figures {
                text.right().moved_to(at(left + own, baseline))
            } else {
                text
            }));
        }
        left += own + GUTTER_MM;
    }
    let height = size * LINE_PITCH * most as f64 + 2.0 * PAD_MM;
    if row.is_ticked {
        items.push(Item::rectangle(at(0.3, PAD_MM + 0.2), at(4.3, PAD_MM + 4.2), None, Some(Pen::Frame)));
    }
    let pen = if row.is_sum { Some((0.0, Pen::Frame)) } else { None };
    items.extend(pen.map(|(y, pen)| Item::line(at(before, y), at(width, y), pen)));
    items.push(Item::line(at(0.0, height), at(width, height), Pen::Hairline));
    Block { height, items }
}
