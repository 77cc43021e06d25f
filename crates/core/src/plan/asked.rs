//! A size that the finished piece is asked to have: between two features, or overall.
//!
//! Bars and parts are named by their names; a name that is not there is a finding, not a fault of the file.

use crate::describe::short_name;
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One asked size, taken on the metal, cold.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskedSize {
    /// What the smith calls it.
    #[serde(default)]
    pub name: String,
    /// The name of the bar it is taken on; the first where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bar: Option<String>,
    /// The feature that it is taken from; left out where it is overall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from: Option<Feature>,
    /// The feature that it is taken to; left out where it is overall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<Feature>,
    /// How it is taken from the one to the other; straight across in space where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken: Option<Taken>,
    /// Over all of the bar's metal in a direction, in place of two features.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub overall: Option<Overall>,
    /// The size, with its tolerance where it has one; 0 between two places that are to touch.
    #[serde(deserialize_with = "fh_measure::zero_allowed::deserialize")]
    pub size: WrittenLength,
    /// The name of the part that gives so that the size is kept; it is only checked where this is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kept_by: Option<String>,
}

/// A place on a part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Feature {
    /// The name of the part; it may lie on a branch.
    pub part: String,
    /// Where on it.
    pub at: FeatureAt,
}

/// Where on a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FeatureAt {
    /// The middle of its section where it starts, toward the datum.
    Start,
    /// The middle of its section where it ends.
    End,
    /// The middle of its free end.
    Tip,
    /// Of a bend below half a turn: where its two outside faces meet.
    Apex,
    /// Of a bend below half a turn: where its two inside faces meet.
    Inside,
    /// The middle of its hole, its ring or its eye; else half way along it.
    Middle,
    /// The inside of its hole, ring or eye on the side of the other feature.
    NearInside,
    /// The inside of its hole, ring or eye away from the other feature.
    FarInside,
    /// The outside of its ring or eye on the side of the other feature.
    NearOutside,
    /// The outside of its ring or eye away from the other feature.
    FarOutside,
}

/// How a size is taken between two features.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Taken {
    /// Straight across, wherever the two lie in space.
    #[default]
    InSpace,
    /// Along a part of this name, in the direction in which it starts.
    Along(String),
    /// Along the bar while it is forged and still straight.
    OnStraightBar,
}

/// A size over all of a bar's finished metal.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Overall {
    /// The direction, as it is where the part begins.
    pub direction: Direction,
    /// The name of the part whose direction it is; the bar's at its datum end where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<String>,
}

/// A direction as a part has it where it begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Direction {
    /// Along the bar.
    Along,
    /// Square to it, toward side 0°.
    Up,
    /// Square to it, toward side 90°.
    Across,
}

impl AskedSize {
    /// Its name as it is shown, or its number where it has none.
    pub fn title(&self, index: usize) -> String {
        if self.name.trim().is_empty() { format!("size {}", index + 1) } else { short_name(&self.name) }
    }

    /// Every name of a part in it, to be changed.
    pub(crate) fn parts_mut(&mut self) -> impl Iterator<Item = &mut String> {
        let ends = [self.from.as_mut(), self.to.as_mut()].into_iter().flatten().map(|feature| &mut feature.part);
        let along = match &mut self.taken {
            Some(Taken::Along(part)) => Some(part),
            _ => None,
        };
        let of = self.overall.as_mut().and_then(|overall| overall.of.as_mut());
        ends.chain(along).chain(of).chain(self.kept_by.as_mut())
    }
}

impl Feature {
    /// A place on a part.
    pub fn new(part: &str, at: FeatureAt) -> Self {
        Self { part: part.to_owned(), at }
    }
}

impl FeatureAt {
    /// Every place, in the order they are offered.
    pub const ALL: [Self; 10] = [
        Self::Start,
        Self::End,
        Self::Tip,
        Self::Middle,
        Self::Apex,
        Self::Inside,
        Self::NearInside,
        Self::FarInside,
        Self::NearOutside,
        Self::FarOutside,
    ];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::End => "end",
            Self::Tip => "tip",
            Self::Apex => "outside corner",
            Self::Inside => "inside corner",
            Self::Middle => "middle",
            Self::NearInside => "near inside",
            Self::FarInside => "far inside",
            Self::NearOutside => "near outside",
            Self::FarOutside => "far outside",
        }
    }
}

impl Direction {
    /// Every direction, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Along, Self::Up, Self::Across];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Along => "along",
            Self::Up => "up",
            Self::Across => "across",
        }
    }
}
