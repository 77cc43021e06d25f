//! A joint as written: which bars meet, at which of their segments, and how.
//!
//! Bars and segments are named by their names; a name that is not there is a finding, not a fault of the file.

use super::JointSide;
use crate::describe::short_name;
use fh_measure::{WrittenAngle, WrittenLength};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How the members of a joint are held together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum JointKind {
    /// A tenon through a hole, its shoulder on the face.
    Tenon,
    /// Parts with holes, lying on each other, and a rivet through them.
    Rivet,
    /// A collar round a bundle of bars that lie on each other.
    Collar,
    /// A fire weld: the named sides are burnt together.
    Weld,
    /// A pin, a pintle or a hook that goes through an eye and stays loose.
    Hook,
}

impl JointKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 5] = [Self::Tenon, Self::Rivet, Self::Collar, Self::Weld, Self::Hook];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Tenon => "tenon",
            Self::Rivet => "rivet",
            Self::Collar => "collar",
            Self::Weld => "weld",
            Self::Hook => "hook",
        }
    }

    /// One line that tells a smith what it is.
    pub fn summary(self) -> &'static str {
        match self {
            Self::Tenon => "A tenon through a hole, its shoulder on the face.",
            Self::Rivet => "Parts with holes on each other, a rivet through them.",
            Self::Collar => "A collar round bars that lie on each other.",
            Self::Weld => "The named sides fire-welded (US: forge-welded) together.",
            Self::Hook => "A pin or a hook through an eye, left loose.",
        }
    }
}

/// One part that a joint holds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Member {
    /// The name of its bar.
    pub bar: String,
    /// Which of the bar's copies, counted from 1; the first where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1))]
    pub copy: Option<u32>,
    /// The name of its segment; it may lie on a branch.
    pub segment: String,
    /// Where along the forged segment, from its end toward the datum: its middle where it is left out, of a hole the hole's
    /// middle, of a tenon always its shoulder.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub at: Option<WrittenLength>,
    /// The side that faces the other part; up where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<JointSide>,
    /// How far it is turned about the joint's axis; not at all where it is left out. The member that stays has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub turn: Option<WrittenAngle>,
}

impl Member {
    /// A member at the usual place of a segment.
    pub fn new(bar: &str, segment: &str) -> Self {
        Self { bar: bar.to_owned(), copy: None, segment: segment.to_owned(), at: None, side: None, turn: None }
    }

    /// Which of the bar's copies, counted from 1.
    pub fn copy_number(&self) -> u32 {
        self.copy.unwrap_or(1)
    }
}

/// A place where bars of the piece are held together.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Joint {
    /// What the smith calls it.
    #[serde(default)]
    pub name: String,
    /// How it is held together.
    pub kind: JointKind,
    /// The member that stays where it is.
    pub fixed: Member,
    /// The members that are placed by it: at least one. Those that lie on each other follow one another away from the
    /// named side of the member that stays.
    #[schemars(length(min = 1))]
    pub moved: Vec<Member>,
}

impl Joint {
    /// Its members: the one that stays, then those that are placed by it.
    pub fn members(&self) -> impl Iterator<Item = &Member> {
        std::iter::once(&self.fixed).chain(&self.moved)
    }

    /// Its members, to be changed.
    pub fn members_mut(&mut self) -> impl Iterator<Item = &mut Member> {
        std::iter::once(&mut self.fixed).chain(&mut self.moved)
    }

    /// Its name as it is shown, or its number where it has none.
    pub fn title(&self, index: usize) -> String {
        if self.name.trim().is_empty() { format!("joint {}", index + 1) } else { short_name(&self.name) }
    }
}
