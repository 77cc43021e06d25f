//! Joints: whether what they name is there, and whether the parts fit each other.

mod bundle;
mod eye;
mod grip;
mod held;
mod in_hole;
mod members;
mod names;
mod twice;
mod unbound;

use super::Finding;
use crate::balance::BarBalance;
use crate::joints::joined;
use crate::plan::Plan;
use held::Held;

/// The ids of these findings.
pub(super) const IDS: [&str; 15] = [
    "joint-unknown",
    "joint-name-twice",
    "joint-members",
    "joint-loop",
    "tenon-hole",
    "tenon-loose",
    "tenon-grip",
    "rivet-hole",
    "rivet-loose",
    "rivet-grip",
    "collar-bundle",
    "collar-loose",
    "hook-eye",
    "weld-side",
    "collar-unbound",
];

pub(super) fn check(plan: &Plan, bars: &[BarBalance], found: &mut Vec<Finding>) {
    let joints = joined(plan);
    unbound::check(plan, &joints, found);
    if plan.joints.is_empty() {
        return;
    }
    names::check(plan, found);
    for joint in &joints {
        let Some(held) = Held::new(plan, bars, joint) else { continue };
        if members::check(&held, found) {
            in_hole::check(&held, found);
            grip::check(&held, found);
            bundle::check(&held, found);
            eye::check(&held, found);
        }
    }
    twice::check(plan, &joints, found);
}
