//! The piece as binary STL: each solid closed by itself.

use super::ExportError;
use crate::{Mesh, Piece};
use fh_core::space::vector::{cross, direction, minus};
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
    direction(cross(minus(b, a), minus(c, a))).unwrap_or_default()
}
