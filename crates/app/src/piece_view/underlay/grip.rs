//! What the hand holds of the picture.

use super::lay::Lay;
use egui::Pos2;
use fh_core::plan::Underlay;

/// What the hand holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum Grip {
    From,
    To,
    Sheet,
}

impl Grip {
    pub(super) const ALL: [Self; 3] = [Self::Sheet, Self::From, Self::To];

    pub(super) fn name(self) -> &'static str {
        match self {
            Self::From => "First point on the picture",
            Self::To => "Second point on the picture",
            Self::Sheet => "Place of the picture",
        }
    }

    /// What is said while it is in hand.
    pub(super) fn words(self) -> &'static str {
        match self {
            Self::From | Self::To => "The picture takes its new scale when you let go. Esc cancels.",
            Self::Sheet => "Lay the picture where it fits the piece. Esc cancels.",
        }
    }

    /// The place on the picture that it stands for.
    pub(super) fn share(self, underlay: &Underlay) -> [f64; 2] {
        match self {
            Self::From => underlay.from,
            Self::To => underlay.to,
            Self::Sheet => [0.5, 0.5],
        }
    }
}

/// A grip in hand. While a point is dragged the picture stays as it lay, so that the point can be put on it.
pub(super) struct Held {
    pub(super) grip: Grip,
    pub(super) begun: Underlay,
    pub(super) lay: Lay,
    pub(super) pressed: Pos2,
    pub(super) sent: Option<Underlay>,
}

/// How the picture lies while one of its points is in hand.
pub(super) fn kept_lay(held: Option<&Held>) -> Option<Lay> {
    held.filter(|held| held.grip != Grip::Sheet).map(|held| held.lay)
}
