//! Rivet: a pin with a head made at both ends.

use super::forging::Block;
use super::one::{About, OneForm};
use super::surroundings::Surroundings;
use crate::metal::{SectionSize, Shape};
use crate::plan::{Gives, Looking, Operation, SectionSpec, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A pin with a head made at both ends.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Rivet {
    /// Its diameter.
    pub diameter: WrittenLength,
    /// The thickness of what it goes through.
    pub grip: WrittenLength,
    /// The length that stands out for each head; may be 0.
    #[serde(deserialize_with = "fh_measure::zero_allowed::deserialize")]
    pub allowance: WrittenLength,
}

impl Rivet {
    pub(crate) const ABOUT: About = About { name: "rivet", summary: "A pin with a head made at both ends." };
}

impl OneForm for Rivet {
    fn words(&self, _drawn: &str) -> String {
        let Self { diameter, grip, allowance } = self;
        format!("rivet Ø {}, grip {}, heads {}", diameter.text(), grip.text(), allowance.text())
    }

    fn sizes(&self, visit: Looking<'_>) {
        visit(SizeName::Diameter, &self.diameter);
        visit(SizeName::Grip, &self.grip);
        visit(SizeName::Allowance, &self.allowance);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        visit(SizeName::Diameter, &mut self.diameter);
        visit(SizeName::Grip, &mut self.grip);
        visit(SizeName::Allowance, &mut self.allowance);
    }

    fn draft(&self, _around: Surroundings) -> (Shape, bool) {
        let section = SectionSize::Round { diameter: self.diameter.length() };
        (Shape::Prism { section, length: self.grip.length() + self.allowance.length() * 2.0 }, true)
    }

    fn section_after(&self) -> Option<SectionSpec> {
        Some(SectionSpec::Round(self.diameter.clone()))
    }

    fn default_gives(&self) -> Gives {
        Gives::Nothing
    }

    fn holds(&self) -> bool {
        true
    }

    fn forging(&self, _block: &Block<'_>) -> Vec<Operation> {
        vec![Operation::Upset]
    }
}
