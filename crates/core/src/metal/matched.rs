//! Two sections point by point: where both have the same outward normal, so that the metal runs straight between them.
//!
//! Arcs are cut into steps that keep their area: the polygon through the points has exactly the area of the section, and
//! so has every mixture of the two.

use super::Section;
use super::section::Corner;
use std::f64::consts::{FRAC_PI_2, TAU};

/// Normals closer than this, in radians, are one.
const SAME_NORMAL: f64 = 1e-9;

/// A place on two outlines at which both have the same outward normal: toward the smith and up, in mm from the middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MatchedPoint {
    /// On the first outline.
    pub first: [f64; 2],
    /// On the second outline.
    pub second: [f64; 2],
}

impl MatchedPoint {
    /// The place at a share (0 to 1) of the way from the first to the second.
    pub fn at(&self, share: f64) -> [f64; 2] {
        let mix = |axis: usize| self.first[axis] + (self.second[axis] - self.first[axis]) * share;
        [mix(0), mix(1)]
    }

    /// Whether two are the same place on both outlines.
    fn is_at(&self, other: &Self) -> bool {
        let close = |a: [f64; 2], b: [f64; 2]| (a[0] - b[0]).abs() + (a[1] - b[1]).abs() < 1e-9;
        close(self.first, other.first) && close(self.second, other.second)
    }
}

/// The outlines of two sections as matched points, counter-clockwise seen from the far end; a full turn of an arc is cut
/// into about `turn_points` steps.
pub fn matched_outline(first: &Section, second: &Section, turn_points: usize) -> Vec<MatchedPoint> {
    let normals = normals(first, second);
    let mut points = Vec::with_capacity(normals.len() + turn_points);
    for (index, start) in normals.iter().enumerate() {
        let end = normals.get(index + 1).copied().unwrap_or(normals[0] + TAU);
        span(first, second, [*start, end], turn_points, &mut points);
    }
    while points.len() > 1 && points[points.len() - 1].is_at(&points[0]) {
        points.pop();
    }
    points
}

/// The points between two normals, over which neither outline has an edge.
fn span(first: &Section, second: &Section, [start, end]: [f64; 2], turn_points: usize, points: &mut Vec<MatchedPoint>) {
    let middle = (start + end) / 2.0;
    let corners = [corner_at(first, middle), corner_at(second, middle)];
    let round = corners.iter().any(|corner| corner.radius > 0.0);
    let steps = if round { (((end - start) / TAU * turn_points as f64).ceil() as usize).max(2) } else { 0 };
    let step = (end - start) / steps.max(1) as f64;
    let swell = arc_swell(steps, step);
    for index in 0..=steps {
        let (sin, cos) = (start + step * index as f64).sin_cos();
        let reach = if index == 0 || index == steps { 1.0 } else { swell };
        let place = |corner: &Corner| {
            let radius = corner.radius * reach;
            [corner.center[0] + radius * cos, corner.center[1] + radius * sin]
        };
        let point = MatchedPoint { first: place(&corners[0]), second: place(&corners[1]) };
        if points.last().is_none_or(|last| !last.is_at(&point)) {
            points.push(point);
        }
    }
}

/// How much farther out than its ends the points between them lie, so that an arc cut into `steps` of `step` radians
/// keeps the area of its sector: `(n - 2) sin s k² + 2 sin s k = n s` (plane geometry).
pub fn arc_swell(steps: usize, step: f64) -> f64 {
    let sin = step.sin();
    if steps < 2 || sin <= 0.0 {
        return 1.0;
    }
    let (n, inner) = (steps as f64, (steps - 2) as f64);
    if steps == 2 { step / sin } else { ((sin * sin + inner * n * step * sin).sqrt() - sin) / (inner * sin) }
}

/// The normals at which either outline may have an edge, in order; with arcs also the four sides, so that sizes over all are exact.
fn normals(first: &Section, second: &Section) -> Vec<f64> {
    let mut normals: Vec<f64> =
        first.corners().iter().chain(second.corners()).map(|corner| corner.start.rem_euclid(TAU)).collect();
    if first.has_arcs() || second.has_arcs() {
        normals.extend((0..4).map(|quarter| f64::from(quarter) * FRAC_PI_2));
    }
    normals.sort_by(f64::total_cmp);
    normals.dedup_by(|next, before| (*next - *before).abs() < SAME_NORMAL);
    if normals.len() > 1 && normals[0] + TAU - normals[normals.len() - 1] < SAME_NORMAL {
        normals.pop();
    }
    normals
}

/// The corner that a normal belongs to.
fn corner_at(section: &Section, normal: f64) -> Corner {
    let holds = |corner: &&Corner| {
        let past = (normal - corner.start).rem_euclid(TAU);
        past <= corner.end - corner.start
    };
    let corners = section.corners();
    corners.iter().find(holds).or(corners.first()).copied().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::metal::{SectionSize, mixed_area, mm};

    fn all() -> Vec<SectionSize> {
        let (a, b) = (mm(20.0), mm(8.0));
        vec![
            SectionSize::Point,
            SectionSize::Square { side: a, edge_radius: mm(1.5) },
            SectionSize::square(b),
            SectionSize::Round { diameter: a },
            SectionSize::Flat { width: b, thickness: a, edge_radius: mm(1.0) },
            SectionSize::Oval { width: a, thickness: b },
            SectionSize::Hexagon { across_flats: a },
            SectionSize::Octagon { across_flats: b },
            SectionSize::Diamond { side: a },
            SectionSize::HalfRound { width: a, height: b },
            SectionSize::HalfRound { width: b, height: a },
            SectionSize::Edge { width: a },
        ]
    }

    fn polygon_area(points: &[[f64; 2]]) -> f64 {
        let next = |index: usize| points[(index + 1) % points.len()];
        points.iter().enumerate().map(|(index, a)| (a[0] * next(index)[1] - next(index)[0] * a[1]) / 2.0).sum()
    }

    #[test]
    fn every_mixture_of_two_sections_keeps_its_area() {
        for first in all() {
            for second in all() {
                let (k, l) = (first.section(), second.section());
                let points = matched_outline(&k, &l, 32);
                for f in [0.0, 0.3, 0.5, 1.0] {
                    let ring: Vec<[f64; 2]> = points.iter().map(|point| point.at(f)).collect();
                    let area = k.area() * (1.0 - f) * (1.0 - f)
                        + mixed_area(&k, &l) * (2.0 * f * (1.0 - f))
                        + l.area() * f * f;
                    let want = area.get::<uom::si::area::square_millimeter>();
                    let got = polygon_area(&ring);
                    assert!((got - want).abs() < 1e-9 * want.max(1.0), "{first:?} {second:?} {f}: {got} {want}");
                }
            }
        }
    }
}
