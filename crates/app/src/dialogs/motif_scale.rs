//! The scale of a motif as it is typed: `2`, `0.5`, `1,5`, `3/4`, `1 1/2`, `150 %`.

/// Beyond these a typed scale is a slip.
const LEAST: f64 = 0.001;
const MOST: f64 = 1000.0;

/// Reads a scale.
///
/// # Errors
/// When the text is none, in words.
pub(crate) fn read_factor(text: &str) -> Result<f64, String> {
    let text = text.trim();
    let factor = match text.strip_suffix('%') {
        Some(share) => number(share).map(|share| share / 100.0),
        None => number(text),
    };
    factor
        .filter(|factor| (LEAST..=MOST).contains(factor))
        .ok_or_else(|| format!("“{text}” isn't a scale. Try 2, 0.5 or 3/4."))
}

/// A number that may be a fraction, or a whole number and a fraction.
fn number(text: &str) -> Option<f64> {
    let parts: Vec<&str> = text.split_whitespace().collect();
    match parts.as_slice() {
        [one] => one_number(one),
        [whole, fraction] if fraction.contains('/') && !whole.contains('/') => {
            Some(whole.parse::<u32>().map(f64::from).ok()? + one_number(fraction)?)
        }
        _ => None,
    }
}

fn one_number(text: &str) -> Option<f64> {
    match text.split_once('/') {
        Some((top, bottom)) => {
            let (top, bottom) = (top.parse::<u32>().ok()?, bottom.parse::<u32>().ok()?);
            (bottom > 0).then(|| f64::from(top) / f64::from(bottom))
        }
        None => text.replace(',', ".").parse::<f64>().ok().filter(|number| number.is_finite()),
    }
}

/// A factor as it is shown: four figures behind the point at most, and no zeros at the end.
pub(crate) fn factor_words(factor: f64) -> String {
    let words = format!("{factor:.4}");
    words.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_scale_is_read_as_it_is_said() {
        for (text, factor) in
            [("2", 2.0), (" 0.5 ", 0.5), ("1,5", 1.5), ("3/4", 0.75), ("1 1/2", 1.5), ("150 %", 1.5), ("25%", 0.25)]
        {
            assert_eq!(read_factor(text), Ok(factor), "{text}");
        }
        for text in ["", "twice", "0", "-1", "1/0", "1 2", "1/2 3", "1e9", "2 in", "NaN", "inf"] {
            assert!(read_factor(text).is_err_and(|why| why.contains("isn't a scale")), "{text}");
        }
    }

    #[test]
    fn a_factor_is_shown_short() {
        assert_eq!([1.0, 0.5, 4.0 / 3.0, 10.0].map(factor_words), ["1", "0.5", "1.3333", "10"]);
    }
}
