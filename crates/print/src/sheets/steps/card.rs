//! A card: everything about one step, kept together on a page.

use super::card_body;
use super::cell::{fitted, in_white, put_lines};
use super::words::CardWords;
use crate::drawing::{Align, Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::paragraph;
use crate::sheets::type_sizes::{BODY, FACT};
use crate::typeset;

/// Free inside the edges of a card.
pub(super) const PAD_MM: f64 = 1.3;
/// The height of its head.
const HEAD_MM: f64 = 11.2;
/// The width of the box of its number.
const NUMBER_MM: f64 = 21.0;
/// The width of the box of its heat.
const HEAT_MM: f64 = 43.0;
/// The room for `done` at its right.
const DONE_MM: f64 = 23.0;
/// The side of the box to tick.
const TICK_MM: f64 = 8.0;
/// The em of the number.
const NUMBER: f64 = 11.4;
/// The em of the heat and of the title.
const HEAT: f64 = 7.6;

/// How much of what there is to say is printed.
#[derive(Clone, Copy)]
pub(super) struct Detail {
    pub(super) why_lines: usize,
    pub(super) sizes: usize,
    pub(super) lines: usize,
}

/// From everything down to what always has room.
const DETAILS: [Detail; 4] = [
    Detail { why_lines: 2, sizes: 12, lines: 12 },
    Detail { why_lines: 1, sizes: 12, lines: 6 },
    Detail { why_lines: 0, sizes: 7, lines: 3 },
    Detail { why_lines: 0, sizes: 3, lines: 1 },
];

/// The card, with as much as a page has room for; a line of reasons less where it then fits what is left of this page.
pub(super) fn card(words: &CardWords<'_>, strip: &Block, width: f64, left: f64, page: f64) -> Block {
    let whole = card_with(words, strip, width, DETAILS[0]);
    if whole.height > left {
        let less = card_with(words, strip, width, Detail { why_lines: 1, ..DETAILS[0] });
        if less.height <= left {
            return less;
        }
    }
    let mut smallest = whole;
    for detail in &DETAILS[1..] {
        if smallest.height <= page {
            break;
        }
        smallest = card_with(words, strip, width, *detail);
    }
    smallest
}

fn card_with(words: &CardWords<'_>, strip: &Block, width: f64, detail: Detail) -> Block {
    let inner = width - 2.0 * PAD_MM;
    let mut block = head(words, width).then_free(PAD_MM);
    if strip.height > 0.0 {
        block = block.over(strip.clone().indented(PAD_MM).then_free(PAD_MM));
    }
    let mut block = block.over(card_body::body(words, inner, detail).indented(PAD_MM)).then_free(PAD_MM);
    block.items.push(Item::rectangle(at(0.0, 0.0), at(width, block.height), None, Some(Pen::Outline)));
    block
}

/// Number, heat, title and what it becomes, and the box to tick.
fn head(words: &CardWords<'_>, width: f64) -> Block {
    let baseline = 8.4;
    let number_middle = at(NUMBER_MM / 2.0, 9.3);
    let mut items = vec![Item::rectangle(at(0.0, 0.0), at(NUMBER_MM, HEAD_MM), Some(Gray::BLACK), None)];
    let number = fitted(&words.number, NUMBER, Weight::SemiBold, NUMBER_MM - 3.0, number_middle, Align::Center);
    items.extend(number.map(in_white));
    let heat_middle = at(NUMBER_MM + HEAT_MM / 2.0, baseline - 0.4);
    items.extend(fitted(&words.heat, HEAT, Weight::SemiBold, HEAT_MM - 4.0, heat_middle, Align::Center));
    let left = NUMBER_MM + HEAT_MM + 3.5;
    let room = width - left - DONE_MM - 2.0;
    items.extend(title(words, left, room));
    let top = (HEAD_MM - TICK_MM) / 2.0;
    let right = width - PAD_MM;
    items.push(Item::rectangle(at(right - TICK_MM, top), at(right, top + TICK_MM), None, Some(Pen::Outline)));
    items.push(Text::new(at(right - TICK_MM - 1.5, baseline - 1.6), BODY, "done").right().into());
    for x in [NUMBER_MM + HEAT_MM, width - DONE_MM] {
        items.push(Item::line(at(x, 0.0), at(x, HEAD_MM), Pen::MarkLine));
    }
    items.push(Item::line(at(0.0, HEAD_MM), at(width, HEAD_MM), Pen::Frame));
    Block { height: HEAD_MM, items }
}

/// The title with what the parts become below it; a title too long for that in two lines of its own.
fn title(words: &CardWords<'_>, left: f64, room: f64) -> Vec<Item> {
    let long = typeset::fitting_size(words.title, FACT, 0.0, Weight::SemiBold, room) < BODY;
    let one_line = |words: &str, size: f64, weight: Weight, y: f64| {
        fitted(words, size, weight, room, at(left, y), Align::Left).into_iter()
    };
    if long {
        let lines = paragraph::lines(words.title, BODY, Weight::SemiBold, room, 2);
        let lines = put_lines(&lines, BODY, Weight::SemiBold, HEAD_MM);
        return lines.into_iter().map(|line| line.shifted(left, 0.0)).collect();
    }
    if words.becomes.is_empty() {
        return one_line(words.title, FACT * 1.3, Weight::SemiBold, 8.4).collect();
    }
    let becomes = one_line(&words.becomes, BODY, Weight::Regular, 10.0);
    one_line(words.title, FACT * 1.05, Weight::SemiBold, 5.4).chain(becomes).collect()
}
