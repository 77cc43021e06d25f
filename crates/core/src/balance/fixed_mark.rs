//! A mark that the smith fixed on the bar.

use uom::si::f64::Length;

/// A mark that the smith fixed.
#[derive(Clone, Debug, PartialEq)]
pub struct FixedMark {
    /// Where it lies on the starting bar, from the datum end.
    pub at: Length,
    /// It as it was typed.
    pub text: String,
}
