//! A bend as written: what is done to a segment once it is forged.

use fh_measure::{WrittenAngle, WrittenLength, WrittenShare};
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
    /// Into a scroll. Of the form's length, the radii and the turns one is left out.
    Scroll {
        /// The radius to the center line at the eye; 0 only for an even scroll.
        #[serde(
            default,
            skip_serializing_if = "Option::is_none",
            deserialize_with = "fh_measure::zero_allowed::option"
        )]
        inner_radius: Option<WrittenLength>,
        /// The radius to the center line at the open end.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        outer_radius: Option<WrittenLength>,
        /// How many turns it makes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        turns: Option<f64>,
        /// How it opens.
        run: ScrollRun,
        /// At which end of the segment its eye is.
        eye: ScrollEye,
        /// The side it is bent toward.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<WrittenAngle>,
    },
    /// A flag rolled to a socket or a knuckle. Of the mandrel and the flag's size that is rolled up one is left out.
    Socket {
        /// The diameter it is rolled round.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        mandrel: Option<WrittenLength>,
        /// How far round it goes; one turn where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        sweep: Option<WrittenAngle>,
        /// What another part of the piece supplies already, along the middle line; may be 0.
        #[serde(
            default,
            skip_serializing_if = "Option::is_none",
            deserialize_with = "fh_measure::zero_allowed::option"
        )]
        less: Option<WrittenLength>,
        /// Whether its axis lies along the bar or across it.
        axis: SocketAxis,
        /// The side it is bent toward.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<WrittenAngle>,
    },
    /// Turned about its own axis.
    Twist {
        /// How many turns; below 0 the other way round.
        turns: f64,
        /// How much shorter it gets while it is twisted; none where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        shortening: Option<WrittenShare>,
    },
}

/// How a scroll opens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ScrollRun {
    /// By the same distance each turn (Archimedes).
    Even,
    /// By the same share each turn (logarithmic).
    Opening,
}

impl ScrollRun {
    /// Every run, in the order they are offered.
    pub const ALL: [Self; 2] = [Self::Even, Self::Opening];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Even => "even",
            Self::Opening => "opening",
        }
    }
}

/// At which end of its segment a scroll has its eye.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ScrollEye {
    /// Toward the datum end.
    Start,
    /// Away from the datum end.
    End,
}

impl ScrollEye {
    /// Every end, in the order they are offered.
    pub const ALL: [Self; 2] = [Self::Start, Self::End];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::End => "end",
        }
    }
}

/// How the axis of a socket lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SocketAxis {
    /// Along the bar: the flag's width is rolled up.
    Along,
    /// Across the bar: the flag's length is rolled up.
    Across,
}

impl SocketAxis {
    /// Every way, in the order they are offered.
    pub const ALL: [Self; 2] = [Self::Along, Self::Across];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Along => "along the bar",
            Self::Across => "across the bar",
        }
    }
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
    /// See [`Bend::Scroll`].
    Scroll,
    /// See [`Bend::Socket`].
    Socket,
    /// See [`Bend::Twist`].
    Twist,
}

impl BendKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 6] = [Self::Curve, Self::Ring, Self::Corner, Self::Scroll, Self::Socket, Self::Twist];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Curve => "curve",
            Self::Ring => "ring",
            Self::Corner => "corner",
            Self::Scroll => "scroll",
            Self::Socket => "socket",
            Self::Twist => "twist",
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
            Self::Scroll { .. } => BendKind::Scroll,
            Self::Socket { .. } => BendKind::Socket,
            Self::Twist { .. } => BendKind::Twist,
        }
    }

    /// The side it is bent toward, in radians around the bar from up by way of toward-you.
    pub fn side_radians(&self) -> f64 {
        self.side().map_or(0.0, WrittenAngle::radians)
    }

    /// The side it is bent toward, as written; a twist has none.
    pub fn side(&self) -> Option<&WrittenAngle> {
        match self {
            Self::Curve { side, .. }
            | Self::Ring { side, .. }
            | Self::Corner { side, .. }
            | Self::Scroll { side, .. }
            | Self::Socket { side, .. } => side.as_ref(),
            Self::Twist { .. } => None,
        }
    }
}
