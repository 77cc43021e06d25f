//! The cautions of a plan on paper: those that the plan asks for under the title of every kind of sheet, those that hold at
//! every fire once in a document.

use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::{Block, Flow};
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT, SMALLEST};
use fh_core::cautions::Cautions;

/// The width of the word before the cautions.
const WORD_MM: f64 = 24.0;
/// Free inside the frame, and between the columns.
const PAD_MM: f64 = 2.5;
/// The room of the sign before a plan's own cautions.
const SIGN_MM: f64 = 9.0;
/// Free above and below the words of a band.
const BAND_PAD_MM: f64 = 1.2;
/// Free below a plan's own cautions.
const BELOW_MM: f64 = 2.0;

/// Puts what the plan asks for under the title; nothing where it asks for nothing.
pub(super) fn put_own(flow: &mut Flow, cautions: &Cautions) {
    let block = own_block(cautions, flow.width());
    if block.height > 0.0 {
        flow.put(block);
    }
}

/// What the plan asks for; empty where it asks for nothing.
pub(super) fn own_block(cautions: &Cautions, width: f64) -> Block {
    let stops = cautions.stops.iter().map(|words| band(&format!("STOP: {words}"), width));
    let rating = cautions.rating.map(|words| band(words, width));
    let own = (!cautions.own.is_empty()).then(|| signed(&cautions.own.join(" "), width));
    let block = stops.chain(rating).chain(own).fold(Block::default(), |all, next| all.over(next.then_free(1.0)));
    if block.height > 0.0 { block.then_free(BELOW_MM - 1.0) } else { block }
}

/// White words on a black band that cannot be overlooked.
fn band(words: &str, width: f64) -> Block {
    let inside = paragraph(words, BODY, Weight::SemiBold, width - 2.0 * PAD_MM);
    let height = inside.height + 2.0 * BAND_PAD_MM;
    let mut items = vec![Item::rectangle(at(0.0, 0.0), at(width, height), Some(Gray::BLACK), None)];
    items.extend(inside.items.into_iter().map(|item| in_white(item).shifted(PAD_MM, BAND_PAD_MM)));
    Block { height, items }
}

fn in_white(item: Item) -> Item {
    match item {
        Item::Text(text) => text.gray(Gray::WHITE).into(),
        other => other,
    }
}

/// Words in a heavy frame, with a sign that needs no color.
fn signed(words: &str, width: f64) -> Block {
    let inside = paragraph(words, CAPTION, Weight::SemiBold, width - SIGN_MM - PAD_MM);
    let height = (inside.height + 2.0 * BAND_PAD_MM).max(7.0);
    let middle = height / 2.0;
    let sign = vec![at(4.5, middle - 2.8), at(7.8, middle + 2.8), at(1.2, middle + 2.8)];
    let mut items = vec![
        Item::rectangle(at(0.0, 0.0), at(width, height), None, Some(Pen::CutLine)),
        Item::Polygon { points: sign, fill: Some(Gray::BLACK), pen: None },
        Text::new(at(4.5, middle + 2.2), CAPTION * 1.2, "!").centered().bold().gray(Gray::WHITE).into(),
    ];
    items.extend(inside.items.into_iter().map(|item| item.shifted(SIGN_MM, middle - inside.height / 2.0)));
    Block { height, items }
}

/// Puts what holds at every fire at the foot of the first page: listed, or closer. Where it has no room there, the first page
/// has it in short, in a line or beside the check lines, and a later page with room the whole; a further page only where
/// nothing else can be done.
pub(super) fn put_general(flow: &mut Flow, cautions: &Cautions) {
    let width = flow.width();
    let whole = [listed(&cautions.general, width), close(&cautions.general, width)];
    let feet = flow.feet();
    let Some((first, later)) = feet.split_first() else { return };
    if put_first_that_fits(flow, *first, &whole) {
        return;
    }
    let is_on_a_later = later.iter().any(|page| put_first_that_fits(flow, *page, &whole));
    if !put_in_short(flow, *first, &cautions.in_short()) && !is_on_a_later {
        let [listed, _] = whole;
        flow.put_at_a_new_foot(listed);
    }
}

/// Puts the first block that has room at the foot of a page; whether one had.
fn put_first_that_fits(flow: &mut Flow, page: usize, blocks: &[Block]) -> bool {
    let room = flow.room_at_the_foot(page);
    let fitting = blocks.iter().find(|block| block.height <= room).cloned();
    let is_put = fitting.is_some();
    fitting.into_iter().for_each(|block| flow.put_at_the_foot(page, block));
    is_put
}

/// Puts words in a line at the foot of a page, or beside the check lines of the first; whether there was room.
fn put_in_short(flow: &mut Flow, page: usize, words: &str) -> bool {
    let line = |size: f64, flow: &Flow| paragraph(words, size, Weight::SemiBold, flow.width());
    let whole = line(CAPTION, flow);
    if put_first_that_fits(flow, page, &[whole]) || page == 0 && put_beside_the_check_lines(flow, words) {
        return true;
    }
    let smaller = line(SMALLEST, flow);
    put_first_that_fits(flow, page, &[smaller])
}

/// Puts words beside the check lines of the first page; whether there was room.
fn put_beside_the_check_lines(flow: &mut Flow, words: &str) -> bool {
    let Some([width, height]) = flow.free_beside_the_check_lines() else { return false };
    let beside = paragraph(words, CAPTION, Weight::SemiBold, width);
    let fits = beside.height <= height;
    if fits {
        flow.put_beside_the_check_lines(0, beside);
    }
    fits
}

/// Each caution on lines of its own, in two columns where the page is wide.
fn listed(cautions: &[&str], width: f64) -> Block {
    let columns = if width > 220.0 { 2 } else { 1 };
    let column_mm = (width - WORD_MM - PAD_MM * columns as f64) / columns as f64;
    let mut inside = Block::default();
    for (index, column) in cautions.chunks(cautions.len().div_ceil(columns).max(1)).enumerate() {
        let block = column.iter().fold(Block::default(), |above, words| above.over(caution(words, column_mm)));
        inside.height = inside.height.max(block.height);
        inside.items.extend(block.indented(index as f64 * (column_mm + PAD_MM)).items);
    }
    framed(inside, width)
}

fn caution(words: &str, width: f64) -> Block {
    const DOT_MM: f64 = 4.0;
    let mut block = paragraph(words, BODY, Weight::Regular, width - DOT_MM).indented(DOT_MM).then_free(0.6);
    block.items.push(Text::new(at(0.5, BODY * 0.85), BODY, "•").into());
    block
}

/// All cautions one after the other, in smaller letters.
fn close(cautions: &[&str], width: f64) -> Block {
    framed(paragraph(&cautions.join(" "), CAPTION, Weight::SemiBold, width - WORD_MM - PAD_MM), width)
}

/// The frame with its word around what is inside.
fn framed(inside: Block, width: f64) -> Block {
    let height = inside.height + 2.0 * PAD_MM;
    let mut items = vec![
        Item::rectangle(at(0.0, 0.0), at(width, height), None, Some(Pen::Frame)),
        Text::new(at(PAD_MM, PAD_MM + BODY), FACT, "Caution").bold().into(),
    ];
    items.extend(inside.items.into_iter().map(|item| item.shifted(WORD_MM, PAD_MM)));
    Block { height, items }
}
