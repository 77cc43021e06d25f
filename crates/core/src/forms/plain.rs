//! Plain: left as stock.

use super::one::{About, OneForm, length_words, prism};
use super::pen::Pen;
use super::surroundings::Surroundings;
use crate::metal::Shape;
use crate::plan::{Gives, Looking, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Left as stock.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Plain {
    /// Its length.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<WrittenLength>,
}

impl Plain {
    pub(crate) const ABOUT: About = About { name: "plain", summary: "Left as stock." };
}

impl OneForm for Plain {
    fn words(&self, _drawn: &str) -> String {
        format!("plain{}", length_words(self.length()))
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

    fn length_follows(&self) -> bool {
        self.length.is_none()
    }

    fn is_as_stock(&self) -> bool {
        true
    }
}
