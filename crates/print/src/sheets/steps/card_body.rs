//! What stands under the head of a card and its bar: where and with what, the sizes, what is said, and why.

use super::anvil;
use super::cell::lines_block;
use super::size_table::size_table;
use super::words::CardWords;
use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::paragraph;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT};
use crate::typeset;

/// The em of what is said on a card.
const SAID: f64 = 3.75;
/// The width of the column of place and tools.
const WHERE_MM: f64 = 62.0;
/// The same, where it has the words below it.
const WHERE_WITH_WORDS_MM: f64 = 76.0;
/// The width of the table of sizes, where there are three columns.
const SIZES_MM: f64 = 101.0;
/// The width of the words before what is said.
const WORD_MM: f64 = 16.5;
/// Between two columns.
const GUTTER_MM: f64 = 3.0;
/// On a page narrower than this there are two columns.
const NARROW_MM: f64 = 220.0;
/// The room for a note by hand.
const NOTE_MM: f64 = 7.5;
/// Between what stands below each other.
const BELOW_MM: f64 = 1.0;

/// How much of what there is to say is printed.
#[derive(Clone, Copy)]
pub(super) struct Detail {
    pub(super) sizes: usize,
    pub(super) lines: usize,
    pub(super) marks: usize,
}

/// A block with its place across the card.
struct Column {
    left: f64,
    width: f64,
    block: Block,
}

