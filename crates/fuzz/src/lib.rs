//! Random plans, edits, hands at the window and files of the rack, to find what breaks First Heat.
//!
//! A round is made from its number alone: what it found once it finds again. What was found is kept as an input, and
//! a test goes through all that are kept.

mod caught;
mod corpus;
mod deeds;
mod edits;
mod kept;
mod mutate;
mod paper;
mod plans;
mod random;
mod run;
mod steel;
mod window;
mod wishes;

pub use caught::quiet;
pub use corpus::Corpus;
pub use kept::{Kept, keep, kept};
pub use plans::check as check_plan;
pub use steel::check as check_steel;

/// What is tried.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Plans that were changed at random, through reading, writing, balance, order, sheets and files.
    Plans,
    /// Random edits of a plan, with undo and redo.
    Edits,
    /// Random clicks, keys and texts at the editor.
    Window,
    /// Racks, merchants' lists, shops' figures and jobs that were changed at random, through reading, writing, booking, cut
    /// list, quote and paper.
    Steel,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 4] = [Self::Plans, Self::Edits, Self::Window, Self::Steel];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Plans => "plans",
            Self::Edits => "edits",
            Self::Window => "window",
            Self::Steel => "steel",
        }
    }
}

/// Something that is not as it should be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// What, without figures: faults of one cause have the same.
    pub what: String,
    /// The same with all that helps to find the cause.
    pub words: String,
}

impl Fault {
    pub(crate) fn new(what: impl Into<String>, words: impl Into<String>) -> Self {
        Self { what: what.into(), words: words.into() }
    }
}

/// What a round did.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Round {
    /// What was found.
    pub faults: Vec<Fault>,
    /// The plan or the file of the rack that was tried, as its text; empty where the round is known by its number alone.
    pub input: Vec<u8>,
    /// How many things were tried in it: stages, edits, events.
    pub tried: usize,
}

/// Makes the input of a round without trying it, so that it is known where trying it never ends; empty where the round is
/// known by its number alone.
pub fn input(corpus: &Corpus, kind: Kind, number: u64) -> Vec<u8> {
    match kind {
        Kind::Plans => plans::input(corpus, number),
        Kind::Steel => steel::input(corpus, number),
        Kind::Edits | Kind::Window => Vec::new(),
    }
}

/// One round, known by its number.
pub fn round(corpus: &Corpus, kind: Kind, number: u64) -> Round {
    match kind {
        Kind::Plans => {
            let input = plans::input(corpus, number);
            let (faults, tried) = plans::check(&input, number.is_multiple_of(plans::WHOLE));
            Round { faults, input, tried }
        }
        Kind::Edits => edits::round(corpus, number),
        Kind::Window => window::round(corpus, number),
        Kind::Steel => {
            let input = steel::input(corpus, number);
            let (faults, tried) = steel::check(corpus, &input, number.is_multiple_of(plans::WHOLE));
            Round { faults, input, tried }
        }
    }
}
