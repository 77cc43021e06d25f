//! Meshes made ready to be drawn: corners welded, light directions smoothed over round surfaces, edges found.

use crate::Mesh;
use std::collections::HashMap;

/// Two faces that turn from each other by more than this share an edge that is drawn; less is a round surface. Between the
/// 45° of an octagon and the steps of a round bar.
const CREASE_DEGREES: f32 = 40.0;
/// Corners closer than this, in mm, are one.
const WELD_MM: f64 = 1e-4;

/// A triangle.
#[derive(Clone, Copy, Debug)]
pub(super) struct Face {
    pub(super) corners: [u32; 3],
    /// The direction of its plane.
    pub(super) normal: [f32; 3],
    /// The directions that it is lit by at its corners.
    pub(super) lit: [[f32; 3]; 3],
    /// Which mesh it belongs to.
    pub(super) solid: u32,
}

/// An edge that is drawn, between two faces; the same face twice at an open edge.
#[derive(Clone, Copy, Debug)]
pub(super) struct Crease {
    pub(super) ends: [u32; 2],
    pub(super) faces: [u32; 2],
}

/// Meshes made ready to be drawn.
#[derive(Clone, Debug, Default)]
pub struct Drawn {
    pub(super) points: Vec<[f32; 3]>,
    pub(super) faces: Vec<Face>,
    pub(super) creases: Vec<Crease>,
    /// Points are kept from here, in mm, so that small numbers are left for the picture.
    pub(super) origin: [f64; 3],
}

impl Drawn {
    /// Makes meshes ready; each is one solid, named by its place in the list. What is no triangle is left out.
    pub fn new<'a>(meshes: impl IntoIterator<Item = &'a Mesh>) -> Self {
        let mut drawn = Self::default();
        for (solid, mesh) in meshes.into_iter().enumerate() {
            if solid == 0 {
                drawn.origin = mesh.points.first().copied().unwrap_or_default();
            }
            drawn.add(solid as u32, mesh);
        }
        drawn
    }

    /// How many triangles there are.
    pub fn triangle_count(&self) -> usize {
        self.faces.len()
    }

    fn add(&mut self, solid: u32, mesh: &Mesh) {
        let first_face = self.faces.len();
        let welded = self.weld(mesh);
        for triangle in &mesh.triangles {
            let corners = triangle.map(|corner| welded.get(corner as usize).copied());
            let [Some(a), Some(b), Some(c)] = corners else { continue };
            let Some(normal) = self.normal([a, b, c]).filter(|_| a != b && b != c && c != a) else { continue };
            self.faces.push(Face { corners: [a, b, c], normal, lit: [normal; 3], solid });
        }
        self.smooth(first_face);
        self.find_creases(first_face);
    }

    /// The place of each of a mesh's points among all points.
    fn weld(&mut self, mesh: &Mesh) -> Vec<u32> {
        let mut known: HashMap<[i64; 3], u32> = HashMap::with_capacity(mesh.points.len());
        let origin = self.origin;
        let points = &mut self.points;
        let place = |at: &[f64; 3]| {
            let from = [at[0] - origin[0], at[1] - origin[1], at[2] - origin[2]];
            *known.entry(from.map(|mm| (mm / WELD_MM).round() as i64)).or_insert_with(|| {
                points.push(from.map(|mm| mm as f32));
                (points.len() - 1) as u32
            })
        };
        mesh.points.iter().map(place).collect()
    }

    fn normal(&self, corners: [u32; 3]) -> Option<[f32; 3]> {
        let [a, b, c] = corners.map(|corner| self.points[corner as usize]);
        let (u, v) = ([b[0] - a[0], b[1] - a[1], b[2] - a[2]], [c[0] - a[0], c[1] - a[1], c[2] - a[2]]);
        unit([u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]])
    }

    /// Lights each corner by the mean of the faces that meet there without a crease.
    fn smooth(&mut self, first_face: usize) {
        let around = self.faces_around(first_face);
        let crease = CREASE_DEGREES.to_radians().cos();
        for index in first_face..self.faces.len() {
            let face = self.faces[index];
            let lit = face.corners.map(|corner| {
                let near = around.of(corner).iter().map(|other| self.faces[*other as usize].normal);
                let near = near.filter(|normal| dot(*normal, face.normal) > crease);
                let sum = near.fold([0.0; 3], |sum, n| [sum[0] + n[0], sum[1] + n[1], sum[2] + n[2]]);
                unit(sum).unwrap_or(face.normal)
            });
            self.faces[index].lit = lit;
        }
    }

    fn faces_around(&self, first_face: usize) -> Around {
        let corners = self.faces[first_face..].iter().flat_map(|face| face.corners);
        let first_point = corners.clone().min().unwrap_or(0);
        let count = corners.clone().max().map_or(0, |last| (last - first_point) as usize + 1);
        let mut starts = vec![0_u32; count + 1];
        corners.clone().for_each(|corner| starts[(corner - first_point) as usize + 1] += 1);
        for index in 0..count {
            starts[index + 1] += starts[index];
        }
        let mut filled = starts.clone();
        let mut faces = vec![0_u32; corners.clone().count()];
        for (index, corner) in corners.enumerate() {
            let place = &mut filled[(corner - first_point) as usize];
            faces[*place as usize] = (first_face + index / 3) as u32;
            *place += 1;
        }
        Around { first_point, starts, faces }
    }

    fn find_creases(&mut self, first_face: usize) {
        let mut sides = Vec::with_capacity(3 * (self.faces.len() - first_face));
        for (index, face) in self.faces.iter().enumerate().skip(first_face) {
            let [a, b, c] = face.corners;
            sides.extend([(a, b), (b, c), (c, a)].map(|(from, to)| (from.min(to), from.max(to), index as u32)));
        }
        sides.sort_unstable();
        let crease = CREASE_DEGREES.to_radians().cos();
        for same in sides.chunk_by(|one, next| (one.0, one.1) == (next.0, next.1)) {
            let (Some(first), Some(last)) = (same.first(), same.last()) else { continue };
            let [one, other] = [first.2, last.2].map(|face| self.faces[face as usize].normal);
            if same.len() == 1 || dot(one, other) < crease {
                self.creases.push(Crease { ends: [first.0, first.1], faces: [first.2, last.2] });
            }
        }
    }
}

