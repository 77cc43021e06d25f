//! Which size of a segment gives.

use super::SizeName;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Which size of a segment gives when its length of bar is set from outside (a dragged mark, a bar already cut).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Gives {
    /// It gets longer or shorter.
    Length,
    /// It gets wider or narrower.
    Width,
    /// It gets thicker or thinner.
    Thickness,
    /// Its sizes hold; only the bar may change.
    Nothing,
}

impl Gives {
    /// Every choice, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::Length, Self::Width, Self::Thickness, Self::Nothing];

    /// The word for it.
    pub fn name(self) -> &'static str {
        self.size().map_or("nothing", SizeName::words)
    }

    /// The size that gives; none where nothing does.
    pub fn size(self) -> Option<SizeName> {
        match self {
            Self::Length => Some(SizeName::Length),
            Self::Width => Some(SizeName::Width),
            Self::Thickness => Some(SizeName::Thickness),
            Self::Nothing => None,
        }
    }
}
