//! Which size of a bend is in hand.

use crate::plan::{Bend, SizeName};

/// Which size of a bend is in hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Knob {
    /// How far it turns.
    Angle,
    /// Its inside radius; of a scroll the radius of its open end.
    Radius,
}

impl Knob {
    /// The size of a bend that it changes: what the hand sees, be it written or not.
    pub fn size(self, bend: &Bend) -> SizeName {
        match (bend, self) {
            (Bend::Scroll { .. }, Self::Angle) => SizeName::Turns,
            (Bend::Scroll { .. }, Self::Radius) => SizeName::OuterRadius,
            (_, Self::Angle) => SizeName::Angle,
            (Bend::Ring { .. }, Self::Radius) => SizeName::InsideDiameter,
            (_, Self::Radius) => SizeName::InsideRadius,
        }
    }
}
