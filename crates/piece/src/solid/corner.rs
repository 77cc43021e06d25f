//! A sharp outside corner.

use super::in_mm;
use crate::Mesh;
use crate::fineness::Fineness;
use crate::frame::of_side;
use fh_core::metal::{CornerSize, arc_swell};

/// The corner from its first inside tangent point to its second: sharp outside, round inside.
pub(super) fn corner(corner: &CornerSize, fineness: &Fineness) -> Mesh {
    let profile = profile(corner, fineness);
    let [toward, up] = of_side(corner.side);
    let half = in_mm(corner.width) / 2.0;
    // Across the bend lies along × inside; seen from there the profile runs counter-clockwise.
    let place =
        |[ahead, inside]: [f64; 2], across: f64| [ahead, inside * toward - across * up, inside * up + across * toward];
    let mut mesh = Mesh::default();
    let front: Vec<u32> = profile.iter().map(|point| mesh.point(place(*point, half))).collect();
    let back: Vec<u32> = profile.iter().map(|point| mesh.point(place(*point, -half))).collect();
    for index in 0..front.len() {
        let next = (index + 1) % front.len();
        mesh.triangle(back[index], back[next], front[next]);
        mesh.triangle(back[index], front[next], front[index]);
        // From the apex, the first point, all of the profile is seen.
        if index > 0 && next > 0 {
            mesh.triangle(front[0], front[index], front[next]);
            mesh.triangle(back[0], back[next], back[index]);
        }
    }
    mesh
}

/// Its outline in the plane of the bend, ahead and toward the inside, from the apex round by the second leg.
fn profile(corner: &CornerSize, fineness: &Fineness) -> Vec<[f64; 2]> {
    let (inside, thickness) = (in_mm(corner.inside_radius), in_mm(corner.thickness));
    let center = inside + thickness / 2.0;
    let around = |radius: f64, angle: f64| [radius * angle.sin(), center - radius * angle.cos()];
    let mut points = vec![[in_mm(corner.to_apex()), -thickness / 2.0], around(inside + thickness, corner.turn)];
    if inside == 0.0 {
        points.push([0.0, center]);
    } else {
        let steps = ((corner.turn / fineness.turn).ceil() as usize).max(2);
        let step = corner.turn / steps as f64;
        let swell = arc_swell(steps, step);
        points.extend((0..=steps).rev().map(|index| {
            let reach = if index == 0 || index == steps { 1.0 } else { swell };
            around(inside * reach, step * index as f64)
        }));
    }
    points.push([0.0, -thickness / 2.0]);
    points
}
