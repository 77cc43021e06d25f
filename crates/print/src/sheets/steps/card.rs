//! A card: everything about one step, kept together on a page.

use super::cell::{fitted, lines_block};
use super::size_table::size_table;
use super::words::CardWords;
use super::{BETWEEN_MM, anvil};
use crate::drawing::{Align, Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::paragraph;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT};

/// Free inside the edges of a card.
pub(super) const PAD_MM: f64 = 1.7;
/// The height of its head.
const HEAD_MM: f64 = 13.0;
/// The width of the box of its number.
const NUMBER_MM: f64 = 21.0;
/// The width of the box of its heat.
const HEAT_MM: f64 = 43.0;
/// The width of the column of place and tools.
const WHERE_MM: f64 = 59.0;
/// The width of the table of sizes, where there are three columns.
const SIZES_MM: f64 = 101.0;
/// The room for `done` at its right.
const DONE_MM: f64 = 23.0;
/// The side of the box to tick.
const TICK_MM: f64 = 8.0;
/// The em of the number.
const NUMBER: f64 = 11.4;
/// The em of the heat and of the title.
const HEAT: f64 = 7.6;
/// The width of the words before what is said.
const WORD_MM: f64 = 18.5;
/// Between two columns.
const GUTTER_MM: f64 = 3.0;
/// On a page narrower than this, what is said stands under the columns.
const NARROW_MM: f64 = 220.0;
/// The least room for a note by hand.
const NOTE_MM: f64 = 7.0;

/// How much of what there is to say is printed.
#[derive(Clone, Copy)]
pub(super) struct Detail {
    reasons: usize,
    sizes: usize,
    lines: usize,
}

/// From everything down to what always has room.
const DETAILS: [Detail; 4] = [
    Detail { reasons: 3, sizes: 12, lines: 12 },
    Detail { reasons: 0, sizes: 12, lines: 6 },
    Detail { reasons: 0, sizes: 7, lines: 3 },
    Detail { reasons: 0, sizes: 3, lines: 1 },
];

/// The card, with as much as the page has room for; a reason less where two of them have room that way.
pub(super) fn card(words: &CardWords<'_>, strip: &Block, width: f64, room: f64) -> Block {
    let half = (room - BETWEEN_MM) / 2.0;
    let whole = card_with(words, strip, width, DETAILS[0]);
    let less = card_with(words, strip, width, Detail { reasons: 1, ..DETAILS[0] });
    if whole.height > half && less.height <= half {
        return less;
    }
    let mut smallest = Block::default();
    for detail in DETAILS {
        smallest = card_with(words, strip, width, detail);
        if smallest.height <= room {
            return smallest;
        }
    }
    smallest
}

fn card_with(words: &CardWords<'_>, strip: &Block, width: f64, detail: Detail) -> Block {
    let inner = width - 2.0 * PAD_MM;
    let mut block = head(words, width).then_free(PAD_MM);
    if strip.height > 0.0 {
        block = block.over(strip.clone().indented(PAD_MM).then_free(PAD_MM));
    }
    let mut block = block.over(body(words, inner, detail).indented(PAD_MM)).then_free(PAD_MM);
    block.items.push(Item::rectangle(at(0.0, 0.0), at(width, block.height), None, Some(Pen::Outline)));
    block
}

