//! Why an edit was not done.

/// Why an edit was not done.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Refusal {
    /// There is no such bar or segment.
    #[error("there is no such place in the plan")]
    NoSuchPlace,
    /// A plan keeps at least one bar.
    #[error("a plan keeps at least one bar")]
    LastBar,
    /// A wish that cannot be met, in words and numbers.
    #[error("{0}")]
    CannotBe(String),
}
