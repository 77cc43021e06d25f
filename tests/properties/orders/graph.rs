//! The rules between what has to be done, as a graph: what an order breaks of it, and whether some rules run in a circle.
//!
//! Whether the rules are right is no matter of this file: orders in print hold them, in `tests/orders`.

use super::did::Did;
use fh_core::balance::Balance;
use fh_core::plan::Plan;
use fh_work::{Task, Why, rules};
use std::collections::BTreeSet;

/// A broken rule: why, the step that comes too early, and the one it should wait for.
pub(crate) type Broken = (Why, usize, usize);

/// Every pair of which one has to come before the other, and why.
pub(crate) struct Graph(Vec<(Did, Did, Why)>);

impl Graph {
    pub(crate) fn of(plan: &Plan, balance: &Balance) -> Self {
        let did = |task: Task| Did {
            bar: task.bar,
            operation: task.operation,
            part: task.part,
            joint: task.joint,
            to: task.to,
        };
        // Legs in the way of anvil and vice are a matter of the bar in space at that moment; worked cases hold them.
        let all = rules(plan, balance).into_iter().filter(|(.., why)| *why != Why::MiddleFirst);
        Self(all.map(|(before, after, why)| (did(before), did(after), why)).collect())
    }

    /// The rules that an order breaks, by its steps.
    pub(crate) fn broken(&self, steps: &[Vec<Did>]) -> BTreeSet<Broken> {
        let mut found = BTreeSet::new();
        for (before, after, why) in &self.0 {
            let (Some([_, last]), Some([first, _])) = (first_and_last(*before, steps), first_and_last(*after, steps))
            else {
                continue;
            };
            if first < last {
                found.insert((*why, first.0, last.0));
            }
        }
        found
    }

    /// Whether some rules run in a circle, so that one of them must give way.
    pub(crate) fn runs_in_a_circle(&self) -> bool {
        let mut left: BTreeSet<Did> = self.0.iter().flat_map(|(before, after, _)| [*before, *after]).collect();
        loop {
            let waits = |did: &Did| self.0.iter().any(|(before, after, _)| after == did && left.contains(before));
            let free: Vec<Did> = left.iter().copied().filter(|did| !waits(did)).collect();
            if free.is_empty() {
                return !left.is_empty();
            }
            left.retain(|did| !free.contains(did));
        }
    }
}

/// Where a thing is done for the first and for the last time.
fn first_and_last(did: Did, steps: &[Vec<Did>]) -> Option<[(usize, usize); 2]> {
    let places = steps.iter().enumerate().flat_map(|(step, list)| {
        let here = list.iter().enumerate().filter(|(_, other)| **other == did);
        here.map(move |(within, _)| (step, within)).collect::<Vec<_>>()
    });
    let all: Vec<(usize, usize)> = places.collect();
    Some([*all.first()?, *all.last()?])
}
