//! The rungs of a ladder in the smith's words.

use crate::balance::Rung;
use crate::metal::in_mm;
use crate::plan::PlanUnit;
use fh_measure::{Rounding, format_exact};

/// How thick it is there, of a taper at both ends: `15/32 in`, `20 → 8.5 mm`.
pub fn rung_size_words(rung: &Rung, unit: PlanUnit) -> String {
    let unit = unit.length_unit();
    let size = format_exact(in_mm(rung.size), unit);
    match rung.end_size {
        Some(end) => {
            let bare = size.trim_end_matches(unit.symbol()).trim_end();
            format!("{bare} → {}", format_exact(in_mm(end), unit))
        }
        None => size,
    }
}

/// How much longer or shorter it is than planned, by the rounded lengths: `+3/16 in`, `−1/4 in`; empty on the planned rung.
pub fn rung_change_words(rung: &Rung, marks: Rounding) -> String {
    if rung.steps == 0 {
        return String::new();
    }
    let change = marks.round(in_mm(rung.length)) - marks.round(in_mm(rung.length - rung.change));
    match change.text() {
        words if words.starts_with('-') => words.replacen('-', "−", 1),
        words if change.mm() > 0.0 => format!("+{words}"),
        words => words,
    }
}
