//! A closed surface of triangles.

/// A surface of triangles in mm, counter-clockwise seen from outside.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mesh {
    /// The corners.
    pub points: Vec<[f64; 3]>,
    /// Three corners for each triangle.
    pub triangles: Vec<[u32; 3]>,
}
