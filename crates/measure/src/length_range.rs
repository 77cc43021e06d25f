//! What a length may be.

/// What a length may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LengthRange {
    /// Greater than 0.
    AboveZero,
    /// 0 or greater.
    ZeroOrMore,
    /// Any finite value: a coordinate.
    Any,
}
