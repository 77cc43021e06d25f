//! A hole as written: its shape, and how it is made.

use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The shape of a hole through the thickness of its boss.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum HoleSpec {
    /// A round hole, by its diameter.
    Round(WrittenLength),
    /// A square hole, by its side.
    Square(WrittenLength),
    /// A slot with round ends, over all.
    Slot {
        /// Along the bar.
        length: WrittenLength,
        /// Across the bar.
        width: WrittenLength,
    },
}

/// The kinds of hole, for lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum HoleKind {
    /// See [`HoleSpec::Round`].
    Round,
    /// See [`HoleSpec::Square`].
    Square,
    /// See [`HoleSpec::Slot`].
    Slot,
}

impl HoleKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Round, Self::Square, Self::Slot];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Round => "round",
            Self::Square => "square",
            Self::Slot => "slot",
        }
    }
}

impl HoleSpec {
    /// Which kind this is.
    pub fn kind(&self) -> HoleKind {
        match self {
            Self::Round(_) => HoleKind::Round,
            Self::Square(_) => HoleKind::Square,
            Self::Slot { .. } => HoleKind::Slot,
        }
    }

    /// It in words and sizes: `Ø 8 mm`.
    pub fn describe(&self) -> String {
        match self {
            Self::Round(diameter) => format!("Ø {}", diameter.text()),
            Self::Square(side) => format!("{} square", side.text()),
            Self::Slot { length, width } => format!("slot {} × {}", length.text(), width.text()),
        }
    }
}

/// How a hole is made, and with it what metal is lost.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Made {
    /// Drilled: the hole's metal is lost.
    Drilled,
    /// Punched: the slug is lost.
    Punched,
    /// Slit and drifted: nothing is lost.
    Drifted,
}

impl Made {
    /// Every way, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Punched, Self::Drifted, Self::Drilled];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Drilled => "drilled",
            Self::Punched => "punched",
            Self::Drifted => "slit and drifted",
        }
    }
}
