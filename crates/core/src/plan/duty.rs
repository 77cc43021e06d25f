//! What the piece is for and what the stock is coated with, where either calls for a caution.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A use of the finished piece that needs a rated and tested part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Duty {
    /// It carries no more than itself or light goods.
    Light,
    /// It lifts or hangs a load.
    Lifts,
    /// It holds people up or back.
    HoldsPeople,
    /// It tows or carries a vehicle.
    Tows,
}

impl Duty {
    /// Every duty, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::Light, Self::Lifts, Self::HoldsPeople, Self::Tows];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Light => "light use",
            Self::Lifts => "lifts a load",
            Self::HoldsPeople => "holds people",
            Self::Tows => "tows a vehicle",
        }
    }
}

/// What the stock is coated with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Coating {
    /// Bare, or black with mill scale.
    None,
    /// Zinc.
    #[serde(alias = "galvanized")]
    Galvanised,
    /// Chromium, nickel, cadmium or another plating.
    Plated,
    /// Paint or powder.
    Painted,
}

impl Coating {
    /// Every coating, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::None, Self::Galvanised, Self::Plated, Self::Painted];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::None => "bare",
            Self::Galvanised => "galvanised",
            Self::Plated => "plated",
            Self::Painted => "painted",
        }
    }
}
