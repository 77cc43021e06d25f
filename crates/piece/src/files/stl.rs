//! The piece as binary STL: each solid closed by itself.

use super::ExportError;
use crate::{Mesh, Piece};
use stl_io::{Normal, Triangle, Vertex};

/// Every triangle of every solid.
pub(super) fn write(piece: &Piece) -> Result<Vec<u8>, ExportError> {
    let triangles: Vec<Triangle> =
        piece.solids.iter().flat_map(|solid| Mesh::corners(&solid.mesh)).map(triangle).collect();
    let mut bytes = Vec::new();
    stl_io::write_stl(&mut bytes, triangles.iter()).map_err(|error| ExportError::CannotWrite(error.to_string()))?;
    Ok(bytes)
}

fn triangle(corners: [[f64; 3]; 3]) -> Triangle {
    let single = |point: [f64; 3]| point.map(|value| value as f32);
    Triangle {
        normal: Normal::new(single(normal(corners))),
        vertices: corners.map(|corner| Vertex::new(single(corner))),
    }
}

/// The outward unit vector at right angles to a triangle; none of length where it has no area.
fn normal([a, b, c]: [[f64; 3]; 3]) -> [f64; 3] {
    let from_a = |p: [f64; 3]| [p[0] - a[0], p[1] - a[1], p[2] - a[2]];
    let (u, v) = (from_a(b), from_a(c));
    let cross = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    let length = cross.iter().map(|part| part * part).sum::<f64>().sqrt();
    if length > 0.0 { cross.map(|part| part / length) } else { cross }
}
