//! Changes of a list of steps. Nothing is forbidden here: what a change breaks is told by the findings.

use fh_core::plan::{Deed, Step, Target};

/// Puts a step at the place of another one.
pub(crate) fn move_step(steps: &mut Vec<Step>, from: usize, to: usize) {
    if from < steps.len() && to < steps.len() {
        let step = steps.remove(from);
        steps.insert(to, step);
    }
}

/// Puts the next step into this one; whether there was one on the same bar.
pub(crate) fn merge(steps: &mut Vec<Step>, at: usize) -> bool {
    if !can_merge(steps, at) {
        return false;
    }
    let next = steps.remove(at + 1);
    if let Some(step) = steps.get_mut(at) {
        *step = merged(step, next);
    }
    true
}

/// Whether the next step works on the same bar.
pub(crate) fn can_merge(steps: &[Step], at: usize) -> bool {
    let bar = |at: usize| steps.get(at).map(Step::bar_index);
    bar(at).is_some() && bar(at) == bar(at + 1)
}

/// Two steps as one: the deeds of both, and all words of both.
fn merged(first: &Step, next: Step) -> Step {
    let both = |one: &Option<String>, other: Option<String>| match (one, other) {
        (Some(one), Some(other)) if *one != other => Some(format!("{one} {other}")),
        (one, other) => one.clone().or(other),
    };
    let mut work = first.work.clone();
    for deed in next.work {
        if !work.contains(&deed) {
            work.push(deed);
        }
    }
    Step {
        bar: first.bar,
        work,
        title: first.title.clone().or(next.title),
        tool: both(&first.tool, next.tool),
        place: first.place.or(next.place),
        edge: first.edge.clone().or(next.edge),
        up: first.up.clone().or(next.up),
        reach: all_targets(first.reach.as_deref(), next.reach),
        lay: both(&first.lay, next.lay),
        leave: both(&first.leave, next.leave),
        check: both(&first.check, next.check),
        caution: both(&first.caution, next.caution),
        note: both(&first.note, next.note),
        picture: first.picture.clone().or(next.picture),
        heat: first.heat,
        hot: if first.hot == next.hot {
            first.hot
        } else {
            [first.hot, next.hot].contains(&Some(true)).then_some(true)
        },
        minutes: first.minutes.zip(next.minutes).map(|(first, next)| first + next),
    }
}

fn all_targets(first: Option<&[Target]>, next: Option<Vec<Target>>) -> Option<Vec<Target>> {
    match (first, next) {
        (None, next) => next,
        (Some(first), next) => Some(first.iter().cloned().chain(next.unwrap_or_default()).collect()),
    }
}

/// Whether a step does more than one thing, or one thing to more than one part.
pub(crate) fn can_split(step: &Step) -> bool {
    step.work.len() > 1 || step.work.iter().any(|deed| deed.parts.len() > 1)
}

/// Parts a step into one for each of its deeds; a single deed into one for each of its parts. The words stay with the first.
pub(crate) fn split(steps: &mut Vec<Step>, at: usize) -> bool {
    let Some(step) = steps.get(at).filter(|step| can_split(step)).cloned() else { return false };
    let deeds: Vec<Deed> = match step.work.as_slice() {
        [one] => one.parts.iter().map(|part| Deed { parts: vec![part.clone()], ..one.clone() }).collect(),
        all => all.to_vec(),
    };
    let bare = Step { bar: step.bar, ..Step::default() };
    let each = deeds.into_iter().enumerate().map(|(number, deed)| {
        let words = if number == 0 { step.clone() } else { bare.clone() };
        Step { work: vec![deed], ..words }
    });
    steps.splice(at..=at, each);
    true
}

#[cfg(test)]
mod tests {
    use super::*;
    use fh_core::plan::Operation;

    fn deed(operation: Operation, parts: &[&str]) -> Deed {
        Deed::new(operation, parts.iter().map(|part| (*part).to_owned()).collect())
    }

    fn step(operation: Operation, parts: &[&str]) -> Step {
        Step { work: vec![deed(operation, parts)], ..Step::default() }
    }

    #[test]
    fn what_is_merged_and_split_again_is_what_it_was() {
        let before = vec![step(Operation::Isolate, &["1"]), step(Operation::Draw, &["1"])];
        let mut steps = before.clone();
        assert!(merge(&mut steps, 0));
        assert_eq!(steps.len(), 1);
        assert!(split(&mut steps, 0));
        assert_eq!(steps, before);
    }

    #[test]
    fn a_single_deed_is_parted_by_its_parts() {
        let mut steps = vec![step(Operation::Draw, &["1", "4.2.1"])];
        assert!(split(&mut steps, 0));
        assert_eq!(steps, vec![step(Operation::Draw, &["1"]), step(Operation::Draw, &["4.2.1"])]);
        assert!(!split(&mut steps, 0), "there is nothing left to part");
    }

    #[test]
    fn steps_of_two_bars_are_not_merged() {
        let other = Step { bar: Some(2), ..step(Operation::Draw, &["1"]) };
        let mut steps = vec![step(Operation::Draw, &["1"]), other];
        assert!(!merge(&mut steps, 0) && !merge(&mut steps, 1) && !merge(&mut steps, 7));
    }

    #[test]
    fn merging_loses_no_words() {
        let first = Step { caution: Some("Hot.".to_owned()), minutes: Some(1.0), ..step(Operation::Draw, &["1"]) };
        let next = Step { caution: Some("Sharp.".to_owned()), minutes: Some(0.5), ..step(Operation::Draw, &["2"]) };
        let mut steps = vec![first, next];
        assert!(merge(&mut steps, 0));
        assert_eq!(steps[0].caution.as_deref(), Some("Hot. Sharp."));
        assert_eq!(steps[0].minutes, Some(1.5));
    }

    #[test]
    fn a_step_moves_up_and_down() {
        let all = [Operation::Mark, Operation::Draw, Operation::Bend];
        let mut steps: Vec<Step> = all.iter().map(|operation| step(*operation, &["1"])).collect();
        move_step(&mut steps, 2, 0);
        let now: Vec<_> = steps.iter().map(|step| step.work[0].operation).collect();
        assert_eq!(now, [Operation::Bend, Operation::Mark, Operation::Draw]);
        move_step(&mut steps, 0, 9);
        assert_eq!(steps.len(), 3);
    }
}
