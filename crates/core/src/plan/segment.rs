//! A segment: one length of the bar and what it becomes.

use super::{Bend, Form, Repeat, SizeName};
use fh_measure::WrittenShare;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Which size of a segment gives when its length of bar is set from outside (a dragged mark, a bar already cut).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Gives {
    /// It gets longer or shorter.
    Length,
    /// It gets wider or narrower.
    Width,
    /// It gets thicker or thinner.
    Thickness,
    /// Its sizes hold; only the bar may change.
    Nothing,
}

impl Gives {
    /// Every choice, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::Length, Self::Width, Self::Thickness, Self::Nothing];

    /// The word for it.
    pub fn name(self) -> &'static str {
        self.size().map_or("nothing", SizeName::words)
    }

    /// The size that gives; none where nothing does.
    pub fn size(self) -> Option<SizeName> {
        match self {
            Self::Length => Some(SizeName::Length),
            Self::Width => Some(SizeName::Width),
            Self::Thickness => Some(SizeName::Thickness),
            Self::Nothing => None,
        }
    }
}

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
    /// Rows of marks at equal steps along it, once it is forged.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub repeats: Vec<Repeat>,
    /// Which of its sizes gives; its length where this is left out and it has one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gives: Option<Gives>,
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
        Self { name: name.to_owned(), form, bend: None, repeats: Vec::new(), gives: None, scale: None, notes: None }
    }

    /// The size that gives, with the default filled in.
    pub fn giving(&self) -> Gives {
        self.gives.unwrap_or(self.form.default_gives())
    }
}
