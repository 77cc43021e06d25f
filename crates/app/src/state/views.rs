//! From which sides the bars are shown.

use fh_core::metal::View;
use serde::{Deserialize, Serialize};

/// From which sides the bars are seen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Views {
    /// From the side.
    #[default]
    Side,
    /// From above.
    Top,
    /// From the side and, below it, from above.
    Both,
}

impl Views {
    /// Every choice, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Side, Self::Top, Self::Both];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Side => "Side view",
            Self::Top => "Top view",
            Self::Both => "Side and top view",
        }
    }

    pub(crate) fn shown(self) -> &'static [View] {
        match self {
            Self::Side => &[View::Side],
            Self::Top => &[View::Top],
            Self::Both => &[View::Side, View::Top],
        }
    }
}
