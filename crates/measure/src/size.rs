//! One size in a text: a sign, a number, a unit; feet may take inches.

use crate::error::Problem;
use crate::exact::Exact;
use crate::length_range::LengthRange;
use crate::length_unit::LengthUnit;
use crate::reader::Reader;
use crate::scan::Kind;

/// The words of sums, besides + and -. They end a size before them.
pub(crate) const JOINING: [&str; 6] = ["plus", "and", "minus", "less", "of", "times"];

/// A size as it stands in a text, before it is known what unit a bare number takes.
pub(crate) struct Size {
    /// The character it starts at, counted from 0.
    pub(crate) at: usize,
    /// The one behind it.
    end: usize,
    minus: bool,
    number: Exact,
    unit: Option<LengthUnit>,
    inches: Option<Exact>,
}

impl Size {
    /// Reads the size at this place.
    pub(crate) fn read(reader: &mut Reader<'_>) -> Result<Self, Problem> {
        let at = reader.at();
        let minus = reader.sign();
        let number = reader.number()?;
        let unit = unit_after(reader)?;
        let inches = match unit {
            Some(LengthUnit::Foot) if reader.peek().is_some_and(|kind| !begins_range(kind)) => {
                Some(inches_after_feet(reader)?)
            }
            _ => None,
        };
        Ok(Self { at, end: reader.at(), minus, number, unit, inches })
    }

    /// The unit that it names last.
    pub(crate) fn unit(&self) -> Option<LengthUnit> {
        if self.inches.is_some() { Some(LengthUnit::Inch) } else { self.unit }
    }

    /// The unit that a bare number beside it takes. Beside feet and inches it could be either, and takes none.
    pub(crate) fn unit_beside(&self) -> Option<LengthUnit> {
        if self.inches.is_some() { None } else { self.unit }
    }

    /// Its millimetres with their sign; a bare number takes `unit_of_bare`.
    pub(crate) fn mm(&self, unit_of_bare: Option<LengthUnit>, range: LengthRange) -> Result<Exact, Problem> {
        let unit = self.unit.or(unit_of_bare).ok_or_else(|| Problem::new(self.end, "the unit is missing"))?;
        let feet = in_mm(self.number, unit);
        let whole = match self.inches {
            Some(inches) => feet.and_then(|feet| feet.plus(in_mm(inches, LengthUnit::Inch)?)),
            None => feet,
        };
        let whole = whole.ok_or_else(|| Problem::new(self.at, "this is too large or too small"))?;
        if !self.minus {
            return Ok(whole);
        }
        if range != LengthRange::Any {
            return Err(Problem::new(self.at, "a size is not below 0"));
        }
        if whole.is_zero() {
            return Err(Problem::new(self.at, "0 takes no minus sign"));
        }
        Ok(whole.negated())
    }
}

/// Whether what stands behind a size makes a range of it, or a sum.
fn begins_range(kind: &Kind) -> bool {
    matches!(kind, Kind::PlusMinus | Kind::Plus) || is_to(kind) || is_joining(kind)
}

/// Whether this is a word of a sum.
fn is_joining(kind: &Kind) -> bool {
    JOINING.iter().any(|word| is_word(kind, word))
}

/// Whether this is a word, whatever its case.
pub(crate) fn is_word(kind: &Kind, wanted: &str) -> bool {
    matches!(kind, Kind::Word(word) if word.eq_ignore_ascii_case(wanted))
}

/// Whether this is the unit of feet.
pub(crate) fn is_foot(kind: &Kind) -> bool {
    matches!(kind, Kind::Word(word) if word == "'" || LengthUnit::from_word(word) == Some(LengthUnit::Foot))
}

/// Whether this is the word between the ends of a range.
pub(crate) fn is_to(kind: &Kind) -> bool {
    is_word(kind, "to")
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
        return Err(Problem::new(at, "after feet only inches may follow, with their mark"));
    }
    Ok(inches)
}

/// The unit at this place, where there is one.
fn unit_after(reader: &mut Reader<'_>) -> Result<Option<LengthUnit>, Problem> {
    let Some(kind @ Kind::Word(word)) = reader.peek() else { return Ok(None) };
    if is_to(kind) || is_joining(kind) {
        return Ok(None);
    }
    let unit = match word.as_str() {
        "\"" => LengthUnit::Inch,
        "'" => LengthUnit::Foot,
        word => LengthUnit::from_word(word).ok_or_else(|| {
            Problem::new(reader.at(), format!("“{word}” isn't a unit of length; there are in, ft, mm, cm and m"))
        })?,
    };
    reader.take();
    Ok(Some(unit))
}
