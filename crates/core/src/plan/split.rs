//! A split as written: its branches, the root of its slit, and how far it is opened.

use super::Segment;
use crate::describe::short_name;
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One branch of a split: a chain of its own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Branch {
    /// What the smith calls it.
    #[serde(default)]
    pub name: String,
    /// The end at which it leaves the bar, while another branch runs on as the bar at both ends.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub free: Option<BranchFree>,
    /// Its segments, from the datum side of the bar.
    #[serde(default)]
    pub segments: Vec<Segment>,
}

/// The end at which a branch leaves the bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum BranchFree {
    /// Toward the datum: its root is where the slit ends.
    Datum,
    /// Away from the datum: its root is where the slit starts.
    Far,
}

impl Branch {
    /// A branch of these segments that ends where the slit does.
    pub fn new(name: &str, segments: Vec<Segment>) -> Self {
        Self { name: name.to_owned(), free: None, segments }
    }

    /// Its name as it is shown, or its number where it has none.
    pub fn title(&self, index: usize) -> String {
        if self.name.trim().is_empty() { format!("branch {}", index + 1) } else { short_name(&self.name) }
    }
}

/// How the end of a slit is kept from cracking.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum RootSpec {
    /// Rounded with a fuller or a file to this radius.
    Radius(WrittenLength),
    /// A hole of this diameter, drilled or punched at the end of the slit before it is cut.
    Hole(WrittenLength),
}

impl RootSpec {
    /// It in words and sizes.
    pub fn describe(&self) -> String {
        match self {
            Self::Radius(radius) => format!("root rounded to {}", radius.text()),
            Self::Hole(diameter) => format!("root hole Ø {}", diameter.text()),
        }
    }
}

/// How a slit that is closed at both ends is opened, to an eye or a basket.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Opening {
    /// From the middle of one branch to the middle of the one across, where it is widest.
    pub width: WrittenLength,
    /// How many turns the branches run round each other, as in a basket; none where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub turns: Option<f64>,
}
