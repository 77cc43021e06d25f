//! Rules of the trade that schools disagree on: the smith chooses, and the plan says which was chosen.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The smith's choice where the trade knows more than one rule.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Practice {
    /// How long the slit for a drifted hole is; both answers are shown where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slit: Option<SlitRule>,
    /// How the length of a collar is reckoned; the butted rule where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub collar: Option<CollarRule>,
}

impl Practice {
    /// Whether nothing was chosen.
    pub fn is_default(&self) -> bool {
        *self == Self::default()
    }
}

/// How long the slit for a drifted hole is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SlitRule {
    /// Half the finished hole's perimeter less 5 %, so that the drift meets metal: its sides are hardly stretched.
    HalfPerimeter,
    /// Three quarters of the finished hole's length: the drift stretches the rest.
    ThreeQuarters,
}

impl SlitRule {
    /// Every rule, in the order they are offered.
    pub const ALL: [Self; 2] = [Self::HalfPerimeter, Self::ThreeQuarters];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::HalfPerimeter => "half the perimeter less 5 %",
            Self::ThreeQuarters => "three quarters of the length",
        }
    }
}

/// How the length of a collar is reckoned. Its tight corners stretch, so that the middle line is no good guide.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum CollarRule {
    /// Ends butted: the perimeter wrapped and twice the thickness.
    Butted,
    /// Ends lapped: the perimeter wrapped and two and a half times the thickness.
    Lapped,
    /// The middle line, corners rounded about the bundle's edges: the perimeter and π times the thickness.
    MiddleLine,
}

impl CollarRule {
    /// Every rule, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Butted, Self::Lapped, Self::MiddleLine];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Butted => "butted: perimeter + 2 t",
            Self::Lapped => "lapped: perimeter + 2½ t",
            Self::MiddleLine => "middle line: perimeter + π t",
        }
    }

    /// How many thicknesses are added to the perimeter. Sources: docs/sources.md, collars.
    pub fn thicknesses(self) -> f64 {
        match self {
            Self::Butted => 2.0,
            Self::Lapped => 2.5,
            Self::MiddleLine => std::f64::consts::PI,
        }
    }
}
