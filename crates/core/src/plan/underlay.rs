//! A sketch, a photograph or a scan that lies under the piece to be traced.

use fh_measure::{WrittenLength, WrittenShare};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A picture under the piece, scaled by two points of a known distance.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Underlay {
    /// The picture's file, PNG or JPEG; a relative path starts from the plan's folder.
    pub file: String,
    /// The view that it lies in.
    pub view: UnderlayView,
    /// The first of the two points: shares of the picture's width and height, from its top left corner.
    pub from: [f64; 2],
    /// The second of the two points.
    pub to: [f64; 2],
    /// How far the two points lie apart on the piece.
    pub distance: WrittenLength,
    /// Where the first point lies in the view: to the right and up from where the piece begins; there where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<Place>,
    /// How strongly it is shown; half where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strength: Option<WrittenShare>,
}

/// A place in a view, to the right and up; either may be 0 or below.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// To the right.
    #[serde(deserialize_with = "fh_measure::signed::deserialize")]
    pub right: WrittenLength,
    /// Up.
    #[serde(deserialize_with = "fh_measure::signed::deserialize")]
    pub up: WrittenLength,
}

/// The standard view that a picture lies in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum UnderlayView {
    /// As the smith sees the bar.
    Front,
    /// From the far end of the bar.
    Side,
    /// From above.
    Top,
}

impl UnderlayView {
    /// Every view, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Front, Self::Side, Self::Top];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Side => "side",
            Self::Top => "top",
        }
    }
}

impl Underlay {
    /// How many mm the picture's own unit stands for, where a picture so wide and high has its two points apart.
    pub fn mm_per_pixel(&self, [width, height]: [f64; 2]) -> Option<f64> {
        let apart = ((self.to[0] - self.from[0]) * width).hypot((self.to[1] - self.from[1]) * height);
        (apart > 0.0).then(|| self.distance.mm() / apart)
    }
}
