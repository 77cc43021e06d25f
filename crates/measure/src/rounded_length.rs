//! A length rounded to the step that the smith marks by.

use crate::format;
use crate::rounding::{Rounding, Step};
use std::fmt;
use std::ops::Sub;

/// A whole number of steps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RoundedLength {
    rounding: Rounding,
    steps: i64,
}

/// From this many steps on, single steps can no longer be told apart.
const BEYOND: i64 = 1 << 53;

impl Rounding {
    /// The nearest step to a length in millimetres; halfway goes up.
    pub fn round(self, mm: f64) -> RoundedLength {
        RoundedLength::nearest(self, mm)
    }

    /// The least step that is no shorter than a length in millimetres: for what is cut, since metal cannot be put back.
    pub fn round_up(self, mm: f64) -> RoundedLength {
        RoundedLength::no_shorter(self, mm)
    }

    /// From one length in millimetres to another, both to the nearest step: `1 13/16 to 1 15/16 in`; one length where both
    /// round to the same.
    pub fn between_text(self, lowest_mm: f64, highest_mm: f64) -> String {
        let (lowest, highest) = (self.round(lowest_mm), self.round(highest_mm));
        if lowest == highest { highest.text() } else { format!("{} to {}", lowest.bare_text(), highest.text()) }
    }
}

impl RoundedLength {
    /// The nearest step; halfway goes up. What is no number or too great to be counted in steps is beyond measure.
    pub(crate) fn nearest(rounding: Rounding, mm: f64) -> Self {
        // Halfway in the smith's numbers may be a hair below halfway in the machine's.
        let steps = (mm / rounding.step_mm() + 0.5 + 1e-9).floor();
        let countable = steps.abs() < BEYOND as f64;
        Self { rounding, steps: if countable { steps as i64 } else { BEYOND } }
    }

    /// The least step that is no shorter; what lies less over one than half a scribed line is wide is on it. What is no number
    /// or too great to be counted in steps is beyond measure.
    pub(crate) fn no_shorter(rounding: Rounding, mm: f64) -> Self {
        /// Half the width of a scribed line: common practice, no source.
        const HALF_A_LINE_MM: f64 = 0.05;
        /// The most that it may be of a step.
        const OF_A_STEP: f64 = 0.05;
        let hair = (HALF_A_LINE_MM / rounding.step_mm()).min(OF_A_STEP);
        let steps = (mm / rounding.step_mm() - hair).ceil();
        let countable = steps.abs() < BEYOND as f64;
        Self { rounding, steps: if countable { steps as i64 } else { BEYOND } }
    }

    /// The step that it is rounded to.
    pub fn rounding(self) -> Rounding {
        self.rounding
    }

    /// The length in millimetres.
    pub fn mm(self) -> f64 {
        let steps = self.steps as f64;
        match self.rounding.step() {
            Step::InchOver(denominator) => steps * 127.0 / (5.0 * f64::from(denominator)),
            Step::TenthMillimeters(tenths) => steps * f64::from(tenths) / 10.0,
        }
    }

    /// With its unit: `1 13/16 in`, `46.5 mm`; a length that cannot be counted is said to be beyond measure.
    pub fn text(self) -> String {
        if self.is_beyond() {
            return format::BEYOND_MEASURE.to_owned();
        }
        format!("{} {}", self.bare_text(), self.rounding.unit().symbol())
    }

    /// Without its unit: `1 13/16`, `46.5`.
    pub fn bare_text(self) -> String {
        if self.is_beyond() {
            return format::BEYOND_MEASURE.to_owned();
        }
        match self.rounding.step() {
            Step::InchOver(denominator) => format::fraction(self.steps, i64::from(denominator)),
            Step::TenthMillimeters(tenths) => {
                let decimals = usize::from(tenths % 10 != 0);
                format!("{:.decimals$}", self.steps.saturating_mul(i64::from(tenths)) as f64 / 10.0)
            }
        }
    }

    /// Whether it is too great to be counted in steps.
    pub(crate) fn is_beyond(self) -> bool {
        self.steps.unsigned_abs() >= BEYOND.unsigned_abs()
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
        let beyond = self.is_beyond() || other.is_beyond();
        let steps = if beyond { BEYOND } else { self.steps.saturating_sub(other.steps) };
        Self { rounding: self.rounding, steps }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_range_is_told_by_its_rounded_ends() {
        assert_eq!(Rounding::SIXTEENTH_INCH.between_text(46.0, 49.0), "1 13/16 to 1 15/16 in");
        assert_eq!(Rounding::MILLIMETER.between_text(46.2, 49.0), "46 to 49 mm");
        assert_eq!(Rounding::MILLIMETER.between_text(46.2, 46.3), "46 mm");
    }

    #[test]
    fn halfway_goes_up_and_full_fractions_carry() {
        let sixteenths = |inches: f64| Rounding::SIXTEENTH_INCH.round(inches * 25.4).text();
        assert_eq!(sixteenths(1.0 / 32.0), "1/16 in");
        assert_eq!(sixteenths(-1.0 / 32.0), "0 in");
        assert_eq!(sixteenths(15.99 / 16.0), "1 in");
        assert_eq!(sixteenths(-1.8125), "-1 13/16 in");
    }

    #[test]
    fn millimetres_have_as_many_decimals_as_their_step() {
        assert_eq!(Rounding::MILLIMETER.round(46.499).text(), "46 mm");
        assert_eq!(Rounding::HALF_MILLIMETER.round(46.3).text(), "46.5 mm");
        assert_eq!(Rounding::TENTH_MILLIMETER.round(46.0).text(), "46.0 mm");
        assert_eq!(Rounding::TENTH_MILLIMETER.round(-0.04).text(), "0.0 mm");
        assert_eq!(Rounding::CHOICES[7].round(47.5).text(), "50 mm");
    }

    #[test]
    fn what_is_cut_is_never_rounded_down() {
        let up = |mm: f64| Rounding::MILLIMETER.round_up(mm).text();
        assert_eq!(
            [up(316.06), up(316.4), up(316.0), up(315.999_999), up(0.0)],
            ["317 mm", "317 mm", "316 mm", "316 mm", "0 mm"]
        );
        // No saw tells 620.04 mm from 620.
        assert_eq!([up(620.04), up(619.99)], ["620 mm", "620 mm"]);
        // A sum of fractions that ends on a step may lie a hair beside it in the machine's numbers.
        assert_eq!(up(316.000_000_1), "316 mm");
        assert_eq!(Rounding::SIXTEENTH_INCH.round_up(228.8).text(), "9 1/16 in");
        assert_eq!(Rounding::SIXTEENTH_INCH.round_up(228.6).text(), "9 in");
        for mm in [0.3, 1.0, 17.77, 228.8, 530.47, 1999.95] {
            for rounding in Rounding::CHOICES {
                let cut = rounding.round_up(mm).mm();
                assert!(cut >= mm - 0.05 && cut < mm + rounding.step_mm(), "{mm} to {cut}");
            }
        }
    }

    #[test]
    fn what_cannot_be_counted_is_said_to_be_beyond_measure() {
        for mm in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e17, -1e300] {
            let mark = Rounding::SIXTEENTH_INCH.round(mm);
            assert_eq!(mark.text(), "beyond measure");
            assert_eq!((mark - Rounding::SIXTEENTH_INCH.round(5.0)).text(), "beyond measure");
            assert_eq!((mark - mark).text(), "beyond measure");
            assert!(mark.mm().is_finite());
            assert_eq!(Rounding::SIXTEENTH_INCH.round_up(mm).text(), "beyond measure");
        }
    }
}