/// Everything under the bar, laid out in the way that takes least paper.
pub(super) fn body(words: &CardWords<'_>, width: f64, detail: Detail) -> Block {
    let ways: &[fn(&CardWords<'_>, f64, Detail) -> Block] =
        if width >= NARROW_MM { &[three_columns] } else { &[words_under_sizes, words_under_place, words_below] };
    let laid = ways.iter().map(|way| way(words, width, detail));
    let least = laid.reduce(|best, next| if next.height < best.height - 0.5 { next } else { best });
    fire(words, width).over(least.unwrap_or_default())
}

/// How hot it is worked and for how long, in a line across the card.
fn fire(words: &CardWords<'_>, width: f64) -> Block {
    match &words.fire {
        Some(told) => {
            let size = typeset::fitting_size(told, SAID, CAPTION, Weight::SemiBold, width);
            paragraph_of(told, size, Weight::SemiBold, width + 0.01, 2).then_free(BELOW_MM)
        }
        None => Block::default(),
    }
}

/// What a step says that has neither a place nor a size: how it is held, and what is to be done and minded.
pub(super) fn told(words: &CardWords<'_>, width: f64) -> Block {
    let detail = Detail { sizes: 0, lines: 6, marks: 0 };
    let held = words.tongs.as_deref().map_or_else(Block::default, |held| labelled("held", held, SAID, width, 3));
    said(words, width, detail).over(held)
}

fn three_columns(words: &CardWords<'_>, width: f64, detail: Detail) -> Block {
    let [middle, right] = [WHERE_MM + GUTTER_MM, WHERE_MM + SIZES_MM + 2.0 * GUTTER_MM];
    with_note(vec![
        Column::new(0.0, WHERE_MM, where_column(words, WHERE_MM, detail)),
        Column::new(middle, SIZES_MM, size_table(words.sizes, SIZES_MM, detail.sizes)),
        Column::new(right, width - right, said(words, width - right, detail)),
    ])
}

/// The place at the left; at its right the sizes and what is said.
fn words_under_sizes(words: &CardWords<'_>, width: f64, detail: Detail) -> Block {
    let left = WHERE_MM + GUTTER_MM;
    let room = width - left;
    let sizes = size_table(words.sizes, room, detail.sizes);
    let right = if sizes.height > 0.0 { sizes.then_free(BELOW_MM) } else { sizes };
    let columns = vec![
        Column::new(0.0, WHERE_MM, where_column(words, WHERE_MM, detail)),
        Column::new(left, room, right.over(said(words, room, detail))),
    ];
    with_note(columns)
}

/// The place and what is said at the left, the sizes at its right.
fn words_under_place(words: &CardWords<'_>, width: f64, detail: Detail) -> Block {
    let left = WHERE_WITH_WORDS_MM + GUTTER_MM;
    let place = where_column(words, WHERE_WITH_WORDS_MM, detail).then_free(BELOW_MM);
    let columns = vec![
        Column::new(0.0, WHERE_WITH_WORDS_MM, place.over(said(words, WHERE_WITH_WORDS_MM, detail))),
        Column::new(left, width - left, size_table(words.sizes, width - left, detail.sizes)),
    ];
    with_note(columns)
}

/// Place and sizes beside each other, what is said across the card below them.
fn words_below(words: &CardWords<'_>, width: f64, detail: Detail) -> Block {
    let left = WHERE_MM + GUTTER_MM;
    let columns = vec![
        Column::new(0.0, WHERE_MM, where_column(words, WHERE_MM, detail)),
        Column::new(left, width - left, size_table(words.sizes, width - left, detail.sizes)),
    ];
    let said = said(words, width, detail);
    match with_note_inside(&columns) {
        Some(top) => top.then_free(BELOW_MM).over(said),
        None => beside(columns).then_free(BELOW_MM).over(said),
    }
}

impl Column {
    fn new(left: f64, width: f64, block: Block) -> Self {
        Self { left, width, block }
    }
}

/// Columns from one line down, as tall as the tallest.
fn beside(columns: Vec<Column>) -> Block {
    let height = columns.iter().map(|column| column.block.height).fold(0.0, f64::max);
    let items = columns.into_iter().flat_map(|column| column.block.indented(column.left).items).collect();
    Block { height, items }
}

/// Columns with room for a note where one of them leaves it free.
fn with_note(columns: Vec<Column>) -> Block {
    with_note_inside(&columns).unwrap_or_else(|| beside(columns))
}

fn with_note_inside(columns: &[Column]) -> Option<Block> {
    let shortest = columns.iter().min_by(|one, other| one.block.height.total_cmp(&other.block.height))?;
    let mut all = beside(columns.iter().map(|one| Column::new(one.left, one.width, one.block.clone())).collect());
    let top = all.height - NOTE_MM;
    (shortest.block.height <= top).then(|| {
        let note = note(shortest.width).items.into_iter();
        all.items.extend(note.map(|item| item.shifted(shortest.left, top)));
        all
    })
}

/// The picture of the place; beside it the place, the tools, and how the bar lies and is held.
fn where_column(words: &CardWords<'_>, width: f64, detail: Detail) -> Block {
    let picture = anvil::picture(words.place, words.act);
    let words_left = if picture.is_some() { anvil::WIDTH_MM + 2.0 } else { 0.0 };
    let room = width - words_left;
    let mut block = paragraph_of(words.place.name(), FACT, Weight::SemiBold, room, 2);
    if !words.lies.is_empty() {
        block = block.over(paragraph_of(&words.lies.join(", "), SAID, Weight::Regular, room, detail.lines.min(6)));
    }
    let most = if detail.lines > 1 { 12 } else { 2 };
    // One after the other they take half of the lines that each would take by itself.
    let tools = words.tools.iter().filter(|tool| **tool != "hammer").map(|tool| short_tool(tool));
    let tools: Vec<String> = tools.take(most).collect();
    if !tools.is_empty() {
        block = block.over(paragraph_of(&tools.join("; "), SAID, Weight::SemiBold, room, detail.lines));
    }
    if let Some(tongs) = &words.tongs {
        block = block.over(paragraph_of(tongs, SAID, Weight::Regular, room, detail.lines.min(6)));
    }
    match picture {
        Some(items) => {
            let picture = Column::new(0.0, anvil::WIDTH_MM, Block { height: anvil::HEIGHT_MM, items });
            beside(vec![picture, Column::new(words_left, room, block)])
        }
        None => block,
    }
}

/// A tool by its name and its size; which way it has that size is told where it is laid out.
fn short_tool(tool: &str) -> String {
    match (tool.split_once(", "), tool.find(|letter: char| letter.is_ascii_digit())) {
        (Some((name, rest)), Some(digit)) if digit > name.len() && !rest.starts_with("or ") => {
            format!("{name} {}", &tool[digit..])
        }
        _ => tool.to_owned(),
    }
}

fn paragraph_of(words: &str, size: f64, weight: Weight, width: f64, most: usize) -> Block {
    lines_block(&paragraph::lines(words, size, weight, width, most), size, weight)
}

/// What is said, the caution first.
fn said(words: &CardWords<'_>, width: f64, detail: Detail) -> Block {
    let mut block = Block::default();
    if let Some(words) = words.caution_words.as_deref().or(words.caution) {
        block = block.over(caution(words, width, detail).then_free(1.4));
    }
    let mut last = "";
    for (head, sentence) in words.said.iter().take(detail.lines * 2) {
        let shown = if *head == last { "" } else { *head };
        block = block.over(labelled(shown, sentence, SAID, width, detail.lines).then_free(0.4));
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
    let inside = paragraph_of(words, SAID, Weight::SemiBold, width - WORD_MM - 2.0, detail.lines);
    let height = (inside.height + 2.0).max(9.4);
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
fn note(width: f64) -> Block {
    let baseline = NOTE_MM - 1.2;
    let items = vec![Item::line(at(0.0, baseline + 0.4), at(width, baseline + 0.4), Pen::Hairline)];
    Block { height: NOTE_MM, items }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tool_on_a_card_has_its_name_and_its_size() {
        let said =
            ["swage, groove for 14 mm", "set hammer, no longer than 29 mm", "mandrel 32 mm, or the horn", "V-block"];
        let told = ["swage 14 mm", "set hammer 29 mm", "mandrel 32 mm, or the horn", "V-block"];
        assert_eq!(said.map(short_tool), told);
    }
}
