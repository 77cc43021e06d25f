//! A square section as written: its side, or its side and how far its edges are eased.

use super::length_or::{self, LengthOr};
use fh_measure::WrittenLength;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::borrow::Cow;

/// A square's side and how far its edges are eased. In a file: `"12 mm"`, or `{ "side": "12 mm", "edge_radius": "1 mm" }`.
#[derive(Clone, Debug, PartialEq)]
pub struct SquareSpec {
    /// The side.
    pub side: WrittenLength,
    /// The radius of its eased edges; sharp where there is none.
    pub edge_radius: Option<WrittenLength>,
}

/// The longer way to write it.
#[derive(Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Eased {
    /// The side.
    side: WrittenLength,
    /// The radius of its eased edges; sharp where it is left out. May be 0.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    edge_radius: Option<WrittenLength>,
}

impl Serialize for SquareSpec {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if self.edge_radius.is_none() {
            return self.side.serialize(serializer);
        }
        Eased { side: self.side.clone(), edge_radius: self.edge_radius.clone() }.serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for SquareSpec {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(match length_or::deserialize(deserializer)? {
            LengthOr::Length(side) => Self { side, edge_radius: None },
            LengthOr::Group(Eased { side, edge_radius }) => Self { side, edge_radius },
        })
    }
}

impl JsonSchema for SquareSpec {
    fn schema_name() -> Cow<'static, str> {
        "SquareSpec".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "description": "Its side, or its side and the radius of its eased edges.",
            "anyOf": [generator.subschema_for::<WrittenLength>(), generator.subschema_for::<Eased>()],
        })
    }
}
