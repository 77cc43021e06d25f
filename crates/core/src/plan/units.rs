//! The plan's units: how its lengths are shown and how its marks are rounded.

use fh_measure::{LengthUnit, Rounding};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The unit that lengths are shown in, and that a bare number typed in the editor takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum PlanUnit {
    /// Inches and their fractions.
    #[serde(rename = "in")]
    Inch,
    /// Millimetres.
    #[serde(rename = "mm")]
    Millimeter,
}

impl PlanUnit {
    /// The unit of length that this is.
    pub fn length_unit(self) -> LengthUnit {
        match self {
            Self::Inch => LengthUnit::Inch,
            Self::Millimeter => LengthUnit::Millimeter,
        }
    }

    /// As fine as a smith forges: to 1/64 in, or to a tenth of a millimetre.
    pub fn finest(self) -> Rounding {
        match self {
            Self::Inch => Rounding::SIXTY_FOURTH_INCH,
            Self::Millimeter => Rounding::TENTH_MILLIMETER,
        }
    }
}

/// The plan's unit of length and the step that running totals are rounded to.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Units {
    /// `"in"` or `"mm"`.
    pub length: PlanUnit,
    /// The rounding of marks, for example `"1/16 in"` or `"1 mm"`.
    pub marks: Rounding,
}

impl Default for Units {
    fn default() -> Self {
        Self::millimeters()
    }
}

impl Units {
    /// Inches, marks to 1/16 in.
    pub fn inches() -> Self {
        Self { length: PlanUnit::Inch, marks: Rounding::SIXTEENTH_INCH }
    }

    /// The same with lengths in a unit, and marks to the step that is about as fine in it.
    #[must_use]
    pub fn in_unit(self, unit: PlanUnit) -> Self {
        Self { length: unit, marks: self.marks.in_unit(unit.length_unit()) }
    }

    /// Millimetres, marks to 1 mm.
    pub fn millimeters() -> Self {
        Self { length: PlanUnit::Millimeter, marks: Rounding::MILLIMETER }
    }
}
