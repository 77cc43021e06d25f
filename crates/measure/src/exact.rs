//! Exact fractions: what was typed stays exact until it becomes one number.

/// A fraction of whole numbers in lowest terms, its denominator above 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Exact {
    numerator: i128,
    denominator: i128,
}

impl Exact {
    /// A fraction; none where the denominator is 0.
    pub(crate) fn new(numerator: i128, denominator: i128) -> Option<Self> {
        if denominator <= 0 {
            return None;
        }
        let common = gcd(numerator.unsigned_abs(), denominator.unsigned_abs()).max(1);
        let common = i128::try_from(common).ok()?;
        Some(Self { numerator: numerator / common, denominator: denominator / common })
    }

    /// The sum; none where it grows beyond all measure.
    pub(crate) fn plus(self, other: Self) -> Option<Self> {
        let left = self.numerator.checked_mul(other.denominator)?;
        let right = other.numerator.checked_mul(self.denominator)?;
        Self::new(left.checked_add(right)?, self.denominator.checked_mul(other.denominator)?)
    }

    /// The product; none where it grows beyond all measure.
    pub(crate) fn times(self, other: Self) -> Option<Self> {
        Self::new(self.numerator.checked_mul(other.numerator)?, self.denominator.checked_mul(other.denominator)?)
    }

    /// With the other sign.
    pub(crate) fn negated(self) -> Self {
        Self { numerator: -self.numerator, denominator: self.denominator }
    }

    /// The nearest number, ties to even, however long the fraction is.
    pub(crate) fn value(self) -> f64 {
        let denominator = self.denominator.unsigned_abs();
        let mut whole = self.numerator.unsigned_abs() / denominator;
        let mut rest = self.numerator.unsigned_abs() % denominator;
        let mut doublings = 0;
        // Binary places until there are more than the 53 that a number keeps. Neither doubling overflows: the rest is
        // below the denominator, which is below 2¹²⁷.
        while whole < MANY_PLACES && rest != 0 {
            rest *= 2;
            whole = whole * 2 + rest / denominator;
            rest %= denominator;
            doublings += 1;
        }
        // What is still left only tells which way to round.
        let left_over = u128::from(rest != 0);
        let size = (whole | left_over) as f64 * 0.5_f64.powi(doublings);
        if self.numerator < 0 { -size } else { size }
    }

    /// What it is divided by, in lowest terms.
    pub(crate) fn denominator(self) -> i128 {
        self.denominator
    }

    /// Whether it is 0.
    pub(crate) fn is_zero(self) -> bool {
        self.numerator == 0
    }
}

/// A whole number with more binary places than a floating-point number keeps, and some to spare.
const MANY_PLACES: u128 = 1 << 56;

fn gcd(a: u128, b: u128) -> u128 {
    let (mut a, mut b) = (a, b);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

#[cfg(test)]
mod tests {
    use super::*;

    fn value(numerator: i128, denominator: i128) -> Option<f64> {
        Exact::new(numerator, denominator).map(Exact::value)
    }

    #[test]
    fn a_fraction_becomes_the_nearest_number() {
        assert_eq!(value(1, 3), Some(1.0 / 3.0));
        assert_eq!(value(-127, 80), Some(-1.5875));
        assert_eq!(value(0, 7), Some(0.0));
        assert_eq!(value(1, 10_i128.pow(18)), Some(1e-18));
    }

    #[test]
    fn a_long_fraction_is_rounded_once() {
        // The reader of decimal literals rounds exactly; both parts of these fractions are beyond 2⁵³.
        assert_eq!(value(123_456_789_012_345_678, 10_i128.pow(17)), "1.23456789012345678".parse().ok());
        assert_eq!(value(9_007_199_254_740_993, 10_i128.pow(17)), "0.09007199254740993".parse().ok());
        // Halfway between two numbers goes to the even one, a hair above it goes up.
        let between = (1_i128 << 53) + 1;
        assert_eq!(value(between, 1), Some(9_007_199_254_740_992.0));
        assert_eq!(value(between * 1000 + 1, 1000), Some(9_007_199_254_740_994.0));
    }

    #[test]
    fn what_grows_beyond_all_measure_is_none() {
        let large = Exact::new(i128::MAX, 1);
        assert!(large.is_some_and(|large| large.plus(large).is_none() && large.times(large).is_none()));
        assert_eq!(value(1, 0), None);
    }
}
