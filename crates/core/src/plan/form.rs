//! A form as written: what the hammer makes of a segment while the bar is still straight.

use super::{
    Branch, CollarRule, Gives, HoleSpec, Made, Opening, OutlineSpec, RootSpec, SectionSpec, Sides, ThicknessSpec,
};
use fh_measure::{WrittenAngle, WrittenLength, WrittenShare};
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
    /// A boss with a hole through its thickness.
    Hole {
        /// The outline of the boss.
        outline: OutlineSpec,
        /// Its thickness.
        thickness: WrittenLength,
        /// The hole.
        hole: HoleSpec,
        /// How the hole is made.
        made: Made,
        /// The diameter of the slug that a punch drives out, through the full thickness; the hole itself where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        slug: Option<WrittenLength>,
        /// Where the hole's middle lies, from the boss's root; the middle of the boss where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<WrittenLength>,
    },
    /// A shouldered end, to be riveted or wedged in a hole.
    Tenon {
        /// Its section.
        section: SectionSpec,
        /// The thickness of what it goes through.
        grip: WrittenLength,
        /// The length that stands out for the head; may be 0.
        #[serde(deserialize_with = "fh_measure::zero_allowed::deserialize")]
        allowance: WrittenLength,
    },
    /// A pin with a head made at both ends.
    Rivet {
        /// Its diameter.
        diameter: WrittenLength,
        /// The thickness of what it goes through.
        grip: WrittenLength,
        /// The length that stands out for each head; may be 0.
        #[serde(deserialize_with = "fh_measure::zero_allowed::deserialize")]
        allowance: WrittenLength,
    },
    /// A strip wrapped round a bundle of bars; its length follows from the bundle by the collar rule.
    Collar {
        /// The section of the strip: its width lies along the bundle.
        section: SectionSpec,
        /// The size of the bundle from side to side.
        width: WrittenLength,
        /// The size of the bundle from top to bottom.
        height: WrittenLength,
        /// How its length is reckoned; the plan's own rule where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rule: Option<CollarRule>,
    },
    /// Metal for scarfing, upsetting and burning at a fire weld.
    Weld {
        /// Its length of stock.
        allowance: WrittenLength,
    },
    /// The bar cut along its length; each branch is forged on its own.
    Split {
        /// The branches, from the side named first.
        branches: Vec<Branch>,
        /// The side of the bar on which the first branch lies; away from you where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<WrittenAngle>,
        /// How the end of the slit is kept from cracking.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        root: Option<RootSpec>,
        /// How far a slit that is closed at both ends is opened.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        opening: Option<Opening>,
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
    /// See [`Form::Hole`].
    Hole,
    /// See [`Form::Tenon`].
    Tenon,
    /// See [`Form::Split`].
    Split,
    /// See [`Form::Ball`].
    Ball,
    /// See [`Form::Cube`].
    Cube,
    /// See [`Form::Weld`].
    Weld,
    /// See [`Form::Rivet`].
    Rivet,
    /// See [`Form::Collar`].
    Collar,
    /// See [`Form::Trim`].
    Trim,
    /// See [`Form::Hold`].
    Hold,
}

impl FormKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 16] = [
        Self::Plain,
        Self::Drawn,
        Self::Taper,
        Self::Shoulder,
        Self::Flag,
        Self::Peak,
        Self::Hole,
        Self::Tenon,
        Self::Split,
        Self::Ball,
        Self::Cube,
        Self::Weld,
        Self::Rivet,
        Self::Collar,
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
            Self::Hole => "hole",
            Self::Tenon => "tenon",
            Self::Split => "split",
            Self::Weld => "weld",
            Self::Rivet => "rivet",
            Self::Collar => "collar",
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
            Self::Hole => "A boss with a hole: punched, slit and drifted, or drilled.",
            Self::Tenon => "A shouldered end to be riveted in a hole.",
            Self::Split => "The bar cut along its length; each branch forged on its own.",
            Self::Weld => "Metal for the scarf and for what a fire weld wastes.",
            Self::Rivet => "A pin with a head made at both ends.",
            Self::Collar => "A strip wrapped round a bundle of bars.",
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
            Self::Hole { .. } => FormKind::Hole,
            Self::Tenon { .. } => FormKind::Tenon,
            Self::Split { .. } => FormKind::Split,
            Self::Weld { .. } => FormKind::Weld,
            Self::Rivet { .. } => FormKind::Rivet,
            Self::Collar { .. } => FormKind::Collar,
            Self::Ball { .. } => FormKind::Ball,
            Self::Cube { .. } => FormKind::Cube,
            Self::Trim { .. } => FormKind::Trim,
            Self::Hold { .. } => FormKind::Hold,
        }
    }

    /// The size that gives where the plan does not say: the length, where the form has one.
    pub fn default_gives(&self) -> Gives {
        match self {
            Self::Shoulder { .. }
            | Self::Peak { .. }
            | Self::Tenon { .. }
            | Self::Rivet { .. }
            | Self::Collar { .. }
            | Self::Weld { .. }
            | Self::Split { .. } => Gives::Nothing,
            _ => Gives::Length,
        }
    }

    /// The length as written, where the form has one of its own and it is given.
    pub fn length(&self) -> Option<&WrittenLength> {
        match self {
            Self::Plain { length } | Self::Drawn { length, .. } | Self::Taper { length, .. } => length.as_ref(),
            Self::Trim { length } | Self::Hold { length } => Some(length),
            Self::Flag { outline, .. } | Self::Hole { outline, .. } => outline.length(),
            Self::Ball { diameter } => Some(diameter),
            Self::Cube { side } => Some(side),
            Self::Weld { allowance } => Some(allowance),
            Self::Shoulder { .. }
            | Self::Peak { .. }
            | Self::Tenon { .. }
            | Self::Rivet { .. }
            | Self::Collar { .. }
            | Self::Split { .. } => None,
        }
    }

    /// Whether the bar stays as it is: its section is not its own, and no scale is reckoned.
    pub fn is_as_stock(&self) -> bool {
        matches!(self, Self::Plain { .. } | Self::Trim { .. } | Self::Hold { .. })
    }

    /// The branches of a split; none of any other form.
    pub fn branches(&self) -> &[Branch] {
        match self {
            Self::Split { branches, .. } => branches,
            _ => &[],
        }
    }

    /// Whether it is metal of the finished piece.
    pub fn is_finished(&self) -> bool {
        !matches!(self, Self::Trim { .. } | Self::Hold { .. })
    }
}
