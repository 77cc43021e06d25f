//! What an edit changed beside what it was asked for.

use crate::plan::SizeName;

/// A size that gave way to a wish.
#[derive(Clone, Debug, PartialEq)]
pub struct Gave {
    /// The segment.
    pub segment: usize,
    /// Which size.
    pub size: SizeName,
    /// What it is now, as written; empty where it is left out and follows from the others.
    pub text: String,
}
