//! Flag: a block isolated, then spread to a leaf or a plate.

use super::forging::Block;
use super::one::{About, OneForm};
use super::pen::Pen;
use super::surroundings::Surroundings;
use crate::file::{Checked, KeyPath, check_outline};
use crate::metal::{Outline, Shape};
use crate::plan::{Gives, Looking, Operation, OutlineSpec, SizeName, ThicknessSpec, Visiting};
use fh_measure::{WrittenLength, WrittenShare};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A block isolated to be spread.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct Flag {
    /// Its outline, seen from above.
    pub outline: OutlineSpec,
    /// Its thickness.
    pub thickness: ThicknessSpec,
    /// What is trimmed off, as a share of the finished volume.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trim: Option<WrittenShare>,
}

impl Flag {
    pub(crate) const ABOUT: About =
        About { name: "flag", summary: "A block isolated, then spread to a leaf or a plate." };
}

impl OneForm for Flag {
    fn words(&self, _drawn: &str) -> String {
        let trim = self.trim.as_ref().map_or(String::new(), |share| format!(", {} trimmed", share.text()));
        format!("{}, {}{trim}", self.outline.describe(), self.thickness.describe())
    }

    fn sizes(&self, visit: Looking<'_>) {
        self.outline.sizes(visit);
        self.thickness.sizes(visit);
    }

    fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.outline.sizes_mut(visit);
        self.thickness.sizes_mut(visit);
    }

    fn draft(&self, _around: Surroundings) -> (Shape, bool) {
        let (root, tip) = match &self.thickness {
            ThicknessSpec::Even(even) => (even.length(), even.length()),
            ThicknessSpec::Tapered { root, tip } => (root.length(), tip.length()),
        };
        (Shape::Flag { outline: Outline::from(&self.outline), root, tip }, true)
    }

    fn rewrite(&mut self, gives: Gives, shape: &Shape, pen: Pen) -> Option<()> {
        let Shape::Flag { outline, root, tip } = shape else { return None };
        match gives {
            Gives::Thickness => self.thickness = pen.thickness(&self.thickness, *root, *tip)?,
            _ => self.outline = pen.outline(&self.outline, outline)?,
        }
        Some(())
    }

    fn check(&self, _first: bool, at: &KeyPath) -> Checked {
        check_outline(&self.outline, &at.key("outline"))
    }

    fn length(&self) -> Option<&WrittenLength> {
        self.outline.length()
    }

    fn outline(&self) -> Option<&OutlineSpec> {
        Some(&self.outline)
    }

    fn given_name(&self, gives: Gives) -> Option<SizeName> {
        let is_disc = matches!(self.outline, OutlineSpec::Disc { .. });
        if is_disc && gives != Gives::Thickness { Some(SizeName::Diameter) } else { gives.size() }
    }

    fn given_words(&self, name: SizeName) -> String {
        match (name, self.outline.length()) {
            (SizeName::Thickness, _) => self.thickness.describe(),
            (SizeName::Width, _) | (_, None) => self.outline.describe(),
            (_, Some(length)) => length.text().to_owned(),
        }
    }

    fn has_free_end(&self) -> bool {
        true
    }

    fn trimmed_mm3(&self, volume_mm3: f64, _shape: &Shape) -> f64 {
        self.trim.as_ref().map_or(0.0, |share| volume_mm3 * share.ratio())
    }

    fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        let trim = self.trim.is_some().then_some(Operation::Trim);
        // Spreading lengthens: what has to become shorter is upset first.
        let upset = block.is_gathered.then_some(Operation::Upset);
        upset.into_iter().chain([Operation::Isolate, Operation::Spread]).chain(trim).collect()
    }
}
