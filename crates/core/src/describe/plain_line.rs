//! A text from outside on one line, with nothing in it that is not seen.

/// A text as one line that does no more than it shows.
///
/// Control characters move a terminal's cursor, change its colors, end a line, and make XML that nobody reads; marks of
/// direction turn the words round that stand beside them. A space takes the place of each.
pub fn plain_line(text: &str) -> String {
    text.chars().map(|c| if is_unruly(c) { ' ' } else { c }).collect()
}

/// Control characters, ends of lines and paragraphs, marks of direction, and the two that are no characters.
fn is_unruly(c: char) -> bool {
    c.is_control() || matches!(c, '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{fffe}' | '\u{ffff}')
}

#[cfg(test)]
mod tests {
    use super::plain_line;

    #[test]
    fn what_is_seen_stays_and_the_rest_becomes_a_space() {
        assert_eq!(plain_line("½″ Ø é “leaf” ✓"), "½″ Ø é “leaf” ✓");
        assert_eq!(plain_line("a\u{1b}[31m\r\n\u{0}b\u{202e}c\u{2066}d\u{2028}e\u{fffe}"), "a [31m   b c d e ");
    }
}
