//! A whole piece, segment by segment.

use crate::chain::Chain;
use crate::fineness::Fineness;
use crate::placement::{ClosedLoop, placements};
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
/// or left in the tongs is no part of it either. The bars stand as their joints hold them; see [`placements`].
///
/// In space x runs along the bar from its datum end, y **away** from the smith and z up: the three turn as a right-handed
/// screw does, as every other program takes them.
pub fn piece(plan: &Plan, balance: &Balance, quality: Quality) -> Piece {
    joined(plan, balance, quality).right_handed()
}

/// The bars put together, y toward the smith.
fn joined(plan: &Plan, balance: &Balance, quality: Quality) -> Piece {
    let local = apart(plan, balance, quality);
    let placed = placements(plan, balance, &local);
    if let [only] = placed.copies.as_slice()
        && only.frame == Frame::START
        && only.copy == 0
    {
        return local;
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
            Line { copy: place.copy, frames, ..*line }
        }));
    }
    piece
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
