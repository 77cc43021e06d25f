//! The corners of a polygon outline as written, and the arcs between them.

use fh_measure::{WrittenAngle, WrittenLength};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::value::{MapAccessDeserializer, SeqAccessDeserializer};
use serde::de::{Error, MapAccess, SeqAccess, Visitor};
use serde::ser::SerializeSeq;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::borrow::Cow;
use std::fmt;

/// The most corners a polygon may have. Checking that it does not cross itself takes every pair of its sides.
pub const MOST_CORNERS: usize = 250;
/// The fewest.
pub const LEAST_CORNERS: usize = 3;

/// The corners of a polygon in order. In a file: `[["0 mm", "0 mm"], ["40 mm", "0 mm"], { "arc": "90 deg" }, …]`.
#[derive(Clone, Debug, PartialEq)]
pub struct Corners(pub Vec<CornerSpec>);

/// A corner, and how the way to the next one runs.
#[derive(Clone, Debug, PartialEq)]
pub struct CornerSpec {
    /// Along the bar from the root, and across it from the base line.
    pub at: [WrittenLength; 2],
    /// The arc to the next corner; none where it is a straight side.
    pub arc: Option<ArcSpec>,
}

/// An arc from one corner to the next.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ArcSpec {
    /// How far it goes round: below a full turn.
    pub arc: WrittenAngle,
    /// Which way it bulges.
    #[serde(default, skip_serializing_if = "Bulges::is_out")]
    #[schemars(extend("default" = "out"))]
    pub bulges: Bulges,
}

/// Which way an arc bulges.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Bulges {
    /// Away from the plate: a round edge.
    #[default]
    Out,
    /// Into the plate: a hollow.
    In,
}

impl Bulges {
    fn is_out(&self) -> bool {
        *self == Self::Out
    }
}

impl CornerSpec {
    /// A corner with a straight side to the next.
    pub fn straight(at: [WrittenLength; 2]) -> Self {
        Self { at, arc: None }
    }
}

impl Corners {
    /// How many entries of the list in the file come before that of a corner.
    pub(crate) fn entry_of(&self, corner: usize) -> usize {
        corner + self.0.iter().take(corner).filter(|corner| corner.arc.is_some()).count()
    }
}

/// A coordinate: unlike a size it may be 0 or below.
#[derive(Deserialize)]
#[serde(transparent)]
struct Coordinate(#[serde(deserialize_with = "fh_measure::signed::deserialize")] WrittenLength);

/// What is written in the list: a corner, or the arc from the one before to the one after it.
enum Entry {
    Corner([Coordinate; 2]),
    Arc(ArcSpec),
}

impl<'de> Deserialize<'de> for Entry {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(EntryVisitor)
    }
}

struct EntryVisitor;

impl<'de> Visitor<'de> for EntryVisitor {
    type Value = Entry;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a corner [along, across] or an arc { \"arc\": angle }")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<Entry, A::Error> {
        <[Coordinate; 2]>::deserialize(SeqAccessDeserializer::new(list)).map(Entry::Corner)
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Entry, A::Error> {
        ArcSpec::deserialize(MapAccessDeserializer::new(map)).map(Entry::Arc)
    }
}

impl<'de> Deserialize<'de> for Corners {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let mut corners: Vec<CornerSpec> = Vec::new();
        for entry in Vec::<Entry>::deserialize(deserializer)? {
            match entry {
                Entry::Corner(at) => corners.push(CornerSpec::straight(at.map(|Coordinate(value)| value))),
                Entry::Arc(arc) => match corners.last_mut() {
                    None => return Err(D::Error::custom("a polygon begins with a corner, not with an arc")),
                    Some(last) if last.arc.is_some() => {
                        return Err(D::Error::custom(format!("two arcs follow corner {}; one does", corners.len())));
                    }
                    Some(last) => last.arc = Some(arc),
                },
            }
        }
        if !(LEAST_CORNERS..=MOST_CORNERS).contains(&corners.len()) {
            let count = corners.len();
            let range = format!("{LEAST_CORNERS} to {MOST_CORNERS}");
            return Err(D::Error::custom(format!("a polygon has {range} corners; this one has {count}")));
        }
        Ok(Self(corners))
    }
}

impl Serialize for Corners {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut list = serializer.serialize_seq(None)?;
        for corner in &self.0 {
            list.serialize_element(&corner.at)?;
            corner.arc.iter().try_for_each(|arc| list.serialize_element(arc))?;
        }
        list.end()
    }
}

impl JsonSchema for Corners {
    fn schema_name() -> Cow<'static, str> {
        "Corners".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let corner = generator.subschema_for::<[WrittenLength; 2]>();
        let arc = generator.subschema_for::<ArcSpec>();
        json_schema!({
            "description": "Corners in order, each along the bar from the root and across it from the base line; an arc between two of them where the side is round.",
            "type": "array",
            "items": { "anyOf": [corner, arc] },
            "minItems": LEAST_CORNERS,
            "maxItems": 2 * MOST_CORNERS,
        })
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn corners_and_arcs_are_read_and_written_as_they_come() {
        let text = r#"[["0 mm","-4 mm"],["60 mm","-10 mm"],{"arc":"150 deg"},["30 mm","14 mm"],{"arc":"20 deg","bulges":"in"}]"#;
        let corners: Corners = serde_json::from_str(text).unwrap();
        assert_eq!(corners.0.len(), 3);
        assert_eq!(corners.0[2].arc.as_ref().unwrap().bulges, Bulges::In);
        assert_eq!([0, 1, 2].map(|corner| corners.entry_of(corner)), [0, 1, 3]);
        assert_eq!(serde_json::to_string(&corners).unwrap(), text);
    }

    #[test]
    fn an_arc_lies_between_two_corners() {
        let read = |text: &str| serde_json::from_str::<Corners>(text).unwrap_err().to_string();
        assert!(read(r#"[{"arc":"90 deg"},["0 mm","0 mm"]]"#).contains("begins with a corner"));
        let twice = r#"[["0 mm","0 mm"],{"arc":"90 deg"},{"arc":"90 deg"},["1 mm","0 mm"],["0 mm","1 mm"]]"#;
        assert!(read(twice).contains("two arcs follow corner 1"));
        assert!(read(r#"[["0 mm","0 mm"],["1 mm","0 mm"]]"#).contains("this one has 2"));
        assert!(read(r#"[["0 mm","0 mm"],["1 mm","0 mm"],4]"#).contains("a corner [along, across] or an arc"));
    }
}
