//! A quantity that stands in a file as text in quotes, and keeps that text.

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::borrow::Cow;
use std::fmt;
use std::marker::PhantomData;
use std::ops::Deref;

/// A quantity that is read from text and gives it back.
pub trait Said: Sized {
    /// What it is, in words: `a price`.
    const WHAT: &'static str;
    /// How one is written.
    const EXAMPLE: &'static str;

    /// Reads it.
    ///
    /// # Errors
    /// Where the text is none: what was read, and what would be right.
    fn parse(text: &str) -> Result<Self, String>;

    /// The text as it was typed.
    fn text(&self) -> &str;
}

/// A quantity in a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Written<T>(pub T);

impl<T: Said> Written<T> {
    /// Reads one.
    ///
    /// # Errors
    /// Where the text is none: what was read, and what would be right.
    pub fn parse(text: &str) -> Result<Self, String> {
        T::parse(text).map(Self)
    }
}

impl<T> Deref for Written<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.0
    }
}

impl<T: Said> Serialize for Written<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.0.text())
    }
}

impl<'de, T: Said> Deserialize<'de> for Written<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(Quoted(PhantomData))
    }
}

/// Reads text in quotes, and says in words what is wrong with a bare number.
struct Quoted<T>(PhantomData<T>);

impl<T: Said> Visitor<'_> for Quoted<T> {
    type Value = Written<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} in quotes, for example \"{}\"", T::WHAT, T::EXAMPLE)
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Written<T>, E> {
        Written::parse(text).map_err(E::custom)
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<Written<T>, E> {
        Err(bare::<T, E>(number))
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<Written<T>, E> {
        Err(bare::<T, E>(number))
    }

    fn visit_f64<E: Error>(self, number: f64) -> Result<Written<T>, E> {
        Err(bare::<T, E>(number))
    }
}

fn bare<T: Said, E: Error>(number: impl fmt::Display) -> E {
    let (what, example) = (T::WHAT, T::EXAMPLE);
    E::custom(format_args!(
        "the number {number} was found; {what} stands in quotes with its unit, for example \"{example}\""
    ))
}

impl<T: Said> JsonSchema for Written<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        T::WHAT.into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "examples": [T::EXAMPLE] })
    }
}
