//! A size that is measured: one to reach at a step, or one as it came out.

use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A size to reach, cold.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Target {
    /// What is measured.
    pub what: String,
    /// Its size.
    pub size: WrittenLength,
    /// How far it may be off, up or down.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub tolerance: Option<WrittenLength>,
}
