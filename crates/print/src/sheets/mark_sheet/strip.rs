//! The starting bar at full scale, row by row, with its marks across it.
//!
//! The bar is laid on its picture, so each mark stands out above and below it. Marks are drawn at the rounded total that
//! is printed beside them, not at the exact one: strip, figures and rule must never disagree at the anvil. The table says
//! how far each figure is off.

use super::rows::{OVERLAP_MM, rows};
use super::strip_row::{SIDE_MM, StripRow, level_row_mm};
use super::words::{Fate, Strip};
use crate::fonts::Weight;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::BODY;

/// Between two rows.
const BETWEEN_ROWS_MM: f64 = 4.0;
/// The strip is not drawn beyond this page; a bar of absurd length would use up a forest.
const LAST_PAGE: usize = 60;
/// How much of a long rest in the tongs is drawn, where the row has room.
const HELD_SHOWN_MM: f64 = 55.0;
/// How much of it is drawn at least.
const HELD_SEEN_MM: f64 = 8.0;

/// Puts the whole strip on the flow, as far as there are pages for it.
pub(super) fn put_strip(flow: &mut Flow, strip: &Strip) {
    let row_mm = flow.width() - 2.0 * SIDE_MM;
    let shown_mm = shown_length(strip, row_mm);
    let rows = rows(shown_mm, row_mm, most_rows(flow, strip));
    for (index, row) in rows.iter().enumerate() {
        let drawn = StripRow::new(strip, *row, index, rows.len(), shown_mm, flow.width()).block();
        let block = if index == 0 { heading(flow.width(), rows.len()).over(drawn) } else { drawn };
        flow.put(block);
        flow.skip(BETWEEN_ROWS_MM);
    }
    if rows.last().is_none_or(|row| row.joined_after) {
        flow.put(stops_early(flow.width(), &strip.length));
    }
}

/// How many rows fit on the pages that are left for the strip.
fn most_rows(flow: &Flow, strip: &Strip) -> usize {
    let row_mm = level_row_mm(strip.height_mm) + BETWEEN_ROWS_MM;
    let on_one_page = (flow.page_room() / row_mm).floor().max(1.0) as usize;
    on_one_page * LAST_PAGE.saturating_sub(flow.page_count())
}

/// How much of the bar is drawn: a long rest in the tongs carries no marks, so it is broken off, and no row is begun for
/// nothing but that rest.
fn shown_length(strip: &Strip, row_mm: f64) -> f64 {
    match strip.blocks.last() {
        Some(last) if last.fate == Fate::Held && last.end_mm - last.start_mm > row_mm / 2.0 => {
            let seen = last.start_mm + HELD_SEEN_MM;
            let rows_before = ((seen - row_mm) / (row_mm - OVERLAP_MM)).ceil().max(0.0);
            let row_end = rows_before * (row_mm - OVERLAP_MM) + row_mm;
            (last.start_mm + HELD_SHOWN_MM).min(row_end)
        }
        _ => strip.length_mm.max(strip.marks.last().map_or(0.0, |mark| mark.at_mm)),
    }
}

fn heading(width: f64, rows: usize) -> Block {
    const LAY: &str = "Full scale. Lay the bar on its picture: the marks stand out on both sides.";
    const JOIN: &str = "Cut out the rows and join them cross on cross, A on A.";
    let words = if rows > 1 { format!("{LAY} {JOIN}") } else { LAY.to_owned() };
    paragraph(&words, BODY, Weight::Regular, width).then_free(2.0)
}

fn stops_early(width: f64, length: &str) -> Block {
    let words = format!("The strip stops here; the bar is {length} long. Mark the rest by the table.");
    paragraph(&words, BODY, Weight::SemiBold, width).then_free(2.0)
}
