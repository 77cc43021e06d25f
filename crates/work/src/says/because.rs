//! Why each step stands where it does.

use crate::job::order::{Job, Ordered};
use crate::job::why::Why;
use crate::says::words;
use crate::step::WorkedStep;
use fh_core::plan::Operation;

/// Why each step stands where it does: of the rules that hold it there, those that say most.
pub(crate) fn because(job: &Job, ordered: &[Ordered], steps: &[WorkedStep]) -> Vec<Vec<String>> {
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
    let mut all: Vec<Vec<(Why, String)>> = vec![Vec::new(); ordered.len()];
    for rule in &job.rules {
        if matches!(rule.why, Why::MarkFirst | Why::FinishLast | Why::StraightFirst | Why::PartLate) {
            continue;
        }
        let (Some(before), Some(after)) = (step_of[rule.before], step_of[rule.after]) else { continue };
        // That the bar is straightened late needs no reason at every step.
        let is_straightened =
            job.tasks[rule.after].operation == Operation::Straighten && rule.why == Why::ForgeBeforeBend;
        if before < after && !is_straightened && !all[before].iter().any(|(why, _)| *why == rule.why) {
            let words = format!(
                "Before step {} ({}): {}",
                after + 1,
                words::lower_first(&steps[after].title),
                rule.why.reason()
            );
            all[before].push((rule.why, words));
        }
    }
    all.into_iter().map(|list| list.into_iter().take(MOST).map(|(_, words)| words).collect()).collect()
}
