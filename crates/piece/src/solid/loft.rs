//! A surface through rings of points, one after the other along the bar.

use crate::Mesh;
use fh_core::metal::MatchedPoint;

/// A ring of points across the bar, toward and up, counter-clockwise seen from the far end.
#[derive(Clone, Debug)]
pub(crate) struct Ring {
    /// Where it stands along the bar, in mm.
    pub(crate) at: f64,
    pub(crate) points: Vec<[f64; 2]>,
}

/// The ring at a share of the way from one outline to the other, about its centroid.
pub(crate) fn ring_of(outline: &[MatchedPoint], at: f64, share: f64) -> Ring {
    let mut points: Vec<[f64; 2]> = outline.iter().map(|point| point.at(share)).collect();
    let rise = centroid(&points)[1];
    for point in &mut points {
        point[1] -= rise;
    }
    Ring { at, points }
}

/// The centroid of a polygon; the middle of its points where it has no area.
pub(crate) fn centroid(points: &[[f64; 2]]) -> [f64; 2] {
    let (mut area, mut moment, mut sum) = (0.0, [0.0, 0.0], [0.0, 0.0]);
    for (index, a) in points.iter().enumerate() {
        let b = points[(index + 1) % points.len()];
        let cross = a[0] * b[1] - b[0] * a[1];
        area += cross / 2.0;
        for axis in 0..2 {
            moment[axis] += (a[axis] + b[axis]) * cross / 6.0;
            sum[axis] += a[axis];
        }
    }
    let count = points.len().max(1) as f64;
    if area > 1e-12 { moment.map(|part| part / area) } else { sum.map(|part| part / count) }
}

/// The closed surface through rings of as many points each, with a flat end on the first and the last.
///
/// Points of a ring that fall together become one, so a ring may draw in to an edge or a point. The faces are
/// cut in triangles one way and the other in turn, so that what a warp adds on one it takes from the next: round the rings
/// where the bar is twisted, so that the cuts follow the twist, and from ring to ring where it is not.
pub(crate) fn loft(rings: &[Ring], twisted: bool) -> Mesh {
    let mut mesh = Mesh::default();
    let placed: Vec<Vec<u32>> = rings.iter().map(|ring| place(&mut mesh, ring)).collect();
    for (index, pair) in placed.windows(2).enumerate() {
        let rising = |column: usize| (if twisted { column } else { index }).is_multiple_of(2);
        join(&mut mesh, &pair[0], &pair[1], rising);
    }
    if let (Some(first), Some(last)) = (rings.first(), rings.last()) {
        close(&mut mesh, first, &placed[0], false);
        close(&mut mesh, last, &placed[placed.len() - 1], true);
    }
    mesh
}

/// The ring's points in the mesh, those that fall together only once.
fn place(mesh: &mut Mesh, ring: &Ring) -> Vec<u32> {
    let near = |a: [f64; 2], b: [f64; 2]| (a[0] - b[0]).abs() + (a[1] - b[1]).abs() < 1e-5;
    let mut placed: Vec<u32> = Vec::with_capacity(ring.points.len());
    for (index, point) in ring.points.iter().enumerate() {
        let before = index.checked_sub(1).filter(|before| near(ring.points[*before], *point));
        // The ring closes on its first point.
        let first = near(ring.points[0], *point) && ring.points[index..].iter().all(|rest| near(*rest, ring.points[0]));
        let found = if first && index > 0 { Some(placed[0]) } else { before.map(|before| placed[before]) };
        placed.push(found.unwrap_or_else(|| mesh.point([ring.at, point[0], point[1]])));
    }
    placed
}

/// The faces between two rings.
fn join(mesh: &mut Mesh, near: &[u32], far: &[u32], rising: impl Fn(usize) -> bool) {
    for index in 0..near.len() {
        let next = (index + 1) % near.len();
        let (a, b, c, d) = (near[index], near[next], far[next], far[index]);
        if rising(index) {
            mesh.triangle(a, b, c);
            mesh.triangle(a, c, d);
        } else {
            mesh.triangle(a, b, d);
            mesh.triangle(b, c, d);
        }
    }
}

/// A flat end; none where the ring has drawn in to an edge or a point.
fn close(mesh: &mut Mesh, ring: &Ring, placed: &[u32], far: bool) {
    let mut around = placed.to_vec();
    around.dedup();
    if around.len() > 1 && around.first() == around.last() {
        around.pop();
    }
    if around.len() < 3 {
        return;
    }
    let [toward, up] = centroid(&ring.points);
    let middle = mesh.point([ring.at, toward, up]);
    for (index, a) in around.iter().enumerate() {
        let b = around[(index + 1) % around.len()];
        if far { mesh.triangle(middle, *a, b) } else { mesh.triangle(middle, b, *a) }
    }
}
