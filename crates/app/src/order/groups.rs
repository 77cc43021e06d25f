//! The lines of the order: a line for each heat, and below it its steps.

use fh_core::describe::{short_name, upper_first};
use fh_core::plan::Plan;
use fh_work::{Warmth, Worked, WorkedStep};

/// A line of the list.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Line {
    /// The head of a heat, or of work that is done cold.
    Heat(Group),
    /// A step, counted from 0, and whether it is done hot.
    Step(usize, bool),
}

/// Neighbors that are done in one heat, or cold.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Group {
    /// `Heat 4`, `Heats 2 to 3`, `Cold`.
    pub(super) words: String,
    /// The minutes of all its steps.
    pub(super) minutes: f64,
    pub(super) warmth: Warmth,
    /// Its first step, counted from 0.
    pub(super) first_step: usize,
    bar: Option<usize>,
}

impl Group {
    fn new(number: usize, step: &WorkedStep) -> Self {
        let (warmth, bar) = (step.warmth(), step.bar);
        Self { words: String::new(), minutes: step.minutes, warmth, first_step: number, bar }
    }

    /// Whether a step is done in it too; it is then taken in.
    fn takes(&mut self, step: &WorkedStep) -> bool {
        let joined = match (self.warmth, step.warmth()) {
            // What is cut into the next heat has a head of its own, or all heats would be one.
            (own @ Warmth::Hot { last, .. }, Warmth::Hot { last: end, .. }) if end <= last => Some(own),
            (own, next) if own == next => Some(own),
            _ => None,
        };
        let Some(joined) = joined.filter(|_| step.bar == self.bar) else { return false };
        self.warmth = joined;
        self.minutes += step.minutes;
        true
    }

    fn words(&self, plan: &Plan) -> String {
        let what = upper_first(&self.warmth.words());
        match self.bar {
            None => format!("{what}, the whole piece"),
            Some(bar) if plan.bars.len() > 1 => {
                let name = plan.bars.get(bar).map_or_else(String::new, |bar| short_name(bar.name.trim()));
                if name.is_empty() { format!("{what}, bar {}", bar + 1) } else { format!("{what}, {name}") }
            }
            Some(_) => what,
        }
    }
}

/// The lines of an order.
pub(super) fn lines(plan: &Plan, worked: &Worked) -> Vec<Line> {
    let mut all: Vec<Line> = Vec::with_capacity(worked.steps.len() * 2);
    let mut head: Option<(usize, Group)> = None;
    for (number, step) in worked.steps.iter().enumerate() {
        if !head.as_mut().is_some_and(|(_, group)| group.takes(step)) {
            settle(&mut all, head.take(), plan);
            let group = Group::new(number, step);
            all.push(Line::Heat(group.clone()));
            head = Some((all.len() - 1, group));
        }
        all.push(Line::Step(number, step.warmth().is_hot()));
    }
    settle(&mut all, head, plan);
    all
}

/// Puts the head of a heat in its place once all its steps are known.
fn settle(all: &mut [Line], head: Option<(usize, Group)>, plan: &Plan) {
    if let Some((place, group)) = head
        && let Some(slot) = all.get_mut(place)
    {
        *slot = Line::Heat(Group { words: group.words(plan), ..group });
    }
}
