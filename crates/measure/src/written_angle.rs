//! An angle as it was written.

use crate::error::{MeasureError, Problem};
use crate::exact::Exact;
use crate::reader::Reader;
use crate::scan::{Kind, scan};
use std::f64::consts::TAU;
use uom::si::angle::radian;
use uom::si::f64::Angle;

/// An angle that keeps its text.
#[derive(Clone, Debug, PartialEq)]
pub struct WrittenAngle {
    text: String,
    radians: f64,
}

const EXAMPLE: &str = "90 deg, 1.5 rad or 1/4 turn";

/// Angles beyond this many degrees are refused.
const MOST_DEGREES: f64 = 1e9;

impl WrittenAngle {
    /// Reads an angle: `90 deg`, `90°`, `1.5 rad`, `1/4 turn`. A bare number is degrees where `bare_is_degrees`.
    ///
    /// # Errors
    /// Where the text is no angle: what was read, where, and what would be right.
    pub fn parse(text: &str, bare_is_degrees: bool) -> Result<Self, MeasureError> {
        let trimmed = text.trim();
        read(trimmed, bare_is_degrees).map_err(|problem| problem.of(trimmed, EXAMPLE))
    }

    /// Writes an angle of so many degrees.
    ///
    /// # Errors
    /// Where it is not finite or beyond all measure.
    pub fn from_degrees(degrees: f64) -> Result<Self, MeasureError> {
        if !degrees.is_finite() || degrees.abs() > MOST_DEGREES {
            return Err(Problem::new(0, "this is too large or too small").of(&format!("{degrees} deg"), EXAMPLE));
        }
        Self::parse(&format!("{} deg", crate::format::trimmed_decimal(degrees, 4)), false)
    }

    /// The text as typed.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The angle in radians.
    pub fn radians(&self) -> f64 {
        self.radians
    }

    /// The angle as a quantity.
    pub fn angle(&self) -> Angle {
        Angle::new::<radian>(self.radians)
    }
}

fn read(text: &str, bare_is_degrees: bool) -> Result<WrittenAngle, Problem> {
    let parts = scan(text)?;
    let mut reader = Reader::new(&parts, text.chars().count());
    if parts.is_empty() {
        return Err(Problem::new(0, "nothing is written"));
    }
    let sign_at = reader.at();
    let minus = reader.sign();
    let number = reader.number()?;
    let unit = unit_after(&mut reader)?;
    reader.finish()?;
    if unit.is_none() && !bare_is_degrees {
        return Err(Problem::new(reader.at(), "the unit is missing"));
    }
    if minus && number.is_zero() {
        return Err(Problem::new(sign_at, "0 takes no minus sign"));
    }
    let size = unit.unwrap_or(AngleUnit::Degree).radians(number);
    let size = size.filter(|radians| radians.to_degrees() <= MOST_DEGREES);
    let size = size.ok_or_else(|| Problem::new(0, "this is too large or too small"))?;
    let text = if unit.is_some() { text.to_owned() } else { format!("{text} deg") };
    Ok(WrittenAngle { text, radians: if minus { -size } else { size } })
}

#[derive(Clone, Copy)]
enum AngleUnit {
    Degree,
    Radian,
    Turn,
}

impl AngleUnit {
    /// So many of this unit in radians. Degrees become an exact share of a turn first, so that 90 deg is 1/4 turn.
    fn radians(self, number: Exact) -> Option<f64> {
        match self {
            Self::Degree => Some(number.times(Exact::new(1, 360)?)?.value() * TAU),
            Self::Radian => Some(number.value()),
            Self::Turn => Some(number.value() * TAU),
        }
    }
}

/// The unit at this place, where there is one.
fn unit_after(reader: &mut Reader<'_>) -> Result<Option<AngleUnit>, Problem> {
    let Some(Kind::Word(word)) = reader.peek() else { return Ok(None) };
    let unit = match word.to_lowercase().as_str() {
        "deg" | "degs" | "degree" | "degrees" | "°" => AngleUnit::Degree,
        "rad" | "rads" | "radian" | "radians" => AngleUnit::Radian,
        "turn" | "turns" => AngleUnit::Turn,
        _ => return Err(not_a_unit(reader.at(), word)),
    };
    reader.take();
    Ok(Some(unit))
}

fn not_a_unit(at: usize, word: &str) -> Problem {
    Problem::new(at, format!("“{word}” isn't a unit of angle; there are deg, rad and turn"))
}
