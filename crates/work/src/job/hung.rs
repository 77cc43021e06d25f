//! Rings that hang in each other: the last of them is closed where it is put on.

use crate::job::site::{Part, Site};
use fh_core::plan::{Bend, Joint, JointKind, Member, Plan, Segment};

/// The segment that a member of a joint names.
pub(crate) fn segment<'p>(plan: &'p Plan, member: &Member) -> Option<&'p Segment> {
    let bar = plan.bars.iter().find(|bar| bar.name == member.bar)?;
    bar.flat().into_iter().map(|flat| flat.segment).find(|segment| segment.name == member.segment)
}

/// The ring that is closed at a joint, because all its members are rings: it cannot be put on closed.
pub(crate) fn closed_there<'p>(plan: &Plan, joint: &'p Joint) -> Option<&'p Member> {
    let is_ring =
        |member: &Member| segment(plan, member).is_some_and(|segment| matches!(segment.bend, Some(Bend::Ring { .. })));
    let hangs = joint.kind == JointKind::Hook && joint.members().all(is_ring);
    joint.moved.last().filter(|_| hangs)
}

/// The joint at which a part is closed: its number and what it is called.
pub(crate) fn closed_at(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    let own = |member: &Member| member.bar == site.bar.name && member.segment == part.segment.name;
    let mut joints = site.plan.joints.iter().enumerate();
    let (number, joint) = joints.find(|(_, joint)| closed_there(site.plan, joint).is_some_and(own))?;
    Some(joint.title(number))
}
