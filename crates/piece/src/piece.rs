//! A whole piece, segment by segment.

use crate::{Frame, Mesh};
use fh_core::balance::Balance;
use fh_core::plan::Plan;

/// How finely curves are cut into steps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quality {
    /// For the screen: a few hundred triangles for a segment.
    Screen,
    /// For paper and files: volumes to 0.1 %.
    Print,
}

/// The closed surface of one segment.
#[derive(Clone, Debug, PartialEq)]
pub struct Solid {
    /// The bar.
    pub bar: usize,
    /// The segment, counted through the bar.
    pub segment: usize,
    /// Its surface.
    pub mesh: Mesh,
}

/// The center line of one segment, from its datum side.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// The bar.
    pub bar: usize,
    /// The segment, counted through the bar.
    pub segment: usize,
    /// Places along it, the first and the last exact.
    pub frames: Vec<Frame>,
}

/// A piece in space.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Piece {
    /// One or more for each finished segment.
    pub solids: Vec<Solid>,
    /// One for each finished segment.
    pub lines: Vec<Line>,
}

/// Bends a plan's bars into the piece.
///
/// What has no settled shape is left out, and what comes after it starts where it would have started.
pub fn piece(_plan: &Plan, _balance: &Balance, _quality: Quality) -> Piece {
    Piece::default()
}
