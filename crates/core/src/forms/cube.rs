//! Cube: a finial necked off and squared.

use super::forging::Block;
use super::one::{About, OneForm};
use super::pen::Pen;
use super::surroundings::Surroundings;
use crate::metal::{Shape, in_mm};
use crate::plan::{Gives, Looking, Operation, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A finial necked off and squared to a cube.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Cube {
    /// Its side.
    pub side: WrittenLength,
}

impl Cube {
    pub(crate) const ABOUT: About = About { name: "cube", summary: "A finial necked off and squared." };
}

impl OneForm for Cube {
    fn words(&self, _drawn: &str) -> String {
        format!("cube {}", self.side.text())
    }

    fn sizes(&self, visit: Looking<'_>) {
        visit(SizeName::Side, &self.side);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        visit(SizeName::Side, &mut self.side);
    }

    fn draft(&self, _around: Surroundings) -> (Shape, bool) {
        (Shape::Cube { side: self.side.length() }, true)
    }

    fn rewrite(&mut self, _gives: Gives, shape: &Shape, pen: Pen) -> Option<()> {
        self.side = pen.write(shape.length())?;
        Some(())
    }

    fn length(&self) -> Option<&WrittenLength> {
        Some(&self.side)
    }

    fn given_name(&self, _gives: Gives) -> Option<SizeName> {
        Some(SizeName::Side)
    }

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        block.finial(in_mm(block.shape.length()))
    }
}
