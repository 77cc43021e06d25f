//! Printing lengths: reduced fractions of an inch, or decimals.

use crate::length_unit::LengthUnit;

/// The finest fraction of an inch that is printed.
const FINEST: f64 = 64.0;

/// What is said of a length that is no number or too great to be printed.
pub(crate) const BEYOND_MEASURE: &str = "beyond measure";

/// Lengths from here on, in any unit, are not printed: the figures of a larger number mean nothing.
const MOST_PRINTED: f64 = 1e15;

/// A length of so many millimetres as a decimal in a unit, with the unit; no zeros at the end.
pub fn format_decimal(mm: f64, unit: LengthUnit, decimals: usize) -> String {
    let amount = mm / unit.mm();
    // Asked this way round, what is no number is beyond measure too.
    if amount.abs() < MOST_PRINTED {
        format!("{} {}", trimmed_decimal(amount, decimals), unit.symbol())
    } else {
        BEYOND_MEASURE.to_owned()
    }
}

/// A length in a unit that reads back as the same length to a thousandth of a millimetre or better: inches as a fraction
/// where they are one, else a decimal.
pub fn format_exact(mm: f64, unit: LengthUnit) -> String {
    let steps = mm / 25.4 * FINEST;
    if unit == LengthUnit::Inch && (steps - steps.round()).abs() < 1e-9 * FINEST && steps.abs() < 1e15 {
        return format!("{} in", fraction(steps.round() as i64, FINEST as i64));
    }
    let decimals = match unit {
        LengthUnit::Millimeter => 3,
        LengthUnit::Inch | LengthUnit::Centimeter => 4,
        LengthUnit::Foot | LengthUnit::Meter => 6,
    };
    format_decimal(mm, unit, decimals)
}

/// So many parts of a whole as a reduced mixed number: `1 13/16`, `3/4`, `2`, `0`.
pub(crate) fn fraction(parts: i64, denominator: i64) -> String {
    let sign = if parts < 0 { "-" } else { "" };
    let (parts, denominator) = (parts.unsigned_abs(), denominator.unsigned_abs().max(1));
    let (whole, rest) = (parts / denominator, parts % denominator);
    let common = gcd(rest, denominator);
    let (rest, denominator) = (rest / common, denominator / common);
    match (whole, rest) {
        (whole, 0) => format!("{sign}{whole}"),
        (0, rest) => format!("{sign}{rest}/{denominator}"),
        (whole, rest) => format!("{sign}{whole} {rest}/{denominator}"),
    }
}

fn gcd(a: u64, b: u64) -> u64 {
    if b == 0 { a.max(1) } else { gcd(b, a % b) }
}

/// A decimal without zeros at its end, and never -0.
pub(crate) fn trimmed_decimal(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fractions_are_reduced_and_carry() {
        for (parts, printed) in [(0, "0"), (32, "1/2"), (63, "63/64"), (64, "1"), (116, "1 13/16"), (-208, "-3 1/4")] {
            assert_eq!(fraction(parts, 64), printed);
        }
    }

    #[test]
    fn decimals_carry_and_end_without_zeros() {
        assert_eq!(format_decimal(99.9996, LengthUnit::Millimeter, 3), "100 mm");
        assert_eq!(format_decimal(100.0, LengthUnit::Millimeter, 0), "100 mm");
        assert_eq!(format_decimal(12.7, LengthUnit::Inch, 3), "0.5 in");
        assert_eq!(format_decimal(-0.0, LengthUnit::Meter, 2), "0 m");
    }

    #[test]
    fn what_cannot_be_printed_is_said_to_be_beyond_measure() {
        for mm in [f64::NAN, f64::INFINITY, -1e300] {
            assert_eq!(format_decimal(mm, LengthUnit::Millimeter, 3), BEYOND_MEASURE);
        }
    }
}
