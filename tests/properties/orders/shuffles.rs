//! Orders that no smith would think of: the proposal's steps moved, merged, split, doubled and left out.

use fh_core::plan::{Deed, Step};
use proptest::prelude::*;
use proptest::sample::Index;

/// One change to a list of steps.
#[derive(Clone, Debug)]
pub(crate) struct Change {
    what: u8,
    at: Index,
    to: Index,
}

/// Some changes, one after the other.
pub(crate) fn changes() -> impl Strategy<Value = Vec<Change>> {
    let change = (0_u8..7, any::<Index>(), any::<Index>()).prop_map(|(what, at, to)| Change { what, at, to });
    proptest::collection::vec(change, 1..12)
}

/// The steps after all changes.
pub(crate) fn changed(mut steps: Vec<Step>, changes: &[Change]) -> Vec<Step> {
    for change in changes {
        if steps.is_empty() {
            break;
        }
        let (at, to) = (change.at.index(steps.len()), change.to.index(steps.len()));
        match change.what {
            0 | 1 => {
                let step = steps.remove(at);
                steps.insert(to.min(steps.len()), step);
            }
            2 => steps.swap(at, to),
            3 => {
                let again = steps[at].clone();
                steps.insert(to, again);
            }
            4 => {
                steps.remove(at);
            }
            5 => merge(&mut steps, at, to),
            _ => split(&mut steps, at),
        }
    }
    steps
}

/// One step takes up the work of another on the same bar.
fn merge(steps: &mut Vec<Step>, at: usize, to: usize) {
    if at != to && steps[at].bar_index() == steps[to].bar_index() {
        let work = steps[at].work.clone();
        steps[to].work.extend(work);
        steps.remove(at);
    }
}

/// The last deed, or the last part of the only one, in a step of its own.
fn split(steps: &mut Vec<Step>, at: usize) {
    let own = &mut steps[at];
    let rest = if own.work.len() > 1 {
        own.work.pop()
    } else {
        let only = own.work.first_mut().filter(|deed| deed.parts.len() > 1);
        only.and_then(|deed| Some(Deed::new(deed.operation, vec![deed.parts.pop()?])))
    };
    if let Some(rest) = rest {
        let step = Step { bar: own.bar, work: vec![rest], ..Step::default() };
        steps.insert(at + 1, step);
    }
}
