//! A length as it was written.

use crate::error::{MeasureError, Problem};
use crate::format;
use crate::length_range::LengthRange;
use crate::length_unit::LengthUnit;
use crate::reader::Reader;
use crate::scan::scan;
use crate::size::Size;
use crate::span::{Ends, Span};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// A length that keeps its text. It may be written as a range, and is then the middle of it with a low and a high end.
#[derive(Clone, Debug, PartialEq)]
pub struct WrittenLength {
    text: String,
    unit: LengthUnit,
    mm: f64,
    lowest_mm: f64,
    highest_mm: f64,
}

/// Lengths beyond this many millimetres (a million kilometres) are refused.
const MOST_MM: f64 = 1e12;

const EXAMPLE: &str = "3 1/4 in or 82.5 mm";

impl WrittenLength {
    /// Reads a length: `3 1/4 in`, `3-1/4"`, `1' 2 3/8"`, `7/16 in`, `¼ in`, `3¼″`, `82.5 mm`, `12,5 mm`, `8.25 cm`, `0.3 m`.
    ///
    /// A number without a unit takes `default_unit`, which is then added to the text; without a default it is refused.
    ///
    /// It may be a range: `1/4 to 9/32 in`, `6 mm to 1/4 in`, `6 ± 0.5 mm`, `6 +- 0.5 mm`, `6 +0.5 -0 mm`. A number
    /// without a unit then takes that of the other. The rule for the size holds for its low end.
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
            let problem = Problem::new(0, "this is too large or too small");
            return Err(problem.of(&format!("{mm} mm"), EXAMPLE));
        }
        Self::parse(&format::format_exact(mm, unit), None, range)
    }

    /// The same length times a factor, written in the same unit; a range stays a range: `1/4 in to 5/16 in`.
    ///
    /// # Errors
    /// Where the factor is not above 0, or the length becomes too small or too great to be written.
    pub fn scaled(&self, factor: f64) -> Result<Self, MeasureError> {
        if !factor.is_finite() || factor <= 0.0 {
            return Err(Problem::new(0, "a size is scaled by a number above 0").of(&factor.to_string(), "2 or 0.5"));
        }
        let range = match self.mm {
            mm if mm > 0.0 && self.lowest_mm > 0.0 => LengthRange::AboveZero,
            _ => LengthRange::Any,
        };
        if !self.is_range() {
            return Self::from_mm(self.mm * factor, self.unit, range);
        }
        Self::between_mm(self.lowest_mm * factor, self.highest_mm * factor, self.unit, range)
    }

    /// The same length so many millimetres longer, written in the same unit; a range stays a range.
    ///
    /// # Errors
    /// Where it then is not in the range of what it may be, or beyond all measure.
    pub fn longer_by(&self, mm: f64, range: LengthRange) -> Result<Self, MeasureError> {
        if !self.is_range() {
            return Self::from_mm(self.mm + mm, self.unit, range);
        }
        Self::between_mm(self.lowest_mm + mm, self.highest_mm + mm, self.unit, range)
    }

    /// The same length as the middle of a range with so many millimetres to either side: `3 1/4 in ± 1/32 in`.
    ///
    /// # Errors
    /// Where it is a range already, or its low end would not be in the range of what it may be.
    pub fn with_tolerance_mm(&self, tolerance: f64, range: LengthRange) -> Result<Self, MeasureError> {
        Self::parse(&format!("{} ± {}", self.text, format::format_exact(tolerance, self.unit)), None, range)
    }

    /// Writes a range from one length in millimetres to another: `1/4 in to 9/32 in`.
    ///
    /// # Errors
    /// Where either end is not finite or beyond all measure, the low one not in the range of what it may be, or not below
    /// the high one.
    pub fn between_mm(lowest: f64, highest: f64, unit: LengthUnit, range: LengthRange) -> Result<Self, MeasureError> {
        let low = Self::from_mm(lowest, unit, range)?;
        let high = Self::from_mm(highest, unit, range)?;
        Self::parse(&format!("{} to {}", low.text, high.text), None, range)
    }

    /// The low end as a length of its own. Its value is exact; its text may round it to a thousandth of a millimetre.
    #[must_use]
    pub fn at_lowest(&self) -> Self {
        self.at(self.lowest_mm)
    }

    /// The high end as a length of its own. Its value is exact; its text may round it to a thousandth of a millimetre.
    #[must_use]
    pub fn at_highest(&self) -> Self {
        self.at(self.highest_mm)
    }

    fn at(&self, mm: f64) -> Self {
        if !self.is_range() {
            return self.clone();
        }
        let text = format::format_exact(mm, self.unit);
        Self { text, unit: self.unit, mm, lowest_mm: mm, highest_mm: mm }
    }

    /// The text as typed.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The unit that it was written in; the last one, where there are several.
    pub fn unit(&self) -> LengthUnit {
        self.unit
    }

    /// The length in millimetres; of a range, the middle.
    pub fn mm(&self) -> f64 {
        self.mm
    }

    /// The length in millimetres at the low end of its range; where it is no range, the length.
    pub fn lowest_mm(&self) -> f64 {
        self.lowest_mm
    }

    /// The length in millimetres at the high end of its range; where it is no range, the length.
    pub fn highest_mm(&self) -> f64 {
        self.highest_mm
    }

    /// Whether it was written as a range.
    pub fn is_range(&self) -> bool {
        self.lowest_mm < self.highest_mm
    }

    /// How far in millimetres it may lie to either side of the middle; 0 where it is no range.
    pub fn tolerance_mm(&self) -> f64 {
        (self.highest_mm - self.lowest_mm) / 2.0
    }

    /// The length as a quantity; of a range, the middle.
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
    let size = Size::read(&mut reader)?;
    let span = Span::read(&mut reader)?;
    reader.finish()?;
    let default_unit = match names_no_unit(&size, span.as_ref()) {
        true if default_unit.is_none() => return Err(Problem::new(reader.at(), "the unit is missing")),
        true => default_unit,
        false => None,
    };
    let beside = size.unit_beside().or_else(|| span.as_ref().and_then(Span::unit_beside));
    let unit_of_bare = beside.or(default_unit);
    let first = size.mm(unit_of_bare, range)?;
    let ends = span.as_ref().map(|span| span.ends(first, unit_of_bare, range)).transpose()?;
    let ends = ends.unwrap_or(Ends { lowest: first, middle: first, highest: first });
    check_sizes(&ends, span.as_ref(), range)?;
    let unit = span.as_ref().and_then(Span::unit).or_else(|| size.unit()).or(default_unit);
    let text = match default_unit {
        Some(default) => format!("{text} {}", default.symbol()),
        None => text.to_owned(),
    };
    Ok(WrittenLength {
        text,
        unit: unit.unwrap_or(LengthUnit::Millimeter),
        mm: ends.middle.value(),
        lowest_mm: ends.lowest.value(),
        highest_mm: ends.highest.value(),
    })
}

fn names_no_unit(size: &Size, span: Option<&Span>) -> bool {
    size.unit().is_none() && span.is_none_or(|span| span.unit().is_none())
}

fn check_sizes(ends: &Ends, span: Option<&Span>, range: LengthRange) -> Result<(), Problem> {
    let (lowest, highest) = (ends.lowest.value(), ends.highest.value());
    if lowest.abs() > MOST_MM || highest.abs() > MOST_MM {
        return Err(Problem::new(0, "this is longer than a million kilometres"));
    }
    let (too_low, words, of_range) = match range {
        LengthRange::AboveZero => {
            (lowest <= 0.0, "a size greater than 0 belongs here", "the low end of a range is greater than 0 here")
        }
        LengthRange::ZeroOrMore => (lowest < 0.0, "a size is not below 0", "the low end of a range is not below 0"),
        LengthRange::Any => return Ok(()),
    };
    match span {
        _ if !too_low => Ok(()),
        Some(span) if !span.is_to() => Err(Problem::new(span.at(), of_range)),
        _ => Err(Problem::new(0, words)),
    }
}
