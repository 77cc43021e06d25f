//! Which parts may meet: neighbours on a bar, and what one joint holds.

use super::body::Body;
use super::part::PartOf;
use fh_core::joints::joined;
use fh_core::plan::Plan;
use std::collections::HashMap;

/// The joints of every part that has one.
pub(super) struct Pairs {
    joints: HashMap<PartOf, Vec<usize>>,
}

impl Pairs {
    pub(super) fn new(plan: &Plan) -> Self {
        let mut joints: HashMap<PartOf, Vec<usize>> = HashMap::new();
        for joint in joined(plan) {
            for member in &joint.members {
                let part = PartOf { bar: member.bar, copy: member.copy, segment: member.segment };
                joints.entry(part).or_default().push(joint.joint);
            }
        }
        Self { joints }
    }

    /// Whether two parts have no business in each other.
    pub(super) fn may_not_meet(&self, first: &Body<'_>, second: &Body<'_>) -> bool {
        let one_bar = first.part.bar == second.part.bar && first.part.copy == second.part.copy;
        if one_bar && first.meets(second) {
            return false;
        }
        let joints = |body: &Body<'_>| self.joints.get(&body.part);
        let (Some(a), Some(b)) = (joints(first), joints(second)) else { return true };
        !a.iter().any(|joint| b.contains(joint))
    }
}
