//! Changes of the order of work, as data. No order is forbidden: what a change breaks is told by the findings.

use super::Refusal;
use crate::plan::{Deed, Plan, Step, Target, Work};

/// A change of the steps. A step is named by its place in the order.
#[derive(Clone, Debug, PartialEq)]
pub enum StepChange {
    /// Lets a step stand at the place of another one.
    Move {
        /// Where it is.
        from: usize,
        /// Where it comes to be.
        to: usize,
    },
    /// Another step in the place of one.
    Replace {
        /// The place.
        at: usize,
        /// The step.
        step: Box<Step>,
    },
    /// Puts a step before the one at a place; at the end where there is none.
    Insert {
        /// The place.
        at: usize,
        /// The step.
        step: Box<Step>,
    },
    /// Puts a copy of a step after it.
    Duplicate(usize),
    /// Takes a step out.
    Remove(usize),
    /// Joins the next step to one: the two work on the same bar.
    Join(usize),
    /// Takes a step apart: one for each of its deeds, a single deed by its parts.
    TakeApart(usize),
}

impl StepChange {
    /// The place of the step that the hand is at after the change.
    pub fn leads_to(&self) -> usize {
        match self {
            Self::Duplicate(at) => at.saturating_add(1),
            Self::Move { to: at, .. }
            | Self::Replace { at, .. }
            | Self::Insert { at, .. }
            | Self::Remove(at)
            | Self::Join(at)
            | Self::TakeApart(at) => *at,
        }
    }

    /// The work of a plan with its steps changed. A plan without steps of its own takes those that were proposed.
    pub(super) fn work(&self, plan: &Plan, proposed: &[Step]) -> Result<Work, Refusal> {
        let mut steps = plan.work.steps.clone().unwrap_or_else(|| proposed.to_vec());
        self.change(&mut steps)?;
        Ok(Work { steps: Some(steps), ..plan.work.clone() })
    }

    fn change(&self, steps: &mut Vec<Step>) -> Result<(), Refusal> {
        let count = steps.len();
        let there = |at: usize| if at < count { Ok(at) } else { Err(Refusal::NoSuchPlace) };
        match self {
            Self::Move { from, to } => {
                let (from, to) = (there(*from)?, there(*to)?);
                let step = steps.remove(from);
                steps.insert(to, step);
            }
            Self::Replace { at, step } => *steps.get_mut(*at).ok_or(Refusal::NoSuchPlace)? = (**step).clone(),
            Self::Insert { at, step } => steps.insert((*at).min(count), (**step).clone()),
            Self::Duplicate(at) => {
                let copy = steps.get(*at).ok_or(Refusal::NoSuchPlace)?.clone();
                steps.insert(at + 1, copy);
            }
            Self::Remove(at) => drop(steps.remove(there(*at)?)),
            Self::Join(at) => join(steps, *at)?,
            Self::TakeApart(at) => take_apart(steps, *at)?,
        }
        Ok(())
    }
}

fn join(steps: &mut Vec<Step>, at: usize) -> Result<(), Refusal> {
    if !can_join(steps, at) {
        return Err(Refusal::CannotBe("there is no next step on the same bar".to_owned()));
    }
    let next = steps.remove(at + 1);
    if let Some(step) = steps.get_mut(at) {
        *step = joined(step, next);
    }
    Ok(())
}

/// Whether the step after one works on the same bar.
pub fn can_join(steps: &[Step], at: usize) -> bool {
    let bar = |at: usize| steps.get(at).map(Step::bar_index);
    bar(at).is_some() && bar(at) == bar(at + 1)
}

/// Two steps as one: the deeds of both, and all words of both.
fn joined(first: &Step, next: Step) -> Step {
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
        accepted: next
            .accepted
            .into_iter()
            .fold(first.clone(), |step, one| step.accepting(&one.finding, Some(&one.because)))
            .accepted,
    }
}

fn all_targets(first: Option<&[Target]>, next: Option<Vec<Target>>) -> Option<Vec<Target>> {
    match (first, next) {
        (None, next) => next,
        (Some(first), next) => Some(first.iter().cloned().chain(next.unwrap_or_default()).collect()),
    }
}

/// Whether a step does more than one thing, or one thing to more than one part.
pub fn can_take_apart(step: &Step) -> bool {
    step.work.len() > 1 || step.work.iter().any(|deed| deed.parts.len() > 1)
}

