//! The sizes of a bend that can be dragged, as they are now.

use crate::balance::SegmentBalance;
use crate::metal::{Bent, Spiral, in_mm};
use crate::plan::{Bend, Segment};
use std::f64::consts::TAU;

/// The sizes of a bend as they are now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BendSizes {
    /// How far it turns, in radians.
    pub angle: f64,
    /// The inside radius in mm; of a scroll the radius to the center line at its open end.
    pub radius: f64,
    /// The center line's length, in mm.
    pub length: f64,
    /// The line of a scroll.
    pub spiral: Option<Spiral>,
    /// The radius of the center line where it starts, in mm.
    pub start_radius: f64,
}

impl BendSizes {
    /// The sizes of a segment's bend; none where it has none that can be dragged, or they are not settled.
    pub fn of(segment: &Segment, balance: &SegmentBalance) -> Option<Self> {
        let length = in_mm(balance.forged_length);
        let mut spiral = None;
        let mut starts_at = None;
        let (angle, radius) = match *balance.bent.as_ref()? {
            Bent::Curve { angle, inside_radius, .. } => (angle, in_mm(inside_radius)),
            Bent::Ring { inside_diameter, sweep, .. } => (sweep, in_mm(inside_diameter) / 2.0),
            Bent::Corner { .. } => match segment.bend.as_ref()? {
                Bend::Corner { angle, inside_radius, .. } => (angle.radians(), inside_radius.mm()),
                _ => return None,
            },
            Bent::Scroll { spiral: line, eye_at_start, .. } => {
                spiral = Some(line);
                starts_at = Some(if eye_at_start { line.inner_mm } else { line.outer_mm });
                (line.turns * TAU, line.outer_mm)
            }
            _ => return None,
        };
        let start_radius = starts_at.unwrap_or(length / angle);
        let is_sound = [angle, radius, length].iter().all(|size| size.is_finite()) && angle > 0.0 && length > 0.0;
        is_sound.then_some(Self { angle, radius, length, spiral, start_radius })
    }

    /// How far the center line lies from the inside face, in mm.
    fn inset(&self) -> f64 {
        self.length / self.angle - self.radius
    }

    /// The angle at which the same length has another inside radius.
    pub(super) fn angle_at(&self, inside_radius: f64) -> f64 {
        self.length / (inside_radius + self.inset()).max(1e-6)
    }

    /// The inside radius at which the same length turns through another angle.
    pub(super) fn radius_at(&self, angle: f64) -> f64 {
        self.length / angle - self.inset()
    }
}
