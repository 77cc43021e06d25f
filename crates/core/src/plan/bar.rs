//! A bar: the stock it is cut from and the segments that are forged along it.

use super::{SectionSpec, Segment};
use fh_measure::{WrittenLength, WrittenShare};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::ops::Range;

/// One bar of the plan, from its datum end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Bar {
    /// What the smith calls it.
    #[serde(default)]
    pub name: String,
    /// How many of it are made; one where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1))]
    pub count: Option<u32>,
    /// The section of the starting bar.
    pub stock: SectionSpec,
    /// Which end the marks start from, in words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub datum: Option<String>,
    /// The length of a bar that is already cut.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<WrittenLength>,
    /// The name of the segment whose give makes the sum fit a bar that is already cut.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub takes_up: Option<String>,
    /// The share of metal lost to scale on this bar, in place of the plan's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scale: Option<WrittenShare>,
    /// The segments, from the datum end.
    #[serde(default)]
    pub segments: Vec<Segment>,
}

impl Bar {
    /// A bar of the given stock with nothing on it yet.
    pub fn new(name: &str, stock: SectionSpec) -> Self {
        Self {
            name: name.to_owned(),
            count: None,
            stock,
            datum: None,
            length: None,
            takes_up: None,
            scale: None,
            segments: Vec::new(),
        }
    }

    /// Whether the smith fixed a mark on it.
    pub fn has_fixed_marks(&self) -> bool {
        self.segments.iter().any(|segment| segment.ends_at.is_some())
    }

    /// The places of the segments of each block, in order: a block ends with the segment whose mark is fixed, or with the bar.
    pub fn block_places(&self) -> Vec<Range<usize>> {
        let mut blocks = Vec::new();
        let mut start = 0;
        for (place, segment) in self.segments.iter().enumerate() {
            if segment.ends_at.is_some() {
                blocks.push(start..place + 1);
                start = place + 1;
            }
        }
        if start < self.segments.len() {
            blocks.push(start..self.segments.len());
        }
        blocks
    }

    /// How many of this bar are made.
    pub fn pieces(&self) -> u32 {
        self.count.unwrap_or(1)
    }

    /// Which end the marks start from, in words.
    pub fn datum_name(&self) -> &str {
        self.datum.as_deref().unwrap_or("datum end")
    }
}
