//! A figure with how far it can be trusted.

/// A figure of the model: the likely value between a low and a high one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// What it is seldom under.
    pub low: f64,
    /// What it most likely is.
    pub likely: f64,
    /// What it is seldom over.
    pub high: f64,
}

impl Estimate {
    /// A figure that may be so many times smaller or greater, `factor` at least 1.
    pub fn times_or_over(likely: f64, factor: f64) -> Self {
        let factor = if factor.is_finite() { factor.max(1.0) } else { 1.0 };
        Self { low: likely / factor, likely, high: likely * factor }
    }

    /// A figure that may be off by a share of itself, 0.2 for 20 %.
    pub fn within_share(likely: f64, share: f64) -> Self {
        let off = (likely * share).abs();
        Self { low: likely - off, likely, high: likely + off }
    }

    /// All three multiplied.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        self.map(|value| value * factor)
    }

    /// The sum of two figures that err together, so that their doubts add up.
    #[must_use]
    pub fn plus(self, other: Self) -> Self {
        Self { low: self.low + other.low, likely: self.likely + other.likely, high: self.high + other.high }
    }

    /// The same rounded to one figure of precision: 1378 is 1000, 47 is 50, 0.23 is 0.2.
    #[must_use]
    pub fn one_figure(self) -> Self {
        self.map(one_figure)
    }

    /// The same in whole numbers, at least 1: heats are not counted in parts.
    #[must_use]
    pub fn whole(self) -> Self {
        self.map(|value| value.ceil().max(1.0))
    }

    fn map(self, change: impl Fn(f64) -> f64) -> Self {
        Self { low: change(self.low), likely: change(self.likely), high: change(self.high) }
    }
}

/// A number rounded to its first figure.
fn one_figure(value: f64) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return value;
    }
    let unit = 10_f64.powf(value.abs().log10().floor());
    if unit == 0.0 || !unit.is_finite() {
        return value;
    }
    (value / unit).round() * unit
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_figure_is_kept() {
        let rounded = Estimate { low: 659.0, likely: 1378.0, high: 2955.0 }.one_figure();
        assert_eq!(rounded, Estimate { low: 700.0, likely: 1000.0, high: 3000.0 });
        assert!((one_figure(0.234) - 0.2).abs() < 1e-12);
        assert_eq!(one_figure(0.0), 0.0);
    }

    #[test]
    fn a_factor_goes_both_ways() {
        assert_eq!(Estimate::times_or_over(10.0, 2.0), Estimate { low: 5.0, likely: 10.0, high: 20.0 });
        assert_eq!(Estimate::within_share(10.0, 0.2), Estimate { low: 8.0, likely: 10.0, high: 12.0 });
    }
}
