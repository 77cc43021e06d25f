//! A refusal: what was read, where, and what would be right.

/// Why a text is not the quantity that was asked for.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("“{text}”: {problem} (at character {at}); {remedy}")]
pub struct MeasureError {
    /// What was read; a long text is cut.
    pub text: String,
    /// The character it failed at, counted from 1.
    pub at: usize,
    /// What is wrong there.
    pub problem: String,
    /// What would be right.
    pub remedy: String,
}

/// The most characters of a refused text that are shown again.
const MOST_SHOWN: usize = 40;

fn shown(text: &str) -> String {
    match text.char_indices().nth(MOST_SHOWN) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

/// A problem at a place, before it is known what would be right.
#[derive(Debug)]
pub(crate) struct Problem {
    /// The character, counted from 0.
    pub(crate) at: usize,
    pub(crate) words: String,
}

impl Problem {
    pub(crate) fn new(at: usize, words: impl Into<String>) -> Self {
        Self { at, words: words.into() }
    }

    /// The refusal of a text.
    pub(crate) fn of(self, text: &str, remedy: &str) -> MeasureError {
        MeasureError {
            text: shown(text),
            at: self.at + 1,
            problem: self.words,
            remedy: format!("write for example {remedy}"),
        }
    }
}
