//! Reading the parts of a written quantity one after the other: a sign, a number, a unit.

use crate::error::Problem;
use crate::exact::Exact;
use crate::scan::{Kind, Part};

/// Reads parts one after the other.
#[derive(Clone)]
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

    /// Takes a hyphen between two quantities, as in `1'-2"` or `1' - 2"`; a minus that leans on the second stays.
    pub(crate) fn take_hyphen(&mut self) {
        let hyphen = self.peek() == Some(&Kind::Minus);
        self.next += usize::from(hyphen && self.space_before(0) == self.space_before(1));
    }

    /// How many spaces stand before the part so far ahead.
    fn space_before(&self, ahead: usize) -> usize {
        let index = self.next + ahead;
        let end = index.checked_sub(1).and_then(|before| self.parts.get(before)).map_or(0, |part| part.end);
        self.parts.get(index).map_or(self.end, |part| part.at).saturating_sub(end)
    }

    /// A sign before a number: whether it is a minus.
    pub(crate) fn sign(&mut self) -> bool {
        if self.take_if(&Kind::Plus) { false } else { self.take_if(&Kind::Minus) }
    }

    /// Whether a sign is next and stands close to what follows it.
    pub(crate) fn sign_leans(&self) -> bool {
        matches!(self.peek(), Some(Kind::Plus | Kind::Minus)) && self.space_before(1) == 0
    }

    /// A number: `3`, `3.25`, `1/4`, `3 1/4`, `3-1/4`, `3¼`.
    pub(crate) fn number(&mut self) -> Result<Exact, Problem> {
        let at = self.at();
        let overflow = || Problem::new(at, "this is too large or too small");
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

    /// The fraction of a mixed number, after a space or a hyphen. A hyphen with spaces around it would be a minus.
    fn fraction_after_whole(&mut self) -> Result<Option<Exact>, Problem> {
        let hyphen = self.peek() == Some(&Kind::Minus);
        if hyphen && self.space_before(0) + self.space_before(1) > 0 {
            return Ok(None);
        }
        let hyphen = usize::from(hyphen);
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
            Some(Kind::Plus | Kind::Minus) => Err(Problem::new(self.at(), "sums are not worked out here")),
            Some(Kind::PlusMinus) => Err(Problem::new(self.at(), "“±” does not belong here")),
            Some(Kind::Slash) => Err(Problem::new(self.at(), "there is a fraction bar too many")),
            Some(Kind::Word(word)) => Err(Problem::new(self.at(), format!("“{word}” does not belong here"))),
            Some(_) => Err(Problem::new(self.at(), "there is more than one number")),
        }
    }
}
