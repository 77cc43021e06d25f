//! A finding: one thing the smith should know before the bar is hot.

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
    /// The segment, counted from 0; none where the whole bar is meant.
    pub segment: Option<usize>,
}

impl Place {
    /// The segment as the command line writes it: `4` for the fourth; empty where the whole bar is meant.
    pub fn path(&self) -> String {
        self.segment.map_or_else(String::new, |segment| (segment + 1).to_string())
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
