//! One joint put together: the frames of its members' bars, all seen from the bar of the part that lies undermost.

use super::eye::eye;
use super::seat::{End, Seats, seat};
use crate::rotation::{frame_turned, turned};
use fh_core::forms;
use fh_core::joints::{Joined, MemberPlace, Role};
use fh_core::plan::{Form, JointKind};
use fh_core::space::Frame;
use fh_core::space::vector::{dot, minus, plus, times};
use fh_measure::in_mm;

/// The frame of each member's bar; none where the member has no place in space.
pub(super) fn arrange(joint: &Joined, seats: &Seats<'_>) -> Vec<Option<Frame>> {
    let mut frames = vec![None; joint.members.len()];
    if arranged(joint, seats, &mut frames).is_none() {
        frames.fill(None);
    }
    frames
}

fn arranged(joint: &Joined, seats: &Seats<'_>, frames: &mut [Option<Frame>]) -> Option<()> {
    let stack = joint.stacked();
    match joint.kind {
        JointKind::Hook => hang(joint, seats, frames),
        JointKind::Tenon => {
            let tenon = joint.members.iter().position(|member| member.role == Role::Tenon)?;
            put_tenon(joint, seats, (tenon, &stack), frames)
        }
        JointKind::Rivet | JointKind::Collar | JointKind::Weld => {
            let (first, rest) = stack.split_first()?;
            frames[*first] = Some(Frame::START);
            let base = &joint.members[*first];
            let top = pile(joint, seats, (seats.face(base)?, rest), frames)?;
            for (index, member) in joint.members.iter().enumerate().filter(|(index, _)| !stack.contains(index)) {
                frames[index] = match member.role {
                    Role::Collar => Some(wrap(joint, seats, (member, &stack), frames)?),
                    _ => Some(drive(seats, (member, base), &top)?),
                };
            }
            Some(())
        }
    }
}

/// Lays parts on a face one after the other; the face of the last.
fn pile(
    joint: &Joined,
    seats: &Seats<'_>,
    (mut face, parts): (Frame, &[usize]),
    frames: &mut [Option<Frame>],
) -> Option<Frame> {
    for part in parts {
        let member = &joint.members[*part];
        let frame = on(&face, &seats.face(member)?, member.turn);
        frames[*part] = Some(frame);
        face = frame.carry(&seats.back(member)?);
    }
    Some(face)
}

/// The frame of a bar whose seat meets a face: the two look at each other, their lines run the same way, and it is turned
/// about the direction out of the face.
fn on(face: &Frame, own: &Frame, turn: f64) -> Frame {
    let along = turned(face.along, face.up, turn);
    seat(face.at, times(face.up, -1.0), along).carry(&own.inverse())
}

/// The frame of a bar whose seat comes to be where a frame stands, turned about its `up`.
fn into(place: &Frame, own: &Frame, turn: f64) -> Frame {
    frame_turned(place, place.up, turn).carry(&own.inverse())
}

/// A tenon through its holes: the first hole's named side on its shoulder, the others behind.
fn put_tenon(
    joint: &Joined,
    seats: &Seats<'_>,
    (tenon, holes): (usize, &[usize]),
    frames: &mut [Option<Frame>],
) -> Option<()> {
    let shoulder = seats.shoulder(&joint.members[tenon])?;
    if tenon == 0 {
        frames[tenon] = Some(Frame::START);
        pile(joint, seats, (shoulder, holes), frames)?;
        return Some(());
    }
    let (first, rest) = holes.split_first()?;
    frames[*first] = Some(Frame::START);
    let base = &joint.members[*first];
    frames[tenon] = Some(on(&seats.face(base)?, &shoulder, joint.members[tenon].turn));
    pile(joint, seats, (seats.back(base)?, rest), frames)?;
    Some(())
}

/// A rivet through parts that lie on each other, its middle in theirs.
fn drive(seats: &Seats<'_>, (rivet, base): (&MemberPlace, &MemberPlace), top: &Frame) -> Option<Frame> {
    let (foot, middle) = (seats.back(base)?, seats.middle(rivet)?);
    let at = times(plus(foot.at, top.at), 0.5);
    let out = seats.face(base)?.up;
    Some(into(&seat(at, out, foot.along), &seat(middle.at, middle.along, middle.up), rivet.turn))
}

/// A collar round parts that lie on each other: its inside about the middle of the bundle.
fn wrap(
    joint: &Joined,
    seats: &Seats<'_>,
    (collar, bundle): (&MemberPlace, &[usize]),
    frames: &[Option<Frame>],
) -> Option<Frame> {
    let bars: Vec<(&MemberPlace, Frame)> = bundle
        .iter()
        .filter_map(|index| {
            let member = &joint.members[*index];
            Some((member, frames[*index]?.carry(&seats.middle(member)?)))
        })
        .collect();
    let (_, first) = bars.first()?;
    let middle = |direction: [f64; 3]| {
        let ends = bars.iter().map(|(member, frame)| {
            let at = dot(direction, minus(frame.at, first.at));
            let back = times(direction, -1.0);
            [at - seats.reach_toward(member, frame, back), at + seats.reach_toward(member, frame, direction)]
        });
        let [low, high] = ends.fold([f64::MAX, f64::MIN], |all, end| [all[0].min(end[0]), all[1].max(end[1])]);
        (low + high) / 2.0
    };
    let at = first.place([0.0, middle(first.toward), middle(first.up)]);
    // The collar lies with its width across the bundle; its strip runs round in its own plane.
    let place = Frame { at, along: first.toward, toward: times(first.along, -1.0), up: first.up };
    let own = inside(seats, collar)?;
    Some(frame_turned(&place, first.along, collar.turn).carry(&own.inverse()))
}

/// The middle of a collar's inside, its line starting in the middle of the lower side.
fn inside(seats: &Seats<'_>, collar: &MemberPlace) -> Option<Frame> {
    let start = seats.end(collar, End::Start)?;
    let Form::Collar(forms::Collar { height, .. }) = &seats.segment(collar)?.form else { return None };
    let balance = seats.balance(collar)?;
    let strip = balance.extent_mm(in_mm(balance.forged_length) / 2.0, 0.0);
    Some(start.moved([0.0, 0.0, (strip + height.mm()) / 2.0]))
}

/// Pins hung in an eye, each with its place in the eye's middle.
fn hang(joint: &Joined, seats: &Seats<'_>, frames: &mut [Option<Frame>]) -> Option<()> {
    let at = joint.eye()?;
    let place = eye(seats, &joint.members[at])?;
    frames[at] = Some(Frame::START);
    for (index, member) in joint.members.iter().enumerate().filter(|(index, _)| *index != at) {
        let middle = seats.middle(member)?;
        frames[index] = Some(into(&place, &seat(middle.at, middle.along, middle.up), member.turn));
    }
    Some(())
}
