//! From where the piece is looked at, and what the hand does there.

use std::f64::consts::FRAC_PI_2;

/// The turned view: from the front, a little from the datum end and from above.
const TURNED: [f64; 2] = [-32.0, 22.0];

/// A view with a name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Standard {
    /// Along the bar to the right, up above: as the strips show it from the side.
    Front,
    /// Along the bar, from its far end.
    Side,
    /// From above.
    Top,
    /// From the front, a little from the side and from above.
    Turned,
}

impl Standard {
    pub(crate) const ALL: [Self; 4] = [Self::Front, Self::Side, Self::Top, Self::Turned];

    /// The words for it.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Front => "Seen from you",
            Self::Side => "Seen from the far end",
            Self::Top => "Seen from above",
            Self::Turned => "Turned",
        }
    }

    /// How far round and how far up it is looked from, in radians.
    pub(crate) fn angles(self) -> [f64; 2] {
        match self {
            Self::Front => [0.0, 0.0],
            Self::Side => [FRAC_PI_2, 0.0],
            Self::Top => [0.0, FRAC_PI_2],
            Self::Turned => TURNED.map(f64::to_radians),
        }
    }
}

/// What the buttons show of the view.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct PieceState {
    /// Whether clicks measure.
    pub(crate) measuring: bool,
    /// The named view that is shown.
    pub(crate) standard: Option<Standard>,
    /// Whether the picture under the piece is being laid.
    pub(crate) adjusting: bool,
}
