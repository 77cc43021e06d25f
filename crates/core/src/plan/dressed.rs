//! A length of a part that is dressed in a die: laid in a V-block, rounded in a swage, or grooved with a fuller.

use super::Lean;
use fh_measure::{WrittenAngle, WrittenLength};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::borrow::Cow;
use std::fmt;

/// A length that is dressed in a die once the part is forged, and before it is bent. Its metal stays in the part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Dressed {
    /// The die.
    pub die: DieSpec,
    /// Where it begins, from the part's end towards the datum, forged; of a groove across the bar its middle. At the part's
    /// start where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub from: Option<WrittenLength>,
    /// How long it is, forged; to the part's end where it is left out. A groove across the bar has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<WrittenLength>,
    /// The side that the die dresses; up where it is left out.
    #[serde(default, skip_serializing_if = "DressedSide::is_up")]
    pub side: DressedSide,
    /// How far the die goes in from where it first touches.
    pub depth: WrittenLength,
    /// At which end of its doubt the share that goes into width is reckoned.
    #[serde(skip)]
    pub(crate) lean: Lean,
}

/// A die, with its whole size.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum DieSpec {
    /// A round nose that sinks a groove.
    Fuller {
        /// The radius of its nose.
        radius: WrittenLength,
        /// Whether the groove runs across the bar; along it where this is left out.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        across: bool,
    },
    /// A hollow that rounds a side.
    Swage {
        /// The radius of its hollow.
        radius: WrittenLength,
    },
    /// A V that gives a side a keel.
    VBlock {
        /// Between its two faces; 90 deg where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        angle: Option<WrittenAngle>,
    },
}

/// The sharpest and the widest V of a block, in degrees.
pub(crate) const V_DEGREES: [f64; 2] = [10.0, 170.0];

/// Which die, without its size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DieKind {
    /// A fuller, its groove along the bar.
    Fuller,
    /// A fuller, its groove across the bar.
    FullerAcross,
    /// A swage.
    Swage,
    /// A V-block.
    VBlock,
}

impl DieKind {
    /// Every die, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::Fuller, Self::FullerAcross, Self::Swage, Self::VBlock];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Fuller => "fuller, along",
            Self::FullerAcross => "fuller, across",
            Self::Swage => "swage",
            Self::VBlock => "V-block",
        }
    }

    /// What it leaves on a side.
    pub fn leaves(self) -> &'static str {
        match self {
            Self::Fuller => "groove",
            Self::FullerAcross => "groove across",
            Self::Swage => "round",
            Self::VBlock => "keel",
        }
    }

    /// Whether the metal that it moves may go sideways: a fuller is open there, swage and V-block hold the bar between their flanks
    /// (common practice, no source).
    pub fn is_open(self) -> bool {
        matches!(self, Self::Fuller | Self::FullerAcross)
    }
}

impl DieSpec {
    /// Which die it is.
    pub fn kind(&self) -> DieKind {
        match self {
            Self::Fuller { across: false, .. } => DieKind::Fuller,
            Self::Fuller { across: true, .. } => DieKind::FullerAcross,
            Self::Swage { .. } => DieKind::Swage,
            Self::VBlock { .. } => DieKind::VBlock,
        }
    }

    /// Its radius; none of a V-block.
    pub fn radius(&self) -> Option<&WrittenLength> {
        match self {
            Self::Fuller { radius, .. } | Self::Swage { radius } => Some(radius),
            Self::VBlock { .. } => None,
        }
    }

    /// Whether an angle can be that of a block's V: what is sharper is a chisel, what is wider a face. A bound of the program.
    pub fn is_v(angle: &WrittenAngle) -> bool {
        (V_DEGREES[0]..=V_DEGREES[1]).contains(&angle.radians().to_degrees())
    }

    /// The same, to be changed.
    pub fn radius_mut(&mut self) -> Option<&mut WrittenLength> {
        match self {
            Self::Fuller { radius, .. } | Self::Swage { radius } => Some(radius),
            Self::VBlock { .. } => None,
        }
    }

    /// The angle between the faces of a V-block, in radians.
    pub fn v_radians(&self) -> Option<f64> {
        match self {
            Self::VBlock { angle } => Some(angle.as_ref().map_or(std::f64::consts::FRAC_PI_2, WrittenAngle::radians)),
            _ => None,
        }
    }
}

impl Dressed {
    /// A length all along a part, on its top.
    pub fn new(die: DieSpec, depth: WrittenLength) -> Self {
        Self { die, from: None, length: None, side: DressedSide::Up, depth, lean: Lean::Likely }
    }

    /// The most lengths of one part: a bound of the program.
    pub const MOST: usize = 50;
}

/// The side that a die dresses. In a file: an angle around the bar (0 up, 90 toward you, 180 down, 270 away), or `"outside"` or
/// `"inside"` of the part's bend, wherever that is bent to.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum DressedSide {
    /// Around the bar, from up by way of toward-you.
    Around(WrittenAngle),
    /// Away from the side that the part is bent to.
    Outside,
    /// The side that the part is bent to.
    Inside,
    /// Up.
    #[default]
    Up,
}

impl DressedSide {
    fn is_up(&self) -> bool {
        *self == Self::Up
    }

    /// It as it is written.
    pub fn text(&self) -> &str {
        match self {
            Self::Around(angle) => angle.text(),
            Self::Outside => "outside",
            Self::Inside => "inside",
            Self::Up => "0 deg",
        }
    }

    /// Around the bar in radians, from up by way of toward-you; `bent_to` is the side that the part is bent to.
    pub fn radians(&self, bent_to: f64) -> f64 {
        match self {
            Self::Around(angle) => angle.radians(),
            Self::Outside => bent_to + std::f64::consts::PI,
            Self::Inside => bent_to,
            Self::Up => 0.0,
        }
    }

    /// Reads a side: `outside`, `inside` or an angle; a bare number is degrees where `bare_is_degrees`.
    ///
    /// # Errors
    /// Where it is neither: what was read, and what would be right.
    pub fn parse(text: &str, bare_is_degrees: bool) -> Result<Self, fh_measure::MeasureError> {
        match text.trim() {
            "outside" => Ok(Self::Outside),
            "inside" => Ok(Self::Inside),
            angle => WrittenAngle::parse(angle, bare_is_degrees).map(Self::Around),
        }
    }
}

impl Serialize for DressedSide {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.text())
    }
}

impl<'de> Deserialize<'de> for DressedSide {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(DressedSideVisitor)
    }
}

struct DressedSideVisitor;

impl Visitor<'_> for DressedSideVisitor {
    type Value = DressedSide;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an angle around the bar, such as \"90 deg\", or \"outside\" or \"inside\" of its bend")
    }

    fn visit_str<E: Error>(self, value: &str) -> Result<DressedSide, E> {
        DressedSide::parse(value, false).map_err(E::custom)
    }
}

impl JsonSchema for DressedSide {
    fn schema_name() -> Cow<'static, str> {
        "DressedSide".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "description": "An angle around the bar (0 up, 90 towards you, 180 down, 270 away), or the outside or inside of the part's bend.",
            "anyOf": [{ "enum": ["outside", "inside"] }, generator.subschema_for::<WrittenAngle>()],
        })
    }
}
