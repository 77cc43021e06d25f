//! A whole piece, segment by segment.

use crate::chain::Chain;
use crate::fineness::Fineness;
use crate::path::between;
use crate::placement::{ClosedLoop, placements};
use crate::welded::welded;
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
    /// The center lines alone, without any surface.
    Lines,
}

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
    fn right_handed(mut self) -> Self {
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

    /// The center line of one segment, of the first of its bar's copies that is shown; none where it is no part of the piece.
    pub fn line(&self, bar: usize, segment: usize) -> Option<&Line> {
        self.lines.iter().find(|line| line.bar == bar && line.segment == segment)
    }
}

/// Bends a plan's bars into the piece.
///
/// What has no settled shape is left out, and what comes after it starts where it would have started. What is trimmed off
/// or left in the tongs is no part of it either, nor is a weld that closes a bar on itself: its metal is burnt in. The bars stand as their joints hold them; see [`placements`].
///
/// In space x runs along the bar from its datum end, y **away** from the smith and z up: the three turn as a right-handed
/// screw does, as every other program takes them.
pub fn piece(plan: &Plan, balance: &Balance, quality: Quality) -> Piece {
    joined(plan, balance, quality).right_handed()
}

impl Piece {
    /// It without some parts, each named by its bar and its segment.
    fn without(mut self, parts: &[(usize, usize)]) -> Self {
        self.solids.retain(|solid| !parts.contains(&(solid.bar, solid.segment)));
        self.lines.retain(|line| !parts.contains(&(line.bar, line.segment)));
        self
    }
}

/// The bars put together, y toward the smith.
fn joined(plan: &Plan, balance: &Balance, quality: Quality) -> Piece {
    let local = apart(plan, balance, quality);
    let placed = placements(plan, balance, &local);
    let welded = welded(plan, balance, &local);
    if let [only] = placed.copies.as_slice()
        && only.frame == Frame::START
        && only.copy == 0
    {
        return local.without(&welded);
    }
    let mut piece = Piece { loops: placed.loops, ..Piece::default() };
    for place in &placed.copies {
        let solids = local.solids.iter().filter(|solid| solid.bar == place.bar);
        piece.solids.extend(solids.map(|solid| {
            let mut mesh = solid.mesh.clone();
            mesh.carry(&place.frame);
            Solid { copy: place.copy, mesh, ..*solid }
        }));
        let lines = local.lines.iter().filter(|line| line.bar == place.bar);
        piece.lines.extend(lines.map(|line| {
            let frames = line.frames.iter().map(|frame| place.frame.carry(frame)).collect();
            Line { copy: place.copy, frames, shares: line.shares.clone(), ..*line }
        }));
    }
    piece.without(&welded)
}

/// Each bar once, all of them from the origin.
pub(crate) fn apart(plan: &Plan, balance: &Balance, quality: Quality) -> Piece {
    let mut piece = Piece::default();
    for (index, (bar, balance)) in plan.bars.iter().zip(&balance.bars).enumerate() {
        let mut chain = Chain::new(index, &balance.segments, Fineness::of(quality));
        chain.add_all(0, &bar.segments, &mut piece);
    }
    piece
}
