//! The findings of plan and order together, as lists and figures tell them.

use super::{Desk, Request};
use fh_core::describe::{segment_name, short_name};
use fh_core::findings::{Finding, Severity};
use fh_work::OrderFinding;

/// A finding, and what shows its place.
#[derive(Clone, Copy)]
pub(crate) enum Told<'a> {
    /// Of the plan.
    Plan(&'a Finding),
    /// Of the order of work.
    Order(&'a OrderFinding),
}

impl<'a> Told<'a> {
    /// What was found.
    pub(crate) fn finding(self) -> &'a Finding {
        match self {
            Self::Plan(finding) => finding,
            Self::Order(found) => &found.finding,
        }
    }

    /// The name of what it speaks of: a segment, a bar, a step.
    pub(crate) fn place(self, desk: &Desk<'_>) -> Option<String> {
        match self {
            Self::Order(found) => match found.steps.as_slice() {
                [] => Some("Order of work".to_owned()),
                steps => Some(step_numbers(steps)),
            },
            Self::Plan(finding) => {
                let bar = desk.document.plan().bars.get(finding.place.bar?)?;
                Some(match finding.place.segment {
                    Some(segment) => segment_name(bar, segment),
                    None => short_name(&bar.name),
                })
            }
        }
    }

    /// What shows its place.
    pub(crate) fn show(self) -> Request {
        match self {
            Self::Order(found) => Request::ShowStep(found.steps.first().copied()),
            Self::Plan(finding) => match finding.place.bar {
                Some(bar) => Request::Select(bar, finding.place.segment),
                None => Request::SelectPlan,
            },
        }
    }
}

/// Every finding, the same as `check` tells: the plan's, those of the smith's own steps, what the fire takes against what the
/// marks allow, and bars that run into themselves; the weightiest first.
pub(crate) fn told<'a>(desk: &Desk<'a>) -> Vec<Told<'a>> {
    let plan = desk.document.balance().findings.iter().map(Told::Plan);
    let order = desk.worked.iter().flat_map(|worked| worked.own_findings().map(Told::Order));
    let rest =
        desk.worked.iter().flat_map(|worked| worked.scale_short.iter().chain(&worked.into_itself).map(Told::Plan));
    let mut all: Vec<Told<'a>> = plan.chain(order).chain(rest).collect();
    all.sort_by_key(|told| std::cmp::Reverse(told.finding().severity));
    all
}

/// How many findings there are of each severity, the most severe first; a severity without any is left out.
pub(crate) fn by_severity(all: &[Told<'_>]) -> Vec<(Severity, usize)> {
    let count = |severity| all.iter().filter(|told| told.finding().severity == severity).count();
    let every = [Severity::Stop, Severity::Warning, Severity::Note].map(|severity| (severity, count(severity)));
    every.into_iter().filter(|(_, count)| *count > 0).collect()
}

/// Numbers of steps in words: `Step 3`, `Steps 3, 7`.
pub(crate) fn step_numbers(steps: &[usize]) -> String {
    let numbers: Vec<String> = steps.iter().map(|step| (step + 1).to_string()).collect();
    let word = if numbers.len() == 1 { "Step" } else { "Steps" };
    format!("{word} {}", numbers.join(", "))
}
