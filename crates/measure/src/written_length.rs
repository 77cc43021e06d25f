//! A length as it was written.

use crate::error::{MeasureError, Problem};
use crate::exact::Exact;
use crate::format;
use crate::length_unit::LengthUnit;
use crate::reader::Reader;
use crate::scan::{Kind, scan};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// What a length may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LengthRange {
    /// Greater than 0.
    AboveZero,
    /// 0 or greater.
    ZeroOrMore,
    /// Any finite value: a coordinate.
    Any,
}

/// A length that keeps its text.
#[derive(Clone, Debug, PartialEq)]
pub struct WrittenLength {
    text: String,
    mm: f64,
}

/// Lengths beyond this many millimetres (a million kilometres) are refused.
const MOST_MM: f64 = 1e12;

const EXAMPLE: &str = "3 1/4 in or 82.5 mm";

impl WrittenLength {
    /// Reads a length: `3 1/4 in`, `3-1/4"`, `1' 2 3/8"`, `7/16 in`, `¼ in`, `3¼″`, `82.5 mm`, `12,5 mm`, `8.25 cm`, `0.3 m`.
    ///
    /// A number without a unit takes `default_unit`, which is then added to the text; without a default it is refused.
    ///
    /// # Errors
    /// Where the text is no length or not in the range: what was read, where, and what would be right.
    pub fn parse(text: &str, default_unit: Option<LengthUnit>, range: LengthRange) -> Result<Self, MeasureError> {
        let trimmed = text.trim();
        read(trimmed, default_unit, range).map_err(|problem| problem.of(trimmed, EXAMPLE))
    }

    /// Writes a length of so many millimetres in a unit: inches as a fraction where they are one, else as a decimal.
    ///
    /// # Errors
    /// Where the length is not finite, beyond all measure or not in the range.
    pub fn from_mm(mm: f64, unit: LengthUnit, range: LengthRange) -> Result<Self, MeasureError> {
        if !mm.is_finite() || mm.abs() > MOST_MM {
            let problem = Problem::new(0, "this is beyond all measure");
            return Err(problem.of(&format!("{mm} mm"), EXAMPLE));
        }
        Self::parse(&format::format_exact(mm, unit), None, range)
    }

    /// The text as typed.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The length in millimetres.
    pub fn mm(&self) -> f64 {
        self.mm
    }

    /// The length as a quantity.
    pub fn length(&self) -> Length {
        Length::new::<millimeter>(self.mm)
    }
}

fn read(text: &str, default_unit: Option<LengthUnit>, range: LengthRange) -> Result<WrittenLength, Problem> {
    let parts = scan(text)?;
    let mut reader = Reader::new(&parts, text.chars().count());
    if parts.is_empty() {
        return Err(Problem::new(0, "nothing is written"));
    }
    let minus_at = reader.at();
    let minus = reader.sign();
    let first = reader.number()?;
    let unit = unit_after(&mut reader)?;
    let Some(known_unit) = unit.or(default_unit) else {
        reader.finish()?;
        return Err(Problem::new(reader.at(), "the unit is missing"));
    };
    let mut sum = in_mm(first, known_unit);
    if unit == Some(LengthUnit::Foot) && reader.peek().is_some() {
        let inches = inches_after_feet(&mut reader)?;
        sum = sum.and_then(|feet| feet.plus(in_mm(inches, LengthUnit::Inch)?));
    }
    reader.finish()?;
    let sum = sum.ok_or_else(|| Problem::new(0, "this is beyond all measure"))?;
    if minus {
        check_minus(sum, minus_at, range)?;
    }
    let mm = if minus { sum.negated() } else { sum }.value();
    check_size(mm, range)?;
    let text = match (unit, default_unit) {
        (None, Some(default)) => format!("{text} {}", default.symbol()),
        _ => text.to_owned(),
    };
    Ok(WrittenLength { text, mm })
}

fn in_mm(number: Exact, unit: LengthUnit) -> Option<Exact> {
    let (numerator, denominator) = unit.exact_mm();
    number.times(Exact::new(numerator, denominator)?)
}

/// The inches that may follow feet, with or without a hyphen.
fn inches_after_feet(reader: &mut Reader<'_>) -> Result<Exact, Problem> {
    reader.take_hyphen();
    let at = reader.at();
    let inches = reader.number()?;
    if unit_after(reader)? != Some(LengthUnit::Inch) {
        return Err(Problem::new(at, "after feet only inches may stand, with their mark"));
    }
    Ok(inches)
}

fn check_minus(size: Exact, at: usize, range: LengthRange) -> Result<(), Problem> {
    if range != LengthRange::Any {
        return Err(Problem::new(at, "a size is not below 0"));
    }
    if size.is_zero() {
        return Err(Problem::new(at, "0 has no minus"));
    }
    Ok(())
}

fn check_size(mm: f64, range: LengthRange) -> Result<(), Problem> {
    if mm.abs() > MOST_MM {
        return Err(Problem::new(0, "this is longer than a million kilometres"));
    }
    if range == LengthRange::AboveZero && mm <= 0.0 {
        return Err(Problem::new(0, "a size greater than 0 belongs here"));
    }
    Ok(())
}

/// The unit at this place, where there is one.
fn unit_after(reader: &mut Reader<'_>) -> Result<Option<LengthUnit>, Problem> {
    let Some(Kind::Word(word)) = reader.peek() else { return Ok(None) };
    let unit = match word.as_str() {
        "\"" => LengthUnit::Inch,
        "'" => LengthUnit::Foot,
        word => LengthUnit::from_word(word).ok_or_else(|| {
            Problem::new(reader.at(), format!("“{word}” is no unit of length; there are in, ft, mm, cm and m"))
        })?,
    };
    reader.take();
    Ok(Some(unit))
}