/// Number, heat, title and what it becomes, and the box to tick.
fn head(words: &CardWords<'_>, width: f64) -> Block {
    let baseline = 9.4;
    let number_middle = at(NUMBER_MM / 2.0, 10.2);
    let mut items = vec![Item::rectangle(at(0.0, 0.0), at(NUMBER_MM, HEAD_MM), Some(Gray::BLACK), None)];
    let number = fitted(&words.number, NUMBER, Weight::SemiBold, NUMBER_MM - 3.0, number_middle, Align::Center);
    items.extend(number.map(in_white));
    let heat_middle = at(NUMBER_MM + HEAT_MM / 2.0, baseline - 0.4);
    items.extend(fitted(&words.heat, HEAT, Weight::SemiBold, HEAT_MM - 4.0, heat_middle, Align::Center));
    let left = NUMBER_MM + HEAT_MM + 3.5;
    let room = width - left - DONE_MM - 2.0;
    let title_em = if words.becomes.is_empty() { FACT * 1.3 } else { FACT * 1.15 };
    let title_y = if words.becomes.is_empty() { baseline } else { 6.1 };
    items.extend(fitted(words.title, title_em, Weight::SemiBold, room, at(left, title_y), Align::Left));
    items.extend(fitted(&words.becomes, BODY * 1.1, Weight::Regular, room, at(left, 11.2), Align::Left));
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

fn in_white(item: Item) -> Item {
    match item {
        Item::Text(text) => text.gray(Gray::WHITE).into(),
        other => other,
    }
}

/// Where and with what, the sizes, what is said, and why.
fn body(words: &CardWords<'_>, width: f64, detail: Detail) -> Block {
    let wide = width >= NARROW_MM;
    let left = where_column(words, WHERE_MM, detail);
    let block = if wide { wide_body(words, left, width, detail) } else { narrow_body(words, left, width, detail) };
    block.then_free(1.0).over(reasons_and_note(words, width, detail))
}

/// Three columns.
fn wide_body(words: &CardWords<'_>, left: Block, width: f64, detail: Detail) -> Block {
    let middle = WHERE_MM + GUTTER_MM;
    let sizes = size_table(words.sizes, SIZES_MM, detail.sizes);
    let said_left = middle + SIZES_MM + GUTTER_MM;
    let said = said(words, width - said_left, detail);
    side_by_side(side_by_side(left, sizes.indented(middle)), said.indented(said_left))
}

/// Two columns, and what is said below them.
fn narrow_body(words: &CardWords<'_>, left: Block, width: f64, detail: Detail) -> Block {
    let middle = WHERE_MM + GUTTER_MM;
    let sizes_mm = width - middle;
    let sizes = size_table(words.sizes, sizes_mm, detail.sizes);
    side_by_side(left, sizes.indented(middle)).then_free(1.6).over(said(words, width, detail))
}

/// Why the step stands where it does, small, and beside it room for a note by hand.
fn reasons_and_note(words: &CardWords<'_>, width: f64, detail: Detail) -> Block {
    let why_mm = width * if width >= NARROW_MM { 0.7 } else { 0.6 };
    let mut why = Block::default();
    for (index, sentence) in words.because.iter().take(detail.reasons).enumerate() {
        why = why.over(labelled(if index == 0 { "because" } else { "" }, sentence, CAPTION, why_mm - GUTTER_MM, 3));
    }
    let (left, height) = if why.height > 0.0 { (why_mm, why.height.max(NOTE_MM)) } else { (0.0, NOTE_MM) };
    side_by_side(why, note(width - left, height).indented(left))
}

/// Two blocks that stand on one line, as tall as the taller.
fn side_by_side(mut one: Block, other: Block) -> Block {
    one.height = one.height.max(other.height);
    one.items.extend(other.items);
    one
}

/// The picture of the place; beside it the place, the tools, and how the bar lies and is held.
fn where_column(words: &CardWords<'_>, width: f64, detail: Detail) -> Block {
    let picture = anvil::picture(words.place);
    let beside = if picture.is_some() { anvil::WIDTH_MM + 2.0 } else { 0.0 };
    let room = width - beside;
    let mut block = paragraph_of(words.place.name(), FACT, Weight::SemiBold, room, 1);
    for line in &words.lies {
        block = block.over(paragraph_of(line, BODY, Weight::Regular, room, detail.lines.min(3)));
    }
    let most = if detail.lines > 1 { 6 } else { 2 };
    for tool in words.tools.iter().take(most) {
        block = block.over(paragraph_of(tool, BODY, Weight::SemiBold, room, detail.lines.min(3)));
    }
    if let Some(tongs) = &words.tongs {
        block = block.over(paragraph_of(tongs, BODY, Weight::Regular, room, detail.lines.min(3)));
    }
    match picture {
        Some(items) => side_by_side(Block { height: anvil::HEIGHT_MM, items }, block.indented(beside)),
        None => block,
    }
}

fn paragraph_of(words: &str, size: f64, weight: Weight, width: f64, most: usize) -> Block {
    lines_block(&paragraph::lines(words, size, weight, width, most), size, weight)
}

/// What is said, the caution first.
fn said(words: &CardWords<'_>, width: f64, detail: Detail) -> Block {
    let mut block = Block::default();
    if let Some(words) = words.caution {
        block = block.over(caution(words, width, detail).then_free(1.4));
    }
    let mut last = "";
    for (head, sentence) in words.said.iter().take(detail.lines * 2) {
        let shown = if *head == last { "" } else { *head };
        block = block.over(labelled(shown, sentence, BODY, width, detail.lines.min(6)).then_free(0.6));
        last = *head;
    }
    block
}

/// A sentence with its word before it.
fn labelled(head: &str, sentence: &str, size: f64, width: f64, most: usize) -> Block {
    let mut block = paragraph_of(sentence, size, Weight::Regular, width - WORD_MM, most).indented(WORD_MM);
    if !head.is_empty() {
        // Read before its sentence.
        block.items.insert(0, Text::new(at(0.0, size * 0.85), size, head).bold().into());
    }
    block
}

/// A caution: in a heavy frame, with a sign that needs no color.
fn caution(words: &str, width: f64, detail: Detail) -> Block {
    let inside = paragraph_of(words, BODY, Weight::SemiBold, width - WORD_MM - 2.0, detail.lines.min(6));
    let height = (inside.height + 2.0).max(10.4);
    let top = (height - inside.height) / 2.0;
    let middle = height / 2.0;
    let sign = vec![at(6.5, middle - 4.4), at(11.5, middle + 4.0), at(1.5, middle + 4.0)];
    let mut items = vec![
        Item::rectangle(at(0.0, 0.0), at(width, height), None, Some(Pen::CutLine)),
        Item::Polygon { points: sign, fill: Some(Gray::BLACK), pen: None },
        Text::new(at(6.5, middle + 3.1), BODY * 1.25, "!").centered().bold().gray(Gray::WHITE).into(),
    ];
    items.extend(inside.items.into_iter().map(|item| item.shifted(WORD_MM, top)));
    Block { height, items }
}

/// Room for a note by hand.
fn note(width: f64, height: f64) -> Block {
    let items = vec![
        Text::new(at(0.0, height - 1.2), CAPTION, "your note").gray(Gray::DARK).into(),
        Item::line(at(WORD_MM, height - 0.8), at(width, height - 0.8), Pen::Hairline),
    ];
    Block { height, items }
}
