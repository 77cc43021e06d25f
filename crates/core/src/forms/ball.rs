//! Ball: a finial necked off and rounded.

use super::forging::Block;
use super::one::{About, OneForm};
use super::pen::Pen;
use super::surroundings::Surroundings;
use crate::metal::{Shape, in_mm};
use crate::plan::{Gives, Looking, Operation, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A finial necked off and rounded to a ball.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Ball {
    /// Its diameter.
    pub diameter: WrittenLength,
}

impl Ball {
    pub(crate) const ABOUT: About = About { name: "ball", summary: "A finial necked off and rounded." };
}

impl OneForm for Ball {
    fn words(&self, _drawn: &str) -> String {
        format!("ball Ø {}", self.diameter.text())
    }

    fn sizes(&self, visit: Looking<'_>) {
        visit(SizeName::Diameter, &self.diameter);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        visit(SizeName::Diameter, &mut self.diameter);
    }

    fn draft(&self, _around: Surroundings) -> (Shape, bool) {
        (Shape::Ball { diameter: self.diameter.length() }, true)
    }

    fn rewrite(&mut self, _gives: Gives, shape: &Shape, pen: Pen) -> Option<()> {
        self.diameter = pen.write(shape.length())?;
        Some(())
    }

    fn length(&self) -> Option<&WrittenLength> {
        Some(&self.diameter)
    }

    fn given_name(&self, _gives: Gives) -> Option<SizeName> {
        Some(SizeName::Diameter)
    }

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        block.finial(in_mm(block.shape.length()))
    }
}
