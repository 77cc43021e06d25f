//! Which notes on a plan and on its order are wanted in the hand, and at which step.

use crate::job::site::Site;
use crate::job::task::Task;
use crate::says::notes::first_of;
use crate::step::WorkedStep;
use crate::worked::Worked;
use fh_core::findings::{Finding, Severity};

/// What tells how the metal will behave. The rest is for the desk.
const AT_THE_ANVIL: [&str; 6] =
    ["upset-likely-to-buckle", "spread-not-drawn", "spread-in-doubt", "as-it-grows", "swells", "spread-unknown"];

/// For each step the notes on the plan and on the order that its smith needs, in short.
pub(crate) fn anvil_notes(sites: &[Site<'_>], worked: &Worked, of_plan: &[Finding]) -> Vec<Vec<String>> {
    let steps = &worked.steps;
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
    for found in worked.open_findings().filter(|found| is_wanted(&found.finding)) {
        let message = found.at_its_step.as_ref().unwrap_or(&found.finding.message);
        let notes = found.steps.first().and_then(|step| all.get_mut(*step));
        notes.into_iter().filter(|notes| !notes.iter().any(|note| note == message)).for_each(|notes| {
            notes.push(message.clone());
        });
    }
    all
}
