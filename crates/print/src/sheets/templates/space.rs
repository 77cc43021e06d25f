//! The plane in space that a template lies in.

use fh_piece::vector::{Vector, dot, minus};
use fh_piece::{Mesh, Seen};

/// A plane in space with the directions that lie level and upright on paper.
#[derive(Clone, Copy, Debug)]
pub(in crate::sheets) struct Plane {
    /// A place on it.
    pub(in crate::sheets) origin: Vector,
    /// To the right.
    pub(in crate::sheets) right: Vector,
    /// Up.
    pub(in crate::sheets) up: Vector,
}

impl Plane {
    /// A direction on paper: to the right and up.
    pub(in crate::sheets) fn direction(&self, vector: Vector) -> [f64; 2] {
        [dot(vector, self.right), dot(vector, self.up)]
    }

    /// A place on paper: to the right and up of the origin.
    pub(in crate::sheets) fn place(&self, point: Vector) -> [f64; 2] {
        self.direction(minus(point, self.origin))
    }

    /// What is seen of a solid, as it lies on paper.
    pub(in crate::sheets) fn seen(&self, mesh: &Mesh) -> Seen {
        let [x, y] = self.direction(self.origin);
        mesh.seen(self.right, self.up).moved([-x, -y])
    }

    /// The direction in space of one on paper.
    pub(in crate::sheets) fn lifted(&self, [right, up]: [f64; 2]) -> Vector {
        [0, 1, 2].map(|axis| self.right[axis] * right + self.up[axis] * up)
    }

    /// The same plane turned by a quarter, so that what lay level stands upright.
    pub(in crate::sheets) fn quarter_turned(&self) -> Self {
        Self { right: self.up.map(|part| -part), up: self.right, ..*self }
    }
}
