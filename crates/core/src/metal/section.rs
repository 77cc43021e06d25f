//! A section across the bar: a convex outline made of straight edges and circular arcs, with exact area and mixed area.
//!
//! The outline is kept as its **corners** in the order of their outward normals. Each corner is an arc of some radius
//! about a center, turned through from one normal to the next; a sharp corner has radius 0. Between two corners runs a
//! straight edge, whose normal is where the one corner ends and the next begins. This is the polygon ⊕ disk of the
//! handbook, and it also holds a half-round exactly.
//!
//! Coordinates: first toward the smith (the width), second up (the thickness), in mm, the middle of the extents at 0.

use super::{mm, mm2};
use std::f64::consts::{PI, TAU};
use uom::si::f64::{Area, Length};

/// The most corners a section has: an octagon's.
const MOST_CORNERS: usize = 8;

/// One corner: an arc about `center` from the normal `start` to the normal `end` (radians, counter-clockwise).
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub(super) struct Corner {
    pub(super) center: [f64; 2],
    pub(super) radius: f64,
    pub(super) start: f64,
    pub(super) end: f64,
}

impl Corner {
    /// The point of the corner whose outward normal is at this angle.
    fn point_at(&self, angle: f64) -> [f64; 2] {
        let (sin, cos) = angle.sin_cos();
        [self.center[0] + self.radius * cos, self.center[1] + self.radius * sin]
    }

    /// Whether a direction is one of its outward normals.
    fn faces(&self, [y, z]: [f64; 2]) -> bool {
        let angle = z.atan2(y);
        [-TAU, 0.0, TAU].iter().any(|turn| (self.start..=self.end).contains(&(angle + turn)))
    }
}

/// The outline of a section. Build it with [`super::SectionSize::section`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    corners: [Corner; MOST_CORNERS],
    len: usize,
}

/// From where the bar is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum View {
    /// From the side, where the smith stands: thickness is seen.
    Side,
    /// From above: width is seen.
    Top,
}

impl Section {
    /// A point.
    pub(super) fn point() -> Self {
        Self::disk(0.0)
    }

    /// A disk of this radius in mm.
    pub(super) fn disk(radius: f64) -> Self {
        Self::from_corners(&[Corner { center: [0.0, 0.0], radius, start: -PI, end: PI }])
    }

    /// A rectangle with its edges eased by a radius, in mm; a line where one size is 0, an oval where the radius is half a side.
    pub(super) fn rectangle(width: f64, thickness: f64, radius: f64) -> Self {
        let (y, z) = (width / 2.0 - radius, thickness / 2.0 - radius);
        let at = |index: usize, center: [f64; 2]| {
            let start = -PI + index as f64 * PI / 2.0;
            Corner { center, radius, start, end: start + PI / 2.0 }
        };
        Self::from_corners(&[at(0, [-y, -z]), at(1, [y, -z]), at(2, [y, z]), at(3, [-y, z])])
    }

    /// A regular polygon by its size across flats in mm, flats up and down.
    pub(super) fn regular(sides: usize, across_flats: f64) -> Self {
        let turn = TAU / sides as f64;
        let reach = across_flats / 2.0 / (turn / 2.0).cos();
        let mut corners = [Corner::default(); MOST_CORNERS];
        for (index, corner) in corners.iter_mut().enumerate().take(sides) {
            let start = -PI / 2.0 + index as f64 * turn;
            let (sin, cos) = (start + turn / 2.0).sin_cos();
            *corner = Corner { center: [reach * cos, reach * sin], radius: 0.0, start, end: start + turn };
        }
        Self { corners, len: sides.min(MOST_CORNERS) }
    }

    /// A square on its corner by its side in mm.
    pub(super) fn diamond(side: f64) -> Self {
        let reach = side / 2.0_f64.sqrt();
        let corner = |index: usize, center| {
            let start = -PI * 0.75 + index as f64 * PI / 2.0;
            Corner { center, radius: 0.0, start, end: start + PI / 2.0 }
        };
        Self::from_corners(&[
            corner(0, [0.0, -reach]),
            corner(1, [reach, 0.0]),
            corner(2, [0.0, reach]),
            corner(3, [-reach, 0.0]),
        ])
    }

    /// A half-round: a flat side down of this width, and an arc of this height over it, in mm.
    pub(super) fn half_round(width: f64, height: f64) -> Self {
        let half = width / 2.0;
        let radius = (half * half + height * height) / (2.0 * height);
        let center = [0.0, height / 2.0 - radius];
        let spread = half.atan2(radius - height);
        let (right, left) = (PI / 2.0 - spread, PI / 2.0 + spread);
        let foot = -height / 2.0;
        Self::from_corners(&[
            Corner { center: [half, foot], radius: 0.0, start: -PI / 2.0, end: right },
            Corner { center, radius, start: right, end: left },
            Corner { center: [-half, foot], radius: 0.0, start: left, end: PI * 1.5 },
        ])
    }

    fn from_corners(list: &[Corner]) -> Self {
        let mut corners = [Corner::default(); MOST_CORNERS];
        for (slot, corner) in corners.iter_mut().zip(list) {
            *slot = *corner;
        }
        Self { corners, len: list.len().min(MOST_CORNERS) }
    }

    pub(super) fn has_arcs(&self) -> bool {
        self.corners().iter().any(|corner| corner.radius > 0.0)
    }

    pub(super) fn corners(&self) -> &[Corner] {
        &self.corners[..self.len]
    }

