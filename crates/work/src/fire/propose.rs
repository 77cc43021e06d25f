//! The program's proposal as steps.

use crate::fire::hearth::Fire;
use crate::fire::schedule::schedule;
use crate::job::order::{Job, Ruled};
use crate::job::site::Site;
use crate::job::task::Task;
use fh_core::plan::{Deed, Step};

/// The proposal of the program as steps, by the rules that can be kept.
pub(crate) fn propose(sites: &[Site<'_>], fire: Option<&Fire>, job: &Job, ruled: &Ruled) -> Vec<Step> {
    let mut steps = Vec::new();
    for ((site, bar), rules) in sites.iter().zip(job.starts.windows(2)).zip(&ruled.kept) {
        let own = &job.tasks[bar[0]..bar[1]];
        let paths = site.bar.paths();
        for unit in schedule(site, fire, own, rules) {
            let tasks: Vec<Task> = unit.into_iter().map(|task| own[task]).collect();
            steps.push(step_of(&tasks, |_, at| paths.get(at).cloned()));
        }
    }
    let of_piece = job.starts.last().map_or(&[][..], |first| &job.tasks[*first..]);
    steps.extend(of_piece.iter().map(|task| step_of(&[*task], |_, _| None)));
    steps
}

/// A step that does some tasks; `path` names a part of a bar.
fn step_of(tasks: &[Task], path: impl Fn(usize, usize) -> Option<String>) -> Step {
    let bar = tasks.first().map_or(0, |task| task.bar);
    let mut work: Vec<Deed> = Vec::new();
    for task in tasks {
        let parts: Vec<String> = task.part.and_then(|at| path(bar, at)).into_iter().collect();
        let joint = task.joint.map(|joint| joint as u32 + 1);
        let to = task.to.map(|to| to as u32 + 1);
        match work.last_mut() {
            Some(deed) if deed.operation == task.operation && deed.to == to && joint.is_none() => {
                deed.parts.extend(parts)
            }
            _ => work.push(Deed { operation: task.operation, parts, joint, to }),
        }
    }
    Step { bar: (bar > 0).then_some(bar as u32 + 1), work, ..Step::default() }
}
