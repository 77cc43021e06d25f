//! Words at the beginning of a sentence, and within one.

/// Words with a capital at their beginning.
pub fn upper_first(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// Words with a small letter at their beginning.
pub fn lower_first(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_letter_alone_changes() {
        assert_eq!((upper_first("éclair iron"), lower_first("Draw “A”")), ("Éclair iron".into(), "draw “A”".into()));
        assert_eq!(upper_first("") + &lower_first(""), "");
    }
}
