//! Where a part meets another: a place on its surface, the direction out of it, and one along it.

use crate::path::Path;
use crate::{Frame, Line, Piece};
use fh_core::balance::{Balance, SegmentBalance};
use fh_core::joints::{MemberPlace, PartSide};
use fh_core::plan::{Plan, Segment};
use fh_core::space::of_side;
use fh_core::space::vector::{cross, dot, plus, times};
use fh_measure::in_mm;
use std::collections::HashMap;
use std::f64::consts::PI;

/// The parts of the bars as they lie from the origin.
pub(super) struct Seats<'a> {
    plan: &'a Plan,
    balance: &'a Balance,
    lines: HashMap<(usize, usize), &'a Line>,
}

/// One end of a segment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum End {
    Start,
    Far,
}

impl<'a> Seats<'a> {
    pub(super) fn new(plan: &'a Plan, balance: &'a Balance, local: &'a Piece) -> Self {
        let lines = local.lines.iter().map(|line| ((line.bar, line.segment), line)).collect();
        Self { plan, balance, lines }
    }

    pub(super) fn segment(&self, member: &MemberPlace) -> Option<&'a Segment> {
        self.plan.segment(member.bar, member.segment)
    }

    pub(super) fn balance(&self, member: &MemberPlace) -> Option<&'a SegmentBalance> {
        self.balance.bars.get(member.bar)?.segments.get(member.segment)
    }

    fn frames(&self, member: &MemberPlace) -> Option<&'a [Frame]> {
        self.lines.get(&(member.bar, member.segment)).map(|line| line.frames.as_slice())
    }

    /// The frame on the center line where a member meets the others.
    pub(super) fn middle(&self, member: &MemberPlace) -> Option<Frame> {
        let balance = self.balance(member)?;
        let length = in_mm(balance.forged_length);
        let share = if length > 0.0 { member.at_mm(balance) / length } else { 0.0 };
        Path::new(self.frames(member)?).frame_at(share)
    }

    /// The frame at one end of a member's segment.
    pub(super) fn end(&self, member: &MemberPlace, end: End) -> Option<Frame> {
        let frames = self.frames(member)?;
        match end {
            End::Start => frames.first().copied(),
            End::Far => frames.last().copied(),
        }
    }

    /// Where a member is met on its named side: `up` points out of it, `along` runs along the bar; at an end, up.
    pub(super) fn face(&self, member: &MemberPlace) -> Option<Frame> {
        self.face_on(member, member.side)
    }

    /// Where a member is met on the side opposite to its named one.
    pub(super) fn back(&self, member: &MemberPlace) -> Option<Frame> {
        self.face_on(
            member,
            match member.side {
                PartSide::Around(side) => PartSide::Around(side + PI),
                PartSide::Start => PartSide::End,
                PartSide::End => PartSide::Start,
            },
        )
    }

    fn face_on(&self, member: &MemberPlace, side: PartSide) -> Option<Frame> {
        match side {
            PartSide::Around(side) => {
                let frame = self.middle(member)?;
                let balance = self.balance(member)?;
                let reach = balance.reach_mm(member.at_mm(balance), side);
                let [toward, up] = of_side(side);
                let out = frame.direction([0.0, toward, up]);
                Some(seat(plus(frame.at, times(out, reach)), out, frame.along))
            }
            PartSide::Start => {
                let frame = self.end(member, End::Start)?;
                Some(seat(frame.at, times(frame.along, -1.0), frame.up))
            }
            PartSide::End => {
                let frame = self.end(member, End::Far)?;
                Some(seat(frame.at, frame.along, frame.up))
            }
        }
    }

    /// The shoulder of a tenon: `up` points to the tenon's tip.
    ///
    /// The tenon's other end is the one where its bar goes on; between two parts it is taken to be its start.
    pub(super) fn shoulder(&self, member: &MemberPlace) -> Option<Frame> {
        let bar = self.plan.bars.get(member.bar)?;
        let before = bar.before_in_chain(member.segment);
        let goes_on = before.iter().any(|at| bar.segment(*at).is_some_and(|segment| segment.form.is_finished()));
        if goes_on {
            let frame = self.end(member, End::Start)?;
            return Some(seat(frame.at, frame.along, frame.up));
        }
        let frame = self.end(member, End::Far)?;
        Some(seat(frame.at, times(frame.along, -1.0), frame.up))
    }

    /// From the middle of a member that stands in a frame to its surface, in a direction across it, in mm.
    pub(super) fn reach_toward(&self, member: &MemberPlace, frame: &Frame, direction: [f64; 3]) -> f64 {
        let side = dot(direction, frame.toward).atan2(dot(direction, frame.up));
        self.balance(member).map_or(0.0, |balance| balance.reach_mm(member.at_mm(balance), side))
    }
}

/// A frame on a surface.
pub(super) fn seat(at: [f64; 3], out: [f64; 3], along: [f64; 3]) -> Frame {
    Frame { at, along, toward: cross(out, along), up: out }
}
