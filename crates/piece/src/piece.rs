//! A whole piece, segment by segment.

use crate::chain::Chain;
use crate::fineness::Fineness;
use crate::{Bounds, Frame, Mesh};
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

impl Piece {
    /// The box that just holds it; none where it is empty.
    pub fn bounds(&self) -> Option<Bounds> {
        let boxes = self.solids.iter().filter_map(|solid| solid.mesh.bounds());
        boxes.reduce(|all, next| all.with(&next))
    }

    /// What one segment's solids enclose together.
    pub fn solid_volume_mm3(&self, bar: usize, segment: usize) -> f64 {
        let of_it = self.solids.iter().filter(|solid| solid.bar == bar && solid.segment == segment);
        of_it.map(|solid| solid.mesh.volume_mm3()).sum()
    }

    /// The center line of one segment; none where it is no part of the piece.
    pub fn line(&self, bar: usize, segment: usize) -> Option<&Line> {
        self.lines.iter().find(|line| line.bar == bar && line.segment == segment)
    }
}

/// Bends a plan's bars into the piece.
///
/// What has no settled shape is left out, and what comes after it starts where it would have started. What is trimmed off
/// or left in the tongs is no part of it either.
pub fn piece(plan: &Plan, balance: &Balance, quality: Quality) -> Piece {
    let mut piece = Piece::default();
    for (index, (bar, balance)) in plan.bars.iter().zip(&balance.bars).enumerate() {
        let mut chain = Chain::new(index, &balance.segments, Fineness::of(quality));
        chain.add_all(0, &bar.segments, &mut piece);
    }
    piece
}
