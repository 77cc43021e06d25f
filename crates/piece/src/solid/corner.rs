//! A sharp outside corner.

use crate::Mesh;
use crate::fineness::Fineness;
use fh_core::metal::{CornerSize, arc_swell};
use fh_core::space::of_side;
use fh_measure::in_mm;

/// The corner from its first inside tangent point to its second: sharp outside, round inside.
pub(super) fn corner(corner: &CornerSize, fineness: &Fineness) -> Mesh {
    across_the_bend(corner, &profile(corner, fineness))
}

/// The corner while its bar is straight: as long as its middle line, its metal as a ridge across the outside.
pub(super) fn swelling(corner: &CornerSize) -> Mesh {
    let (length, half) = (in_mm(corner.length()), in_mm(corner.thickness) / 2.0);
    let ridge = [length / 2.0, -half - corner.peak_height_mm()];
    across_the_bend(corner, &[ridge, [length, -half], [length, half], [0.0, half], [0.0, -half]])
}

/// A profile in the plane of the bend, ahead and toward the inside, as wide as the bar across it. From its first point all of it is
/// seen.
fn across_the_bend(corner: &CornerSize, profile: &[[f64; 2]]) -> Mesh {
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
