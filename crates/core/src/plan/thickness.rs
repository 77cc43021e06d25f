//! The thickness of a flag as written.

use super::length_or::{self, LengthOr};
use fh_measure::WrittenLength;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::borrow::Cow;

/// Even, or running evenly from root to tip. In a file: `"5 mm"`, or `{ "root": "6 mm", "tip": "2 mm" }`.
#[derive(Clone, Debug, PartialEq)]
pub enum ThicknessSpec {
    /// The same all over.
    Even(WrittenLength),
    /// From this at the root to that at the tip.
    Tapered {
        /// At the root.
        root: WrittenLength,
        /// At the tip.
        tip: WrittenLength,
    },
}

/// The longer way to write it.
#[derive(Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct RootToTip {
    /// At the root.
    root: WrittenLength,
    /// At the tip.
    tip: WrittenLength,
}

impl ThicknessSpec {
    /// It in words and sizes.
    pub fn describe(&self) -> String {
        match self {
            Self::Even(thickness) => format!("{} thick", thickness.text()),
            Self::Tapered { root, tip } => format!("{} thick at the root to {} at the tip", root.text(), tip.text()),
        }
    }
}

impl Serialize for ThicknessSpec {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Even(thickness) => thickness.serialize(serializer),
            Self::Tapered { root, tip } => RootToTip { root: root.clone(), tip: tip.clone() }.serialize(serializer),
        }
    }
}

impl<'de> Deserialize<'de> for ThicknessSpec {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(match length_or::deserialize(deserializer)? {
            LengthOr::Length(thickness) => Self::Even(thickness),
            LengthOr::Group(RootToTip { root, tip }) => Self::Tapered { root, tip },
        })
    }
}

impl JsonSchema for ThicknessSpec {
    fn schema_name() -> Cow<'static, str> {
        "ThicknessSpec".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "description": "Even, or running evenly from root to tip.",
            "anyOf": [generator.subschema_for::<WrittenLength>(), generator.subschema_for::<RootToTip>()],
        })
    }
}