/// The words stay with the first of what a step is taken apart into.
fn take_apart(steps: &mut Vec<Step>, at: usize) -> Result<(), Refusal> {
    let step = steps.get(at).ok_or(Refusal::NoSuchPlace)?.clone();
    if !can_take_apart(&step) {
        return Err(Refusal::CannotBe("the step does one thing to one part".to_owned()));
    }
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
    Ok(())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::plan::{Operation, SectionSpec, Units};

    fn deed(operation: Operation, parts: &[&str]) -> Deed {
        Deed::new(operation, parts.iter().map(|part| (*part).to_owned()).collect())
    }

    fn step(operation: Operation, parts: &[&str]) -> Step {
        Step { work: vec![deed(operation, parts)], ..Step::default() }
    }

    /// The steps after changes, one after the other.
    fn after(steps: &[Step], changes: &[StepChange]) -> Result<Vec<Step>, Refusal> {
        let mut steps = steps.to_vec();
        changes.iter().try_for_each(|change| change.change(&mut steps))?;
        Ok(steps)
    }

    #[test]
    fn what_is_joined_and_taken_apart_again_is_what_it_was() {
        let before = [step(Operation::Isolate, &["1"]), step(Operation::Draw, &["1"])];
        assert_eq!(after(&before, &[StepChange::Join(0)]).unwrap().len(), 1);
        assert_eq!(after(&before, &[StepChange::Join(0), StepChange::TakeApart(0)]).unwrap(), before);
    }

    #[test]
    fn a_single_deed_is_taken_apart_by_its_parts() {
        let both = [step(Operation::Draw, &["1", "4.2.1"])];
        let each = after(&both, &[StepChange::TakeApart(0)]).unwrap();
        assert_eq!(each, [step(Operation::Draw, &["1"]), step(Operation::Draw, &["4.2.1"])]);
        assert!(matches!(after(&each, &[StepChange::TakeApart(0)]), Err(Refusal::CannotBe(_))));
    }

    #[test]
    fn steps_of_two_bars_are_not_joined() {
        let other = Step { bar: Some(2), ..step(Operation::Draw, &["1"]) };
        let steps = [step(Operation::Draw, &["1"]), other];
        for at in [0, 1, 7] {
            assert!(matches!(after(&steps, &[StepChange::Join(at)]), Err(Refusal::CannotBe(_))), "{at}");
        }
    }

    #[test]
    fn joining_loses_no_words() {
        let first = Step { caution: Some("Hot.".to_owned()), minutes: Some(1.0), ..step(Operation::Draw, &["1"]) };
        let next = Step { caution: Some("Sharp.".to_owned()), minutes: Some(0.5), ..step(Operation::Draw, &["2"]) };
        let steps = after(&[first, next], &[StepChange::Join(0)]).unwrap();
        assert_eq!(steps[0].caution.as_deref(), Some("Hot. Sharp."));
        assert_eq!(steps[0].minutes, Some(1.5));
    }

    #[test]
    fn what_is_accepted_is_kept_with_its_reason_and_let_go_without_one() {
        let known = step(Operation::Draw, &["1"]).accepting("thin-too-soon", Some(" my handle "));
        assert_eq!(known.accepts("thin-too-soon"), Some("my handle"));
        let joined = after(&[step(Operation::Isolate, &["1"]), known.clone()], &[StepChange::Join(0)]).unwrap();
        assert_eq!(joined[0].accepts("thin-too-soon"), Some("my handle"));
        for nothing in [None, Some("  ")] {
            assert!(known.clone().accepting("thin-too-soon", nothing).accepted.is_empty());
        }
    }

    #[test]
    fn a_step_moves_up_and_down_and_no_further_than_the_order_goes() {
        let steps = [Operation::Mark, Operation::Draw, Operation::Bend].map(|operation| step(operation, &["1"]));
        let moved = after(&steps, &[StepChange::Move { from: 2, to: 0 }]).unwrap();
        let now: Vec<_> = moved.iter().map(|step| step.work[0].operation).collect();
        assert_eq!(now, [Operation::Bend, Operation::Mark, Operation::Draw]);
        assert_eq!(after(&steps, &[StepChange::Move { from: 0, to: 9 }]), Err(Refusal::NoSuchPlace));
        assert_eq!(after(&steps, &[StepChange::Remove(3)]), Err(Refusal::NoSuchPlace));
    }

    #[test]
    fn the_first_change_makes_the_proposed_order_the_plans_own() {
        let proposed = [step(Operation::Mark, &["1"]), step(Operation::Draw, &["1"])];
        let mut plan = Plan::new("hook", Units::millimeters(), SectionSpec::Stock);
        let change = StepChange::Duplicate(1);
        plan.work = change.work(&plan, &proposed).unwrap();
        assert_eq!(plan.work.steps.as_ref().map(Vec::len), Some(3));
        assert_eq!(change.leads_to(), 2);
        let work = StepChange::Remove(0).work(&plan, &proposed).unwrap();
        assert_eq!(work.steps.map(|steps| steps.len()), Some(2), "its own order is changed, not the proposal");
    }
}
