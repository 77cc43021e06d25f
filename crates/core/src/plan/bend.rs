//! A bend as written: what is done to a segment once it is forged.

use fh_measure::{WrittenAngle, WrittenLength};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The bend of a segment. `side` is the side it is bent toward, up where it is left out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Bend {
    /// Through an angle at an inside radius. Of the form's length, the angle and the radius two are given.
    Curve {
        /// How far it turns.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        angle: Option<WrittenAngle>,
        /// The radius of its inside face; may be 0.
        #[serde(
            default,
            skip_serializing_if = "Option::is_none",
            deserialize_with = "fh_measure::zero_allowed::option"
        )]
        inside_radius: Option<WrittenLength>,
        /// The side it is bent toward.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<WrittenAngle>,
    },
    /// Into a ring or an eye. Either the form's length or the diameter is given.
    Ring {
        /// The diameter inside.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        inside_diameter: Option<WrittenLength>,
        /// How far round it goes; one turn where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        sweep: Option<WrittenAngle>,
        /// The side it is bent toward.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<WrittenAngle>,
    },
    /// A corner with a sharp outside, made of a peak.
    Corner {
        /// How far it turns from straight.
        angle: WrittenAngle,
        /// The radius of its inside; may be 0.
        #[serde(deserialize_with = "fh_measure::zero_allowed::deserialize")]
        inside_radius: WrittenLength,
        /// The side it is bent toward.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<WrittenAngle>,
    },
}

/// The kinds of bend, for lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BendKind {
    /// See [`Bend::Curve`].
    Curve,
    /// See [`Bend::Ring`].
    Ring,
    /// See [`Bend::Corner`].
    Corner,
}

impl BendKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Curve, Self::Ring, Self::Corner];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Curve => "curve",
            Self::Ring => "ring",
            Self::Corner => "corner",
        }
    }
}

impl Bend {
    /// Which kind this is.
    pub fn kind(&self) -> BendKind {
        match self {
            Self::Curve { .. } => BendKind::Curve,
            Self::Ring { .. } => BendKind::Ring,
            Self::Corner { .. } => BendKind::Corner,
        }
    }

    /// The side it is bent toward, in radians around the bar from up by way of toward-you.
    pub fn side_radians(&self) -> f64 {
        let (Self::Curve { side, .. } | Self::Ring { side, .. } | Self::Corner { side, .. }) = self;
        side.as_ref().map_or(0.0, WrittenAngle::radians)
    }
}
