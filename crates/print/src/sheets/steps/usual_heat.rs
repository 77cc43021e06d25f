//! How hot most steps of an order are worked: told once, and not at each of them.

use fh_core::describe::lower_first;
use fh_core::plan::Plan;
use fh_work::Worked;

/// How hot most steps are worked: `light yellow, 1200 °C, down to cherry red, 850 °C`; none where nothing is worked hot.
pub(in crate::sheets) fn usual_heat(plan: &Plan, worked: &Worked) -> Option<String> {
    let ranges: Vec<String> = worked.steps.iter().filter_map(|step| step.heat_range(plan)).collect();
    let count = |range: &String| ranges.iter().filter(|other| *other == range).count();
    let most = ranges.iter().fold(None, |best: Option<&String>, next| match best {
        Some(best) if count(best) >= count(next) => Some(best),
        _ => Some(next),
    });
    most.map(|range| lower_first(range))
}
