//! Repeats as written: marks at equal steps along a segment, such as chisel lines, dots or tools set side by side.

use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// From where a row of marks is stepped off.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum RepeatFrom {
    /// From the segment's end toward the datum; what is left over lies at its other end.
    #[default]
    Start,
    /// From the segment's end away from the datum; what is left over lies at its start.
    End,
    /// The row is centred; half of what is left over lies at each end.
    Middle,
}

impl RepeatFrom {
    /// Every choice, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Start, Self::End, Self::Middle];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::End => "end",
            Self::Middle => "middle",
        }
    }

    fn is_start(&self) -> bool {
        *self == Self::Start
    }
}

/// One row of marks at equal steps along a segment once it is forged.
///
/// A step, or a tool's width, is how far it is from one to the next. With neither, the count is spread evenly.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Repeat {
    /// What is repeated, in words.
    pub what: String,
    /// From where it is stepped off; from the start where it is left out.
    #[serde(default, skip_serializing_if = "RepeatFrom::is_start")]
    pub from: RepeatFrom,
    /// From one to the next.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<WrittenLength>,
    /// The width of a tool that is set side by side, in place of a step.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<WrittenLength>,
    /// How many; as many as fit where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1, max = 1000))]
    pub count: Option<u32>,
    /// What stays free at each end of the segment; nothing where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "fh_measure::zero_allowed::option")]
    pub margin: Option<WrittenLength>,
}

impl Repeat {
    /// The most marks of one row: a bound of the program, far above what a bar has room for.
    pub const MOST: u32 = 1000;

    /// What is repeated, with a word where nothing is written.
    pub fn what_name(&self) -> &str {
        match self.what.trim() {
            "" => "marks",
            what => what,
        }
    }
}
