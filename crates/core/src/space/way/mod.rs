//! The way that a segment's center line takes, seen from its own start.

mod place;
mod rod;
mod spiral_line;
mod taper_turn;

pub(crate) use rod::{Bow, Rod};
pub(crate) use spiral_line::SpiralLine;
pub(crate) use taper_turn::TaperTurn;

use super::frame::{Frame, of_side};
use place::{Place, arc_place};

/// A center line, and how the section stands on it.
#[derive(Clone, Debug)]
pub struct Way {
    /// How long it is, in mm.
    pub length_mm: f64,
    /// Where it runs.
    pub(crate) course: Course,
    /// How far the section turns about the line, in radians.
    pub twist_radians: f64,
    /// How many times the area of the shape the section has.
    pub swell: f64,
}

/// Where a center line runs.
#[derive(Clone, Debug)]
pub(crate) enum Course {
    /// In one plane.
    Plane {
        /// The curve.
        curve: Curve,
        /// The side it bends toward, in radians from up by way of toward-you.
        side: f64,
        /// Whether the curve is walked from its other end.
        backward: bool,
    },
    /// Along a part of an opened branch, given by shares of its length; seen from the start of the whole.
    Rod {
        /// The whole branch.
        rod: Rod,
        /// From which share of it to which.
        part: [f64; 2],
    },
}

/// A curve in its plane.
#[derive(Clone, Debug)]
pub(crate) enum Curve {
    /// Straight on.
    Line,
    /// At one radius through an angle.
    Arc {
        /// In radians.
        angle: f64,
    },
    /// Round a mandrel where the section changes.
    Taper(TaperTurn),
    /// Winding out from an eye.
    Spiral(SpiralLine),
    /// At one radius between two lengths of it, in mm, and straight before and after.
    Crook {
        /// In radians.
        angle: f64,
        /// Where the bend begins.
        from: f64,
        /// Where it ends.
        to: f64,
    },
}

impl Way {
    /// Straight on, so many mm.
    pub(super) fn straight(length_mm: f64) -> Self {
        Self::bent(length_mm, Curve::Line, 0.0, false)
    }

    /// Along a curve of a length in mm toward a side.
    pub(super) fn bent(length_mm: f64, curve: Curve, side: f64, backward: bool) -> Self {
        Self { length_mm, course: Course::Plane { curve, side, backward }, twist_radians: 0.0, swell: 1.0 }
    }

    /// Whether it neither bends nor twists.
    pub fn is_straight(&self) -> bool {
        matches!(self.course, Course::Plane { curve: Curve::Line, .. }) && self.twist_radians == 0.0
    }

    /// The frame so many mm from its start; beyond its ends it runs straight on.
    pub fn frame_at(&self, along_mm: f64) -> Frame {
        let within = along_mm.clamp(0.0, self.length_mm);
        let frame = self.frame_within(within);
        if within == along_mm { frame } else { frame.moved([along_mm - within, 0.0, 0.0]) }
    }

    /// The frame at its end.
    pub fn end(&self) -> Frame {
        self.frame_within(self.length_mm)
    }

    fn frame_within(&self, length: f64) -> Frame {
        let frame = match &self.course {
            Course::Plane { curve, side, backward } => {
                let place = curve.place_either(length, self.length_mm, *backward);
                let [toward, up] = of_side(*side);
                let [ahead, inside] = place.at;
                Frame::START.moved([ahead, inside * toward, inside * up]).bent(place.heading, *side)
            }
            Course::Rod { rod, part: [from, to] } => rod.frame_at(from + (to - from) * length / self.length_mm),
        };
        if self.twist_radians == 0.0 { frame } else { frame.rolled(self.twist_radians * length / self.length_mm) }
    }

