//! What the steps of an order do, found in the plan by its own paths.

use fh_core::plan::{Operation, Plan, Step};

/// One thing done: the bar, the operation, and the part or the joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(crate) struct Did {
    pub(crate) bar: usize,
    pub(crate) operation: Operation,
    pub(crate) part: Option<usize>,
    pub(crate) joint: Option<usize>,
    /// The shape on the way that it makes, counted from 0.
    pub(crate) to: Option<usize>,
}

impl Did {
    /// Whether the whole piece is meant: a joint, or what finishes it.
    pub(crate) fn is_of_piece(self) -> bool {
        let finish = matches!(self.operation, Operation::Brush | Operation::Wax);
        self.joint.is_some() || (self.part.is_none() && finish)
    }
}

/// What each step does, one after the other; what names nothing of the plan is left out.
pub(crate) fn deeds(plan: &Plan, steps: &[Step]) -> Vec<Vec<Did>> {
    steps.iter().map(|step| of_step(plan, step)).collect()
}

fn of_step(plan: &Plan, step: &Step) -> Vec<Did> {
    let bar = step.bar_index();
    let Some(of) = plan.bars.get(bar) else { return Vec::new() };
    let mut all = Vec::new();
    for deed in &step.work {
        let to = deed.to.map(|to| to as usize - 1);
        let did = Did { bar, operation: deed.operation, part: None, joint: None, to };
        match deed.joint {
            Some(joint) => all.push(Did { bar: 0, joint: Some(joint as usize - 1), ..did }),
            None if deed.parts.is_empty() => all.push(did),
            None => {
                let found = deed.parts.iter().filter_map(|path| of.find_path(path));
                all.extend(found.map(|part| Did { part: Some(part), ..did }));
            }
        }
    }
    all
}
