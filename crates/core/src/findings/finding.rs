//! A finding: one thing the smith should know before the bar is hot.

use crate::plan::Plan;

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Worth knowing.
    Note,
    /// Likely to spoil the piece.
    Warning,
    /// The plan cannot be forged as it stands.
    Stop,
}

impl Severity {
    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Warning => "warning",
            Self::Stop => "stop",
        }
    }
}

/// The place a finding speaks of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Place {
    /// The bar, counted from 0; none where the whole plan is meant.
    pub bar: Option<usize>,
    /// The segment, counted through the bar from 0; none where the whole bar is meant.
    pub segment: Option<usize>,
}

impl Place {
    /// The segment as the command line writes it: `4` for the fourth, `4.2.1` within the split at 4; empty where the whole
    /// bar is meant.
    pub fn path(&self, plan: &Plan) -> String {
        let bar = self.bar.and_then(|bar| plan.bars.get(bar));
        bar.zip(self.segment).map_or_else(String::new, |(bar, segment)| bar.path(segment))
    }
}

/// One thing the smith should know before the bar is hot.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Which check it comes from, for example `cold-shut`.
    pub id: &'static str,
    /// How much it matters.
    pub severity: Severity,
    /// Where.
    pub place: Place,
    /// What was seen, with its numbers.
    pub message: String,
    /// Why it matters.
    pub reason: &'static str,
    /// What the smith can do.
    pub remedy: String,
}
