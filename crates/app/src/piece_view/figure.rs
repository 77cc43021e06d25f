//! Figures taken from the piece.

use fh_core::plan::PlanUnit;
use fh_measure::{LengthUnit, format_decimal, format_length};

/// A length taken from the piece, in the plan's unit: to 1/64 in or a tenth of a millimetre.
pub(super) fn figure(mm: f64, unit: PlanUnit) -> String {
    match unit {
        PlanUnit::Inch => format_length(mm, LengthUnit::Inch, unit.finest()),
        PlanUnit::Millimeter => format_decimal(mm, LengthUnit::Millimeter, 1),
    }
}
