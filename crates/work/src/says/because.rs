//! Why each step stands where it does.

use crate::job::order::{Job, Ordered};
use crate::job::why::Why;
use crate::step::WorkedStep;
use fh_core::describe::lower_first;
use fh_core::plan::Operation;

/// Why each step stands where it does: of the rules that hold it there, those that say most.
pub(crate) fn because(job: &Job, ordered: &[Ordered]) -> Vec<Vec<(usize, Why)>> {
    /// A smith reads no more than so many.
    const MOST: usize = 3;
    let numbers = job.numbers();
    let mut step_of = vec![None; job.tasks.len()];
    for (number, ordered) in ordered.iter().enumerate() {
        for task in &ordered.tasks {
            if let Some(task) = numbers.get(task) {
                step_of[*task] = Some(number);
            }
        }
    }
    let mut all: Vec<Vec<(usize, Why)>> = vec![Vec::new(); ordered.len()];
    for rule in &job.rules {
        if matches!(rule.why, Why::MarkFirst | Why::FinishLast | Why::StraightFirst | Why::PartLate) {
            continue;
        }
        let (Some(before), Some(after)) = (step_of[rule.before], step_of[rule.after]) else { continue };
        // That the bar is straightened late needs no reason at every step.
        let is_straightened =
            job.tasks[rule.after].operation == Operation::Straighten && rule.why == Why::ForgeBeforeBend;
        if before < after && !is_straightened && !all[before].iter().any(|(_, why)| *why == rule.why) {
            all[before].push((after, rule.why));
        }
    }
    all.iter_mut().for_each(|list| list.truncate(MOST));
    all
}

/// The reasons of one step in words, each with the step that it comes before.
pub(crate) fn words(before: &[(usize, Why)], steps: &[WorkedStep]) -> Vec<String> {
    let one = |(after, why): &(usize, Why)| {
        format!("Before step {} ({}): {}", after + 1, lower_first(&steps[*after].title), why.reason())
    };
    before.iter().map(one).collect()
}

/// Why the steps come in this order: each reason once, with the steps that it holds for.
pub(crate) fn reasons(steps: &[WorkedStep]) -> Vec<String> {
    let mut all: Vec<(Why, Vec<String>)> = Vec::new();
    for (number, step) in steps.iter().enumerate() {
        for (after, why) in &step.before {
            let pair = format!("{} before {}", number + 1, after + 1);
            match all.iter_mut().find(|(known, _)| known == why) {
                Some((_, pairs)) => pairs.push(pair),
                None => all.push((*why, vec![pair])),
            }
        }
    }
    all.into_iter().map(|(why, pairs)| format!("{}: {}", pairs.join(", "), why.reason())).collect()
}
