//! Sizes in the few words that stand at a drawing.

use fh_core::plan::PlanUnit;
use fh_measure::format_length;

/// A size in mm as the smith measures it: to 1/64 in, or to 0.1 mm.
pub(super) fn mm_words(unit: PlanUnit, mm: f64) -> String {
    let words = format_length(mm, unit.length_unit(), unit.finest());
    // A whole number of millimetres needs no tenth.
    words.strip_suffix(".0 mm").map_or_else(|| words.clone(), |whole| format!("{whole} mm"))
}
