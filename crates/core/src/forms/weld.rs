//! Weld: metal for the scarf and for what a fire weld wastes.

use super::forging::Block;
use super::one::{About, OneForm};
use super::surroundings::Surroundings;
use crate::metal::Shape;
use crate::plan::{Gives, Looking, Operation, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Metal for the scarf, the upset and the waste of a fire weld.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Weld {
    /// Its length of stock.
    pub allowance: WrittenLength,
}

impl Weld {
    pub(crate) const ABOUT: About =
        About { name: "weld", summary: "Metal for the scarf and for what a fire weld wastes." };
}

impl OneForm for Weld {
    fn words(&self, _drawn: &str) -> String {
        format!("weld, {} for the scarf", self.allowance.text())
    }

    fn sizes(&self, visit: Looking<'_>) {
        visit(SizeName::Allowance, &self.allowance);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        visit(SizeName::Allowance, &mut self.allowance);
    }

    fn draft(&self, around: Surroundings) -> (Shape, bool) {
        (Shape::Prism { section: around.stock, length: self.allowance.length() }, true)
    }

    fn length(&self) -> Option<&WrittenLength> {
        Some(&self.allowance)
    }

    fn default_gives(&self) -> Gives {
        Gives::Nothing
    }

    fn holds(&self) -> bool {
        true
    }

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        if block.can_weld { vec![Operation::Scarf] } else { Vec::new() }
    }
}
