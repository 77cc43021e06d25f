//! Joints whose members are all there.

use super::lookup::Lookup;
use super::place::{MemberPlace, Role};
use crate::plan::{JointKind, Plan};

/// A joint whose members are all there.
#[derive(Clone, Debug, PartialEq)]
pub struct Joined {
    /// The joint, counted from 0.
    pub joint: usize,
    /// How it is held together.
    pub kind: JointKind,
    /// Its members: the one that stays, then those that are placed by it.
    pub members: Vec<MemberPlace>,
}

/// The joints of a plan whose members are all there.
pub fn joined(plan: &Plan) -> Vec<Joined> {
    let lookup = Lookup::new(plan);
    let all = plan.joints.iter().enumerate().filter_map(|(index, joint)| {
        let members = joint.members().map(|member| lookup.find(member)).collect::<Result<_, _>>().ok()?;
        Some(Joined { joint: index, kind: joint.kind, members })
    });
    all.collect()
}

impl Joined {
    /// The eye of a hook: the first member that has a hole or is an eye.
    pub fn eye(&self) -> Option<usize> {
        self.members.iter().position(|member| matches!(member.role, Role::Hole | Role::Eye))
    }

    /// Which members lie on each other, in their order; all but a tenon, a rivet or a collar.
    pub fn stacked(&self) -> Vec<usize> {
        let on = |member: &MemberPlace| !matches!(member.role, Role::Tenon | Role::Rivet | Role::Collar);
        (0..self.members.len()).filter(|index| self.kind == JointKind::Weld || on(&self.members[*index])).collect()
    }
}
