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

    /// The nearest number. Both parts below 2⁵³ are exact, and one division rounds correctly.
    pub(crate) fn value(self) -> f64 {
        self.numerator as f64 / self.denominator as f64
    }
}

fn gcd(a: u128, b: u128) -> u128 {
    let (mut a, mut b) = (a, b);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}
