//! A joint with what each of its members is: the segment, what follows for it, and words for both.

use crate::balance::{BarBalance, SegmentBalance};
use crate::describe::part_name;
use crate::findings::Place;
use crate::findings::scene::{in_unit, in_unit_apart};
use crate::joints::{Joined, MemberPlace, PartSide, Role};
use crate::metal::{HoleSize, Shape};
use crate::plan::{Bar, InBoth, Limits, Plan, Segment};
use fh_measure::WrittenLength;
use std::f64::consts::PI;

/// A joint whose members are all worked out.
pub(super) struct Held<'a> {
    pub(super) plan: &'a Plan,
    pub(super) joined: &'a Joined,
    pub(super) parts: Vec<Part<'a>>,
}

/// One member.
pub(super) struct Part<'a> {
    pub(super) member: &'a MemberPlace,
    pub(super) bar: &'a Bar,
    pub(super) segment: &'a Segment,
    pub(super) balance: &'a SegmentBalance,
    pub(super) shape: &'a Shape,
}

impl<'a> Held<'a> {
    /// None where a member could not be worked out: other findings tell of that.
    pub(super) fn new(plan: &'a Plan, bars: &'a [BarBalance], joined: &'a Joined) -> Option<Self> {
        let part = |member: &'a MemberPlace| {
            let balance = bars.get(member.bar)?.segments.get(member.segment)?;
            let bar = plan.bars.get(member.bar)?;
            let segment = bar.segment(member.segment)?;
            Some(Part { member, bar, segment, balance, shape: balance.shape.as_ref()? })
        };
        let parts = joined.members.iter().map(part).collect::<Option<_>>()?;
        Some(Self { plan, joined, parts })
    }

    /// The joint by its name or number.
    pub(super) fn title(&self) -> String {
        self.plan.joints.get(self.joined.joint).map_or_else(String::new, |joint| joint.title(self.joined.joint))
    }

    /// The first member of a role.
    pub(super) fn first(&self, role: Role) -> Option<&Part<'a>> {
        self.parts.iter().find(|part| part.member.role == role)
    }

    /// The members of a role.
    pub(super) fn all(&self, role: Role) -> impl Iterator<Item = &Part<'a>> {
        self.parts.iter().filter(move |part| part.member.role == role)
    }

    /// A length in mm in the plan's unit.
    pub(super) fn millimeters(&self, mm: f64) -> String {
        in_unit(mm, self.plan.units.length)
    }

    /// Two lengths in mm in the plan's unit, with as many figures as it takes for them to read differently.
    pub(super) fn apart(&self, lengths: [f64; 2]) -> [String; 2] {
        in_unit_apart(lengths, self.plan.units.length)
    }

    /// How much play is allowed, in mm.
    pub(super) fn play(&self) -> f64 {
        self.limit(self.plan.limits.play.as_ref(), Limits::PLAY)
    }

    fn limit(&self, own: Option<&WrittenLength>, default: InBoth) -> f64 {
        own.map_or_else(|| default.in_unit(self.plan.units.length), WrittenLength::mm)
    }
}

impl Part<'_> {
    pub(super) fn name(&self) -> String {
        part_name(self.bar, self.member.segment)
    }

    pub(super) fn place(&self) -> Place {
        place(self.member.bar, self.member.segment)
    }

    /// Its hole; none where it has none.
    pub(super) fn hole(&self) -> Option<&HoleSize> {
        if let Shape::Hole { hole, .. } = self.shape { Some(hole) } else { None }
    }

    /// From its center line to its surface on a side, at its place, in mm.
    pub(super) fn reach_mm(&self, side: f64) -> f64 {
        self.balance.reach_mm(self.member.at_mm(self.balance), side)
    }

    /// The thickness of a boss, in mm.
    pub(super) fn thickness_mm(&self) -> f64 {
        self.balance.extent_mm(self.member.at_mm(self.balance), 0.0)
    }

    /// The side that faces the other part, where it is one around the bar.
    pub(super) fn side(&self) -> Option<f64> {
        if let PartSide::Around(side) = self.member.side { Some(side) } else { None }
    }

    /// The least play of its section in an opening, in mm: below 0 where it does not go in.
    ///
    /// Both have a middle, so that the one goes into the other where it is no wider in any direction.
    pub(super) fn play_in(&self, opening: &HoleSize, turn: f64) -> f64 {
        let at = self.member.at_mm(self.balance);
        let play = |step: u32| {
            // The width of what goes in lies across the bar of the hole while nothing is turned.
            let angle = PI * f64::from(step) / 72.0;
            opening.extent_mm(angle) - self.balance.extent_mm(at, angle + turn)
        };
        (0..72).map(play).fold(f64::INFINITY, f64::min)
    }
}

/// The place of a part.
pub(super) fn place(bar: usize, segment: usize) -> Place {
    Place { bar: Some(bar), segment: Some(segment) }
}
