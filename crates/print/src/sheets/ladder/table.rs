//! A ladder in figures: a column for each thickness, the planned one set off.

use super::words::{RungWords, SegmentWords};
use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::type_sizes::{BODY, CAPTION, SMALLEST};
use crate::typeset;

/// The width of the words before the figures.
const WORDS_MM: f64 = 33.0;
/// From one line of figures to the next.
const LINE_MM: f64 = 6.2;
/// From the top of a line to its baseline.
const BASELINE_MM: f64 = 4.6;
/// Free to either side of a figure.
const PAD_MM: f64 = 0.8;

/// One line of the table: what stands before it, its figures, and how bold they are.
struct Line<'a> {
    words: &'a str,
    figure: fn(&RungWords) -> &str,
    weight: Weight,
}

/// The table.
pub(super) fn block(segment: &SegmentWords, width: f64) -> Block {
    let lines = lines(segment);
    let height = LINE_MM * lines.len() as f64;
    let column = (width - WORDS_MM) / segment.rungs.len().max(1) as f64;
    let mut items = planned_column(segment, column, height);
    for (index, line) in lines.iter().enumerate() {
        let top = LINE_MM * index as f64;
        items.extend(line_items(line, segment, column).into_iter().map(|item| item.shifted(0.0, top)));
        items.push(Item::line(at(0.0, top), at(width, top), if index == 1 { Pen::Frame } else { Pen::Hairline }));
    }
    items.push(Item::line(at(0.0, height), at(width, height), Pen::Hairline));
    Block { height, items }
}

fn lines(segment: &SegmentWords) -> Vec<Line<'_>> {
    let is_hot = segment.rungs.iter().any(|rung| rung.hot.is_some());
    let mut lines = vec![Line { words: &segment.measured, figure: |rung| &rung.size, weight: Weight::SemiBold }];
    if is_hot {
        let figure: fn(&RungWords) -> &str = |rung| rung.hot.as_ref().map_or("", |hot| &hot.words);
        lines.push(Line { words: "length, hot", figure, weight: Weight::SemiBold });
    }
    lines.push(Line { words: "length, cold", figure: |rung| &rung.cold.words, weight: Weight::Regular });
    lines.push(Line { words: "change, cold", figure: |rung| &rung.change, weight: Weight::Regular });
    lines
}

fn line_items(line: &Line<'_>, segment: &SegmentWords, column: f64) -> Vec<Item> {
    let mut items = vec![Text::new(at(0.0, BASELINE_MM), CAPTION, line.words).gray(Gray::DARK).into()];
    for (index, rung) in segment.rungs.iter().enumerate() {
        let words = (line.figure)(rung);
        let size = typeset::fitting_size(words, BODY, SMALLEST, line.weight, column - 2.0 * PAD_MM);
        let middle = WORDS_MM + column * (index as f64 + 0.5);
        items.push(Text::new(at(middle, BASELINE_MM), size, words).centered().weight(line.weight).into());
    }
    items
}

/// The gray behind the planned column.
fn planned_column(segment: &SegmentWords, column: f64, height: f64) -> Vec<Item> {
    let place = |(index, rung): (usize, &RungWords)| {
        let left = WORDS_MM + column * index as f64;
        rung.planned.then(|| Item::rectangle(at(left, 0.0), at(left + column, height), Some(Gray::LIGHT), None))
    };
    segment.rungs.iter().enumerate().filter_map(place).collect()
}
