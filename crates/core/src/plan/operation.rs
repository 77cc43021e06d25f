//! Operations: what is done to a part in one step.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What is done to a part in one step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Operation {
    /// Lay the marks off and punch them in.
    Mark,
    /// Set one side or all sides down at a mark.
    SetDown,
    /// Neck the bar at both ends of a block, so that the block can be forged on its own.
    Isolate,
    /// Draw to an even section, or to a finial.
    Draw,
    /// Draw to a taper.
    Taper,
    /// Make thicker and shorter.
    Upset,
    /// Make wider and thinner.
    Spread,
    /// Flatten a boss.
    Flatten,
    /// Cut along the bar.
    Split,
    /// Punch or slit a hole.
    Punch,
    /// Open a slit to its hole.
    Drift,
    /// Drill a hole.
    Drill,
    /// Dress a length in a die: a V-block, a swage, a fuller.
    Dress,
    /// Open a slit that is closed at both ends.
    Open,
    /// Bend round.
    Bend,
    /// Bend branches apart, so that each can be reached.
    BendAside,
    /// Bend and upset to a sharp corner.
    Corner,
    /// Roll to a socket or a knuckle.
    Roll,
    /// Twist.
    Twist,
    /// Upset and scarf an end that is to be welded.
    Scarf,
    /// Weld in the fire.
    Weld,
    /// Cut off what is too much.
    Trim,
    /// Cut off from the bar.
    PartOff,
    /// Make straight.
    Straighten,
    /// Heat evenly and let cool in still air, so that the grain is fine again.
    Normalise,
    /// Take the sharpness off the edges.
    DressEdges,
    /// Stamp, or lay off marks on what is forged.
    Stamp,
    /// Brush the scale off.
    Brush,
    /// Wax, oil or paint.
    Wax,
    /// Put together at a joint.
    Fit,
    /// Check against the plan.
    Check,
    /// One of the smith's own; it is in the step's words.
    Own,
}

impl Operation {
    /// Every operation, in the order they are offered.
    pub const ALL: [Self; 32] = [
        Self::Mark,
        Self::SetDown,
        Self::Isolate,
        Self::Draw,
        Self::Taper,
        Self::Upset,
        Self::Spread,
        Self::Flatten,
        Self::Split,
        Self::Punch,
        Self::Drift,
        Self::Drill,
        Self::Dress,
        Self::Open,
        Self::Bend,
        Self::BendAside,
        Self::Corner,
        Self::Roll,
        Self::Twist,
        Self::Scarf,
        Self::Weld,
        Self::Trim,
        Self::PartOff,
        Self::Straighten,
        Self::Normalise,
        Self::DressEdges,
        Self::Stamp,
        Self::Brush,
        Self::Wax,
        Self::Fit,
        Self::Check,
        Self::Own,
    ];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Mark => "mark",
            Self::SetDown => "set down",
            Self::Isolate => "neck off",
            Self::Draw => "draw",
            Self::Taper => "taper",
            Self::Upset => "upset",
            Self::Spread => "spread",
            Self::Flatten => "flatten",
            Self::Split => "split",
            Self::Punch => "punch",
            Self::Drift => "drift",
            Self::Drill => "drill",
            Self::Dress => "dress in a die",
            Self::Open => "open",
            Self::Bend => "bend",
            Self::BendAside => "bend aside",
            Self::Corner => "corner",
            Self::Roll => "roll",
            Self::Twist => "twist",
            Self::Scarf => "scarf",
            Self::Weld => "weld",
            Self::Trim => "trim",
            Self::PartOff => "cut off",
            Self::Straighten => "straighten",
            Self::Normalise => "normalise",
            Self::DressEdges => "dress edges",
            Self::Stamp => "stamp",
            Self::Brush => "brush",
            Self::Wax => "wax",
            Self::Fit => "fit",
            Self::Check => "check",
            Self::Own => "own",
        }
    }

    /// Whether it is done hot.
    pub fn is_hot(self) -> bool {
        !matches!(
            self,
            Self::Mark | Self::Drill | Self::Stamp | Self::Brush | Self::Wax | Self::Fit | Self::Check | Self::Own
        )
    }

    /// Whether it gives a part its forged shape.
    pub fn is_shaping(self) -> bool {
        matches!(self, Self::Draw | Self::Taper | Self::Upset | Self::Spread | Self::Flatten | Self::Scarf)
    }

    /// Whether it bends the bar out of its line for good.
    pub fn is_bending(self) -> bool {
        matches!(self, Self::Bend | Self::Corner | Self::Roll | Self::Open)
    }
}
