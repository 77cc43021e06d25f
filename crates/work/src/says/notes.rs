//! What the plan notes on its parts, told where a smith needs it: at the step that works the part first, before anything is done that
//! the note would have another way.

use crate::job::site::Site;
use crate::job::task::Task;
use crate::seen::OrderFinding;
use crate::step::WorkedStep;
use fh_core::findings::{Finding, Severity};
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

/// What is worth knowing of a plan and is wanted in the hand: how the metal will behave. The rest is for the desk.
const AT_THE_ANVIL: [&str; 6] =
    ["upset-likely-to-buckle", "spread-not-drawn", "spread-in-doubt", "as-it-grows", "swells", "spread-unknown"];

/// For each step the notes on the plan and on the order that its smith needs, in short.
pub(crate) fn anvil_notes(
    sites: &[Site<'_>],
    steps: &[WorkedStep],
    of_plan: &[Finding],
    of_order: &[OrderFinding],
) -> Vec<Vec<String>> {
    let mut all = vec![Vec::new(); steps.len()];
    let is_wanted = |finding: &Finding| finding.severity == Severity::Note && AT_THE_ANVIL.contains(&finding.id);
    for finding in of_plan.iter().filter(|finding| is_wanted(finding)) {
        let place = finding.place.bar.zip(finding.place.segment);
        let shapes = |task: &Task, part: usize| task.part == Some(part) && task.operation.is_shaping();
        let step = place.and_then(|(bar, part)| {
            let is_shaped = |step: &WorkedStep| step.bar == Some(bar) && step.tasks.iter().any(|it| shapes(it, part));
            steps.iter().position(is_shaped).or_else(|| first_of(steps, sites.get(bar)?.index, part))
        });
        step.and_then(|step| all.get_mut(step)).into_iter().for_each(|notes| notes.push(finding.message.clone()));
    }
    for found in of_order.iter().filter(|found| found.accepted.is_none() && is_wanted(&found.finding)) {
        // The step that it is told at needs no number and no name.
        let message = found.finding.message.split_once("): ").map_or(found.finding.message.as_str(), |(_, rest)| rest);
        let notes = found.steps.first().and_then(|step| all.get_mut(*step));
        notes.into_iter().filter(|notes| !notes.iter().any(|note| note == message)).for_each(|notes| {
            notes.push(message.to_owned());
        });
    }
    all
}

/// The step that works a part first; of one that is worked by none the check of its bar.
fn first_of(steps: &[WorkedStep], bar: usize, part: usize) -> Option<usize> {
    let on_bar = |step: &WorkedStep| step.bar == Some(bar);
    let works = |step: &WorkedStep| on_bar(step) && step.tasks.iter().any(|task| task.part == Some(part));
    let checks = |task: &Task| task.operation == Operation::Check;
    let is_checked = |step: &WorkedStep| on_bar(step) && step.tasks.iter().any(checks);
    let first = steps.iter().position(works);
    first.or_else(|| steps.iter().rposition(is_checked)).or_else(|| steps.iter().rposition(on_bar))
}
