//! A segment: one length of the bar and what it becomes.

use super::{Bend, Dressed, Form, Gives, Repeat, Via};
use fh_measure::{WrittenLength, WrittenShare};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One segment of a bar.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Segment {
    /// What the smith calls it.
    #[serde(default)]
    pub name: String,
    /// Its shape while the bar is still straight.
    pub form: Form,
    /// What is done to it once it is forged.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bend: Option<Bend>,
    /// The shapes that it has on the way, one after the other.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub via: Vec<Via>,
    /// The lengths of it that are dressed in a die once it is forged, one after the other.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub dressed: Vec<Dressed>,
    /// Rows of marks at equal steps along it, once it is forged.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub repeats: Vec<Repeat>,
    /// Which of its sizes gives; its length where this is left out and it has one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gives: Option<Gives>,
    /// Where its end lies on the bar, from the datum end: a mark that the smith fixed. Only on the bar itself, rising along it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ends_at: Option<WrittenLength>,
    /// The share of metal lost to scale here, in place of the bar's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scale: Option<WrittenShare>,
    /// Free words about it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notes: Option<String>,
}

impl Segment {
    /// A segment of a form, with nothing else said.
    pub fn new(name: &str, form: Form) -> Self {
        Self {
            name: name.to_owned(),
            form,
            bend: None,
            via: Vec::new(),
            dressed: Vec::new(),
            repeats: Vec::new(),
            gives: None,
            ends_at: None,
            scale: None,
            notes: None,
        }
    }

    /// The size that gives, with the default filled in.
    pub fn giving(&self) -> Gives {
        self.gives.unwrap_or(self.form.default_gives())
    }
}
