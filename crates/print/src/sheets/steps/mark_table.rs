//! The marks to lay off in a table: how far each is from the datum end, what ends there and what begins.

use super::cell::{fitted, lines_block};
use crate::drawing::{Align, Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::paragraph::{lines, paragraph};
use crate::sheets::type_sizes::{BODY, CAPTION};
use crate::typeset;
use fh_work::{LaidLine, MarkLine};

/// The narrowest column of the table.
const NARROWEST_MM: f64 = 57.0;
/// Between two columns.
const GUTTER_MM: f64 = 5.0;
/// The least height of a row.
const ROW_MM: f64 = 6.8;
/// The height of the heads.
const HEAD_MM: f64 = 4.6;
/// The em of the figures.
const FIGURE: f64 = 5.8;
/// The em of the names.
const NAME: f64 = 3.75;
/// Beside a figure.
const PAD_MM: f64 = 1.6;
/// The lines of one name at most.
const MOST_LINES: usize = 3;

/// A row: a mark, a hole or a slit.
struct Row<'a> {
    number: &'a str,
    at: &'a str,
    /// What ends and what begins, or what it is.
    names: [&'a str; 2],
}

impl<'a> Row<'a> {
    fn of_mark(mark: &'a MarkLine) -> Self {
        Self { number: &mark.number, at: &mark.at, names: [&mark.ends, mark.begins.as_deref().unwrap_or("cut here")] }
    }

    fn of_line(line: &'a LaidLine) -> Self {
        Self { number: line.what, at: &line.at, names: [&line.words, ""] }
    }
}

/// How wide number, place and names are in one column.
#[derive(Clone, Copy)]
struct Widths {
    number: f64,
    at: f64,
    names: f64,
}

/// The table with so many marks at most, from the top of each column down; nothing where there are none.
pub(super) fn mark_table(marks: &[MarkLine], laid: &[LaidLine], width: f64, most: usize) -> Block {
    let marks: Vec<Row<'_>> = marks.iter().map(Row::of_mark).chain(laid.iter().map(Row::of_line)).collect();
    let shown = &marks[..marks.len().min(most)];
    if shown.is_empty() {
        return Block::default();
    }
    let fitting = ((width + GUTTER_MM) / (NARROWEST_MM + GUTTER_MM)).floor().max(1.0) as usize;
    let ways = (1..=fitting).rev().map(|columns| in_columns(shown, width, columns));
    let least = ways.reduce(|best, next| if next.height < best.height { next } else { best });
    least.unwrap_or_default().over(rest(marks.len() - shown.len(), width))
}

/// The marks in so many columns at most.
fn in_columns(marks: &[Row<'_>], width: f64, columns: usize) -> Block {
    let each = marks.len().div_ceil(columns);
    let count = marks.len().div_ceil(each);
    // A few marks are not drawn out over the whole width.
    let room = ((width + GUTTER_MM) / count.max(2) as f64 - GUTTER_MM).max(1.0);
    let widths = widths(marks, room);
    let mut table = Block::default();
    for (place, marks) in marks.chunks(each).enumerate() {
        let own = column(marks, widths).indented((room + GUTTER_MM) * place as f64);
        table.height = table.height.max(own.height);
        table.items.extend(own.items);
    }
    table
}

/// That there are more marks, and where.
fn rest(more: usize, width: f64) -> Block {
    let words = match more {
        0 => return Block::default(),
        1 => "and 1 more: see the mark sheet.".to_owned(),
        more => format!("and {more} more: see the mark sheet."),
    };
    paragraph(&words, BODY, Weight::SemiBold, width)
}

/// Number and place as wide as the widest of them, the names what is left.
fn widths(marks: &[Row<'_>], room: f64) -> Widths {
    let widest = |words: &dyn for<'r> Fn(&'r Row<'_>) -> &'r str| {
        let each =
            marks.iter().map(|mark| typeset::width_mm(&typeset::printable(words(mark)), FIGURE, Weight::SemiBold));
        each.fold(0.0, f64::max)
    };
    let number = (widest(&|mark| mark.number) + PAD_MM).clamp(7.0, (room * 0.2).max(7.0));
    let at = (widest(&|mark| mark.at) + 2.0 * PAD_MM).clamp(12.0, room * 0.45);
    Widths { number, at, names: room - number - at }
}

fn column(marks: &[Row<'_>], widths: Widths) -> Block {
    marks.iter().fold(head(widths), |column, mark| column.over(row(mark, widths)))
}

fn head(widths: Widths) -> Block {
    let baseline = HEAD_MM - 1.5;
    let names = widths.number + widths.at + PAD_MM;
    let named = |x: f64, words: &str| Text::new(at(x, baseline), CAPTION, words).gray(Gray::DARK);
    let end = widths.number + widths.at + widths.names;
    let items = vec![
        named(0.0, "mark").into(),
        named(widths.number + widths.at - PAD_MM, "at").right().into(),
        named(names, "ends | begins").into(),
        Item::line(at(0.0, HEAD_MM), at(end, HEAD_MM), Pen::Frame),
    ];
    Block { height: HEAD_MM, items }
}

fn row(mark: &Row<'_>, widths: Widths) -> Block {
    let left = widths.number + widths.at;
    let names = names(mark, widths.names - PAD_MM);
    let height = ROW_MM.max(names.height + 1.6);
    let baseline = height / 2.0 + FIGURE * 0.33;
    let bold = Weight::SemiBold;
    let number = fitted(mark.number, FIGURE, bold, widths.number - PAD_MM, at(0.0, baseline), Align::Left);
    let figure =
        fitted(mark.at, FIGURE, bold, widths.at - 2.0 * PAD_MM + 0.1, at(left - PAD_MM, baseline), Align::Right);
    let mut items: Vec<Item> = number.into_iter().chain(figure).collect();
    let top = (height - names.height) / 2.0;
    items.extend(names.items.into_iter().map(|item| item.shifted(left + PAD_MM, top)));
    items.push(Item::line(at(left, 0.0), at(left, height), Pen::Hairline));
    items.push(Item::line(at(0.0, height), at(left + widths.names, height), Pen::Hairline));
    Block { height, items }
}

/// What ends at a mark and what begins there: in one line, or each in its own.
fn names(mark: &Row<'_>, room: f64) -> Block {
    let [ends, begins] = mark.names;
    let set = |words: &str| lines(words, NAME, Weight::Regular, room, MOST_LINES);
    if begins.is_empty() {
        return lines_block(&set(ends), NAME, Weight::Regular);
    }
    let one = set(&format!("{ends} | {begins}"));
    let broken = if one.len() > 1 { [set(&format!("{ends} |")), set(begins)].concat() } else { one };
    lines_block(&broken, NAME, Weight::Regular)
}
