//! Cutting a written quantity into its parts: numbers, fractions, signs and unit words.

use crate::error::Problem;
use crate::exact::Exact;

/// The longest text that is read at all.
const MOST_CHARACTERS: usize = 80;
/// The most figures of one number.
const MOST_FIGURES: usize = 15;

/// A part of a written quantity and the character it starts at, counted from 0.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Part {
    pub(crate) at: usize,
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
    /// A word, or one of the signs ' " ° %.
    Word(String),
}

/// Cuts a text into parts.
pub(crate) fn scan(text: &str) -> Result<Vec<Part>, Problem> {
    let characters: Vec<char> = text.chars().collect();
    if characters.len() > MOST_CHARACTERS {
        return Err(Problem::new(MOST_CHARACTERS, "this is too long for a size"));
    }
    let mut parts = Vec::new();
    let mut at = 0;
    while let Some(&character) = characters.get(at) {
        let (kind, length) = match character {
            _ if character.is_whitespace() => {
                at += 1;
                continue;
            }
            '/' | '⁄' | '∕' => (Kind::Slash, 1),
            '-' | '‐' | '‑' | '–' | '−' => (Kind::Minus, 1),
            '+' => (Kind::Plus, 1),
            '0'..='9' | '.' | ',' => number(&characters, at)?,
            _ if character.is_alphabetic() => word(&characters, at),
            _ => match (vulgar(character), mark(&characters, at)) {
                (Some(fraction), _) => (Kind::Vulgar(fraction), 1),
                (None, Some((sign, length))) => (Kind::Word(sign.to_owned()), length),
                (None, None) => return Err(Problem::new(at, format!("“{character}” does not belong in a size"))),
            },
        };
        parts.push(Part { at, kind });
        at += length;
    }
    Ok(parts)
}

fn word(characters: &[char], at: usize) -> (Kind, usize) {
    let letters: String = characters[at..].iter().take_while(|character| character.is_alphabetic()).collect();
    let length = letters.chars().count();
    (Kind::Word(letters), length)
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
        return Err(Problem::new(end, "no figures stand after the decimal sign"));
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
    if figures.len() > MOST_FIGURES {
        return Err(Problem::new(at, format!("a number of more than {MOST_FIGURES} figures is no size")));
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
        '°' | 'º' => ("°", 1),
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

/// Reads parts one after the other.
pub(crate) struct Reader<'a> {
    parts: &'a [Part],
    next: usize,
    end: usize,
}

impl<'a> Reader<'a> {
    /// A reader of the parts of a text of so many characters.
    pub(crate) fn new(parts: &'a [Part], characters: usize) -> Self {
        Self { parts, next: 0, end: characters }
    }

    /// The next part, without taking it.
    pub(crate) fn peek(&self) -> Option<&'a Kind> {
        self.parts.get(self.next).map(|part| &part.kind)
    }

    /// The character that the next part starts at.
    pub(crate) fn at(&self) -> usize {
        self.parts.get(self.next).map_or(self.end, |part| part.at)
    }

    /// Takes the next part.
    pub(crate) fn take(&mut self) {
        self.next += 1;
    }

    /// Takes the next part if it is this one.
    pub(crate) fn take_if(&mut self, kind: &Kind) -> bool {
        let there = self.peek() == Some(kind);
        self.next += usize::from(there);
        there
    }

    /// A sign before a number: whether it is a minus.
    pub(crate) fn sign(&mut self) -> bool {
        if self.take_if(&Kind::Plus) { false } else { self.take_if(&Kind::Minus) }
    }

    /// A number: `3`, `3.25`, `1/4`, `3 1/4`, `3-1/4`, `3¼`.
    pub(crate) fn number(&mut self) -> Result<Exact, Problem> {
        let at = self.at();
        let overflow = || Problem::new(at, "this is beyond all measure");
        match self.peek() {
            Some(Kind::Decimal(value)) => {
                self.take();
                self.no_fraction("a decimal number takes no fraction")?;
                Ok(*value)
            }
            Some(Kind::Vulgar(value)) => {
                self.take();
                Ok(*value)
            }
            Some(Kind::Whole(whole)) => {
                self.take();
                if self.peek() == Some(&Kind::Slash) {
                    return self.denominator(*whole);
                }
                match self.fraction_after_whole()? {
                    Some(fraction) => Exact::new(*whole, 1).and_then(|w| w.plus(fraction)).ok_or_else(overflow),
                    None => Exact::new(*whole, 1).ok_or_else(overflow),
                }
            }
            Some(Kind::Slash) => Err(Problem::new(at, "the fraction has no numerator")),
            Some(_) => Err(Problem::new(at, "a number belongs here")),
            None => Err(Problem::new(at, "there is no number")),
        }
    }

    /// The fraction of a mixed number, after a space or a hyphen.
    fn fraction_after_whole(&mut self) -> Result<Option<Exact>, Problem> {
        let hyphen = usize::from(self.peek() == Some(&Kind::Minus));
        let kind = |ahead: usize| self.parts.get(self.next + hyphen + ahead).map(|part| &part.kind);
        match (kind(0), kind(1)) {
            (Some(Kind::Vulgar(value)), _) => {
                let value = *value;
                self.next += hyphen + 1;
                Ok(Some(value))
            }
            (Some(Kind::Whole(numerator)), Some(Kind::Slash)) => {
                let numerator = *numerator;
                self.next += hyphen + 1;
                self.denominator(numerator).map(Some)
            }
            _ => Ok(None),
        }
    }

    /// The bar and the denominator of a fraction.
    fn denominator(&mut self, numerator: i128) -> Result<Exact, Problem> {
        self.take();
        let at = self.at();
        let Some(Kind::Whole(denominator)) = self.peek() else {
            let words = match self.peek() {
                Some(Kind::Decimal(_)) => "a fraction has whole numbers",
                _ => "the fraction has no denominator",
            };
            return Err(Problem::new(at, words));
        };
        self.take();
        if self.peek() == Some(&Kind::Slash) {
            return Err(Problem::new(self.at(), "there is a second fraction bar"));
        }
        Exact::new(numerator, *denominator).ok_or_else(|| Problem::new(at, "nothing can be divided by 0"))
    }

    fn no_fraction(&self, words: &str) -> Result<(), Problem> {
        match self.peek() {
            Some(Kind::Slash | Kind::Vulgar(_)) => Err(Problem::new(self.at(), words)),
            _ => Ok(()),
        }
    }

    /// Refuses what is left over.
    pub(crate) fn finish(&self) -> Result<(), Problem> {
        match self.peek() {
            None => Ok(()),
            Some(Kind::Plus) => Err(Problem::new(self.at(), "sums are not worked out here")),
            Some(Kind::Word(word)) => Err(Problem::new(self.at(), format!("“{word}” does not belong here"))),
            Some(_) => Err(Problem::new(self.at(), "there is more than one number")),
        }
    }
}
