//! Printing lengths: reduced fractions of an inch, or decimals.

use crate::length_unit::LengthUnit;
use crate::rounding::Rounding;

/// The finest fraction of an inch that is printed.
const FINEST: f64 = 64.0;

/// A length of so many millimetres, rounded to a step and printed in a unit, with the unit.
pub fn format_length(mm: f64, unit: LengthUnit, rounding: Rounding) -> String {
    let rounded = rounding.round(mm);
    if rounding.unit() == unit { rounded.text() } else { format_decimal(rounded.mm(), unit, 3) }
}

/// A length of so many millimetres as a decimal in a unit, with the unit; no zeros at the end.
pub fn format_decimal(mm: f64, unit: LengthUnit, decimals: usize) -> String {
    format!("{} {}", trimmed_decimal(mm / unit.mm(), decimals), unit.symbol())
}

/// A length in a unit that reads back as the same length to a thousandth of a millimetre or better.
pub(crate) fn format_exact(mm: f64, unit: LengthUnit) -> String {
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
