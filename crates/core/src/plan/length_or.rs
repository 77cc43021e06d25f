//! A value that is one length in quotes, or a group of keys.

use fh_measure::WrittenLength;
use serde::de::value::MapAccessDeserializer;
use serde::de::{Error, IntoDeserializer, MapAccess, Visitor};
use serde::{Deserialize, Deserializer};
use std::fmt;
use std::marker::PhantomData;

/// One length, or a group.
pub(super) enum LengthOr<Group> {
    /// A length in quotes.
    Length(WrittenLength),
    /// A group of keys.
    Group(Group),
}

/// Reads either. An untagged enum would lose the place of a mistake inside the group.
pub(super) fn deserialize<'de, D, Group>(deserializer: D) -> Result<LengthOr<Group>, D::Error>
where
    D: Deserializer<'de>,
    Group: Deserialize<'de>,
{
    deserializer.deserialize_any(Either(PhantomData))
}

struct Either<Group>(PhantomData<Group>);

impl<Group> Either<Group> {
    /// Hands a text or a bare number to the length, which says in its own words what it makes of it.
    fn length<'de, V, E>(value: V) -> Result<LengthOr<Group>, E>
    where
        V: IntoDeserializer<'de, E>,
        E: Error,
    {
        WrittenLength::deserialize(value.into_deserializer()).map(LengthOr::Length)
    }
}

impl<'de, Group: Deserialize<'de>> Visitor<'de> for Either<Group> {
    type Value = LengthOr<Group>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a length in quotes, or its sizes in { }")
    }

    fn visit_str<E: Error>(self, value: &str) -> Result<Self::Value, E> {
        Self::length(value)
    }

    fn visit_u64<E: Error>(self, value: u64) -> Result<Self::Value, E> {
        Self::length(value)
    }

    fn visit_i64<E: Error>(self, value: i64) -> Result<Self::Value, E> {
        Self::length(value)
    }

    fn visit_f64<E: Error>(self, value: f64) -> Result<Self::Value, E> {
        Self::length(value)
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
        Group::deserialize(MapAccessDeserializer::new(map)).map(LengthOr::Group)
    }
}
