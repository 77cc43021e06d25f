//! Filling any outline: it is cut into upright strips at its corners, each with straight edges above and below.

use egui::epaint::{Mesh, Vertex, WHITE_UV};
use egui::{Color32, Pos2, pos2};

/// A mesh that fills a polygon, hollows and all.
pub(crate) fn filled(points: &[Pos2], color: Color32) -> Mesh {
    let mut mesh = Mesh::default();
    for corners in trapezoids(points) {
        let first = mesh.vertices.len() as u32;
        mesh.vertices.extend(corners.map(|pos| Vertex { pos, uv: WHITE_UV, color }));
        mesh.add_triangle(first, first + 1, first + 2);
        mesh.add_triangle(first, first + 2, first + 3);
    }
    mesh
}

/// The upright strips of a polygon: left top, right top, right bottom, left bottom.
fn trapezoids(points: &[Pos2]) -> Vec<[Pos2; 4]> {
    let mut places: Vec<f32> = points.iter().map(|point| point.x).filter(|x| x.is_finite()).collect();
    places.sort_by(f32::total_cmp);
    places.dedup_by(|a, b| (*a - *b).abs() < 1e-3);
    let mut found = Vec::new();
    for pair in places.windows(2) {
        let &[left, right] = pair else { continue };
        let crossing = crossing(points, left, right);
        for two in crossing.chunks_exact(2) {
            if let [upper, lower] = two {
                found.push([pos2(left, upper[0]), pos2(right, upper[1]), pos2(right, lower[1]), pos2(left, lower[0])]);
            }
        }
    }
    found
}

/// Where the polygon's edges cross a strip, at its left and at its right side, from the top down.
fn crossing(points: &[Pos2], left: f32, right: f32) -> Vec<[f32; 2]> {
    let middle = (left + right) / 2.0;
    let next = points.iter().cycle().skip(1);
    let mut crossing: Vec<[f32; 2]> = points
        .iter()
        .zip(next)
        .filter(|(a, b)| (a.x < middle) != (b.x < middle))
        .map(|(a, b)| {
            let y = |x: f32| a.y + (b.y - a.y) * ((x - a.x) / (b.x - a.x)).clamp(0.0, 1.0);
            [y(left), y(right)]
        })
        .collect();
    crossing.sort_by(|a, b| (a[0] + a[1]).total_cmp(&(b[0] + b[1])));
    crossing
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(points: &[Pos2]) -> f32 {
        let strip = |[a, b, c, d]: [Pos2; 4]| ((d.y - a.y) + (c.y - b.y)) / 2.0 * (b.x - a.x);
        trapezoids(points).into_iter().map(strip).sum()
    }

    #[test]
    fn a_rectangle_is_one_strip() {
        let points = [pos2(0.0, 0.0), pos2(10.0, 0.0), pos2(10.0, 4.0), pos2(0.0, 4.0)];
        assert_eq!(trapezoids(&points).len(), 1);
        assert!((area(&points) - 40.0).abs() < 1e-4);
    }

    #[test]
    fn hollow_outlines_keep_their_area() {
        let arrow = [pos2(0.0, 0.0), pos2(10.0, 5.0), pos2(0.0, 10.0), pos2(4.0, 5.0)];
        assert!((area(&arrow) - 30.0).abs() < 1e-4);
        let fork = [
            pos2(0.0, 0.0),
            pos2(10.0, 0.0),
            pos2(10.0, 2.0),
            pos2(3.0, 2.0),
            pos2(3.0, 8.0),
            pos2(10.0, 8.0),
            pos2(10.0, 10.0),
            pos2(0.0, 10.0),
        ];
        assert!((area(&fork) - 58.0).abs() < 1e-4);
    }

    #[test]
    fn nothing_and_a_line_have_no_strips() {
        assert!(trapezoids(&[]).is_empty());
        assert!(area(&[pos2(0.0, 1.0), pos2(5.0, 1.0)]).abs() < 1e-6);
    }
}
