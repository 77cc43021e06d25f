//! Names in joints: a bar or a segment that is renamed stays the one that is joined.

use crate::plan::Plan;

/// Follows a bar to its new name, where joints mean it by its old one.
pub(super) fn rename_bar(plan: &mut Plan, bar: usize, name: &str) {
    let Some(old) = plan.bars.get(bar).map(|bar| bar.name.clone()) else { return };
    if plan.bars.iter().position(|other| other.name == old) != Some(bar) {
        return;
    }
    for member in plan.joints.iter_mut().flat_map(|joint| joint.members_mut()) {
        if member.bar == old {
            name.clone_into(&mut member.bar);
        }
    }
}

/// Follows a segment, counted through its bar, to its new name, where joints mean it by its old one.
pub(super) fn rename_segment(plan: &mut Plan, bar: usize, at: usize, name: &str) {
    let Some(of) = plan.bars.get(bar) else { return };
    let flat = of.flat();
    let Some(old) = flat.get(at).map(|flat| flat.segment.name.clone()) else { return };
    let is_meant = flat.iter().position(|flat| flat.segment.name == old) == Some(at)
        && plan.bars.iter().position(|other| other.name == of.name) == Some(bar);
    if !is_meant {
        return;
    }
    let of = of.name.clone();
    for member in plan.joints.iter_mut().flat_map(|joint| joint.members_mut()) {
        if member.bar == of && member.segment == old {
            name.clone_into(&mut member.segment);
        }
    }
}
