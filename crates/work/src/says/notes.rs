//! What the plan notes on its parts, told where a smith needs it: at the step that works the part first, before anything is done that
//! the note would have another way.

use crate::job::site::Site;
use crate::job::task::Task;
use crate::step::WorkedStep;
use fh_core::plan::Operation;

/// For each step what the plan notes on the parts that it is the first to work; what no step works is told at the check of its bar, or
/// at the bar's last step.
pub(crate) fn part_notes(sites: &[Site<'_>], steps: &[WorkedStep]) -> Vec<Vec<String>> {
    let mut all = vec![Vec::new(); steps.len()];
    for site in sites {
        for part in site.parts() {
            let note = part.segment.notes.as_deref().map_or("", str::trim);
            let Some(step) = first_of(steps, site.index, part.at).filter(|_| !note.is_empty()) else { continue };
            let is_alone = steps[step].parts() == [part.at];
            all[step].push(if is_alone { note.to_owned() } else { format!("“{}”: {note}", site.name(part.at)) });
        }
    }
    all
}

/// The step that works a part first; of one that is worked by none the check of its bar.
pub(crate) fn first_of(steps: &[WorkedStep], bar: usize, part: usize) -> Option<usize> {
    let on_bar = |step: &WorkedStep| step.bar == Some(bar);
    let works = |step: &WorkedStep| on_bar(step) && step.tasks.iter().any(|task| task.part == Some(part));
    let checks = |task: &Task| task.operation == Operation::Check;
    let is_checked = |step: &WorkedStep| on_bar(step) && step.tasks.iter().any(checks);
    let first = steps.iter().position(works);
    first.or_else(|| steps.iter().rposition(is_checked)).or_else(|| steps.iter().rposition(on_bar))
}
