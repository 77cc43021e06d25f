//! How hot most steps of an order are worked: told once, and not at each of them.

use fh_core::describe::lower_first;
use fh_core::plan::Plan;
use fh_work::WorkedStep;

/// What stands between the heat out of the fire and the one that work stops at.
const DOWN: &str = ", down to ";

/// How hot most steps are worked: `light yellow, 1200 °C, down to cherry red, 850 °C`; none where nothing is worked hot.
pub(in crate::sheets) fn usual_heat(plan: &Plan, steps: &[WorkedStep]) -> Option<String> {
    let ranges: Vec<String> = steps.iter().filter_map(|step| step.heat_range(plan)).collect();
    let count = |range: &String| ranges.iter().filter(|other| *other == range).count();
    let most = ranges.iter().fold(None, |best: Option<&String>, next| match best {
        Some(best) if count(best) >= count(next) => Some(best),
        _ => Some(next),
    });
    most.map(|range| lower_first(range))
}

/// How hot a step is worked, where that is another heat than most have: `down to dark red` where it comes as hot out of the fire.
pub(in crate::sheets) fn other_heat(plan: &Plan, step: &WorkedStep, usual: Option<&str>) -> Option<String> {
    let own = lower_first(&step.heat_range(plan)?);
    let usual = usual.filter(|usual| *usual != own)?;
    Some(match (own.split_once(DOWN), usual.split_once(DOWN)) {
        // Its color says it in a word.
        (Some((from, to)), Some((usual_from, _))) if from == usual_from => {
            format!("down to {}", to.split_once(", ").map_or(to, |(looks, _)| looks))
        }
        _ => own,
    })
}
