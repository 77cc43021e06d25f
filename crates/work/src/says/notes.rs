//! What the plan notes on its parts, told where a smith meets it: at the step that works the part last, but before it is closed in.

use crate::job::site::Site;
use crate::job::task::Task;
use crate::step::WorkedStep;
use fh_core::plan::Operation;

/// For each step what the plan notes on the parts that it is the last to work, or the last before they are closed in; what no step works is told at the check of its
/// bar, or at the bar's last step.
pub(crate) fn part_notes(sites: &[Site<'_>], steps: &[WorkedStep]) -> Vec<Vec<String>> {
    let mut all = vec![Vec::new(); steps.len()];
    for site in sites {
        for part in site.parts() {
            let note = part.segment.notes.as_deref().map_or("", str::trim);
            let Some(step) = last_of(steps, site.index, part.at).filter(|_| !note.is_empty()) else { continue };
            let is_alone = steps[step].parts() == [part.at];
            all[step].push(if is_alone { note.to_owned() } else { format!("“{}”: {note}", site.name(part.at)) });
        }
    }
    all
}

/// The step that works a part last; of one that is worked by none the check of its bar.
fn last_of(steps: &[WorkedStep], bar: usize, part: usize) -> Option<usize> {
    let on_bar = |step: &WorkedStep| step.bar == Some(bar);
    let works = |step: &WorkedStep| on_bar(step) && step.tasks.iter().any(|task| task.part == Some(part));
    let checks = |step: &WorkedStep| on_bar(step) && step.tasks.iter().any(|task| task.operation == Operation::Check);
    let last = |wanted: &dyn Fn(&WorkedStep) -> bool| steps.iter().rposition(wanted);
    // What is brushed to be closed in is out of reach afterwards.
    let brushes = |step: &WorkedStep| {
        let closes = |task: &Task| task.operation == Operation::Brush && task.part == Some(part);
        on_bar(step) && step.tasks.iter().any(closes)
    };
    let open = steps.iter().position(brushes).and_then(|brush| steps[..brush].iter().rposition(works));
    open.or_else(|| last(&works)).or_else(|| last(&checks)).or_else(|| last(&on_bar))
}
