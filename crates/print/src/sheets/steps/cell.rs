//! Words in a cell: reduced and cut off so that they never leave it.

use crate::drawing::{Align, Item, Point, Text, at};
use crate::fonts::{CAP_HEIGHT, Weight};
use crate::pen::Gray;
use crate::sheets::flow::Block;
use crate::sheets::type_sizes::{LINE_PITCH, SMALLEST};
use crate::typeset;

/// One line of words at a place, reduced to fit a width and cut off where that is not enough.
pub(in crate::sheets) fn fitted(
    words: &str,
    size: f64,
    weight: Weight,
    room: f64,
    place: Point,
    align: Align,
) -> Option<Item> {
    if words.is_empty() || room <= 0.0 {
        return None;
    }
    let size = typeset::fitting_size(words, size, SMALLEST.min(size), weight, room);
    // A hair more, for what is reduced to fit exactly.
    let words = typeset::shorten(words, size, weight, room + 0.01);
    let text = Text::new(place, size, &words).weight(weight);
    Some(match align {
        Align::Left => text.into(),
        Align::Center => text.centered().into(),
        Align::Right => text.right().into(),
    })
}

/// The same words in white, for a dark ground.
pub(in crate::sheets) fn in_white(item: Item) -> Item {
    match item {
        Item::Text(text) => text.gray(Gray::WHITE).into(),
        other => other,
    }
}

/// Lines of words, in the middle of a height.
pub(super) fn put_lines(lines: &[String], size: f64, weight: Weight, height: f64) -> Vec<Item> {
    let pitch = size * 1.1;
    let middle = (height - pitch * (lines.len() as f64 - 1.0)) / 2.0;
    let set = |(index, line): (usize, &String)| {
        let y = middle + pitch * index as f64 + size * CAP_HEIGHT / 2.0;
        Text::new(at(0.0, y), size, line).weight(weight).into()
    };
    lines.iter().enumerate().map(set).collect()
}

/// Lines of words from the top.
pub(in crate::sheets) fn lines_block(lines: &[String], size: f64, weight: Weight) -> Block {
    let pitch = size * LINE_PITCH;
    let set = |(index, line): (usize, &String)| {
        Text::new(at(0.0, pitch * index as f64 + size * 0.85), size, line).weight(weight).into()
    };
    Block { height: pitch * lines.len() as f64, items: lines.iter().enumerate().map(set).collect() }
}
