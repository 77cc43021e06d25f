//! Collar: a strip wrapped round a bundle of bars.

use super::forging::Block;
use super::one::{About, OneForm};
use super::surroundings::{Surroundings, section_size};
use crate::file::{Checked, KeyPath, SectionPlace, check_section};
use crate::metal::{Shape, View, mm};
use crate::plan::{CollarRule, Gives, Looking, Operation, SectionSpec, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A strip wrapped round a bundle of bars; its length follows from the bundle by the collar rule.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Collar {
    /// The section of the strip: its width lies along the bundle.
    pub section: SectionSpec,
    /// The size of the bundle from side to side.
    pub width: WrittenLength,
    /// The size of the bundle from top to bottom.
    pub height: WrittenLength,
    /// How its length is reckoned; the plan's own rule where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rule: Option<CollarRule>,
}

impl Collar {
    pub(crate) const ABOUT: About = About { name: "collar", summary: "A strip wrapped round a bundle of bars." };
}

impl OneForm for Collar {
    fn words(&self, _drawn: &str) -> String {
        let Self { section, width, height, .. } = self;
        format!("collar of {} round {} × {}", section.describe(), width.text(), height.text())
    }

    fn sizes(&self, visit: Looking<'_>) {
        self.section.sizes(visit);
        visit(SizeName::BundleWidth, &self.width);
        visit(SizeName::BundleHeight, &self.height);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.section.sizes_mut(visit);
        visit(SizeName::BundleWidth, &mut self.width);
        visit(SizeName::BundleHeight, &mut self.height);
    }

    fn draft(&self, around: Surroundings) -> (Shape, bool) {
        let section = section_size(&self.section, around);
        let thickness = mm(section.seen_mm(View::Side));
        let perimeter = (self.width.length() + self.height.length()) * 2.0;
        let length = perimeter + thickness * self.rule.unwrap_or(around.collar).thicknesses();
        (Shape::Prism { section, length }, true)
    }

    fn check(&self, first: bool, at: &KeyPath) -> Checked {
        check_section(&self.section, first, SectionPlace::Along, &at.key("section"))
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

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        match block.shape {
            Shape::Prism { section, .. } => block.drawn_to(section),
            _ => Vec::new(),
        }
    }
}
