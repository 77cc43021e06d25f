//! What came out at a step, written down at the desk or at the anvil.

use super::{Operation, Target};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What came out at one step, for one piece.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Logged {
    /// What was done.
    pub operation: Operation,
    /// The bar it was done on, counted from 1; the first where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1))]
    pub bar: Option<u32>,
    /// The segments it was done to, as in the step.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub parts: Vec<String>,
    /// The day, as the smith writes it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub day: Option<String>,
    /// The sizes as they came out, cold.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sizes: Vec<Target>,
    /// How many heats it took.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heats: Option<u32>,
    /// How many minutes of work it took, out of the fire.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<f64>,
    /// How many blows, where they were counted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blows: Option<u32>,
    /// What the piece weighed, in kg: where it is logged at the last check, it tells what the fire took.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kg: Option<f64>,
    /// Free words about it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

impl Logged {
    /// An entry with nothing measured yet.
    pub fn new(operation: Operation, bar: usize, parts: Vec<String>) -> Self {
        let bar = (bar > 0).then_some(bar as u32 + 1);
        Self {
            operation,
            bar,
            parts,
            day: None,
            sizes: Vec::new(),
            heats: None,
            minutes: None,
            blows: None,
            kg: None,
            note: None,
        }
    }

    /// The bar it was done on, counted from 0.
    pub fn bar_index(&self) -> usize {
        self.bar.unwrap_or(1).saturating_sub(1) as usize
    }
}
