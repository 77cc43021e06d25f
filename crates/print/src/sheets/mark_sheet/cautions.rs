//! The cautions that stand on every sheet, in a frame.

use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::Pen;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT};

/// The width of the word before the cautions.
const WORD_MM: f64 = 24.0;
/// Free inside the frame, and between the columns.
const PAD_MM: f64 = 2.5;

/// Puts the cautions at the foot of the first page with room; set closer where that saves a page.
pub(super) fn put_cautions(flow: &mut Flow, cautions: &[String]) {
    let (listed, close) = (listed(cautions, flow.width()), close(cautions, flow.width()));
    let saves_a_page = !flow.has_room_at_a_foot(&listed) && flow.has_room_at_a_foot(&close);
    flow.put_at_a_foot(if saves_a_page { close } else { listed });
}

/// Each caution on lines of its own, in two columns where the page is wide.
fn listed(cautions: &[String], width: f64) -> Block {
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
fn close(cautions: &[String], width: f64) -> Block {
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
