//! Fractions as a shop rule shows them: `13/16` is set with a fraction bar, which the fonts turn into one stacked figure.

/// The fraction bar that fonts know (U+2044).
pub(crate) const FRACTION_BAR: char = '\u{2044}';

/// The same words with every plain fraction set with a fraction bar; dates and other chains of figures stay as they are.
pub(crate) fn with_fraction_bars(text: &str) -> String {
    let set = |(place, letter): (usize, char)| match letter {
        '/' if is_fraction(&text[..place], &text[place + 1..]) => FRACTION_BAR,
        other => other,
    };
    text.char_indices().map(set).collect()
}

/// Whether the words before and after a slash make it a fraction: whole figures on both sides and nothing else joined on.
fn is_fraction(before: &str, after: &str) -> bool {
    let top = before.trim_end_matches(|c: char| c.is_ascii_digit());
    let bottom = after.trim_start_matches(|c: char| c.is_ascii_digit());
    let joined_before = top.ends_with(|c: char| c.is_alphanumeric() || matches!(c, '.' | ',' | '/'));
    let joined_after = bottom.starts_with(|c: char| c == '/' || c.is_alphanumeric());
    top.len() < before.len() && bottom.len() < after.len() && !joined_before && !joined_after
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_fractions_get_a_fraction_bar() {
        assert_eq!(with_fraction_bars("1 13/16 in"), "1 13⁄16 in");
        assert_eq!(with_fraction_bars("3-1/4\" × 5/8\""), "3-1⁄4\" × 5⁄8\"");
        assert_eq!(with_fraction_bars("(7/8)"), "(7⁄8)");
    }

    #[test]
    fn other_slashes_stay() {
        for text in ["3/4/1920", "and/or", "1/ 2", "kg/m", "M8/10", "0.5/2", "", "/"] {
            assert_eq!(with_fraction_bars(text), text, "{text}");
        }
    }
}
