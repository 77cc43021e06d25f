//! Open: a block whose shape is not settled yet.

use super::one::{About, OneForm, length_words, prism};
use super::pen::Pen;
use super::surroundings::Surroundings;
use crate::metal::Shape;
use crate::plan::{Gives, Looking, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A block whose shape is not settled yet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Open {
    /// Its length of stock; what its block leaves, where a fixed mark ends it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<WrittenLength>,
}

impl Open {
    pub(crate) const ABOUT: About = About { name: "open", summary: "A block whose shape is not settled yet." };
}

impl OneForm for Open {
    fn words(&self, _drawn: &str) -> String {
        format!("open{}", length_words(self.length()))
    }

    fn sizes(&self, visit: Looking<'_>) {
        self.length.iter().for_each(|length| visit(SizeName::Length, length));
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.length.iter_mut().for_each(|length| visit(SizeName::Length, length));
    }

    fn draft(&self, around: Surroundings) -> (Shape, bool) {
        prism(around.stock, self.length())
    }

    fn rewrite(&mut self, _gives: Gives, shape: &Shape, pen: Pen) -> Option<()> {
        self.length = Some(pen.write(shape.length())?);
        Some(())
    }

    fn length(&self) -> Option<&WrittenLength> {
        self.length.as_ref()
    }

    fn is_as_stock(&self) -> bool {
        true
    }
}
