//! Written quantities in files: strings with a unit. A number without one is refused.

use crate::{LengthRange, MeasureError, Rounding, WrittenAngle, WrittenLength, WrittenShare};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Deserialize, Deserializer, Error, Visitor};
use serde::ser::{Serialize, Serializer};
use std::borrow::Cow;
use std::fmt;

/// Reads a string and parses it; refuses a bare number in words. It is handed to `deserialize_any`, because a reader that
/// is asked for a string refuses a number itself and never says that only the unit is missing.
struct Written<T> {
    what: &'static str,
    example: &'static str,
    parse: fn(&str) -> Result<T, MeasureError>,
}

impl<T> Written<T> {
    fn bare<E: Error>(&self, number: impl fmt::Display) -> E {
        E::custom(format_args!(
            "the number {number} has no unit; write it in quotes with its unit, for example \"{}\"",
            self.example
        ))
    }
}

impl<T> Visitor<'_> for Written<T> {
    type Value = T;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{} in quotes, for example \"{}\"", self.what, self.example)
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<T, E> {
        (self.parse)(text).map_err(E::custom)
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<T, E> {
        Err(self.bare(number))
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<T, E> {
        Err(self.bare(number))
    }

    fn visit_f64<E: Error>(self, number: f64) -> Result<T, E> {
        // Not written out: 1e300 has 301 figures.
        Err(self.bare(format_args!("{number:?}")))
    }
}

fn length_in<'de, D: Deserializer<'de>>(
    deserializer: D,
    parse: fn(&str) -> Result<WrittenLength, MeasureError>,
) -> Result<WrittenLength, D::Error> {
    deserializer.deserialize_any(Written { what: "a length with its unit", example: "82.5 mm", parse })
}

impl<'de> Deserialize<'de> for WrittenLength {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        length_in(deserializer, |text| Self::parse(text, None, LengthRange::AboveZero))
    }
}

impl<'de> Deserialize<'de> for WrittenAngle {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let parse = |text: &str| Self::parse(text, false);
        deserializer.deserialize_any(Written { what: "an angle with its unit", example: "90 deg", parse })
    }
}

impl<'de> Deserialize<'de> for WrittenShare {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let parse = |text: &str| Self::parse(text, false);
        deserializer.deserialize_any(Written { what: "a share in per cent", example: "2 %", parse })
    }
}

impl<'de> Deserialize<'de> for Rounding {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(Written { what: "a rounding", example: "1/16 in", parse: Self::parse })
    }
}

/// For keys whose length may be 0.
pub mod zero_allowed {
    use super::{Deserializer, LengthRange, WrittenLength, length_in};

    /// A length of 0 or more.
    ///
    /// # Errors
    /// Where there is no length, no unit, or a length below 0.
    pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<WrittenLength, D::Error> {
        length_in(deserializer, |text| WrittenLength::parse(text, None, LengthRange::ZeroOrMore))
    }

    /// A length of 0 or more, for a key that may be left out.
    ///
    /// # Errors
    /// As [`deserialize`].
    pub fn option<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<WrittenLength>, D::Error> {
        deserialize(deserializer).map(Some)
    }
}

/// For coordinates, which may lie on either side.
pub mod signed {
    use super::{Deserializer, LengthRange, WrittenLength, length_in};

    /// A length of any sign.
    ///
    /// # Errors
    /// Where there is no length or no unit.
    pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<WrittenLength, D::Error> {
        length_in(deserializer, |text| WrittenLength::parse(text, None, LengthRange::Any))
    }

    /// A length of any sign, for a key that may be left out.
    ///
    /// # Errors
    /// As [`deserialize`].
    pub fn option<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<WrittenLength>, D::Error> {
        deserialize(deserializer).map(Some)
    }
}

macro_rules! as_string {
    ($kind:ty, $name:literal, $description:literal, $($example:literal),+) => {
        impl JsonSchema for $kind {
            fn schema_name() -> Cow<'static, str> {
                $name.into()
            }

            fn inline_schema() -> bool {
                false
            }

            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                json_schema!({ "type": "string", "description": $description, "examples": [$($example),+] })
            }
        }

        impl Serialize for $kind {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.text().as_ref())
            }
        }
    };
}

as_string!(
    WrittenLength,
    "Length",
    "A length as people write it, with its unit. It may be a range, which counts as its middle and has its own ends.",
    "3 1/4 in",
    "1' 2 3/8\"",
    "82.5 mm",
    "12,5 mm",
    "1/4 to 9/32 in",
    "6 ± 0.5 mm",
    "6 +0.5 -0 mm"
);
as_string!(WrittenAngle, "Angle", "An angle with its unit.", "90 deg", "90°", "1.5 rad", "1/4 turn");
as_string!(WrittenShare, "Share", "A share in per cent, from 0 to below 100 %.", "2 %");
as_string!(Rounding, "Rounding", "The step that marks are rounded to.", "1/16 in", "1 mm");
