//! The starting bar at full scale, row by row, with its marks across it.
//!
//! The bar is laid on its picture, so each mark stands out above and below it. Marks are drawn at the rounded total that
//! is printed beside them, not at the exact one: strip, figures and rule must never disagree at the anvil. The table says
//! how far each figure is off.

use super::labels::CLOSER;
use super::rows::{OVERLAP_MM, rows};
use super::strip_row::{SIDE_MM, StripRow, level_row_mm};
use super::words::{Fate, MarkKind, Strip};
use crate::fonts::Weight;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::{BODY, FIGURE};

/// Between two rows.
const BETWEEN_ROWS_MM: f64 = 4.0;
/// The strip is not drawn beyond this page; a bar of absurd length would use up a forest.
const LAST_PAGE: usize = 60;
/// How much of a long rest in the tongs is drawn, where the row has room.
pub(super) const HELD_SHOWN_MM: f64 = 55.0;
/// How much of it is drawn at least.
pub(super) const HELD_SEEN_MM: f64 = 8.0;

/// Puts the whole strip on the flow, as far as there are pages for it.
pub(super) fn put_strip(flow: &mut Flow, strip: &Strip) {
    let row_mm = flow.width() - 2.0 * SIDE_MM;
    let shown_mm = shown_length(strip, row_mm);
    let rows = rows(shown_mm, row_mm, most_rows(flow, strip));
    for (index, row) in rows.iter().enumerate() {
        let row_block = |largest: f64| {
            let drawn = StripRow::new(strip, *row, [index, rows.len()], shown_mm, [flow.width(), largest]).block();
            if index == 0 { heading(strip, flow.width(), rows.len()).over(drawn) } else { drawn }
        };
        // Smaller figures rather than a page that is left half empty.
        let (block, closer) = (row_block(FIGURE), row_block(CLOSER));
        let saves_room = block.height > flow.room() && closer.height <= flow.room();
        flow.put(if saves_room { closer } else { block });
        flow.skip(BETWEEN_ROWS_MM);
    }
    if rows.last().is_none_or(|row| row.joined_after) {
        flow.put(stops_early(flow.width(), &strip.length));
    }
}

/// How many rows fit on the pages that are left for the strip.
fn most_rows(flow: &Flow, strip: &Strip) -> usize {
    let row_mm = level_row_mm(strip) + BETWEEN_ROWS_MM;
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

/// How the bar lies, what is punched, how rows are joined, and where the slits are.
fn heading(strip: &Strip, width: f64, rows: usize) -> Block {
    const JOIN: &str = "Cut out the rows and join them cross to cross, A to A.";
    /// The slits that are told at most.
    const MOST_SLITS: usize = 8;
    let words =
        [Some(lying_words(strip)), spot_words(strip), (rows > 1).then(|| JOIN.to_owned())].into_iter().flatten();
    let lay = paragraph(&words.collect::<Vec<_>>().join(" "), BODY, Weight::Regular, width);
    let slits = strip.slit_words.iter().take(MOST_SLITS);
    slits.fold(lay, |above, slit| above.over(paragraph(slit, BODY, Weight::SemiBold, width))).then_free(1.5)
}

/// Which side of the bar is drawn, and that it is the one to punch. Every side that a card names hangs on it.
fn lying_words(strip: &Strip) -> String {
    let [from, name] = strip.seen;
    let wide = if strip.is_wide { ", wide side up," } else { "" };
    let up = if strip.is_wide { "that side" } else { "the side that is up" };
    format!("Full scale, seen from {from}. Lay the bar on it{wide} and punch {up}: on every card it is the {name}.")
}

/// What tells punched marks from scribed ones, fixed marks from others, and what is not settled, where there are any.
pub(super) fn spot_words(strip: &Strip) -> Option<String> {
    const SPOT: &str = "A dot is punched, a bare line scribed.";
    const FIXED: &str = "A dot in a square is a mark that you fixed.";
    const OPEN: &str = "What is hatched both ways is not settled yet.";
    // The end of the bar is cut, and drawn heavy.
    let struck = || strip.marks.iter().filter(|mark| mark.kind != MarkKind::Cut);
    let both = struck().any(|mark| mark.kind.is_punched()) && struck().any(|mark| !mark.kind.is_punched());
    let fixed = strip.marks.iter().any(|mark| mark.is_fixed).then_some(FIXED);
    let open = strip.blocks.iter().any(|block| block.fate == Fate::Open).then_some(OPEN);
    let words: Vec<&str> = both.then_some(SPOT).into_iter().chain(fixed).chain(open).collect();
    (!words.is_empty()).then(|| words.join(" "))
}

fn stops_early(width: f64, length: &str) -> Block {
    let words = format!("The strip stops here; the bar is {length} long. Mark the rest by the table.");
    paragraph(&words, BODY, Weight::SemiBold, width).then_free(2.0)
}
