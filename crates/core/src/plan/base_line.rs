//! Where the base line lies that a plate's blank and its outline have in common.

use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How far the base line lies from the edge toward you, of the outline and of the blank; in their middle where it is left out.
/// It is the bar's middle line run on. A polygon's corners are counted from it.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BaseLine {
    /// From the edge of the outline; may be 0.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub outline: Option<WrittenLength>,
    /// From the edge of the blank; may be 0.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub blank: Option<WrittenLength>,
}
