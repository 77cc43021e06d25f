//! How far a segment's surface lies from its center line.

use super::SegmentBalance;
use crate::metal::in_mm;
use std::f64::consts::{FRAC_PI_2, PI};

impl SegmentBalance {
    /// From the center line to the surface on a side, in mm: at a place along the forged segment in mm from its end toward
    /// the datum, the side in radians from up by way of toward-you. 0 where it has no settled shape.
    pub fn reach_mm(&self, at_mm: f64, side: f64) -> f64 {
        let (Some(shape), length) = (&self.shape, in_mm(self.forged_length)) else { return 0.0 };
        let share = if length > 0.0 { (at_mm / length).clamp(0.0, 1.0) } else { 0.0 };
        shape.reach_mm(if self.reversed { 1.0 - share } else { share }, FRAC_PI_2 - side)
    }

    /// Its size at a place between two parallel faces, one of them on a side; see [`Self::reach_mm`].
    pub fn extent_mm(&self, at_mm: f64, side: f64) -> f64 {
        self.reach_mm(at_mm, side) + self.reach_mm(at_mm, side + PI)
    }
}
