//! A few sentences set to a width.

use crate::drawing::{Text, at};
use crate::fonts::Weight;
use crate::sheets::flow::Block;
use crate::sheets::type_sizes::LINE_PITCH;
use crate::typeset;

/// The longest text that is printed in one piece, in lines; more is left out with `…`.
const MOST_LINES: usize = 14;

/// The words in lines of at most `width` mm, with an em of `size` mm.
pub(super) fn lines(words: &str, size: f64, weight: Weight, width: f64, most: usize) -> Vec<String> {
    // No line holds more letters than this, so what lies beyond the last line need not be measured.
    let enough: String = words.chars().take(most * 200).collect();
    let mut lines = typeset::wrap(&enough, size, weight, width);
    if lines.len() > most || enough.len() < words.len() {
        lines.truncate(most);
        if let Some(last) = lines.last_mut() {
            *last = typeset::shorten(&format!("{last}…"), size, weight, width);
        }
    }
    lines
}

/// The words as a block, each line under the one before.
pub(super) fn paragraph(words: &str, size: f64, weight: Weight, width: f64) -> Block {
    let lines = lines(words, size, weight, width, MOST_LINES);
    let pitch = size * LINE_PITCH;
    let set = |(index, line): (usize, &String)| {
        Text::new(at(0.0, pitch * index as f64 + size * 0.85), size, line).weight(weight).into()
    };
    Block { height: pitch * lines.len() as f64, items: lines.iter().enumerate().map(set).collect() }
}
