//! A whole piece, segment by segment: its solids and its lines.

use crate::path::between;
use crate::placement::ClosedLoop;
use crate::{Bounds, Frame, Mesh};
use fh_core::plan::Hangs;
use fh_core::space::vector::dot;

/// The closed surface of one segment.
#[derive(Clone, Debug, PartialEq)]
pub struct Solid {
    /// The bar.
    pub bar: usize,
    /// Which of the bar's copies, counted from 0.
    pub copy: u32,
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
    /// Which of the bar's copies, counted from 0.
    pub copy: u32,
    /// The segment, counted through the bar.
    pub segment: usize,
    /// Places along it, the first and the last exact.
    pub frames: Vec<Frame>,
    /// The share of the segment's length that lies before each of them, from 0 to 1.
    pub shares: Vec<f64>,
}

impl Line {
    /// The frame between two neighboring places, `share` of the way from the one numbered `index` to the next: on the
    /// circle or the straight through both. None where there are no such places.
    pub fn between(&self, index: usize, share: f64) -> Option<Frame> {
        let (from, to) = (self.frames.get(index)?, self.frames.get(index + 1)?);
        Some(between(from, to, share))
    }

    /// The frame at a share of the segment's length; beyond its ends it runs straight on by so many mm as the share says of
    /// `length_mm`. None where it has no places.
    pub fn frame_at(&self, share: f64, length_mm: f64) -> Option<Frame> {
        let within = share.clamp(0.0, 1.0);
        let last = self.frames.len().checked_sub(1)?;
        let index = self.shares.partition_point(|known| *known <= within).clamp(1, last.max(1)) - 1;
        let (low, high) = (*self.shares.get(index)?, self.shares.get(index + 1).copied().unwrap_or(1.0));
        let part = if high > low { (within - low) / (high - low) } else { 0.0 };
        let frame = self.between(index, part).or_else(|| self.frames.get(index).copied())?;
        Some(Frame { at: frame.place([(share - within) * length_mm, 0.0, 0.0]), ..frame })
    }
}

/// A piece in space.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Piece {
    /// One or more for each finished segment.
    pub solids: Vec<Solid>,
    /// One for each finished segment.
    pub lines: Vec<Line>,
    /// The joints that close a loop of joints, and by how much they miss.
    pub loops: Vec<ClosedLoop>,
    /// Whether it is turned to hang as the plan says.
    pub hangs: bool,
}

impl Piece {
    /// The box that just holds it; none where it is empty.
    pub fn bounds(&self) -> Option<Bounds> {
        let boxes = self.solids.iter().filter_map(|solid| solid.mesh.bounds());
        boxes.reduce(|all, next| all.with(&next))
    }

    /// What one segment's solids enclose together, of the first of its bar's copies that is shown.
    pub fn solid_volume_mm3(&self, bar: usize, segment: usize) -> f64 {
        let all = || self.solids.iter().filter(|solid| solid.bar == bar && solid.segment == segment);
        let copy = all().map(|solid| solid.copy).min();
        let of_it = all().filter(|solid| Some(solid.copy) == copy);
        of_it.map(|solid| solid.mesh.volume_mm3()).sum()
    }

    /// The whole surface of one part of one of a bar's copies; empty where it has none.
    pub fn surface(&self, line: &Line) -> Mesh {
        let own = |solid: &&Solid| (solid.bar, solid.copy, solid.segment) == (line.bar, line.copy, line.segment);
        let mut whole = Mesh::default();
        self.solids.iter().filter(own).for_each(|solid| whole.append(&solid.mesh));
        whole
    }

    /// It with y turned round: reckoned toward the smith, the three directions would show it as in a mirror.
    pub(crate) fn right_handed(mut self) -> Self {
        let turned = |[x, y, z]: [f64; 3]| [x, -y, z];
        for solid in &mut self.solids {
            solid.mesh.points.iter_mut().for_each(|point| *point = turned(*point));
            solid.mesh.triangles.iter_mut().for_each(|[_, second, third]| std::mem::swap(second, third));
        }
        for frame in self.lines.iter_mut().flat_map(|line| &mut line.frames) {
            let Frame { at, along, toward, up } = *frame;
            *frame = Frame { at: turned(at), along: turned(along), toward: turned(toward), up: turned(up) };
        }
        self
    }

    /// It turned to hang as a plan says.
    pub(crate) fn hung(mut self, hangs: &Hangs) -> Self {
        if hangs.is_default() {
            return self;
        }
        let rows = hangs.rows();
        let turned = |at: [f64; 3]| rows.map(|row| dot(row, at));
        self.solids.iter_mut().flat_map(|solid| &mut solid.mesh.points).for_each(|point| *point = turned(*point));
        for frame in self.lines.iter_mut().flat_map(|line| &mut line.frames) {
            let Frame { at, along, toward, up } = *frame;
            *frame = Frame { at: turned(at), along: turned(along), toward: turned(toward), up: turned(up) };
        }
        Self { hangs: true, ..self }
    }

    /// The center line of one segment, of the first of its bar's copies that is shown; none where it is no part of the piece.
    pub fn line(&self, bar: usize, segment: usize) -> Option<&Line> {
        self.lines.iter().find(|line| line.bar == bar && line.segment == segment)
    }

    /// It without some parts, each named by its bar and its segment.
    pub(crate) fn without(mut self, parts: &[(usize, usize)]) -> Self {
        self.solids.retain(|solid| !parts.contains(&(solid.bar, solid.segment)));
        self.lines.retain(|line| !parts.contains(&(line.bar, line.segment)));
        self
    }
}
