//! The eye that takes a pin: its middle and its axis.

use super::seat::{Seats, seat};
use fh_core::joints::{MemberPlace, PartSide, Role};
use fh_core::metal::Bent;
use fh_core::plan::SocketAxis;
use fh_core::space::Frame;
use fh_core::space::of_side;
use fh_core::space::vector::{cross, plus, times};
use fh_measure::in_mm;

/// The middle of an eye: `up` is its axis; of a hole out of its named side.
pub(super) fn eye(seats: &Seats<'_>, member: &MemberPlace) -> Option<Frame> {
    let frame = seats.middle(member)?;
    let balance = seats.balance(member)?;
    let sign = match member.side {
        PartSide::Around(side) if side.cos() < 0.0 => -1.0,
        _ => 1.0,
    };
    if member.role == Role::Hole {
        return Some(seat(frame.at, times(frame.up, sign), frame.along));
    }
    let (diameter, side, runs_along) = match balance.bent? {
        Bent::Ring { inside_diameter, side, .. } => (inside_diameter, side, false),
        Bent::Socket { mandrel, axis, side, .. } => (mandrel, side, axis == SocketAxis::Along),
        _ => return None,
    };
    let [toward, up] = of_side(side);
    let inward = frame.direction([0.0, toward, up]);
    let reach = balance.reach_mm(member.at_mm(balance), side);
    let middle = plus(frame.at, times(inward, in_mm(diameter) / 2.0 + reach));
    let (axis, along) = if runs_along { (frame.along, inward) } else { (cross(frame.along, inward), frame.along) };
    Some(seat(middle, times(axis, sign), along))
}
