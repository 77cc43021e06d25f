//! Labels for the offcuts that are kept, to cut apart and tie on.

use super::{CutHead, gap};
use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::Pen;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::title::title_block;
use crate::sheets::type_sizes::{BODY, CAPTION, TITLE};
use crate::typeset;
use fh_rack::kept::rack::RackBar;
use fh_rack::list::booked::put_back;
use fh_rack::list::make::CutList;

/// A label is so high.
const HIGH_MM: f64 = 34.0;
/// Labels side by side.
const ACROSS: usize = 4;
/// Free inside a label.
const PAD_MM: f64 = 3.0;
/// More labels than this are not printed.
const MOST: usize = 200;

/// Puts the labels on pages of their own; nothing where no offcut is kept.
pub(super) fn put(flow: &mut Flow, list: &CutList, head: CutHead<'_>) {
    let offcuts = put_back(list);
    let each = offcuts.iter().flat_map(|bar| std::iter::repeat_n(bar, bar.bar.count as usize));
    let each: Vec<&RackBar> = each.take(MOST).collect();
    if each.is_empty() {
        return;
    }
    let width = flow.width();
    flow.start_part(format!("{}, labels for offcuts", head.title));
    flow.put(title_block(head.title, head.date, "LABELS FOR OFFCUTS", width).then_free(2.0));
    let wide = width / ACROSS as f64;
    for row in each.chunks(ACROSS) {
        let mut line = gap(HIGH_MM);
        for (at, bar) in row.iter().enumerate() {
            line.items.extend(label(bar, head, wide).indented(at as f64 * wide).items);
        }
        flow.put(line);
    }
}

fn label(bar: &RackBar, head: CutHead<'_>, wide: f64) -> Block {
    let room = wide - 2.0 * PAD_MM;
    let section = bar.bar.section.describe();
    let length = bar.bar.length.text();
    let date = if head.date.is_empty() { String::new() } else { format!(", {}", head.date) };
    let of = format!("{}{date}", bar.alike().material);
    let line = |y: f64, size: f64, words: &str, weight: Weight| {
        let size = typeset::fitting_size(words, size, CAPTION, weight, room);
        let words = typeset::shorten(words, size, weight, room);
        Item::from(Text::new(at(PAD_MM, y), size, &words).weight(weight))
    };
    let mut items = vec![
        Item::rectangle(at(0.0, 0.0), at(wide, HIGH_MM), None, Some(Pen::ScissorLine)),
        line(11.0, TITLE, length, Weight::SemiBold),
        line(19.0, BODY * 1.4, &section, Weight::SemiBold),
        line(24.0, CAPTION, &of, Weight::Regular),
        line(28.0, CAPTION, head.title, Weight::Regular),
    ];
    if let Some(end) = &bar.end {
        items.push(line(32.0, CAPTION, &format!("{} of one end gives no piece", end.text()), Weight::Regular));
    }
    Block { height: HIGH_MM, items }
}
