//! One part of a piece, of one of its bar's copies.

/// A segment of a copy of a bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct PartOf {
    /// The bar.
    pub bar: usize,
    /// Which of its copies, counted from 0.
    pub copy: u32,
    /// The segment, counted through the bar.
    pub segment: usize,
}
