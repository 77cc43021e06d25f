//! Tenon: a shouldered end to be riveted in a hole.

use super::forging::Block;
use super::one::{About, OneForm};
use super::surroundings::{Surroundings, section_size};
use crate::file::{Checked, KeyPath, SectionPlace, check_section};
use crate::metal::Shape;
use crate::plan::{Gives, Looking, Operation, SectionSpec, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A shouldered end, to be riveted or wedged in a hole.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Tenon {
    /// Its section.
    pub section: SectionSpec,
    /// The thickness of what it goes through.
    pub grip: WrittenLength,
    /// The length that stands out for the head; may be 0.
    #[serde(deserialize_with = "fh_measure::zero_allowed::deserialize")]
    pub allowance: WrittenLength,
}

impl Tenon {
    pub(crate) const ABOUT: About = About { name: "tenon", summary: "A shouldered end to be riveted in a hole." };
}

impl OneForm for Tenon {
    fn words(&self, _drawn: &str) -> String {
        let Self { section, grip, allowance } = self;
        format!("tenon {}, grip {}, head {}", section.describe(), grip.text(), allowance.text())
    }

    fn sizes(&self, visit: Looking<'_>) {
        self.section.sizes(visit);
        visit(SizeName::Grip, &self.grip);
        visit(SizeName::Allowance, &self.allowance);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.section.sizes_mut(visit);
        visit(SizeName::Grip, &mut self.grip);
        visit(SizeName::Allowance, &mut self.allowance);
    }

    fn draft(&self, around: Surroundings) -> (Shape, bool) {
        let length = self.grip.length() + self.allowance.length();
        (Shape::Prism { section: section_size(&self.section, around), length }, true)
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

    fn holds(&self) -> bool {
        true
    }

    fn forging(&self, _block: &Block<'_>) -> Vec<Operation> {
        vec![Operation::SetDown, Operation::Draw]
    }
}
