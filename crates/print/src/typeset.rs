//! How long words are on paper, and how they are broken or shortened to fit a width.

use crate::fonts::Weight;
use crate::fractions::{FRACTION_BAR, with_fraction_bars};
use crate::shaping::{glyphs, has_letter};
use std::cell::RefCell;
use std::collections::HashMap;

/// The words as they are printed: fractions set, control characters as spaces, and what the fonts do not have in Latin letters.
pub fn printable(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '⌀' => plain.push('Ø'),
            letter if letter.is_control() => plain.push(' '),
            letter if has_letter(letter) => plain.push(letter),
            letter => plain.push_str(in_latin(letter)),
        }
    }
    with_fraction_bars(&plain)
}

/// A letter or sign that the fonts do not have, in Latin letters: `sh` for a shin, `:hammer:` for the picture of one. A letter
/// without any is a question mark; what only changes the letter before it goes.
fn in_latin(letter: char) -> &'static str {
    match any_ascii::any_ascii_char(letter) {
        "" if letter.is_alphanumeric() => "?",
        latin => latin,
    }
}

/// The length in mm of printable words with an em of `size_mm`.
pub fn width_mm(text: &str, size_mm: f64, weight: Weight) -> f64 {
    size_mm * width_in_ems(text, weight)
}

/// Words that are measured are measured again: where lines are broken, and in every way of laying out a card.
const MOST_KEPT: usize = 20_000;

thread_local! {
    /// What was measured, for each weight.
    static MEASURED: RefCell<[HashMap<String, f64>; 2]> = RefCell::default();
}

/// The length of words as a share of the em.
fn width_in_ems(text: &str, weight: Weight) -> f64 {
    let at = usize::from(weight == Weight::SemiBold);
    if let Some(known) = MEASURED.with_borrow(|measured| measured[at].get(text).copied()) {
        return known;
    }
    let ems = glyphs(text, weight).iter().map(|glyph| glyph.advance[0]).sum::<f64>();
    MEASURED.with_borrow_mut(|measured| {
        let kept = &mut measured[at];
        if kept.len() >= MOST_KEPT {
            kept.clear();
        }
        kept.insert(text.to_owned(), ems);
    });
    ems
}

