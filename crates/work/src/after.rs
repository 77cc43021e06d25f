//! The bars and the piece after some of the steps.

use crate::bar::progress::Progress;
use crate::bar::state::state;
use crate::job::site::Site;
use crate::worked::Worked;
use fh_core::balance::{Balance, BarBalance};
use fh_core::plan::{Operation, Plan};

/// A bar after so many of the steps: 0 is the bar as it is cut from the rack.
///
/// It is drawn and weighed as any other bar. None where there is no such bar.
pub fn bar_after(plan: &Plan, balance: &Balance, worked: &Worked, bar: usize, steps: usize) -> Option<BarBalance> {
    let sites = Site::all(plan, balance);
    Some(after_steps(sites.get(bar)?, worked, steps))
}

/// A bar as it is cut, and after each of its own steps: after how many of all steps, and the bar as [`bar_after`] gives it.
pub fn bar_states(plan: &Plan, balance: &Balance, worked: &Worked, bar: usize) -> Vec<(usize, BarBalance)> {
    let sites = Site::all(plan, balance);
    let Some(site) = sites.get(bar) else { return Vec::new() };
    let own = worked.steps.iter().enumerate().filter(|(_, step)| step.bar == Some(bar));
    let counts = std::iter::once(0).chain(own.map(|(number, _)| number + 1));
    counts.map(|count| (count, after_steps(site, worked, count))).collect()
}

fn after_steps(site: &Site<'_>, worked: &Worked, steps: usize) -> BarBalance {
    let done = worked.steps.get(..steps.min(worked.steps.len())).unwrap_or_default();
    let last = done.iter().rfind(|step| step.bar == Some(site.index));
    let mut progress = last.map_or_else(|| Progress::start(site), |step| step.progress());
    let welds = done.iter().flat_map(|step| &step.tasks).filter(|task| task.operation == Operation::Weld);
    welds.filter_map(|task| task.joint).for_each(|joint| progress.weld(site, joint));
    state(site, &progress)
}

/// A plan with those joints only that are made after so many of the steps.
///
/// A joint that no step makes is there from the beginning, as the plan shows it.
pub fn joined_after(plan: &Plan, worked: &Worked, steps: usize) -> Plan {
    let made = |steps: usize| -> Vec<usize> {
        worked.steps.iter().take(steps).flat_map(|step| &step.tasks).filter_map(|task| task.joint).collect()
    };
    let (now, ever) = (made(steps), made(usize::MAX));
    let joints = plan.joints.iter().enumerate().filter(|(joint, _)| now.contains(joint) || !ever.contains(joint));
    Plan { joints: joints.map(|(_, joint)| joint.clone()).collect(), ..plan.clone() }
}

/// All bars after so many of the steps, as a balance of their own.
pub fn after(plan: &Plan, balance: &Balance, worked: &Worked, steps: usize) -> Balance {
    let bars = (0..plan.bars.len()).filter_map(|bar| bar_after(plan, balance, worked, bar, steps)).collect();
    Balance::of_bars(bars)
}
