//! A hole in a plate as written: its shape, how it is made, and where it lies.

use super::{HoleSpec, Looking, Made, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A hole through the thickness of a flag.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PlateHole {
    /// Its shape and size.
    pub hole: HoleSpec,
    /// How it is made.
    pub made: Made,
    /// The diameter of the slug that a punch drives out, through the full thickness; the hole itself where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slug: Option<WrittenLength>,
    /// Where its middle lies, along the bar from the plate's root.
    pub at: WrittenLength,
    /// Where its middle lies across the bar, away from you counted from the base line; may be below 0. On the base line where it
    /// is left out.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::signed::option")]
    pub across: Option<WrittenLength>,
}

/// The most holes that a plate may have. Whether they run into each other takes every pair of them.
pub const MOST_HOLES: usize = 50;

impl PlateHole {
    /// It in words and sizes, without its place: `Ø 5 mm, drilled`.
    pub fn describe(&self) -> String {
        format!("{}, {}", self.hole.describe(), self.made.name())
    }

    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        self.hole.sizes(visit);
        self.slug.iter().for_each(|slug| visit(SizeName::Slug, slug));
        visit(SizeName::MiddleOfHole, &self.at);
        self.across.iter().for_each(|across| visit(SizeName::HoleAcross, across));
    }

    pub(crate) fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.hole.sizes_mut(visit);
        self.slug.iter_mut().for_each(|slug| visit(SizeName::Slug, slug));
        visit(SizeName::MiddleOfHole, &mut self.at);
        self.across.iter_mut().for_each(|across| visit(SizeName::HoleAcross, across));
    }
}

/// Holes in words, alike ones together: `2 holes Ø 5 mm, drilled`.
pub(crate) fn holes_words(holes: &[PlateHole]) -> String {
    let mut groups: Vec<(String, usize)> = Vec::new();
    for words in holes.iter().map(PlateHole::describe) {
        match groups.iter_mut().find(|(known, _)| *known == words) {
            Some((_, count)) => *count += 1,
            None => groups.push((words, 1)),
        }
    }
    let group = |(words, count): &(String, usize)| match count {
        1 => format!("hole {words}"),
        count => format!("{count} holes {words}"),
    };
    groups.iter().map(group).collect::<Vec<_>>().join("; ")
}
