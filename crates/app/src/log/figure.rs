//! Figures of the log in words.

/// From here on a figure is written with its power of ten: nobody forges so long.
const HUGE: f64 = 1e6;

/// A figure to a tenth: `1.4`.
pub(super) fn tenths(value: f64) -> String {
    if value.abs() < HUGE { format!("{value:.1}") } else { format!("{value:.0e}") }
}

/// A difference with its sign: `+0.4`, `-1.0`, `0`.
pub(super) fn signed(value: f64, words: impl Fn(f64) -> String) -> String {
    let size = words(value.abs());
    if size.trim_start_matches(['0', '.', ' ']).chars().next().is_none_or(|first| !first.is_ascii_digit()) {
        return "0".to_owned();
    }
    format!("{}{size}", if value < 0.0 { "−" } else { "+" })
}

/// A share in per cent to a tenth: `2.5 %`.
pub(super) fn percent(share: f64) -> String {
    format!("{:.1} %", share * 100.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_difference_has_its_sign() {
        assert_eq!(signed(0.42, tenths), "+0.4");
        assert_eq!(signed(-1.0, tenths), "−1.0");
        assert_eq!(signed(0.01, tenths), "0");
        assert_eq!(signed(0.0, |value| format!("{value} mm")), "0");
        assert_eq!(signed(0.5, |value| format!("{value} mm")), "+0.5 mm");
    }
}