    /// The straight edges: each outward normal as a unit vector, with the edge's length.
    fn edges(&self) -> impl Iterator<Item = ([f64; 2], f64)> + '_ {
        let corners = self.corners();
        corners.iter().enumerate().filter_map(|(index, corner)| {
            let next = &corners[(index + 1) % corners.len()];
            let (dy, dz) = (next.center[0] - corner.center[0], next.center[1] - corner.center[1]);
            if next.radius == corner.radius {
                let length = dy.hypot(dz);
                return (length > 0.0).then(|| ([dz / length, -dy / length], length));
            }
            // Between arcs of different radii the centers do not lie along the edge.
            let (sin, cos) = corner.end.sin_cos();
            let length = dz * cos - dy * sin;
            (length > 0.0).then_some(([cos, sin], length))
        })
    }

    /// How far the outline reaches in the direction of an angle, in mm from the middle.
    pub(crate) fn reach_mm(&self, angle: f64) -> f64 {
        let (sin, cos) = angle.sin_cos();
        self.reach_toward([cos, sin])
    }

    /// How far the outline reaches along a unit vector, in mm from the middle.
    fn reach_toward(&self, direction: [f64; 2]) -> f64 {
        let along = |[y, z]: [f64; 2]| y * direction[0] + z * direction[1];
        let even = self.corners().iter().all(|corner| corner.radius == self.corners[0].radius);
        let reach = |corner: &Corner| {
            if even || corner.radius == 0.0 || corner.faces(direction) {
                return along(corner.center) + corner.radius;
            }
            // Beyond its ends an arc reaches no further than they do.
            along(corner.point_at(corner.start)).max(along(corner.point_at(corner.end)))
        };
        self.corners().iter().map(reach).fold(f64::NEG_INFINITY, f64::max)
    }

    /// Its size between two parallel faces whose normal is at an angle from toward-you.
    pub fn extent(&self, angle: f64) -> Length {
        mm(self.reach_mm(angle) + self.reach_mm(angle + PI))
    }

    /// Its width over all.
    pub fn width(&self) -> Length {
        self.extent(0.0)
    }

    /// Its thickness over all.
    pub fn thickness(&self) -> Length {
        self.extent(PI / 2.0)
    }

    /// The size that is seen from a side, in mm.
    pub(crate) fn seen_mm(&self, view: View) -> f64 {
        match view {
            View::Side => self.reach_toward([0.0, 1.0]) + self.reach_toward([0.0, -1.0]),
            View::Top => self.reach_toward([1.0, 0.0]) + self.reach_toward([-1.0, 0.0]),
        }
    }

    /// The distance of its farthest point from the middle, in mm.
    pub(crate) fn farthest_mm(&self) -> f64 {
        let reach = |corner: &Corner| corner.center[0].hypot(corner.center[1]) + corner.radius;
        self.corners().iter().map(reach).fold(0.0, f64::max)
    }

    /// Its area.
    pub fn area(&self) -> Area {
        mm2(mixed_area_mm2(self, self))
    }

    /// Its perimeter; of a line, there and back.
    pub fn perimeter(&self) -> Length {
        let straight: f64 = self.edges().map(|(_, length)| length).sum();
        let round: f64 = self.corners().iter().map(|corner| corner.radius * (corner.end - corner.start)).sum();
        mm(straight + round)
    }

    /// Its outline as points in mm, counter-clockwise seen from the datum end; a full turn is cut into `turn_points` steps.
    pub fn outline_mm(&self, turn_points: usize) -> Vec<[f64; 2]> {
        let mut points = Vec::with_capacity(self.len + turn_points);
        for corner in self.corners() {
            let share_of_turn = (corner.end - corner.start) / TAU;
            let steps =
                if corner.radius > 0.0 { (share_of_turn * turn_points as f64).ceil().max(1.0) as usize } else { 0 };
            for step in 0..=steps {
                let share = if steps == 0 { 0.0 } else { step as f64 / steps as f64 };
                points.push(corner.point_at(corner.start + (corner.end - corner.start) * share));
            }
        }
        points
    }
}

/// The mixed area of two sections: what makes every transition between them exact. `M(K, K)` is the area of K.
///
/// `M(K, L) = ½ ∫ h_K dS_L`: K's support function over L's edges and arcs (Minkowski's mixed volume in the plane; see
/// R. Schneider, *Convex Bodies: The Brunn-Minkowski Theory*, §5.1, from memory).
pub fn mixed_area(first: &Section, second: &Section) -> Area {
    mm2(mixed_area_mm2(first, second))
}

pub(super) fn mixed_area_mm2(first: &Section, second: &Section) -> f64 {
    // M is symmetric; a second section without arcs needs no angles at all.
    let (first, second) = if second.has_arcs() && !first.has_arcs() { (second, first) } else { (first, second) };
    let straight: f64 = second.edges().map(|(normal, length)| first.reach_toward(normal) * length).sum();
    let round: f64 = second
        .corners()
        .iter()
        .filter(|corner| corner.radius > 0.0)
        .map(|corner| corner.radius * reach_over(first, corner.start, corner.end))
        .sum();
    0.5 * (straight + round)
}

/// `∫ h(φ) dφ` of a section's support function between two normals: exact, corner by corner.
fn reach_over(section: &Section, from: f64, to: f64) -> f64 {
    if let ([corner], true) = (section.corners(), to - from == TAU) {
        return corner.radius * TAU;
    }
    let mut sum = 0.0;
    for corner in section.corners() {
        for turn in [-TAU, 0.0, TAU] {
            let (start, end) = (from.max(corner.start + turn), to.min(corner.end + turn));
            if end > start {
                let (sin, cos) = (end.sin() - start.sin(), start.cos() - end.cos());
                sum += corner.center[0] * sin + corner.center[1] * cos + corner.radius * (end - start);
            }
        }
    }
    sum
}
