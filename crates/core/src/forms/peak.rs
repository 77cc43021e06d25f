//! Peak: metal left standing for a sharp outside corner.

use super::forging::Block;
use super::one::{About, OneForm};
use super::surroundings::{Surroundings, section_size};
use crate::file::{Checked, KeyPath, SectionPlace, check_section};
use crate::metal::{CornerSize, Shape};
use crate::plan::{Gives, Looking, Operation, SectionSpec, Visiting};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Metal left standing on one side for a sharp outside corner; its length follows from the bend `corner`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Peak {
    /// The section of the legs that meet in the corner.
    pub section: SectionSpec,
}

impl Peak {
    pub(crate) const ABOUT: About = About { name: "peak", summary: "Metal left standing for a sharp outside corner." };
}

impl OneForm for Peak {
    fn words(&self, _drawn: &str) -> String {
        format!("peak on {}", self.section.describe())
    }

    fn sizes(&self, visit: Looking<'_>) {
        self.section.sizes(visit);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.section.sizes_mut(visit);
    }

    fn draft(&self, around: Surroundings) -> (Shape, bool) {
        (Shape::Peak { section: section_size(&self.section, around), corner: CornerSize::default() }, false)
    }

    fn check(&self, first: bool, at: &KeyPath) -> Checked {
        check_section(&self.section, first, SectionPlace::Along, &at.key("section"))
    }

    fn section_after(&self) -> Option<SectionSpec> {
        Some(self.section.clone())
    }

    fn sections_mut(&mut self) -> Vec<&mut SectionSpec> {
        vec![&mut self.section]
    }

    fn default_gives(&self) -> Gives {
        Gives::Nothing
    }

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        match block.shape {
            Shape::Peak { .. } if block.is_more_than_raw(block.mean_mm2()) => vec![Operation::Upset],
            Shape::Peak { .. } => vec![Operation::Isolate, Operation::Draw],
            _ => Vec::new(),
        }
    }
}
