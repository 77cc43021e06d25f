//! When one figure is over or under another: never by what the arithmetic leaves in their last digits.

/// Figures nearer to each other than this share of the larger one, or of 1, are the same.
const SAME: f64 = 1e-6;
/// So many decimals more are shown at most where two figures have to be told apart.
const MOST_MORE: usize = 7;

/// Whether a figure is over another by more than the arithmetic leaves; both in one unit, lengths in mm.
pub fn is_over(figure: f64, limit: f64) -> bool {
    if !figure.is_finite() || !limit.is_finite() {
        return figure > limit;
    }
    figure - limit > SAME * figure.abs().max(limit.abs()).max(1.0)
}

/// Whether a figure is under another by more than the arithmetic leaves; both in one unit, lengths in mm.
pub fn is_under(figure: f64, limit: f64) -> bool {
    is_over(limit, figure)
}

/// Two figures in words, with as many decimals more than `least` as it takes for them to read differently.
pub fn apart(figures: [f64; 2], least: usize, words: impl Fn(f64, usize) -> String) -> [String; 2] {
    let with = |decimals: usize| figures.map(|figure| words(figure, decimals));
    let all = (least..=least + MOST_MORE).map(with);
    all.into_iter().find(|[one, other]| one != other).unwrap_or_else(|| with(least))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_the_arithmetic_leaves_decides_nothing() {
        assert!(!is_over(0.1 + 0.2, 0.3) && !is_under(0.3, 0.1 + 0.2));
        assert!(!is_over(25.4 * (1.0 + 1e-9), 25.4) && !is_over(1e-9, 0.0));
        assert!(is_over(25.401, 25.4) && is_under(25.399, 25.4) && is_over(0.01, 0.0));
        assert!(is_over(f64::INFINITY, 3.0) && is_under(3.0, f64::INFINITY) && !is_over(f64::NAN, 3.0));
    }

    #[test]
    fn figures_that_differ_read_differently() {
        let words = |figure: f64, decimals: usize| format!("{figure:.decimals$}");
        assert_eq!(apart([24.96, 25.0], 1, words), ["24.96", "25.00"]);
        assert_eq!(apart([24.0, 25.0], 1, words), ["24.0", "25.0"]);
        assert_eq!(apart([25.0, 25.0], 1, words), ["25.0", "25.0"]);
    }
}
