//! The side of a segment that faces the other part of a joint: one around the bar, or one of its ends.

use fh_measure::WrittenAngle;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::borrow::Cow;
use std::fmt;

/// A side of a segment. In a file: an angle around the bar (0 up, 90 toward you, 180 down, 270 away), `"start"` or `"end"`.
#[derive(Clone, Debug, PartialEq)]
pub enum JointSide {
    /// Around the bar, from up by way of toward-you.
    Around(WrittenAngle),
    /// Its end toward the datum.
    Start,
    /// Its other end.
    End,
}

impl JointSide {
    /// It as it is written.
    pub fn text(&self) -> &str {
        match self {
            Self::Around(angle) => angle.text(),
            Self::Start => "start",
            Self::End => "end",
        }
    }

    /// Reads a side: `start`, `end` or an angle; a bare number is degrees where `bare_is_degrees`.
    ///
    /// # Errors
    /// Where it is neither: what was read, and what would be right.
    pub fn parse(text: &str, bare_is_degrees: bool) -> Result<Self, fh_measure::MeasureError> {
        match text.trim() {
            "start" => Ok(Self::Start),
            "end" => Ok(Self::End),
            angle => WrittenAngle::parse(angle, bare_is_degrees).map(Self::Around),
        }
    }
}

impl Serialize for JointSide {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.text())
    }
}

impl<'de> Deserialize<'de> for JointSide {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(JointSideVisitor)
    }
}

struct JointSideVisitor;

impl Visitor<'_> for JointSideVisitor {
    type Value = JointSide;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an angle around the bar, such as \"90 deg\", or \"start\" or \"end\"")
    }

    fn visit_str<E: Error>(self, value: &str) -> Result<JointSide, E> {
        JointSide::parse(value, false).map_err(E::custom)
    }
}

impl JsonSchema for JointSide {
    fn schema_name() -> Cow<'static, str> {
        "JointSide".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "description": "An angle around the bar (0 up, 90 towards you, 180 down, 270 away), or one of the part's ends.",
            "anyOf": [{ "enum": ["start", "end"] }, generator.subschema_for::<WrittenAngle>()],
        })
    }
}
