//! The strip in one row, for a sheet that is read: at full scale where it fits the page, else smaller, and said so.

use super::marks::strip;
use super::rows::Row;
use super::strip::{HELD_SEEN_MM, HELD_SHOWN_MM, spot_words};
use super::strip_row::{SIDE_MM, StripRow};
use super::words::{Fate, Strip};
use crate::fonts::Weight;
use crate::sheets::flow::Block;
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::{BELOW_STEP, CAPTION, FIGURE};
use fh_core::balance::BarBalance;
use fh_core::plan::{Bar, Plan};

/// The largest em of its upright labels, and the same where there is little room.
const LABELS: [f64; 2] = [0.7 * FIGURE, CAPTION];
/// What is longer than this, in mm, is not drawn.
const LONGEST_MM: f64 = 1e6;

/// The strip of a bar with its marks under a few words; none where nothing is marked on it.
pub(in crate::sheets) fn one_row(
    plan: &Plan,
    bar: &Bar,
    worked: &BarBalance,
    width: f64,
    is_close: bool,
) -> Option<Block> {
    let strip = Strip { least: CAPTION, ..strip(plan, bar, worked)? };
    let row_mm = width - 2.0 * SIDE_MM;
    let shown_mm = shown_length(&strip, row_mm);
    if !(1e-3..LONGEST_MM).contains(&shown_mm) {
        return None;
    }
    let share = (row_mm / shown_mm).min(1.0);
    let strip = if share < 1.0 { strip.reduced(share) } else { strip };
    let row = Row { start: 0.0, end: shown_mm * share, joined_before: false, joined_after: false };
    Some(
        heading(&strip, width)
            .over(StripRow::new(&strip, row, [0, 1], row.end, [width, LABELS[usize::from(is_close)]]).block()),
    )
}

/// How much of the bar is drawn: of a long rest in the tongs, which carries no marks, no more than there is room for.
fn shown_length(strip: &Strip, row_mm: f64) -> f64 {
    let whole = strip.length_mm.max(strip.marks.last().map_or(0.0, |mark| mark.at_mm));
    match strip.blocks.last() {
        Some(last) if last.fate == Fate::Held => {
            let [least, most] = [HELD_SEEN_MM, HELD_SHOWN_MM].map(|held| last.start_mm + held);
            whole.min(most.min(row_mm.max(least)))
        }
        _ => whole,
    }
}

/// At which scale it is drawn, which side of the bar is seen and punched, and where the slits are.
fn heading(strip: &Strip, width: f64) -> Block {
    let [from, name] = strip.seen;
    let scale = match scale_words(strip.scale) {
        Some(scale) => format!("Not at full scale, {scale}: mark out by the totals."),
        None => "Full scale: lay the bar on it.".to_owned(),
    };
    let wide = if strip.is_wide { ", wide side up" } else { "" };
    let words = format!("{scale} Seen from {from}{wide}; punch the side that is up, the {name} from now on.");
    let words = std::iter::once(words).chain(spot_words(strip)).collect::<Vec<_>>().join(" ");
    let lay = paragraph(&words, BELOW_STEP, Weight::Regular, width);
    let slits = strip.slit_words.iter();
    slits.fold(lay, |above, slit| above.over(paragraph(slit, BELOW_STEP, Weight::SemiBold, width))).then_free(1.0)
}

/// `1 : 1.4`; none at full scale.
fn scale_words(scale: f64) -> Option<String> {
    let times = format!("{:.1}", 1.0 / scale);
    (scale < 1.0).then(|| format!("1 : {}", times.strip_suffix(".0").unwrap_or(&times)))
}
