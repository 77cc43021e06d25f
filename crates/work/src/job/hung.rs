//! Rings that hang in each other: the last of them is closed where it is put on.

use crate::job::site::{Part, Site};
use fh_core::plan::{Bend, Form, Joint, JointKind, Member, Plan, Segment};

/// The segment that a member of a joint names.
pub(crate) fn segment<'p>(plan: &'p Plan, member: &Member) -> Option<&'p Segment> {
    let bar = plan.bars.iter().find(|bar| bar.name == member.bar)?;
    bar.flat().into_iter().map(|flat| flat.segment).find(|segment| segment.name == member.segment)
}

/// The ring that is closed at a joint, because it cannot be put on closed: what it hangs on is a ring, or a part in the middle of its
/// bar that nothing thinner leads to.
pub(crate) fn closed_there<'p>(plan: &Plan, joint: &'p Joint) -> Option<&'p Member> {
    let ring = joint.moved.last().filter(|ring| joint.kind == JointKind::Hook && is_ring(plan, ring))?;
    let others = joint.members().filter(|member| *member != ring);
    others.into_iter().all(|member| is_ring(plan, member) || is_enclosed(plan, member)).then_some(ring)
}

/// Whether everything in a joint is a ring.
pub(crate) fn hangs_in_a_ring(plan: &Plan, joint: &Joint) -> bool {
    joint.members().all(|member| is_ring(plan, member))
}

fn is_ring(plan: &Plan, member: &Member) -> bool {
    segment(plan, member).is_some_and(|segment| matches!(segment.bend, Some(Bend::Ring { .. })))
}

/// Whether a straight part has something on both sides of it that a ring does not slip over: a shoulder, a flag, a boss, a split
/// or a bend.
fn is_enclosed(plan: &Plan, member: &Member) -> bool {
    let Some(bar) = plan.bars.iter().find(|bar| bar.name == member.bar) else { return false };
    let Some(at) = bar.segments.iter().position(|segment| segment.name == member.segment) else { return false };
    let stops = |segment: &Segment| {
        let is_wide = matches!(segment.form, Form::Shoulder(_) | Form::Flag(_) | Form::Hole(_) | Form::Split(_));
        is_wide || segment.bend.as_ref().is_some_and(|bend| !matches!(bend, Bend::Twist { .. }))
    };
    bar.segments[at].bend.is_none() && bar.segments[..at].iter().any(stops) && bar.segments[at + 1..].iter().any(stops)
}

/// The joint at which a part is closed: its number and what it is called.
pub(crate) fn closed_at(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    let own = |member: &Member| member.bar == site.bar.name && member.segment == part.segment.name;
    let mut joints = site.plan.joints.iter().enumerate();
    let (number, joint) = joints.find(|(_, joint)| closed_there(site.plan, joint).is_some_and(own))?;
    Some(joint.title(number))
}

/// Whether a joint welds ends of one bar on each other, which makes a ring of it.
pub(crate) fn closes_a_ring(joint: &Joint) -> bool {
    let of = |member: &Member| (member.bar.clone(), member.copy.unwrap_or(1));
    joint.kind == JointKind::Weld && joint.members().all(|member| of(member) == of(&joint.fixed))
}
