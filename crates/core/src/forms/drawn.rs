//! Drawn: drawn down to a section, or upset to a larger one.

use super::forging::Block;
use super::one::{About, OneForm, length_words, prism};
use super::pen::Pen;
use super::surroundings::{Surroundings, section_size};
use crate::file::{Checked, KeyPath, SectionPlace, check_section};
use crate::metal::Shape;
use crate::plan::{Gives, Looking, Operation, SectionSpec, SizeName, Visiting};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Drawn down to a section, or upset where the section is larger than the stock.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Drawn {
    /// Its forged length.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<WrittenLength>,
    /// Its section.
    pub section: SectionSpec,
}

impl Drawn {
    pub(crate) const ABOUT: About =
        About { name: "drawn", summary: "Drawn down to a smaller section, or upset to a larger one." };
}

impl OneForm for Drawn {
    fn words(&self, drawn: &str) -> String {
        format!("{drawn}{} to {}", length_words(self.length()), self.section.describe())
    }

    fn sizes(&self, visit: Looking<'_>) {
        self.length.iter().for_each(|length| visit(SizeName::Length, length));
        self.section.sizes(visit);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.length.iter_mut().for_each(|length| visit(SizeName::Length, length));
        self.section.sizes_mut(visit);
    }

    fn draft(&self, around: Surroundings) -> (Shape, bool) {
        prism(section_size(&self.section, around), self.length())
    }

    fn rewrite(&mut self, gives: Gives, shape: &Shape, pen: Pen) -> Option<()> {
        match (gives, shape) {
            (Gives::Length, _) => self.length = Some(pen.write(shape.length())?),
            (_, Shape::Prism { section, .. }) => self.section = pen.section(*section)?,
            _ => return None,
        }
        Some(())
    }

    fn check(&self, first: bool, at: &KeyPath) -> Checked {
        check_section(&self.section, first, SectionPlace::Along, &at.key("section"))
    }

    fn length(&self) -> Option<&WrittenLength> {
        self.length.as_ref()
    }

    fn length_follows(&self) -> bool {
        self.length.is_none()
    }

    fn section_after(&self) -> Option<SectionSpec> {
        Some(self.section.clone())
    }

    fn sections_mut(&mut self) -> Vec<&mut SectionSpec> {
        vec![&mut self.section]
    }

    fn given_words(&self, name: SizeName) -> String {
        match name {
            SizeName::Width | SizeName::Thickness => self.section.describe(),
            _ => self.length().map_or_else(String::new, |length| length.text().to_owned()),
        }
    }

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        match block.shape {
            Shape::Prism { section, .. } => block.drawn_to(section),
            _ => Vec::new(),
        }
    }
}
