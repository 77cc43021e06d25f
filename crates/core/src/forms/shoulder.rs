//! Shoulder: an abrupt set-down, or the step back up.

use super::forging::Block;
use super::one::{About, OneForm};
use super::surroundings::{Surroundings, section_size};
use crate::file::{Checked, KeyPath, SectionPlace, check_section};
use crate::metal::{SectionSize, Shape, mm};
use crate::plan::{Gives, Looking, Operation, SectionSpec, Sides, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// An abrupt set-down, or the step up again, with an inside radius.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Shoulder {
    /// The section after it.
    pub to: SectionSpec,
    /// The inside radius.
    pub radius: WrittenLength,
    /// The sides that are set down.
    pub sides: Sides,
}

impl Shoulder {
    pub(crate) const ABOUT: About = About { name: "shoulder", summary: "An abrupt set-down, or the step back up." };

    /// The section at the foot of the step up from a plate: it is set down before the plate is spread, so that it is as wide as the bar
    /// where only its thickness steps, and as thick where only its width does.
    fn beside_a_plate(&self, plate: SectionSize, to: SectionSize) -> SectionSize {
        let steps = |one: u16, other: u16| self.sides.contains(one) || self.sides.contains(other);
        let [own, beyond] = [plate.extents_mm(), to.extents_mm()];
        let size = |way: usize, steps: bool| mm(if steps { own[way] } else { beyond[way] });
        match [steps(90, 270), steps(0, 180)] {
            [false, true] => SectionSize::flat(size(0, false), size(1, true)),
            [true, false] => SectionSize::flat(size(0, true), size(1, false)),
            _ => plate,
        }
    }
}

impl OneForm for Shoulder {
    fn words(&self, _drawn: &str) -> String {
        format!("shoulder to {}, radius {}", self.to.describe(), self.radius.text())
    }

    fn sizes(&self, visit: Looking<'_>) {
        self.to.sizes(visit);
        visit(SizeName::InsideRadius, &self.radius);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.to.sizes_mut(visit);
        visit(SizeName::InsideRadius, &mut self.radius);
    }

    fn draft(&self, around: Surroundings) -> (Shape, bool) {
        let to = section_size(&self.to, around);
        let radius = self.radius.length();
        let from = if around.after_a_plate { self.beside_a_plate(around.before, to) } else { around.before };
        (Shape::Shoulder { from, to, radius, sides: self.sides.clone() }, true)
    }

    fn check(&self, first: bool, at: &KeyPath) -> Checked {
        check_section(&self.to, first, SectionPlace::Along, &at.key("to"))
    }

    fn section_after(&self) -> Option<SectionSpec> {
        Some(self.to.clone())
    }

    fn sections_mut(&mut self) -> Vec<&mut SectionSpec> {
        vec![&mut self.to]
    }

    fn default_gives(&self) -> Gives {
        Gives::Nothing
    }

    fn forging(&self, _block: &Block<'_>) -> Vec<Operation> {
        vec![Operation::SetDown]
    }
}
