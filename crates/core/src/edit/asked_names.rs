//! Names in asked sizes: a bar or a part that is renamed stays the one that is meant.

use crate::plan::Plan;

/// Follows a bar to its new name, where asked sizes mean it by its old one.
pub(super) fn rename_bar(plan: &mut Plan, bar: usize, name: &str) {
    let Some(old) = plan.bars.get(bar).map(|bar| bar.name.clone()) else { return };
    if plan.bars.iter().position(|other| other.name == old) != Some(bar) {
        return;
    }
    let names = plan.sizes.iter_mut().filter_map(|size| size.bar.as_mut());
    names.filter(|of| **of == old).for_each(|of| name.clone_into(of));
}

/// Follows a part, counted through its bar, to its new name, where asked sizes mean it by its old one.
pub(super) fn rename_segment(plan: &mut Plan, bar: usize, at: usize, name: &str) {
    let Some(of) = plan.bars.get(bar) else { return };
    let flat = of.flat();
    let Some(old) = flat.get(at).map(|flat| flat.segment.name.clone()) else { return };
    if flat.iter().position(|flat| flat.segment.name == old) != Some(at) {
        return;
    }
    let bar_name = of.name.clone();
    let is_first = |name: &str| plan.bars.iter().position(|other| other.name == name) == Some(bar);
    let is_meant = is_first(&bar_name);
    for size in &mut plan.sizes {
        let is_here = size.bar.as_ref().map_or(bar == 0, |of| *of == bar_name && is_meant);
        if is_here {
            size.parts_mut().filter(|part| **part == old).for_each(|part| name.clone_into(part));
        }
    }
}
