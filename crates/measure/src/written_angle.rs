//! An angle as it was written.

use crate::error::{MeasureError, Problem};
use crate::scan::{Kind, Reader, scan};
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
        if !degrees.is_finite() || degrees.abs() > 1e9 {
            return Err(Problem::new(0, "this is beyond all measure").of(&format!("{degrees} deg"), EXAMPLE));
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
    let sign = if reader.sign() { -1.0 } else { 1.0 };
    let value = reader.number()?.value();
    let at = reader.at();
    let (value, bare) = match reader.peek() {
        Some(Kind::Word(word)) => (value * radians_in(word).ok_or_else(|| not_a_unit(at, word))?, false),
        _ if bare_is_degrees => (value.to_radians(), true),
        _ => return Err(Problem::new(at, "the unit is missing")),
    };
    reader.take();
    reader.finish()?;
    let text = if bare { format!("{text} deg") } else { text.to_owned() };
    // Not -0, which would print its sign.
    Ok(WrittenAngle { text, radians: sign * value + 0.0 })
}

fn radians_in(word: &str) -> Option<f64> {
    Some(match word.to_lowercase().as_str() {
        "deg" | "degree" | "degrees" | "°" => TAU / 360.0,
        "rad" | "radian" | "radians" => 1.0,
        "turn" | "turns" => TAU,
        _ => return None,
    })
}

fn not_a_unit(at: usize, word: &str) -> Problem {
    Problem::new(at, format!("“{word}” is no unit of angle; there are deg, rad and turn"))
}