/// The faces around each point.
struct Around {
    first_point: u32,
    starts: Vec<u32>,
    faces: Vec<u32>,
}

impl Around {
    fn of(&self, point: u32) -> &[u32] {
        let at = (point - self.first_point) as usize;
        &self.faces[self.starts[at] as usize..self.starts[at + 1] as usize]
    }
}

fn dot(a: [f32; 3], b: [f32; 3]) -> f32 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn unit(v: [f32; 3]) -> Option<[f32; 3]> {
    let length = dot(v, v).sqrt();
    (length.is_finite() && length > 0.0).then(|| v.map(|part| part / length))
}

#[cfg(test)]
mod tests {
    use super::super::picture::tests::{cube, tube};
    use super::*;

    #[test]
    fn a_cube_has_twelve_edges_and_a_round_bar_two() {
        assert_eq!(Drawn::new([&cube([0.0; 3], 10.0)]).creases.len(), 12);
        let bar = Drawn::new([&tube(24)]);
        assert_eq!(bar.creases.len(), 2 * 24, "only the rings at its ends");
    }

    #[test]
    fn corners_that_are_written_twice_are_welded() {
        let mut mesh = cube([0.0; 3], 10.0);
        let loose: Vec<_> = mesh.triangles.iter().flatten().map(|corner| mesh.points[*corner as usize]).collect();
        mesh.triangles = (0..loose.len() as u32 / 3).map(|at| [3 * at, 3 * at + 1, 3 * at + 2]).collect();
        mesh.points = loose;
        let drawn = Drawn::new([&mesh]);
        assert_eq!((drawn.points.len(), drawn.creases.len()), (8, 12));
    }

    #[test]
    fn what_is_no_triangle_is_left_out() {
        let broken = Mesh {
            points: vec![[0.0; 3], [1.0, 0.0, 0.0], [f64::NAN, 0.0, 0.0]],
            triangles: vec![[0, 1, 1], [0, 1, 2], [0, 1, 99]],
        };
        assert_eq!(Drawn::new([&broken]).triangle_count(), 0);
    }
}
