//! Figures as the panels show them: in the plan's unit, with as many digits as a smith can use.

use fh_core::plan::PlanUnit;
pub(crate) use fh_measure::in_mm as mm;
use fh_measure::{LengthUnit, format_decimal, format_length};
use uom::si::area::square_millimeter;
use uom::si::f64::{Area, Length, Mass, Volume};
use uom::si::mass::{gram, kilogram, pound};
use uom::si::volume::cubic_millimeter;

/// Cubic and square millimetres in an inch: 25.4 mm exactly.
const MM_IN: f64 = 25.4;

/// Three digits that matter, and no zeros at the end that say nothing.
pub(crate) fn three_digits(value: f64) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    if value.abs() >= 1e7 {
        return format!("{value:.2e}");
    }
    let whole_digits = if value.abs() < 1.0 { 0 } else { value.abs().log10() as usize + 1 };
    let decimals = 3_usize.saturating_sub(whole_digits);
    format!("{value:.decimals$}")
}

/// A size of the finished piece, in mm, in the plan's unit: to 1/64 in or a tenth of a millimetre, however marks are rounded.
pub(crate) fn finished(mm: f64, unit: PlanUnit) -> String {
    match unit {
        PlanUnit::Inch => format_length(mm, LengthUnit::Inch, unit.finest()),
        PlanUnit::Millimeter => format_decimal(mm, LengthUnit::Millimeter, 1),
    }
}

/// A mass in the plan's unit.
pub(crate) fn mass(mass: Mass, unit: PlanUnit) -> String {
    match unit {
        PlanUnit::Inch => format!("{} lb", three_digits(mass.get::<pound>())),
        PlanUnit::Millimeter if mass.get::<kilogram>() < 1.0 => format!("{} g", three_digits(mass.get::<gram>())),
        PlanUnit::Millimeter => format!("{} kg", three_digits(mass.get::<kilogram>())),
    }
}

/// A volume in the plan's unit.
pub(crate) fn volume(volume: Volume, unit: PlanUnit) -> String {
    let mm3 = volume.get::<cubic_millimeter>();
    match unit {
        PlanUnit::Inch => format!("{} in³", three_digits(mm3 / MM_IN.powi(3))),
        PlanUnit::Millimeter => format!("{} cm³", three_digits(mm3 / 1000.0)),
    }
}

/// An area in the plan's unit, as a number.
pub(crate) fn area_value(area: Area, unit: PlanUnit) -> f64 {
    let mm2 = area.get::<square_millimeter>();
    match unit {
        PlanUnit::Inch => mm2 / (MM_IN * MM_IN),
        PlanUnit::Millimeter => mm2,
    }
}

/// The sign of the unit that areas are shown in.
pub(crate) fn area_sign(unit: PlanUnit) -> &'static str {
    match unit {
        PlanUnit::Inch => "in²",
        PlanUnit::Millimeter => "mm²",
    }
}

/// A length in millimetres, to a tenth.
pub(crate) fn in_millimeters(length: Length) -> String {
    format_decimal(mm(length), LengthUnit::Millimeter, 1)
}

/// A share as per cent, to a tenth.
pub(crate) fn percent(share: f64) -> String {
    if share.is_finite() { format!("{} %", (share * 1000.0).round() / 10.0) } else { "–".to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_digits_are_enough() {
        for (value, words) in [
            (0.0, "0.000"),
            (0.5, "0.500"),
            (1.234, "1.23"),
            (45.678, "45.7"),
            (1234.5, "1234"),
            (f64::NAN, "–"),
            (1e12, "1.00e12"),
        ] {
            assert_eq!(three_digits(value), words);
        }
    }
}
