//! A card: everything about one step, kept together on a page.

use super::card_body::{self, Detail};
use super::cell::{fitted, in_white};
use super::mark_table::mark_table;
use super::words::CardWords;
use crate::drawing::{Align, Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::paragraph;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT};
use crate::typeset;

/// Free inside the edges of a card.
pub(super) const PAD_MM: f64 = 1.3;
/// The least height of its head.
const HEAD_MM: f64 = 9.6;
/// Above and below the title.
const TITLE_PAD_MM: f64 = 0.4;
/// From one line of the head to the next, as a share of the em.
const TITLE_PITCH: f64 = 1.05;
/// The width of the box of its number.
pub(super) const NUMBER_MM: f64 = 21.0;
/// The width of the box of its heat.
pub(super) const HEAT_MM: f64 = 43.0;
/// The room for `done` at its right.
pub(super) const DONE_MM: f64 = 23.0;
/// The side of the box to tick.
const TICK_MM: f64 = 8.0;
/// The em of the number.
const NUMBER: f64 = 11.4;
/// The em of the heat and of the title.
const HEAT: f64 = 7.6;

/// From everything down to what always has room.
const DETAILS: [Detail; 5] = [
    Detail { sizes: 12, lines: 12, marks: 60 },
    Detail { sizes: 12, lines: 6, marks: 60 },
    Detail { sizes: 7, lines: 3, marks: 60 },
    Detail { sizes: 7, lines: 3, marks: 30 },
    Detail { sizes: 3, lines: 1, marks: 12 },
];

/// The card, with as much as a page has room for.
pub(super) fn card(words: &CardWords<'_>, strip: &Block, width: f64, page: f64) -> Block {
    let mut smallest = card_with(words, strip, width, DETAILS[0]);
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
    let below = [strip.clone(), mark_table(words.marks, words.laid, inner, detail.marks)];
    for part in below.into_iter().filter(|part| part.height > 0.0) {
        block = block.over(part.indented(PAD_MM).then_free(PAD_MM));
    }
    let mut block = block.over(card_body::body(words, inner, detail).indented(PAD_MM)).then_free(PAD_MM);
    block.items.push(Item::rectangle(at(0.0, 0.0), at(width, block.height), None, Some(Pen::Outline)));
    block
}

/// Number, heat, title and what it becomes, and the box to tick.
fn head(words: &CardWords<'_>, width: f64) -> Block {
    let left = NUMBER_MM + HEAT_MM + 3.5;
    let title = title(words, width - left - DONE_MM - 2.0);
    let height = HEAD_MM.max(title.height + 2.0 * TITLE_PAD_MM);
    let middle = height / 2.0;
    let mut items = vec![Item::rectangle(at(0.0, 0.0), at(NUMBER_MM, height), Some(Gray::BLACK), None)];
    let number_at = at(NUMBER_MM / 2.0, middle + 3.7);
    let number = fitted(&words.number, NUMBER, Weight::SemiBold, NUMBER_MM - 3.0, number_at, Align::Center);
    items.extend(number.map(in_white));
    let heat_at = at(NUMBER_MM + HEAT_MM / 2.0, middle + 2.4);
    items.extend(fitted(&words.heat, HEAT, Weight::SemiBold, HEAT_MM - 4.0, heat_at, Align::Center));
    let top = (height - title.height) / 2.0;
    items.extend(title.items.into_iter().map(|item| item.shifted(left, top)));
    items.extend(tick(width, middle));
    for x in [NUMBER_MM + HEAT_MM, width - DONE_MM] {
        items.push(Item::line(at(x, 0.0), at(x, height), Pen::MarkLine));
    }
    items.push(Item::line(at(0.0, height), at(width, height), Pen::Frame));
    Block { height, items }
}

/// The box to tick at the right, around the middle of the head.
fn tick(width: f64, middle: f64) -> [Item; 2] {
    let (right, half) = (width - PAD_MM, TICK_MM / 2.0);
    [
        Item::rectangle(at(right - TICK_MM, middle - half), at(right, middle + half), None, Some(Pen::Outline)),
        Text::new(at(right - TICK_MM - 1.5, middle + 1.2), BODY, "done").right().into(),
    ]
}

/// The title with what the parts become below it, each in lines of its own where one line has no room for it.
fn title(words: &CardWords<'_>, room: f64) -> Block {
    let size = if words.becomes.is_empty() { FACT * 1.3 } else { FACT * 1.05 };
    let title = set(words.title, [size, BODY], Weight::SemiBold, room, 3);
    title.over(set(&words.becomes, [BODY, CAPTION], Weight::Regular, room, 5))
}

/// Words in one line, reduced as far as the second size; in more lines of that size where it is not enough.
fn set(words: &str, [size, least]: [f64; 2], weight: Weight, room: f64, most: usize) -> Block {
    if words.is_empty() {
        return Block::default();
    }
    let size = typeset::fitting_size(words, size, least, weight, room);
    let lines = paragraph::lines(words, size, weight, room + 0.01, most);
    let pitch = size * TITLE_PITCH;
    let set = |(index, line): (usize, &String)| {
        Text::new(at(0.0, pitch * index as f64 + size * 0.8), size, line).weight(weight).into()
    };
    Block { height: pitch * lines.len() as f64, items: lines.iter().enumerate().map(set).collect() }
}
