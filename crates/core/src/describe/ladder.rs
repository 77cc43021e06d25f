//! The rungs of a ladder in the smith's words.

use crate::balance::{Ladder, Rung};
use crate::metal::in_mm;
use crate::plan::PlanUnit;
use fh_measure::{Rounding, format_exact};

/// What the sizes of its rungs are: `side`, `thickness at its end`.
pub fn ladder_size_words(ladder: &Ladder) -> String {
    format!("{} {}", ladder.measured, ladder.place).trim_end().to_owned()
}

/// How thick it is there, of a taper at both ends: `15/32 in`, `17 → 9 mm`.
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
