//! How a taper runs out, as written.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How a taper's change of section runs along its length.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum RunoutSpec {
    /// Evenly.
    Straight,
    /// Eased at both ends.
    Eased,
    /// As a power of the way along: above 1 it keeps its thickness and then falls away; below 1 it falls away at once.
    Power(#[schemars(range(min = 0.1, max = 10.0))] f64),
}
