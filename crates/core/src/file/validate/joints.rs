//! The joints of a plan: what they must say. Whether what they name is there is told by the findings.

use super::{Checked, refuse};
use crate::file::key_path::KeyPath;
use crate::plan::{Joint, Member};

/// Checks the list of joints.
pub(super) fn check_joints(joints: &[Joint], at: &KeyPath) -> Checked {
    joints.iter().enumerate().try_for_each(|(index, joint)| check_joint(joint, &at.index(index)))
}

fn check_joint(joint: &Joint, at: &KeyPath) -> Checked {
    let moved = at.key("moved");
    if joint.moved.is_empty() {
        return refuse(moved, "a joint places at least one member; this one has none");
    }
    let fixed = at.key("fixed");
    if joint.fixed.turn.is_some() {
        return refuse(fixed.key("turn"), "the member that stays is not turned; turn those that are moved");
    }
    check_member(&joint.fixed, &fixed)?;
    joint.moved.iter().enumerate().try_for_each(|(index, member)| check_member(member, &moved.index(index)))
}

fn check_member(member: &Member, at: &KeyPath) -> Checked {
    match member.copy {
        Some(0) => refuse(at.key("copy"), "0 was found, but copies are counted from 1"),
        _ => Ok(()),
    }
}
