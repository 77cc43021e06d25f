//! Rounding for the shop: running totals to the step that the smith marks by.

use crate::error::{MeasureError, Problem};
use crate::format;
use crate::length_range::LengthRange;
use crate::length_unit::LengthUnit;
use crate::written_length::WrittenLength;

/// The step that marks are rounded to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Rounding(Step);

/// A step; neither number is ever 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) enum Step {
    /// One inch divided by this.
    InchOver(u8),
    /// So many tenths of a millimetre.
    TenthMillimeters(u8),
}

impl Rounding {
    /// 1/16 in.
    pub const SIXTEENTH_INCH: Self = Self(Step::InchOver(16));
    /// 1/32 in.
    pub const THIRTY_SECOND_INCH: Self = Self(Step::InchOver(32));
    /// 1/64 in.
    pub const SIXTY_FOURTH_INCH: Self = Self(Step::InchOver(64));
    /// 1 mm.
    pub const MILLIMETER: Self = Self(Step::TenthMillimeters(10));
    /// 0.5 mm.
    pub const HALF_MILLIMETER: Self = Self(Step::TenthMillimeters(5));
    /// 0.1 mm.
    pub const TENTH_MILLIMETER: Self = Self(Step::TenthMillimeters(1));

    /// Every step there is, as they are offered: inches, then millimetres, the coarse ones first.
    pub const CHOICES: [Self; 12] = [
        Self(Step::InchOver(1)),
        Self(Step::InchOver(2)),
        Self(Step::InchOver(4)),
        Self(Step::InchOver(8)),
        Self::SIXTEENTH_INCH,
        Self::THIRTY_SECOND_INCH,
        Self::SIXTY_FOURTH_INCH,
        Self(Step::TenthMillimeters(50)),
        Self(Step::TenthMillimeters(20)),
        Self::MILLIMETER,
        Self::HALF_MILLIMETER,
        Self::TENTH_MILLIMETER,
    ];

    /// Reads a step: `1/16 in`, `1 mm`, `0.5 mm`.
    ///
    /// # Errors
    /// Where the text is no length, or none of [`Self::CHOICES`].
    pub fn parse(text: &str) -> Result<Self, MeasureError> {
        let choices = || Self::CHOICES.map(Self::text).join(", ");
        let length = WrittenLength::parse(text, None, LengthRange::AboveZero)
            .map_err(|error| MeasureError { remedy: format!("marks are rounded to one of {}", choices()), ..error })?;
        let is_length = |step: &Self| !length.is_range() && (step.step_mm() - length.mm()).abs() < 1e-9;
        Self::CHOICES.into_iter().find(is_length).ok_or_else(|| {
            let words = format!("marks are not rounded to this, but to one of {}", choices());
            Problem::new(0, words).of(length.text(), "1/16 in or 1 mm")
        })
    }

    /// The step in words: `1/16 in`.
    pub fn text(self) -> String {
        let amount = match self.0 {
            Step::InchOver(denominator) => format::fraction(1, i64::from(denominator)),
            Step::TenthMillimeters(tenths) => format::trimmed_decimal(f64::from(tenths) / 10.0, 1),
        };
        format!("{amount} {}", self.unit().symbol())
    }

    /// The unit that it steps in.
    pub fn unit(self) -> LengthUnit {
        match self.0 {
            Step::InchOver(_) => LengthUnit::Inch,
            Step::TenthMillimeters(_) => LengthUnit::Millimeter,
        }
    }

    /// The step in millimetres.
    pub fn step_mm(self) -> f64 {
        match self.0 {
            Step::InchOver(denominator) => 25.4 / f64::from(denominator),
            Step::TenthMillimeters(tenths) => f64::from(tenths) / 10.0,
        }
    }

    /// The step that is about as fine in another unit: 1/16 in for 1 mm, 1/32 in for 0.5 mm, 1/64 in for 0.1 mm, and
    /// back. One in that unit already stays.
    #[must_use]
    pub fn in_unit(self, unit: LengthUnit) -> Self {
        let to_inches = unit == LengthUnit::Inch;
        if to_inches == (self.unit() == LengthUnit::Inch) {
            return self;
        }
        Self(match self.0 {
            Step::InchOver(1..=4) => Step::TenthMillimeters(50),
            Step::InchOver(5..=8) => Step::TenthMillimeters(20),
            Step::InchOver(9..=16) => Step::TenthMillimeters(10),
            Step::InchOver(17..=32) => Step::TenthMillimeters(5),
            Step::InchOver(_) => Step::TenthMillimeters(1),
            Step::TenthMillimeters(1) => Step::InchOver(64),
            Step::TenthMillimeters(2..=5) => Step::InchOver(32),
            Step::TenthMillimeters(6..=10) => Step::InchOver(16),
            Step::TenthMillimeters(11..=20) => Step::InchOver(8),
            Step::TenthMillimeters(_) => Step::InchOver(4),
        })
    }

    /// What it steps by.
    pub(crate) fn step(self) -> Step {
        self.0
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;

    #[test]
    fn every_step_reads_back_from_its_text() {
        for step in Rounding::CHOICES {
            assert_eq!(Rounding::parse(&step.text()).unwrap(), step);
        }
    }

    #[test]
    fn a_step_has_one_about_as_fine_in_the_other_unit_and_comes_back_to_itself() {
        for (inches, millimeters) in
            [("1/4 in", "5 mm"), ("1/8 in", "2 mm"), ("1/16 in", "1 mm"), ("1/32 in", "0.5 mm"), ("1/64 in", "0.1 mm")]
        {
            let (inches, millimeters) = (Rounding::parse(inches).unwrap(), Rounding::parse(millimeters).unwrap());
            assert_eq!(inches.in_unit(LengthUnit::Millimeter), millimeters);
            assert_eq!(millimeters.in_unit(LengthUnit::Inch), inches);
            assert_eq!(inches.in_unit(LengthUnit::Inch), inches);
        }
        for step in Rounding::CHOICES {
            for unit in [LengthUnit::Inch, LengthUnit::Millimeter] {
                assert!(Rounding::CHOICES.contains(&step.in_unit(unit)) && step.in_unit(unit).unit() == unit);
            }
        }
    }

    #[test]
    fn a_step_may_be_written_in_other_ways() {
        assert_eq!(Rounding::parse(" 2/32\" ").unwrap(), Rounding::SIXTEENTH_INCH);
        assert_eq!(Rounding::parse("0,5mm").unwrap(), Rounding::HALF_MILLIMETER);
        assert_eq!(Rounding::parse("1 inch").unwrap().text(), "1 in");
    }

    #[test]
    fn a_step_that_there_is_not_is_refused_with_those_that_there_are() {
        for text in ["1/12 in", "3 mm", "1/16", "0 mm", "-1 mm", "0.5 to 1.5 mm", "coarse", ""] {
            let refusal = Rounding::parse(text).unwrap_err().to_string();
            assert!(refusal.contains("1/16 in, 1/32 in") && refusal.contains("0.5 mm"), "{refusal}");
        }
    }
}
