//! A section that is struck down one way and left as it grows the other.

use super::SectionSpec;
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A flat of which one size is struck to and the other is what it grows to. One of thickness and width is given.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(inline, description = "")]
pub struct GrownSpec {
    /// The thickness that it is struck to from top and bottom; its width is what it grows to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<WrittenLength>,
    /// The width that it is struck to from its edges; its thickness is what it grows to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<WrittenLength>,
    /// How long a bite is along the bar: of the tool or the anvil's edge that it is struck with.
    pub bite: WrittenLength,
    /// The section that it is struck from: the stock where it is left out. A section holds a section here.
    #[serde(default = "stock", skip_serializing_if = "is_stock")]
    pub of: Box<SectionSpec>,
    /// At which end of the law's doubt it is reckoned.
    #[serde(skip)]
    pub(crate) lean: Lean,
}

/// How much a section is taken to grow.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Lean {
    /// What it most likely is.
    #[default]
    Likely,
    /// What it is seldom under.
    Least,
    /// What it is seldom over.
    Most,
}

impl GrownSpec {
    /// Struck from the stock to a thickness, its width as it grows.
    pub fn to_thickness(thickness: WrittenLength, bite: WrittenLength) -> Self {
        Self { thickness: Some(thickness), width: None, bite, of: stock(), lean: Lean::Likely }
    }

    /// The size that it is struck to, and whether that is its thickness; none where the plan says neither.
    pub(crate) fn struck(&self) -> Option<(&WrittenLength, bool)> {
        let thickness = self.thickness.as_ref().map(|size| (size, true));
        thickness.or(self.width.as_ref().map(|size| (size, false)))
    }

    /// It in words: `9 mm thick, its width as it grows`.
    pub(crate) fn describe(&self) -> String {
        match self.struck() {
            Some((size, true)) => format!("{} thick, its width as it grows", size.text()),
            Some((size, false)) => format!("{} wide, its thickness as it grows", size.text()),
            None => "as it grows".to_owned(),
        }
    }
}

fn stock() -> Box<SectionSpec> {
    Box::new(SectionSpec::Stock)
}

fn is_stock(of: &SectionSpec) -> bool {
    *of == SectionSpec::Stock
}