/// The words broken into lines no longer than `width_mm`; a word that is longer by itself is cut between letters.
/// A figure stays with its fraction and its unit.
pub fn wrap(text: &str, size_mm: f64, weight: Weight, width_mm: f64) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in words_to_fit(text, size_mm, weight, width_mm) {
        let longer = if line.is_empty() { word.clone() } else { format!("{line} {word}") };
        if line.is_empty() || self::width_mm(&longer, size_mm, weight) <= width_mm {
            line = longer;
        } else {
            lines.push(std::mem::replace(&mut line, word));
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

/// The words that a line may be broken between, as they are printed, each no longer than `width_mm`.
pub(crate) fn words_to_fit(text: &str, size_mm: f64, weight: Weight, width_mm: f64) -> Vec<String> {
    let text = printable(text);
    unbroken_words(&text).iter().flat_map(|word| cut_to_width(word, size_mm, weight, width_mm)).collect()
}

/// No line that is shortened or set smaller to fit has more letters than this.
const MOST_LETTERS: usize = 600;

/// The words in one line no longer than `width_mm`, cut off with `…` where they are longer.
pub fn shorten(text: &str, size_mm: f64, weight: Weight, width_mm: f64) -> String {
    let enough = first_letters(text, MOST_LETTERS);
    let mark = if enough.len() < text.len() { "…" } else { "" };
    let text = printable(enough) + mark;
    if self::width_mm(&text, size_mm, weight) <= width_mm {
        return text;
    }
    let cut = |letters: usize| format!("{}…", first_letters(&text, letters).trim_end());
    let fits = |letters: usize| self::width_mm(&cut(letters), size_mm, weight) <= width_mm;
    match longest_that(text.chars().count(), fits) {
        0 => String::new(),
        letters => cut(letters),
    }
}

/// The largest em up to `size_mm`, and no smaller than `smallest_mm`, at which the words fit `width_mm`.
pub fn fitting_size(text: &str, size_mm: f64, smallest_mm: f64, weight: Weight, width_mm: f64) -> f64 {
    let natural = self::width_mm(&printable(first_letters(text, MOST_LETTERS)), size_mm, weight);
    if natural <= width_mm { size_mm } else { (size_mm * width_mm / natural).max(smallest_mm) }
}

/// The words of a text that may not be broken: split at spaces, but a figure keeps its fraction and its unit.
fn unbroken_words(text: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match words.last_mut() {
            Some(last) if belong_together(last, word) => {
                last.push(' ');
                last.push_str(word);
            }
            _ => words.push(word.to_owned()),
        }
    }
    words
}

/// Whether a word belongs to the figure before it: the fraction of a whole number, or a unit.
fn belong_together(before: &str, word: &str) -> bool {
    const UNITS: [&str; 9] = ["in", "mm", "cm", "m", "ft", "kg", "lb", "deg", "%"];
    let word = word.trim_end_matches([',', '.', ';', ':', ')']);
    before.ends_with(|c: char| c.is_ascii_digit()) && (word.contains(FRACTION_BAR) || UNITS.contains(&word))
}

/// A word cut into pieces that fit a width; whole where it does.
fn cut_to_width(word: &str, size_mm: f64, weight: Weight, width_mm: f64) -> Vec<String> {
    let mut pieces = Vec::new();
    let mut rest = word;
    while !rest.is_empty() {
        let fits = |letters: usize| self::width_mm(first_letters(rest, letters), size_mm, weight) <= width_mm;
        let letters = rest.chars().count();
        let fitting = if fits(letters) { letters } else { longest_that(letters, fits).max(1) };
        let piece = first_letters(rest, fitting);
        pieces.push(piece.to_owned());
        rest = &rest[piece.len()..];
    }
    pieces
}

/// The first so many letters of a text.
fn first_letters(text: &str, letters: usize) -> &str {
    text.char_indices().nth(letters).map_or(text, |(end, _)| &text[..end])
}

/// The largest number up to `most` that fits, by halving; 0 where not even 1 does.
fn longest_that(most: usize, fits: impl Fn(usize) -> bool) -> usize {
    let (mut sure, mut beyond) = (0, most + 1);
    while beyond - sure > 1 {
        let middle = sure + (beyond - sure) / 2;
        if fits(middle) {
            sure = middle;
        } else {
            beyond = middle;
        }
    }
    sure
}

#[cfg(test)]
mod tests {
    use super::*;

    const REGULAR: Weight = Weight::Regular;

    #[test]
    fn figures_are_all_equally_wide() {
        assert!((width_mm("111", 10.0, REGULAR) - 14.91).abs() < 1e-9);
        assert!((width_mm("088", 10.0, REGULAR) - 14.91).abs() < 1e-9);
    }

    #[test]
    fn a_set_fraction_is_narrower_than_its_figures_in_a_row() {
        let set = width_mm(&printable("13/16"), 10.0, REGULAR);
        assert!(set < 0.8 * width_mm("13/16", 10.0, REGULAR), "{set}");
    }

    #[test]
    fn wrapped_lines_fit_and_keep_every_word() {
        let text = "A hot piece is often black: handle every piece as if it were hot.";
        let lines = wrap(text, 4.0, REGULAR, 40.0);
        assert!(lines.len() > 1);
        assert!(lines.iter().all(|line| width_mm(line, 4.0, REGULAR) <= 40.0));
        assert_eq!(lines.join(" "), text);
    }

    #[test]
    fn a_figure_keeps_its_fraction_and_unit() {
        let lines = wrap("drawn to 1 13/16 in, then", 4.0, REGULAR, 20.0);
        assert!(lines.iter().any(|line| line.contains("1 13⁄16 in")), "{lines:?}");
    }

    #[test]
    fn a_word_longer_than_the_line_is_cut() {
        let word = "W".repeat(100);
        let lines = wrap(&word, 4.0, REGULAR, 30.0);
        assert_eq!(lines.concat(), word);
        assert!(lines.iter().all(|line| width_mm(line, 4.0, REGULAR) <= 30.0));
        assert_eq!(wrap("WW", 4.0, REGULAR, 0.0), ["W", "W"]);
    }

    #[test]
    fn shortened_words_fit_and_say_so() {
        let short = shorten("shank with a long name", 4.0, REGULAR, 20.0);
        assert!(short.starts_with("shank") && short.ends_with('…'), "{short}");
        assert!(width_mm(&short, 4.0, REGULAR) <= 20.0);
        assert_eq!(shorten("shank", 4.0, REGULAR, 20.0), "shank");
        assert_eq!(shorten("shank", 4.0, REGULAR, 0.5), "");
    }

    #[test]
    fn a_size_is_reduced_only_as_far_as_allowed() {
        assert!((fitting_size("12", 6.0, 3.0, REGULAR, 100.0) - 6.0).abs() < 1e-12);
        assert!((fitting_size("1234567890", 6.0, 3.0, REGULAR, 1.0) - 3.0).abs() < 1e-12);
        let size = fitting_size("1234567890", 6.0, 3.0, REGULAR, 20.0);
        assert!((width_mm("1234567890", size, REGULAR) - 20.0).abs() < 1e-9);
    }

    #[test]
    fn what_the_fonts_do_not_have_is_printed_in_latin_letters() {
        let words = printable("ווי 🔨 крюк ἄγκιστρον 鉤 e\u{301} ✓ → ▼");
        let every = |letter: char| has_letter(letter) || letter == '\u{301}';
        assert!(words.chars().all(every), "{words}");
        assert!(words.contains(":hammer:") && words.contains("крюк") && words.contains('→'), "{words}");
        assert!(words.starts_with("vv"), "{words}");
        assert!(!printable("👨\u{200d}🔧 ❤\u{fe0f}").contains('?'));
    }

    #[test]
    fn of_a_title_of_a_megabyte_only_what_fits_is_measured() {
        let long = "gate hook ".repeat(100_000);
        let short = shorten(&long, 4.0, REGULAR, 100.0);
        let _ = fitting_size(&long, 6.0, 3.0, REGULAR, 100.0);
        assert!(short.ends_with('…') && width_mm(&short, 4.0, REGULAR) <= 100.0, "{short}");
        let measured = MEASURED.with_borrow(|kept| kept.iter().flat_map(|known| known.keys().map(String::len)).max());
        assert!(measured < Some(4 * MOST_LETTERS), "{measured:?}");
    }

    #[test]
    fn what_does_not_print_is_replaced() {
        assert_eq!(printable("a\tb\u{7}c ⌀ 1/2"), "a b c Ø 1⁄2");
    }
}
