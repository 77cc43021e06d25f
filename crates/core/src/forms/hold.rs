//! Hold: what the tongs hold, or the rest of the bar.

use super::forging::Block;
use super::one::{About, OneForm};
use super::pen::Pen;
use super::surroundings::Surroundings;
use crate::metal::Shape;
use crate::plan::{Gives, Looking, Operation, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What the tongs hold, or the rest of the bar; not part of the finished piece.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Hold {
    /// Its length of stock.
    pub length: WrittenLength,
}

impl Hold {
    pub(crate) const ABOUT: About = About { name: "hold", summary: "What the tongs hold, or the rest of the bar." };
}

impl OneForm for Hold {
    fn words(&self, _drawn: &str) -> String {
        format!("hold {}", self.length.text())
    }

    fn sizes(&self, visit: Looking<'_>) {
        visit(SizeName::Length, &self.length);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        visit(SizeName::Length, &mut self.length);
    }

    fn draft(&self, around: Surroundings) -> (Shape, bool) {
        (Shape::Prism { section: around.stock, length: self.length.length() }, true)
    }

    fn rewrite(&mut self, _gives: Gives, shape: &Shape, pen: Pen) -> Option<()> {
        self.length = pen.write(shape.length())?;
        Some(())
    }

    fn length(&self) -> Option<&WrittenLength> {
        Some(&self.length)
    }

    fn is_as_stock(&self) -> bool {
        true
    }

    fn is_finished(&self) -> bool {
        false
    }

    fn forging(&self, _block: &Block<'_>) -> Vec<Operation> {
        vec![Operation::PartOff]
    }
}
