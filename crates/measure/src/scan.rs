//! Cutting a written quantity into its parts: numbers, fractions, signs and unit words.

use crate::error::Problem;
use crate::exact::Exact;

/// The longest text that is read at all.
const MOST_CHARACTERS: usize = 80;
/// The most figures of one number; zeros before the first other figure do not count.
const MOST_FIGURES: usize = 18;
/// The most figures with those zeros.
const MOST_WITH_ZEROS: usize = 22;

/// A part of a written quantity, the character it starts at, counted from 0, and the one behind it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Part {
    pub(crate) at: usize,
    pub(crate) end: usize,
    pub(crate) kind: Kind,
}

/// What a part is.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Kind {
    /// A whole number.
    Whole(i128),
    /// A number with a decimal sign.
    Decimal(Exact),
    /// One of the characters ¼ ½ ¾ …
    Vulgar(Exact),
    /// A fraction bar.
    Slash,
    /// A hyphen or minus.
    Minus,
    /// A plus.
    Plus,
    /// One of the signs ± +- +/-.
    PlusMinus,
    /// A word, or one of the signs ' " ° %.
    Word(String),
}

/// Cuts a text into parts.
pub(crate) fn scan(text: &str) -> Result<Vec<Part>, Problem> {
    if text.chars().nth(MOST_CHARACTERS).is_some() {
        return Err(Problem::new(MOST_CHARACTERS, "this is too long for a size"));
    }
    let characters: Vec<char> = text.chars().collect();
    let mut parts = Vec::new();
    let mut at = 0;
    while let Some(&character) = characters.get(at) {
        let (kind, length) = match character {
            _ if is_space(character) => {
                at += 1;
                continue;
            }
            _ if is_slash(character) => (Kind::Slash, 1),
            '±' => (Kind::PlusMinus, 1),
            '+' => plus(&characters, at),
            _ if is_minus(character) => (Kind::Minus, 1),
            '0'..='9' | '.' | ',' => number(&characters, at)?,
            _ => match (vulgar(character), mark(&characters, at)) {
                (Some(fraction), _) => (Kind::Vulgar(fraction), 1),
                (None, Some((sign, length))) => (Kind::Word(sign.to_owned()), length),
                (None, None) if character.is_alphabetic() => word(&characters, at),
                (None, None) => return Err(stranger(at, character)),
            },
        };
        parts.push(Part { at, end: at + length, kind });
        at += length;
    }
    Ok(parts)
}

fn is_minus(character: char) -> bool {
    matches!(character, '-' | '‐' | '‑' | '–' | '−')
}

fn is_slash(character: char) -> bool {
    matches!(character, '/' | '⁄' | '∕')
}

/// A plus, or one with a minus right behind it.
fn plus(characters: &[char], at: usize) -> (Kind, usize) {
    let behind = |ahead: usize| characters.get(at + ahead).copied().unwrap_or_default();
    match (behind(1), behind(2)) {
        (minus, _) if is_minus(minus) => (Kind::PlusMinus, 2),
        (slash, minus) if is_slash(slash) && is_minus(minus) => (Kind::PlusMinus, 3),
        _ => (Kind::Plus, 1),
    }
}

/// A space of any width, but no end of a line.
fn is_space(character: char) -> bool {
    character == '\t' || (character.is_whitespace() && !is_unseen(character))
}

/// Whether a character cannot be seen: ends of lines, marks of direction, joiners.
fn is_unseen(character: char) -> bool {
    let invisible = ['\u{AD}'..='\u{AD}', '\u{200B}'..='\u{200F}', '\u{2028}'..='\u{202E}', '\u{2060}'..='\u{206F}'];
    character.is_control() || character == '\u{FEFF}' || invisible.iter().any(|range| range.contains(&character))
}

/// A character that stands in no size. One that cannot be seen is named by its number.
fn stranger(at: usize, character: char) -> Problem {
    let words = if is_unseen(character) {
        format!("the unseen character U+{:04X} does not belong in a size", u32::from(character))
    } else {
        format!("“{character}” does not belong in a size")
    };
    Problem::new(at, words)
}

/// A word; the full stop of an abbreviation belongs to it.
fn word(characters: &[char], at: usize) -> (Kind, usize) {
    let letters: String = characters[at..].iter().take_while(|character| character.is_alphabetic()).collect();
    let length = letters.chars().count();
    let after = |ahead: usize| characters.get(at + length + ahead);
    let stop = after(0) == Some(&'.') && !after(1).is_some_and(|c| c.is_ascii_digit() || *c == '.');
    (Kind::Word(letters), length + usize::from(stop))
}

/// A whole number, or one with a point or a comma.
fn number(characters: &[char], at: usize) -> Result<(Kind, usize), Problem> {
    let figures = |from: usize| -> String { characters[from..].iter().take_while(|c| c.is_ascii_digit()).collect() };
    let whole = figures(at);
    let mut end = at + whole.len();
    let sign = characters.get(end).copied().filter(|c| matches!(c, '.' | ','));
    let Some(sign) = sign else {
        return Ok((Kind::Whole(value(&whole, at)?), whole.len()));
    };
    let decimals = figures(end + 1);
    if decimals.is_empty() {
        return Err(Problem::new(end, "there are no figures after the decimal sign"));
    }
    if sign == ',' && decimals.len() == 3 && !whole.is_empty() && whole != "0" {
        return Err(Problem::new(end, "a comma before three figures may mean thousands or a decimal sign"));
    }
    end += 1 + decimals.len();
    if characters.get(end).is_some_and(|c| matches!(c, '.' | ',')) {
        return Err(Problem::new(end, "there is a second decimal sign"));
    }
    let numerator = value(&format!("{whole}{decimals}"), at)?;
    let denominator = 10_i128.pow(u32::try_from(decimals.len()).unwrap_or(0));
    let exact = Exact::new(numerator, denominator).ok_or_else(|| Problem::new(at, "this is not a number"))?;
    Ok((Kind::Decimal(exact), end - at))
}

fn value(figures: &str, at: usize) -> Result<i128, Problem> {
    if figures.trim_start_matches('0').len() > MOST_FIGURES || figures.len() > MOST_WITH_ZEROS {
        return Err(Problem::new(at, format!("a number of more than {MOST_FIGURES} figures isn't a size")));
    }
    figures.parse().map_err(|_| Problem::new(at, "this is not a number"))
}

/// The marks of feet, inches, degrees and per cent, as one sign each.
fn mark(characters: &[char], at: usize) -> Option<(&'static str, usize)> {
    let single = |c: char| matches!(c, '\'' | '′' | '’' | '‘' | 'ʹ');
    Some(match characters.get(at)? {
        '"' | '″' | '”' | '“' | 'ʺ' => ("\"", 1),
        c if single(*c) => match characters.get(at + 1) {
            Some(next) if single(*next) => ("\"", 2),
            _ => ("'", 1),
        },
        '°' | 'º' | '˚' => ("°", 1),
        '%' | '％' => ("%", 1),
        _ => return None,
    })
}

fn vulgar(character: char) -> Option<Exact> {
    let (numerator, denominator) = match character {
        '¼' => (1, 4),
        '½' => (1, 2),
        '¾' => (3, 4),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        _ => return None,
    };
    Exact::new(numerator, denominator)
}
