//! The order of work as the smith settled it: steps, and the plain rules by which they are put into heats.

use super::{InBoth, Logged, Operation, Target};
use fh_measure::{WrittenAngle, WrittenLength};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How the work is ordered. What is left out is proposed by the program.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Work {
    /// The rules that heats are reckoned by.
    #[serde(default, skip_serializing_if = "HeatRules::is_default")]
    pub heats: HeatRules,
    /// The smith's own order, one bar after the other or mixed; the program's proposal stands where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub steps: Option<Vec<Step>>,
    /// What came out, step by step.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub log: Vec<Logged>,
}

impl Work {
    /// Whether nothing was settled.
    pub fn is_default(&self) -> bool {
        *self == Self::default()
    }
}

/// What heats are reckoned by: how the bar cools and what the hammer gives, or the smith's own plain figures.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HeatRules {
    /// The length of bar that one heat makes hot enough to work, wherever it is; how far in from its end the fire takes the
    /// bar is [`super::Limits::reach`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone: Option<WrittenLength>,
    /// How many minutes of work one heat gives; reckoned from how the bar cools where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<f64>,
    /// How many cm³ of metal the smith draws to 1/2.72 of its section in a minute; reckoned from the hammer where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pace: Option<f64>,
    /// What strikes; a hand hammer of 1.5 kg where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hammer: Option<HammerSpec>,
    /// The heat at which the bar leaves the fire, in °C; the material's usual one where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fire_celsius: Option<f64>,
    /// The width of the anvil's face.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub anvil: Option<WrittenLength>,
    /// How far a forged size may be off, up or down, where the plan gives no range.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<WrittenLength>,
}

impl HeatRules {
    /// Default of [`HeatRules::zone`]: common practice, no source.
    pub const ZONE: InBoth = InBoth { mm: 150.0, inches: 6.0 };
    /// [`HeatRules::minutes`] where the cooling of a metal is not known: common practice, no source.
    pub const MINUTES: f64 = 1.0;
    /// [`HeatRules::pace`] where the strength of a metal is not known: about 100 blows of a 1 kg hammer a minute, 18 of them for each cm³ drawn to 1/2.72 of
    /// its section; from memory, and known to a factor of two.
    pub const PACE: f64 = 5.5;
    /// Default of [`HeatRules::anvil`]: common practice, no source.
    pub const ANVIL: InBoth = InBoth { mm: 100.0, inches: 4.0 };
    /// Default of [`HeatRules::tolerance`]: common practice, no source.
    pub const TOLERANCE: InBoth = InBoth { mm: 0.5, inches: 1.0 / 32.0 };

    /// Whether nothing was changed.
    pub fn is_default(&self) -> bool {
        *self == Self::default()
    }
}

/// What strikes the bar.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HammerSpec {
    /// How heavy it is, in kg: the head, or the ram of a machine.
    pub kg: f64,
    /// Who or what swings it; the smith's hand where it is left out.
    #[serde(default, skip_serializing_if = "SwungBy::is_hand")]
    pub by: SwungBy,
}

impl Default for HammerSpec {
    /// A hand hammer of 1.5 kg: common practice, no source.
    fn default() -> Self {
        Self { kg: 1.5, by: SwungBy::Hand }
    }
}

/// Who or what swings a hammer.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SwungBy {
    /// The smith.
    #[default]
    Hand,
    /// A striker with a sledge.
    Striker,
    /// A power hammer.
    Power,
}

impl SwungBy {
    /// Every one, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Hand, Self::Striker, Self::Power];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Hand => "by hand",
            Self::Striker => "by a striker",
            Self::Power => "by a power hammer",
        }
    }

    fn is_hand(&self) -> bool {
        *self == Self::Hand
    }
}

