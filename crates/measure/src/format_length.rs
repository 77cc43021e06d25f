//! A length rounded to the step that the smith marks by, in any unit.

use crate::format::format_decimal;
use crate::length_unit::LengthUnit;
use crate::rounding::Rounding;

/// A length of so many millimetres, rounded to a step and printed in a unit, with the unit.
pub fn format_length(mm: f64, unit: LengthUnit, rounding: Rounding) -> String {
    let rounded = rounding.round(mm);
    if rounding.unit() == unit || rounded.is_beyond() { rounded.text() } else { format_decimal(rounded.mm(), unit, 3) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::BEYOND_MEASURE;

    #[test]
    fn a_rounded_length_is_printed_in_the_unit_that_is_asked_for() {
        assert_eq!(format_length(46.2, LengthUnit::Millimeter, Rounding::MILLIMETER), "46 mm");
        assert_eq!(format_length(46.2, LengthUnit::Inch, Rounding::SIXTEENTH_INCH), "1 13/16 in");
        assert_eq!(format_length(46.2, LengthUnit::Inch, Rounding::MILLIMETER), "1.811 in");
        assert_eq!(format_length(25.4, LengthUnit::Centimeter, Rounding::SIXTEENTH_INCH), "2.54 cm");
    }

    #[test]
    fn what_cannot_be_counted_in_steps_is_beyond_measure() {
        for mm in [f64::NAN, f64::INFINITY, -1e300] {
            assert_eq!(format_length(mm, LengthUnit::Inch, Rounding::SIXTEENTH_INCH), BEYOND_MEASURE);
            assert_eq!(format_length(mm, LengthUnit::Meter, Rounding::SIXTEENTH_INCH), BEYOND_MEASURE);
        }
    }
}
