//! What a written size gives for, in the words that stand beside it.

/// What a size gave for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GaveFor {
    /// A bar that is already cut.
    Bar,
    /// The block between two fixed marks.
    Block,
    /// The same, and it isn't enough.
    BlockInPart,
    /// A size that is asked of the piece.
    AskedSize,
}

impl GaveFor {
    /// It in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Bar => "to fit the bar",
            Self::Block => "as its block gives",
            Self::BlockInPart => "as far as its block gives",
            Self::AskedSize => "to keep an asked size",
        }
    }
}
