//! Which sizes of an outline follow from the socket that it is rolled to.

use crate::plan::OutlineSpec;

/// Which sizes of a flag's outline are left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rolled {
    /// None.
    Given,
    /// Its length.
    LengthFollows,
    /// Its width.
    WidthFollows,
    /// More than can follow.
    Unknown,
}

impl Rolled {
    /// Which sizes of an outline are left out.
    pub(crate) fn of(outline: &OutlineSpec) -> Self {
        let OutlineSpec::Rectangle { length, width } = outline else { return Self::Given };
        match (length, width) {
            (Some(_), Some(_)) => Self::Given,
            (None, Some(_)) => Self::LengthFollows,
            (Some(_), None) => Self::WidthFollows,
            (None, None) => Self::Unknown,
        }
    }
}
