//! Figures taken from the piece.

use fh_core::plan::PlanUnit;
use fh_measure::{LengthUnit, Rounding, format_decimal, format_length};

/// The finest rounding that lengths taken from the piece are told in.
pub(super) fn finest(unit: PlanUnit) -> Rounding {
    match unit {
        PlanUnit::Inch => Rounding::SIXTY_FOURTH_INCH,
        PlanUnit::Millimeter => Rounding::TENTH_MILLIMETER,
    }
}

/// A length taken from the piece, in the plan's unit: to 1/64 in or a tenth of a millimetre.
pub(super) fn figure(mm: f64, unit: PlanUnit) -> String {
    match unit {
        PlanUnit::Inch => format_length(mm, LengthUnit::Inch, finest(unit)),
        PlanUnit::Millimeter => format_decimal(mm, LengthUnit::Millimeter, 1),
    }
}
