//! The history of a plan: undo, redo, and gestures that count as one step.

use super::{Edit, Gave, Refusal};
use crate::plan::Plan;
use std::collections::VecDeque;
use std::sync::Arc;

/// How many steps can be taken back.
const MOST_STEPS: usize = 500;

/// A plan with the steps that led to it.
#[derive(Clone, Debug)]
pub struct History {
    plan: Arc<Plan>,
    undone: Vec<Arc<Plan>>,
    done: VecDeque<Arc<Plan>>,
    gesture: Option<Arc<Plan>>,
    revision: u64,
}

impl History {
    /// The history of a plan that was just opened or begun.
    pub fn new(plan: Plan) -> Self {
        Self { plan: Arc::new(plan), undone: Vec::new(), done: VecDeque::new(), gesture: None, revision: 0 }
    }

    /// The plan as it stands.
    pub fn plan(&self) -> &Plan {
        &self.plan
    }

    /// The plan as it stands, to be kept: cheap to clone and to compare by [`Arc::ptr_eq`].
    pub fn snapshot(&self) -> Arc<Plan> {
        Arc::clone(&self.plan)
    }

    /// A number that changes whenever the plan does.
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// Applies an edit. Within a gesture it starts from the gesture's beginning, so that a drag does not add up.
    ///
    /// # Errors
    /// Where the edit is refused; the plan stays as it was.
    pub fn apply(&mut self, edit: &Edit) -> Result<Vec<Gave>, Refusal> {
        let from = self.gesture.clone().unwrap_or_else(|| Arc::clone(&self.plan));
        let (next, gave) = edit.applied(&from)?;
        if next != *self.plan {
            if self.gesture.is_none() {
                self.remember(Arc::clone(&self.plan));
            }
            self.set(Arc::new(next));
        }
        Ok(gave)
    }

    /// Begins a gesture: all edits until it ends count as one step.
    pub fn begin(&mut self) {
        self.commit();
        self.gesture = Some(Arc::clone(&self.plan));
    }

    /// Whether a gesture is under way.
    pub fn in_gesture(&self) -> bool {
        self.gesture.is_some()
    }

    /// Ends the gesture and keeps what it did as one step.
    pub fn commit(&mut self) {
        if let Some(start) = self.gesture.take()
            && *start != *self.plan
        {
            self.remember(start);
        }
    }

    /// Ends the gesture and takes back what it did.
    pub fn cancel(&mut self) {
        if let Some(start) = self.gesture.take() {
            self.set(start);
        }
    }

    /// Takes the last step back; whether there was one.
    pub fn undo(&mut self) -> bool {
        self.commit();
        let Some(before) = self.done.pop_back() else { return false };
        self.undone.push(Arc::clone(&self.plan));
        self.set(before);
        true
    }

    /// Does the step again that was last taken back; whether there was one.
    pub fn redo(&mut self) -> bool {
        self.commit();
        let Some(after) = self.undone.pop() else { return false };
        self.done.push_back(Arc::clone(&self.plan));
        self.set(after);
        true
    }

    /// Whether there is a step to take back.
    pub fn can_undo(&self) -> bool {
        !self.done.is_empty()
    }

    /// Whether there is a step to do again.
    pub fn can_redo(&self) -> bool {
        !self.undone.is_empty()
    }

    fn remember(&mut self, before: Arc<Plan>) {
        self.undone.clear();
        self.done.push_back(before);
        if self.done.len() > MOST_STEPS {
            self.done.pop_front();
        }
    }

    fn set(&mut self, plan: Arc<Plan>) {
        self.plan = plan;
        self.revision += 1;
    }
}
