//! A form as written: what the hammer makes of a segment while the bar is still straight.

use super::{Gives, OutlineSpec, SectionSpec, Sides, ThicknessSpec};
use fh_measure::{WrittenLength, WrittenShare};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The form of a segment, with its sizes as written. A length that follows from the bend is left out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Form {
    /// Left as stock.
    Plain {
        /// Its length.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        length: Option<WrittenLength>,
    },
    /// Drawn down to a section, or upset where the section is larger than the stock.
    Drawn {
        /// Its forged length.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        length: Option<WrittenLength>,
        /// Its section.
        section: SectionSpec,
    },
    /// One section running into another, or into a point or an edge.
    Taper {
        /// Its forged length.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        length: Option<WrittenLength>,
        /// Where it starts; as the segment before ends where it is left out (on the first segment: the stock).
        #[serde(default, skip_serializing_if = "Option::is_none")]
        from: Option<SectionSpec>,
        /// Where it ends.
        to: SectionSpec,
        /// How it runs out; straight where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        runout: Option<RunoutSpec>,
    },
    /// An abrupt set-down, or the step up again, with an inside radius.
    Shoulder {
        /// The section after it.
        to: SectionSpec,
        /// The inside radius.
        radius: WrittenLength,
        /// The sides that are set down.
        sides: Sides,
    },
    /// A block isolated to be spread.
    Flag {
        /// Its outline, seen from above.
        outline: OutlineSpec,
        /// Its thickness.
        thickness: ThicknessSpec,
        /// What is trimmed off, as a share of the finished volume.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        trim: Option<WrittenShare>,
    },
    /// Metal left standing on one side for a sharp outside corner; its length follows from the bend `corner`.
    Peak {
        /// The section of the legs that meet in the corner.
        section: SectionSpec,
    },
    /// A finial isolated and rounded to a ball.
    Ball {
        /// Its diameter.
        diameter: WrittenLength,
    },
    /// A finial isolated and squared to a cube.
    Cube {
        /// Its side.
        side: WrittenLength,
    },
    /// Cut off on purpose; not part of the finished piece.
    Trim {
        /// Its length of stock.
        length: WrittenLength,
    },
    /// What the tongs hold, or the rest of the bar; not part of the finished piece.
    Hold {
        /// Its length of stock.
        length: WrittenLength,
    },
}

/// How a taper's change of section runs along its length.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum RunoutSpec {
    /// Evenly.
    Straight,
    /// Eased at both ends.
    Eased,
    /// As a power of the way along: above 1 it keeps its thickness and then falls away; below 1 it falls away at once.
    Power(#[schemars(range(min = 0.1, max = 10.0))] f64),
}

/// The kinds of form, for lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FormKind {
    /// See [`Form::Plain`].
    Plain,
    /// See [`Form::Drawn`].
    Drawn,
    /// See [`Form::Taper`].
    Taper,
    /// See [`Form::Shoulder`].
    Shoulder,
    /// See [`Form::Flag`].
    Flag,
    /// See [`Form::Peak`].
    Peak,
    /// See [`Form::Ball`].
    Ball,
    /// See [`Form::Cube`].
    Cube,
    /// See [`Form::Trim`].
    Trim,
    /// See [`Form::Hold`].
    Hold,
}

impl FormKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 10] = [
        Self::Plain,
        Self::Drawn,
        Self::Taper,
        Self::Shoulder,
        Self::Flag,
        Self::Peak,
        Self::Ball,
        Self::Cube,
        Self::Trim,
        Self::Hold,
    ];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Plain => "plain",
            Self::Drawn => "drawn",
            Self::Taper => "taper",
            Self::Shoulder => "shoulder",
            Self::Flag => "flag",
            Self::Peak => "peak",
            Self::Ball => "ball",
            Self::Cube => "cube",
            Self::Trim => "trim",
            Self::Hold => "hold",
        }
    }

    /// One line that tells a smith what it is.
    pub fn summary(self) -> &'static str {
        match self {
            Self::Plain => "Left as stock.",
            Self::Drawn => "Drawn down to a smaller section, or upset to a larger one.",
            Self::Taper => "One section running into another, a point or an edge.",
            Self::Shoulder => "An abrupt set-down, or the step back up.",
            Self::Flag => "A block isolated, then spread to a leaf or a plate.",
            Self::Peak => "Metal left standing for a sharp outside corner.",
            Self::Ball => "A finial isolated and rounded.",
            Self::Cube => "A finial isolated and squared.",
            Self::Trim => "Cut off on purpose; not in the finished piece.",
            Self::Hold => "What the tongs hold, or the rest of the bar.",
        }
    }
}

impl Form {
    /// Which kind this is.
    pub fn kind(&self) -> FormKind {
        match self {
            Self::Plain { .. } => FormKind::Plain,
            Self::Drawn { .. } => FormKind::Drawn,
            Self::Taper { .. } => FormKind::Taper,
            Self::Shoulder { .. } => FormKind::Shoulder,
            Self::Flag { .. } => FormKind::Flag,
            Self::Peak { .. } => FormKind::Peak,
            Self::Ball { .. } => FormKind::Ball,
            Self::Cube { .. } => FormKind::Cube,
            Self::Trim { .. } => FormKind::Trim,
            Self::Hold { .. } => FormKind::Hold,
        }
    }

    /// The size that gives where the plan does not say: the length, where the form has one.
    pub fn default_gives(&self) -> Gives {
        match self {
            Self::Shoulder { .. } | Self::Peak { .. } => Gives::Nothing,
            _ => Gives::Length,
        }
    }

    /// The length as written, where the form has one of its own and it is given.
    pub fn length(&self) -> Option<&WrittenLength> {
        match self {
            Self::Plain { length } | Self::Drawn { length, .. } | Self::Taper { length, .. } => length.as_ref(),
            Self::Trim { length } | Self::Hold { length } => Some(length),
            Self::Flag { outline, .. } => outline.length(),
            Self::Ball { diameter } => Some(diameter),
            Self::Cube { side } => Some(side),
            Self::Shoulder { .. } | Self::Peak { .. } => None,
        }
    }

    /// Whether the bar stays as it is: its section is not its own, and no scale is reckoned.
    pub fn is_as_stock(&self) -> bool {
        matches!(self, Self::Plain { .. } | Self::Trim { .. } | Self::Hold { .. })
    }

    /// Whether it is metal of the finished piece.
    pub fn is_finished(&self) -> bool {
        !matches!(self, Self::Trim { .. } | Self::Hold { .. })
    }
}