/// One step. Every word that is left out is the program's own, and follows the plan's sizes.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// The bar it works on, counted from 1; the first where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1))]
    pub bar: Option<u32>,
    /// What is done, one after the other. None for a step in the smith's own words alone.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub work: Vec<Deed>,
    /// What it is called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub title: Option<String>,
    /// What it is done with.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tool: Option<String>,
    /// Where on the anvil, or beside it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<AnvilPlace>,
    /// The radius of the edge that it is worked over.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub edge: Option<WrittenLength>,
    /// The side of the bar that is up.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub up: Option<WrittenAngle>,
    /// The sizes to reach, cold.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reach: Option<Vec<Target>>,
    /// How the bar is laid, turned and struck.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lay: Option<String>,
    /// What is not to be corrected yet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub leave: Option<String>,
    /// What to check, and with which gauge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub check: Option<String>,
    /// What to beware of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub caution: Option<String>,
    /// Free words about it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// A picture of it: a file beside the plan.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub picture: Option<String>,
    /// Whether it is done hot; as its work and its `heat` ask for where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hot: Option<bool>,
    /// Whether it begins a heat, or is done in the one before, hot in either case; reckoned where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heat: Option<HeatWish>,
    /// How many minutes it takes; reckoned where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<f64>,
    /// What is found about its place in the order, and is so on purpose.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub accepted: Vec<Accepted>,
}

/// A finding about a step that the smith knows of.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Accepted {
    /// The id of the finding, as `parted-too-soon`.
    pub finding: String,
    /// Why it may be so, in the smith's words.
    pub because: String,
}

impl Step {
    /// Why a finding about it may be so; none where the smith has not said it.
    pub fn accepts(&self, finding: &str) -> Option<&str> {
        self.accepted.iter().find(|accepted| accepted.finding == finding).map(|accepted| accepted.because.as_str())
    }

    /// The same step, a finding about it accepted for a reason; no longer where there is none.
    pub fn accepting(mut self, finding: &str, because: Option<&str>) -> Self {
        self.accepted.retain(|accepted| accepted.finding != finding);
        let because = because.map(str::trim).filter(|because| !because.is_empty());
        self.accepted
            .extend(because.map(|because| Accepted { finding: finding.to_owned(), because: because.to_owned() }));
        self
    }

    /// The bar it works on, counted from 0.
    pub fn bar_index(&self) -> usize {
        self.bar.unwrap_or(1).saturating_sub(1) as usize
    }
}

/// One thing that is done to some parts of a bar, or at a joint.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Deed {
    /// What is done.
    pub operation: Operation,
    /// The segments it is done to, as reports write them: `3`, `4.2.1`; the whole bar where it is left out.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub parts: Vec<String>,
    /// The joint it is done at, counted from 1 in the plan's list.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1))]
    pub joint: Option<u32>,
    /// The shape on the way that it makes of its parts, counted from 1; the finished one where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1))]
    pub to: Option<u32>,
}

impl Deed {
    /// A deed on some parts.
    pub fn new(operation: Operation, parts: Vec<String>) -> Self {
        Self { operation, parts, joint: None, to: None }
    }
}

/// Whether a step begins a heat.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum HeatWish {
    /// It begins a heat.
    New,
    /// It is done in the heat of the step before.
    Same,
}

/// Where a step is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum AnvilPlace {
    /// Over the edge on the smith's side.
    NearEdge,
    /// Over the edge away from the smith.
    FarEdge,
    /// On the face.
    Face,
    /// On the horn.
    Horn,
    /// On the soft step between face and horn.
    Step,
    /// On a tool in the hardy hole.
    HardyHole,
    /// In the vice.
    #[serde(alias = "vise")]
    Vice,
    /// On the swage block.
    SwageBlock,
    /// Away from anvil and fire.
    Bench,
}

impl AnvilPlace {
    /// Every place, in the order they are offered.
    pub const ALL: [Self; 9] = [
        Self::NearEdge,
        Self::FarEdge,
        Self::Face,
        Self::Horn,
        Self::Step,
        Self::HardyHole,
        Self::Vice,
        Self::SwageBlock,
        Self::Bench,
    ];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::NearEdge => "near edge",
            Self::FarEdge => "far edge",
            Self::Face => "face",
            Self::Horn => "horn",
            Self::Step => "step of the anvil",
            Self::HardyHole => "hardy hole",
            Self::Vice => "vice",
            Self::SwageBlock => "swage block",
            Self::Bench => "bench",
        }
    }
}
