//! A closed surface of triangles.

use fh_core::space::Frame;
use fh_core::space::vector::{Vector, cross, dot, length, minus};

/// A surface of triangles in mm, counter-clockwise seen from outside.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mesh {
    /// The corners.
    pub points: Vec<[f64; 3]>,
    /// Three corners for each triangle.
    pub triangles: Vec<[u32; 3]>,
}

/// The box that just holds something, its sides along the three axes, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// The least of each axis.
    pub low: [f64; 3],
    /// The greatest of each axis.
    pub high: [f64; 3],
}

impl Bounds {
    /// The box round these places; none where there are none.
    pub fn of(points: impl IntoIterator<Item = [f64; 3]>) -> Option<Self> {
        points.into_iter().fold(None, |bounds: Option<Self>, point| {
            let bounds = bounds.unwrap_or(Self { low: point, high: point });
            Some(bounds.with(&Self { low: point, high: point }))
        })
    }

    /// The box round both.
    pub fn with(&self, other: &Self) -> Self {
        let pick = |a: Vector, b: Vector, of: fn(f64, f64) -> f64| [of(a[0], b[0]), of(a[1], b[1]), of(a[2], b[2])];
        Self { low: pick(self.low, other.low, f64::min), high: pick(self.high, other.high, f64::max) }
    }

    /// Its size along each axis.
    pub fn size(&self) -> [f64; 3] {
        minus(self.high, self.low)
    }
}

impl Mesh {
    /// The three corners of each triangle.
    pub fn corners(&self) -> impl Iterator<Item = [[f64; 3]; 3]> + '_ {
        self.triangles.iter().map(|triangle| triangle.map(|point| self.points[point as usize]))
    }

    /// What it encloses, by the divergence theorem.
    pub fn volume_mm3(&self) -> f64 {
        // From a place of its own, so that nothing is lost far from the origin.
        let Some(from) = self.points.first() else { return 0.0 };
        let part = |[a, b, c]: [Vector; 3]| dot(minus(a, *from), cross(minus(b, *from), minus(c, *from)));
        self.corners().map(part).sum::<f64>() / 6.0
    }

    /// The area of its surface.
    pub fn area_mm2(&self) -> f64 {
        self.corners().map(|[a, b, c]| length(cross(minus(b, a), minus(c, a))) / 2.0).sum()
    }

    /// The box that just holds it; none where it has no triangles.
    pub fn bounds(&self) -> Option<Bounds> {
        Bounds::of(self.corners().flatten())
    }

    /// Whether every edge is walked exactly once in each direction, so that the surface has neither hole nor fold.
    pub fn is_closed(&self) -> bool {
        let mut edges: Vec<(u32, u32)> =
            self.triangles.iter().flat_map(|[a, b, c]| [(*a, *b), (*b, *c), (*c, *a)]).collect();
        edges.sort_unstable();
        let once = edges.windows(2).all(|pair| pair[0] != pair[1]);
        once && edges.iter().all(|(a, b)| a != b && edges.binary_search(&(*b, *a)).is_ok())
    }

    /// Adds another surface beside this one.
    pub fn append(&mut self, other: &Self) {
        let from = self.points.len() as u32;
        self.points.extend_from_slice(&other.points);
        self.triangles.extend(other.triangles.iter().map(|triangle| triangle.map(|point| point + from)));
    }

    /// Moves it to where a frame stands.
    pub(crate) fn carry(&mut self, frame: &Frame) {
        for point in &mut self.points {
            *point = frame.place(*point);
        }
    }

    /// A new corner.
    pub(crate) fn point(&mut self, point: Vector) -> u32 {
        self.points.push(point);
        (self.points.len() - 1) as u32
    }

    /// A new triangle; none where two of its corners are one.
    pub(crate) fn triangle(&mut self, a: u32, b: u32, c: u32) {
        if a != b && b != c && c != a {
            self.triangles.push([a, b, c]);
        }
    }

    /// Turns it inside out.
    pub(crate) fn flip(&mut self) {
        for triangle in &mut self.triangles {
            triangle.swap(1, 2);
        }
    }
}
