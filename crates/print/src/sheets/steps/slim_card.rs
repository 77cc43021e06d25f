//! A step that only looks at the bar or puts something on it: a row instead of a card.

use super::card::{DONE_MM, HEAT_MM, NUMBER_MM, PAD_MM};
use super::card_body;
use super::cell::{fitted, in_white};
use super::words::CardWords;
use crate::drawing::{Align, Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::type_sizes::{BODY, FACT};

/// The height of its head.
const HEAD_MM: f64 = 8.6;
/// The side of the box to tick.
const TICK_MM: f64 = 6.0;
/// The em of its number.
const NUMBER: f64 = 7.6;

/// The row of a step.
pub(super) fn slim_card(words: &CardWords<'_>, width: f64) -> Block {
    let below = card_body::told(words, width - 2.0 * PAD_MM);
    let mut block = head(words, width);
    if below.height > 0.0 {
        block = block.then_free(PAD_MM).over(below.indented(PAD_MM)).then_free(PAD_MM);
    }
    block.items.push(Item::rectangle(at(0.0, 0.0), at(width, block.height), None, Some(Pen::Outline)));
    block
}

/// Number, heat and title, and the box to tick.
fn head(words: &CardWords<'_>, width: f64) -> Block {
    let middle = HEAD_MM / 2.0;
    let mut items = vec![Item::rectangle(at(0.0, 0.0), at(NUMBER_MM, HEAD_MM), Some(Gray::BLACK), None)];
    let put = |words: &str, size: f64, [left, room]: [f64; 2], align: Align| {
        fitted(words, size, Weight::SemiBold, room, at(left, middle + size * 0.33), align)
    };
    items.extend(put(&words.number, NUMBER, [NUMBER_MM / 2.0, NUMBER_MM - 3.0], Align::Center).map(in_white));
    items.extend(put(&words.heat, FACT, [NUMBER_MM + HEAT_MM / 2.0, HEAT_MM - 4.0], Align::Center));
    let left = NUMBER_MM + HEAT_MM + 3.5;
    items.extend(put(words.title, FACT, [left, width - left - DONE_MM], Align::Left));
    let right = width - PAD_MM;
    let half = TICK_MM / 2.0;
    items.push(Item::rectangle(at(right - TICK_MM, middle - half), at(right, middle + half), None, Some(Pen::Outline)));
    items.push(Text::new(at(right - TICK_MM - 1.5, middle + 1.2), BODY, "done").right().into());
    Block { height: HEAD_MM, items }
}
