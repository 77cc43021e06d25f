//! Groups of bars that no joint holds together, laid beside each other.

use super::Copy;
use crate::{Bounds, Frame, Piece};
use std::collections::HashMap;

/// The room between two groups, in mm.
const ROOM: f64 = 30.0;

/// Moves every group but the first toward the smith, past the one before.
pub(super) fn lay_out(groups: &[Vec<Copy>], local: &Piece, frames: &mut HashMap<Copy, Frame>) {
    if groups.len() < 2 {
        return;
    }
    let mut next = None;
    for group in groups {
        let Some(bounds) = bounds(group, local, frames) else { continue };
        let shift = next.map_or(0.0, |free: f64| free - bounds.low[1]);
        for copy in group {
            if let Some(frame) = frames.get_mut(copy) {
                frame.at[1] += shift;
            }
        }
        next = Some(bounds.high[1] + shift + ROOM);
    }
}

/// The box round a group as it stands.
fn bounds(group: &[Copy], local: &Piece, frames: &HashMap<Copy, Frame>) -> Option<Bounds> {
    let of_copy = |copy: &Copy| {
        let frame = *frames.get(copy)?;
        let bar = copy.0;
        let solids = local.solids.iter().filter(move |solid| solid.bar == bar);
        let lines = local.lines.iter().filter(move |line| line.bar == bar);
        // Where no surfaces were made, by the center lines.
        let points = solids.flat_map(|solid| solid.mesh.points.iter().copied());
        let points = points.chain(lines.flat_map(|line| line.frames.iter().map(|frame| frame.at)));
        Bounds::of(points.map(|point| frame.place(point)))
    };
    group.iter().filter_map(of_copy).reduce(|all, next| all.with(&next))
}
