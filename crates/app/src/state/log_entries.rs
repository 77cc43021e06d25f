//! Entries of the log: which one belongs to a step, and how one takes the place of another.

use fh_core::plan::{Logged, Operation};
use fh_work::WorkedStep;

/// The entries that a step may have, with nothing in them yet: one for each thing that it does, but none for what is done at a
/// joint.
pub(crate) fn blanks(step: &WorkedStep) -> Vec<Logged> {
    let bar = step.step.bar_index();
    if step.step.work.is_empty() {
        return vec![Logged::new(Operation::Own, bar, Vec::new())];
    }
    let deeds = step.step.work.iter().filter(|deed| deed.joint.is_none());
    deeds.map(|deed| Logged::new(deed.operation, bar, deed.parts.clone())).collect()
}

/// Whether two entries are about the same work.
pub(crate) fn is_same(one: &Logged, other: &Logged) -> bool {
    one.operation == other.operation && one.bar_index() == other.bar_index() && one.parts == other.parts
}

/// The entry of the log that is about the same work; the blank one where there is none.
pub(crate) fn written(log: &[Logged], blank: &Logged) -> Logged {
    log.iter().find(|logged| is_same(logged, blank)).unwrap_or(blank).clone()
}

/// The log with an entry in place of what was there about the same work; one that says nothing is taken out.
pub(crate) fn with(log: &[Logged], entry: Logged) -> Vec<Logged> {
    let at = log.iter().position(|logged| is_same(logged, &entry)).unwrap_or(log.len());
    let mut next: Vec<Logged> = log.iter().filter(|logged| !is_same(logged, &entry)).cloned().collect();
    let blank = Logged::new(entry.operation, entry.bar_index(), entry.parts.clone());
    if (Logged { bar: blank.bar, ..entry.clone() }) != blank {
        next.insert(at.min(next.len()), entry);
    }
    next
}

/// The step of an order that an entry is about, and its place.
pub(crate) fn step_of<'a>(steps: &'a [WorkedStep], entry: &Logged) -> Option<(usize, &'a WorkedStep)> {
    steps.iter().enumerate().find(|(_, step)| blanks(step).iter().any(|blank| is_same(blank, entry)))
}

/// The names of a step's sizes, each of its own: `thickness`, `thickness 2`.
pub(crate) fn size_names(step: &WorkedStep) -> Vec<String> {
    let name = |(at, size): (usize, &fh_work::Size)| {
        let before = step.sizes.iter().take(at).filter(|other| other.what == size.what).count();
        if before == 0 { size.what.clone() } else { format!("{} {}", size.what, before + 1) }
    };
    step.sizes.iter().enumerate().map(name).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn entry(operation: Operation, minutes: Option<f64>) -> Logged {
        Logged { minutes, ..Logged::new(operation, 0, vec!["1".to_owned()]) }
    }

    #[test]
    fn an_entry_takes_the_place_of_the_one_before() {
        let log = vec![entry(Operation::Draw, Some(1.0)), entry(Operation::Bend, Some(2.0))];
        let next = with(&log, entry(Operation::Draw, Some(3.0)));
        assert_eq!(next, vec![entry(Operation::Draw, Some(3.0)), entry(Operation::Bend, Some(2.0))]);
        assert_eq!(with(&next, entry(Operation::Draw, None)), vec![entry(Operation::Bend, Some(2.0))]);
        assert_eq!(with(&[], entry(Operation::Draw, None)), Vec::new());
    }

    #[test]
    fn a_first_bar_that_is_written_out_is_the_first_bar() {
        let written_out = Logged { bar: Some(1), ..entry(Operation::Draw, Some(1.0)) };
        assert_eq!(with(&[written_out], entry(Operation::Draw, None)), Vec::new());
    }
}
