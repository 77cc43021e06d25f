//! The sides of the bar that a shoulder is set down on.

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Error, SeqAccess, Unexpected, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::borrow::Cow;
use std::fmt;

/// All sides, or some of: 0 up, 90 toward you, 180 down, 270 away.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Sides {
    /// On all four sides.
    All,
    /// On these sides, in degrees.
    Some(Vec<u16>),
}

impl Sides {
    /// The four sides, in degrees around the bar.
    pub const DEGREES: [u16; 4] = [0, 90, 180, 270];

    /// Whether this side is set down.
    pub fn contains(&self, degrees: u16) -> bool {
        match self {
            Self::All => true,
            Self::Some(sides) => sides.contains(&degrees),
        }
    }

    /// The word for one side.
    pub fn name_of(degrees: u16) -> &'static str {
        match degrees {
            0 => "up",
            90 => "towards you",
            180 => "down",
            270 => "away",
            _ => "askew",
        }
    }

    /// The sides in words: `all sides`, `up and down`.
    pub fn describe(&self) -> String {
        match self {
            Self::All => "all sides".to_owned(),
            Self::Some(sides) => sides.iter().map(|side| Self::name_of(*side)).collect::<Vec<_>>().join(" and "),
        }
    }
}

impl Serialize for Sides {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::All => serializer.serialize_str("all"),
            Self::Some(sides) => sides.serialize(serializer),
        }
    }
}

impl<'de> Deserialize<'de> for Sides {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(SidesVisitor)
    }
}

/// Reads `"all"` or a list of sides: not empty, none twice.
struct SidesVisitor;

impl<'de> Visitor<'de> for SidesVisitor {
    type Value = Sides;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("\"all\" or a list of 0, 90, 180, 270")
    }

    fn visit_str<E: Error>(self, value: &str) -> Result<Sides, E> {
        match value {
            "all" => Ok(Sides::All),
            _ => Err(E::invalid_value(Unexpected::Str(value), &self)),
        }
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Sides, A::Error> {
        let mut sides = Vec::new();
        while let Some(Side(side)) = list.next_element()? {
            if sides.contains(&side) {
                return Err(A::Error::custom(format!("the side {side} is named twice")));
            }
            sides.push(side);
        }
        if sides.is_empty() {
            return Err(A::Error::custom("no side is named; name 0, 90, 180 or 270, or write \"all\""));
        }
        Ok(Sides::Some(sides))
    }
}

/// One of the four sides, in degrees.
struct Side(u16);

impl<'de> Deserialize<'de> for Side {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(SideVisitor)
    }
}

struct SideVisitor;

impl Visitor<'_> for SideVisitor {
    type Value = Side;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("one of the sides 0 (up), 90 (towards you), 180 (down), 270 (away)")
    }

    fn visit_u64<E: Error>(self, value: u64) -> Result<Side, E> {
        Sides::DEGREES
            .into_iter()
            .find(|side| u64::from(*side) == value)
            .map(Side)
            .ok_or_else(|| E::invalid_value(Unexpected::Unsigned(value), &self))
    }
}

impl JsonSchema for Sides {
    fn schema_name() -> Cow<'static, str> {
        "Sides".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "description": "All sides, or some of: 0 up, 90 towards you, 180 down, 270 away.",
            "anyOf": [
                { "const": "all" },
                { "type": "array", "items": { "enum": [0, 90, 180, 270] }, "minItems": 1, "uniqueItems": true },
            ],
        })
    }
}
