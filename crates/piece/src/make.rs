//! Making the piece of a plan: its bars bent one by one, then put together by their joints.

use crate::chain::add_bar;
use crate::fineness::{Fineness, Quality};
use crate::placement::placements;
use crate::welded::welded;
use crate::{Frame, Line, Piece, Solid};
use fh_core::balance::Balance;
use fh_core::plan::Plan;

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

/// The finished piece as it hangs or stands: as [`piece`] bends it, and turned as the plan says.
pub fn hung(plan: &Plan, balance: &Balance, quality: Quality) -> Piece {
    piece(plan, balance, quality).hung(&plan.hangs)
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
        add_bar(index, bar, &balance.segments, &Fineness::of(quality), &mut piece);
    }
    piece
}
