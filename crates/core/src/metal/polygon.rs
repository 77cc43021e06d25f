//! An outline by its corners, settled: exact area and centroid, extents and width at each place.

use super::arc::arc;
use super::edge::Edge;
use crate::plan::{Bulges, CornerSpec};

/// Sides that run smoothly into each other meet this close to their corner, in mm: the square root of what arithmetic loses.
const SAME_PLACE_MM: f64 = 1e-4;

/// A corner of an outline in mm: along the bar from the root, and across it from the base line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutlineCorner {
    /// Along the bar, and away from you across it.
    pub at: [f64; 2],
    /// How the way to the next corner runs: the tangent of a quarter of its arc's angle, above 0 counterclockwise as it is
    /// gone; 0 where it is straight.
    pub bulge: f64,
}

impl OutlineCorner {
    /// The circle on which the way to the next corner lies: its center and radius in mm, the angle from the center at which
    /// it begins and how far it turns, in radians; none where it is straight.
    pub fn arc_to(&self, next: &Self) -> Option<([f64; 2], f64, [f64; 2])> {
        let edge = Edge { from: self.at, to: next.at, bulge: self.bulge };
        let (center, radius) = edge.circle()?;
        let from = (self.at[1] - center[1]).atan2(self.at[0] - center[0]);
        Some((center, radius, [from, edge.turn()]))
    }
}

/// The corners as they are written; of an arc, "out" is away from the metal, on whichever side of the way that lies.
pub(crate) fn settled(corners: &[CornerSpec]) -> Vec<OutlineCorner> {
    let places: Vec<[f64; 2]> = corners.iter().map(|corner| corner.at.each_ref().map(|at| at.mm())).collect();
    let left = if chord_area(&places) < 0.0 { -1.0 } else { 1.0 };
    let bulge = |corner: &CornerSpec| {
        corner.arc.as_ref().map_or(0.0, |arc| {
            let out = if arc.bulges == Bulges::Out { left } else { -left };
            out * (arc.arc.radians() / 4.0).tan()
        })
    };
    corners.iter().zip(places).map(|(corner, at)| OutlineCorner { at, bulge: bulge(corner) }).collect()
}

/// The area within straight lines from corner to corner in mm², below 0 where they run clockwise (shoelace).
pub(crate) fn chord_area(places: &[[f64; 2]]) -> f64 {
    let next = places.iter().cycle().skip(1);
    places.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum::<f64>() / 2.0
}

/// The area that written corners enclose with their arcs in mm², below 0 where they run clockwise.
pub(crate) fn signed_area(corners: &[CornerSpec]) -> f64 {
    moments(&settled(corners)).0
}

/// The sides from corner to corner.
fn edges(corners: &[OutlineCorner]) -> impl Iterator<Item = Edge> + '_ {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|(from, to)| Edge { from: from.at, to: to.at, bulge: from.bulge })
}

/// Signed area and first moment along the bar.
pub(super) fn moments(corners: &[OutlineCorner]) -> (f64, f64) {
    edges(corners).map(|edge| edge.moments()).fold((0.0, 0.0), |sum, edge| (sum.0 + edge[0], sum.1 + edge[1]))
}

/// From where to where it goes along the bar, and across it.
pub(super) fn extents(corners: &[OutlineCorner]) -> [[f64; 2]; 2] {
    let mut all = [[f64::INFINITY, f64::NEG_INFINITY]; 2];
    let mut meet = |place: [f64; 2]| {
        for (range, at) in all.iter_mut().zip(place) {
            *range = [range[0].min(at), range[1].max(at)];
        }
    };
    for edge in edges(corners) {
        meet(edge.from);
        edge.quarters(false).into_iter().for_each(|share| meet(edge.at(share)));
    }
    all
}

/// The metal across it at a place along it.
pub(super) fn width_at(corners: &[OutlineCorner], along: f64) -> f64 {
    let mut crossings: Vec<f64> = edges(corners).flat_map(|edge| edge.crossings(along)).collect();
    crossings.sort_by(f64::total_cmp);
    crossings.chunks_exact(2).map(|pair| pair[1] - pair[0]).sum()
}

/// Its corners and points on its arcs, from its root.
pub(super) fn points_mm(corners: &[OutlineCorner]) -> Vec<[f64; 2]> {
    let start = extents(corners)[0][0];
    let of_edge = |edge: Edge| match edge.circle() {
        None => vec![edge.from],
        Some((center, radius)) => {
            let from = (edge.from[1] - center[1]).atan2(edge.from[0] - center[0]);
            let on_arc = arc(center, radius, [from, from + edge.turn()], radius);
            let between = on_arc.len().saturating_sub(2);
            [edge.from].into_iter().chain(on_arc.into_iter().skip(1).take(between)).collect()
        }
    };
    edges(corners).flat_map(of_edge).map(|[along, across]| [along - start, across]).collect()
}

/// The first two sides that meet elsewhere than where one ends and the next begins, counted from 0; none in a simple outline.
pub(crate) fn sides_that_meet(corners: &[CornerSpec]) -> Option<(usize, usize)> {
    let settled = settled(corners);
    let sides: Vec<Edge> = edges(&settled).collect();
    let pairs = (0..sides.len()).flat_map(|first| (first + 1..sides.len()).map(move |second| (first, second)));
    pairs.into_iter().find(|(first, second)| {
        let [Some(a), Some(b)] = [first, second].map(|side| sides.get(*side)) else { return false };
        let is_own_end = |place: [f64; 2]| {
            let apart = |corner: [f64; 2]| (corner[0] - place[0]).hypot(corner[1] - place[1]) < SAME_PLACE_MM;
            (apart(a.to) && apart(b.from) && second - first == 1)
                || (apart(a.from) && apart(b.to) && second - first + 1 == sides.len())
        };
        a.meets(b).into_iter().any(|share| !is_own_end(a.at(share)))
    })
}
