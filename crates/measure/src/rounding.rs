//! Rounding for the shop: running totals to the step that the smith marks by.

use crate::error::{MeasureError, Problem};
use crate::format;
use crate::length_unit::LengthUnit;
use std::fmt;
use std::ops::Sub;

/// The step that marks are rounded to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Rounding {
    /// One inch divided by this.
    Inch(u8),
    /// So many tenths of a millimetre.
    TenthMillimeter(u16),
}

impl Rounding {
    /// 1/16 in.
    pub const SIXTEENTH_INCH: Self = Self::Inch(16);
    /// 1/32 in.
    pub const THIRTY_SECOND_INCH: Self = Self::Inch(32);
    /// 1/64 in.
    pub const SIXTY_FOURTH_INCH: Self = Self::Inch(64);
    /// 1 mm.
    pub const MILLIMETER: Self = Self::TenthMillimeter(10);
    /// 0.5 mm.
    pub const HALF_MILLIMETER: Self = Self::TenthMillimeter(5);
    /// 0.1 mm.
    pub const TENTH_MILLIMETER: Self = Self::TenthMillimeter(1);

    /// Every step there is, as they are offered.
    pub const CHOICES: [Self; 10] = [
        Self::Inch(4),
        Self::Inch(8),
        Self::SIXTEENTH_INCH,
        Self::THIRTY_SECOND_INCH,
        Self::SIXTY_FOURTH_INCH,
        Self::TenthMillimeter(50),
        Self::TenthMillimeter(20),
        Self::MILLIMETER,
        Self::HALF_MILLIMETER,
        Self::TENTH_MILLIMETER,
    ];

    /// Reads a step: `1/16 in`, `1 mm`, `0.5 mm`.
    ///
    /// # Errors
    /// Where the text is none of [`Self::CHOICES`].
    pub fn parse(text: &str) -> Result<Self, MeasureError> {
        let trimmed = text.trim();
        let length = crate::WrittenLength::parse(trimmed, None, crate::LengthRange::AboveZero);
        let step = length
            .ok()
            .and_then(|length| Self::CHOICES.into_iter().find(|step| (step.step_mm() - length.mm()).abs() < 1e-9));
        step.ok_or_else(|| {
            let known: Vec<String> = Self::CHOICES.iter().map(|step| step.text()).collect();
            Problem::new(0, "marks are not rounded to this").of(trimmed, &known.join(", "))
        })
    }

    /// The step in words: `1/16 in`.
    pub fn text(self) -> String {
        match self {
            Self::Inch(denominator) => format!("1/{denominator} in"),
            Self::TenthMillimeter(tenths) => {
                format!("{} mm", format::trimmed_decimal(f64::from(tenths) / 10.0, 1))
            }
        }
    }

    /// The unit that it steps in.
    pub fn unit(self) -> LengthUnit {
        match self {
            Self::Inch(_) => LengthUnit::Inch,
            Self::TenthMillimeter(_) => LengthUnit::Millimeter,
        }
    }

    /// The step in millimetres.
    pub fn step_mm(self) -> f64 {
        match self {
            Self::Inch(denominator) => 25.4 / f64::from(denominator),
            Self::TenthMillimeter(tenths) => f64::from(tenths) / 10.0,
        }
    }

    /// The nearest step to a length in millimetres; halfway goes up.
    pub fn round(self, mm: f64) -> RoundedLength {
        // Halfway in the smith's numbers may be a hair below halfway in the machine's.
        let steps = mm / self.step_mm();
        RoundedLength { rounding: self, steps: (steps + 0.5 + 1e-9).floor() as i64 }
    }
}

/// A whole number of steps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RoundedLength {
    rounding: Rounding,
    steps: i64,
}

impl RoundedLength {
    /// The step that it is rounded to.
    pub fn rounding(self) -> Rounding {
        self.rounding
    }

    /// The length in millimetres.
    pub fn mm(self) -> f64 {
        let steps = self.steps as f64;
        match self.rounding {
            Rounding::Inch(denominator) => steps * 127.0 / (5.0 * f64::from(denominator)),
            Rounding::TenthMillimeter(tenths) => steps * f64::from(tenths) / 10.0,
        }
    }

    /// With its unit: `1 13/16 in`, `46.5 mm`.
    pub fn text(self) -> String {
        format!("{} {}", self.bare_text(), self.rounding.unit().symbol())
    }

    /// Without its unit: `1 13/16`, `46.5`.
    pub fn bare_text(self) -> String {
        match self.rounding {
            Rounding::Inch(denominator) => format::fraction(self.steps, i64::from(denominator)),
            Rounding::TenthMillimeter(tenths) => {
                let decimals = usize::from(tenths % 10 != 0);
                format!("{:.decimals$}", self.steps.saturating_mul(i64::from(tenths)) as f64 / 10.0)
            }
        }
    }
}

impl fmt::Display for RoundedLength {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.text())
    }
}

/// The step from one mark to the next is the difference of their rounded totals. Both have one rounding.
impl Sub for RoundedLength {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self { rounding: self.rounding, steps: self.steps.saturating_sub(other.steps) }
    }
}
