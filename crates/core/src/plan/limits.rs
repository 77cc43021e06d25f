//! The limits that the craft checks hold the plan against. The smith may change each of them in the plan.

use super::PlanUnit;
use fh_measure::{LengthUnit, WrittenLength};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The smith's own limits; what is left out keeps its default.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Limits {
    /// A step may be this many times as deep as its inside radius.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step_to_radius: Option<f64>,
    /// A free length of this many thicknesses is likely to buckle when upset.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub upset_likely: Option<f64>,
    /// A free length of this many thicknesses will buckle when upset in one go.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub upset_sure: Option<f64>,
    /// An upset that shortens the bar more than this many times asks for stages.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub upset_stage: Option<f64>,
    /// The room a tool needs between two corners or shoulders.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tool_room: Option<WrittenLength>,
    /// The least length to hold after the piece is cut off.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hold: Option<WrittenLength>,
    /// Metal thinner than this burns or cools before what is beside it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thin: Option<WrittenLength>,
    /// How many times its length the edge of a twist may be stretched to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub twist_stretch: Option<f64>,
    /// The most play of a tenon, a rivet or a bundle in what holds it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub play: Option<WrittenLength>,
    /// How far in from its end the fire takes a bar; how much of it one heat makes hot is [`super::HeatRules::zone`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reach: Option<WrittenLength>,
}

/// A rule of thumb in the round numbers of both units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InBoth {
    /// In a plan of millimetres.
    pub mm: f64,
    /// In a plan of inches.
    pub inches: f64,
}

impl InBoth {
    /// The rule in mm, for a plan in this unit.
    pub fn in_unit(self, unit: PlanUnit) -> f64 {
        match unit {
            PlanUnit::Millimeter => self.mm,
            PlanUnit::Inch => self.inches * LengthUnit::Inch.mm(),
        }
    }
}

impl Limits {
    /// Default of [`Limits::step_to_radius`]: common practice, no source.
    pub const STEP_TO_RADIUS: f64 = 3.0;
    /// Default of [`Limits::upset_likely`]: common practice, no source.
    pub const UPSET_LIKELY: f64 = 2.5;
    /// Default of [`Limits::upset_sure`]: Forging Industry Association, design rules for upset forgings, rule 1.
    pub const UPSET_SURE: f64 = 3.0;
    /// Default of [`Limits::upset_stage`]: common practice, no source.
    pub const UPSET_STAGE: f64 = 3.0;
    /// Default of [`Limits::tool_room`]: common practice, no source.
    pub const TOOL_ROOM: InBoth = InBoth { mm: 25.0, inches: 1.0 };
    /// Default of [`Limits::hold`]: common practice, no source.
    pub const HOLD: InBoth = InBoth { mm: 100.0, inches: 4.0 };
    /// Default of [`Limits::thin`]: common practice, no source.
    pub const THIN: InBoth = InBoth { mm: 3.0, inches: 0.125 };
    /// Default of [`Limits::twist_stretch`]: common practice, no source; a turn and a half in 3 in of 1/2 in square, which
    /// is called tight, comes to 1.49.
    pub const TWIST_STRETCH: f64 = 1.5;
    /// Default of [`Limits::play`]: common practice, no source.
    pub const PLAY: InBoth = InBoth { mm: 1.0, inches: 1.0 / 32.0 };
    /// Default of [`Limits::reach`]: common practice, no source.
    pub const REACH: InBoth = InBoth { mm: 300.0, inches: 12.0 };

    /// Whether nothing was changed.
    pub fn is_default(&self) -> bool {
        *self == Self::default()
    }
}