    /// Places along it, in mm, from 0 to its length, so close together that from one to the next it bends and twists no more than
    /// so many radians.
    pub fn stations_mm(&self, most_bend: f64, most_twist: f64) -> Vec<f64> {
        let turning = match &self.course {
            Course::Plane { curve, .. } => curve.angle(),
            Course::Rod { rod, part } => rod.turning() * (part[1] - part[0]),
        };
        let turns = (turning.abs() / most_bend).ceil();
        let twists = (self.twist_radians.abs() / most_twist).ceil();
        let steps = turns.max(twists).clamp(1.0, 1e4) as usize;
        let place = |step: usize| {
            let share = step as f64 / steps as f64;
            match &self.course {
                Course::Plane { curve, backward, .. } => curve.length_at(share, *backward),
                Course::Rod { .. } => share,
            }
        };
        let even = (0..=steps).map(|step| place(step) * self.length_mm);
        match &self.course {
            Course::Plane { curve: Curve::Crook { from, to, .. }, .. } => {
                let bend = (0..=steps).map(|step| from + (to - from) * step as f64 / steps as f64);
                let mut all: Vec<f64> = [0.0, self.length_mm].into_iter().chain(bend).collect();
                all.retain(|at| (0.0..=self.length_mm).contains(at));
                all.sort_by(f64::total_cmp);
                all.dedup();
                all
            }
            _ => even.collect(),
        }
    }
}

impl Curve {
    /// How far it turns in all.
    fn angle(&self) -> f64 {
        match self {
            Self::Line => 0.0,
            Self::Arc { angle } => *angle,
            Self::Taper(taper) => taper.angle(),
            Self::Spiral(spiral) => spiral.angle(),
            Self::Crook { angle, .. } => *angle,
        }
    }

    /// The place after a length of the whole, walked from its start or from its other end.
    fn place_either(&self, length: f64, whole: f64, backward: bool) -> Place {
        if !backward {
            return self.place(length, whole);
        }
        // Walked from its other end a curve still bends toward the same side.
        let (end, here) = (self.place(whole, whole), self.place(whole - length, whole));
        let (sin, cos) = end.heading.sin_cos();
        let back = [end.at[0] - here.at[0], end.at[1] - here.at[1]];
        Place {
            heading: end.heading - here.heading,
            at: [back[0] * cos + back[1] * sin, back[0] * sin - back[1] * cos],
        }
    }

    fn place(&self, length: f64, whole: f64) -> Place {
        match self {
            Self::Line => Place { heading: 0.0, at: [length, 0.0] },
            Self::Arc { angle } => arc_place(length, angle * length / whole),
            Self::Taper(taper) => taper.place(length / whole),
            Self::Spiral(spiral) => spiral.place(length / whole),
            Self::Crook { angle, from, to } => crook_place(length, *angle, [*from, *to]),
        }
    }

    /// The share of its length at a step share that cuts its turning evenly; exact at both ends.
    fn length_at(&self, share: f64, backward: bool) -> f64 {
        let ends = share <= 0.0 || share >= 1.0;
        let forward = |share: f64| match self {
            Self::Line | Self::Arc { .. } => share,
            Self::Taper(taper) => taper.length_at(share),
            Self::Spiral(spiral) => spiral.length_at(share),
            Self::Crook { .. } => share,
        };
        match (ends, backward) {
            (true, _) => share,
            (false, false) => forward(share),
            (false, true) => 1.0 - forward(1.0 - share),
        }
    }
}

/// A place on a line that is bent at one radius between two lengths.
fn crook_place(length: f64, angle: f64, [from, to]: [f64; 2]) -> Place {
    if length <= from || to <= from {
        return Place { heading: 0.0, at: [length, 0.0] };
    }
    let within = length.min(to) - from;
    let bend = arc_place(within, angle * within / (to - from));
    let (sin, cos) = bend.heading.sin_cos();
    let beyond = (length - to).max(0.0);
    Place { heading: bend.heading, at: [from + bend.at[0] + beyond * cos, bend.at[1] + beyond * sin] }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::space::vector::minus;
    use std::f64::consts::PI;

    #[test]
    fn a_curve_walked_from_its_other_end_bends_to_the_same_side() {
        let way = |backward| Way::bent(40.0, Curve::Arc { angle: PI / 3.0 }, 0.7, backward);
        for length in [0.0, 13.0, 40.0] {
            let (forward, backward) = (way(false).frame_at(length), way(true).frame_at(length));
            assert!(minus(forward.at, backward.at).iter().all(|part| part.abs() < 1e-12));
            assert!(minus(forward.along, backward.along).iter().all(|part| part.abs() < 1e-12));
        }
    }
}
