//! The open plan: its history, its file, and the balance that follows from it.

use super::Unsaved;
use fh_core::balance::{Balance, Spread, balance, spread};
use fh_core::describe::short_name;
use fh_core::edit::{Edit, Gave, History, Refusal};
use fh_core::plan::Plan;
use fh_store::{Stamp, StoreError};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// A file that a plan was read from or saved to.
#[derive(Clone, Debug)]
pub(crate) struct PlanFile {
    /// Where it is.
    pub(crate) path: PathBuf,
    /// What it looked like then.
    pub(crate) stamp: Stamp,
}

/// The open plan.
pub(crate) struct Document {
    history: History,
    file: Option<PlanFile>,
    /// The plan as it is in its file, or as it was begun; none where it was never in a file and must not be lost.
    saved: Option<Arc<Plan>>,
    balance: Balance,
    spread: Spread,
    balanced: u64,
    serial: u64,
}

impl Document {
    /// A plan that was just begun or opened. `serial` tells it from the one before.
    pub(crate) fn new(plan: Plan, file: Option<PlanFile>, serial: u64) -> Self {
        let history = History::new(plan);
        let (balance, spread) = (balance(history.plan()), spread(history.plan()));
        Self { saved: Some(history.snapshot()), balanced: history.revision(), history, file, balance, spread, serial }
    }

    /// Work that was recovered: it counts as changed until it is saved.
    pub(crate) fn recovered(plan: Plan, file: Option<PlanFile>, serial: u64) -> Self {
        Self { saved: None, ..Self::new(plan, file, serial) }
    }

    /// The plan.
    pub(crate) fn plan(&self) -> &Plan {
        self.history.plan()
    }

    /// What follows from it.
    pub(crate) fn balance(&self) -> &Balance {
        &self.balance
    }

    /// What its tolerances do.
    pub(crate) fn spread(&self) -> &Spread {
        &self.spread
    }

    /// Its file, where it has one.
    pub(crate) fn file(&self) -> Option<&PlanFile> {
        self.file.as_ref()
    }

    /// A number that no other open plan has.
    pub(crate) fn serial(&self) -> u64 {
        self.serial
    }

    /// A number that changes whenever the plan does.
    pub(crate) fn revision(&self) -> u64 {
        self.history.revision()
    }

    /// Whether anything would be lost if it were closed now.
    pub(crate) fn is_changed(&self) -> bool {
        let Some(saved) = &self.saved else { return true };
        let now = self.history.snapshot();
        !Arc::ptr_eq(saved, &now) && **saved != *now
    }

    /// The plan as it is in its file, or as it was begun; none where it was never in a file and must not be lost.
    pub(crate) fn saved_plan(&self) -> Option<&Plan> {
        self.saved.as_deref()
    }

    /// What it is called: its title, or else its file's name.
    pub(crate) fn name(&self) -> String {
        if !self.plan().title.trim().is_empty() {
            return short_name(&self.plan().title);
        }
        let file = self.file.as_ref().and_then(|file| file.path.file_name());
        file.map_or_else(|| "Untitled".to_owned(), |name| name.to_string_lossy().into_owned())
    }

    /// A name for a new file of it, without its ending.
    pub(crate) fn file_stem(&self) -> String {
        let words = self.plan().title.to_lowercase();
        let words: Vec<_> = words.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
        if words.is_empty() { "plan".to_owned() } else { words.join("-") }
    }

    /// The work that may have to be kept, given how it is put in words.
    pub(crate) fn unsaved<'a>(&'a self, text: &'a dyn Fn() -> String) -> Unsaved<'a> {
        let file = self.file.as_ref().map(|file| (file.path.as_path(), &file.stamp));
        Unsaved { is_changed: self.is_changed(), place: (self.serial, self.revision()), file, text }
    }

    /// Applies an edit; a gesture under way ends first, so that the edit is a step of its own.
    pub(crate) fn edit(&mut self, edit: &Edit) -> Result<Vec<Gave>, Refusal> {
        self.history.commit();
        let done = self.history.apply(edit);
        self.rebalance();
        done
    }

    /// Begins a gesture.
    pub(crate) fn begin(&mut self) {
        self.history.begin();
    }

    /// Applies an edit within a gesture.
    pub(crate) fn drag(&mut self, edit: &Edit) -> Result<Vec<Gave>, Refusal> {
        let done = self.history.apply(edit);
        self.rebalance();
        done
    }

    /// Ends a gesture and keeps what it did.
    pub(crate) fn commit(&mut self) {
        self.history.commit();
    }

    /// Ends a gesture and takes back what it did.
    pub(crate) fn cancel(&mut self) {
        self.history.cancel();
        self.rebalance();
    }

    /// Takes the last step back.
    pub(crate) fn undo(&mut self) -> bool {
        let done = self.history.undo();
        self.rebalance();
        done
    }

    /// Does the step again that was last taken back.
    pub(crate) fn redo(&mut self) -> bool {
        let done = self.history.redo();
        self.rebalance();
        done
    }

    /// Whether there is a step to take back.
    pub(crate) fn can_undo(&self) -> bool {
        self.history.can_undo()
    }

    /// Whether there is a step to do again.
    pub(crate) fn can_redo(&self) -> bool {
        self.history.can_redo()
    }

    /// Saves the plan. Without `overwrite` a file that is there unexpectedly or was changed by someone else is kept.
    pub(crate) fn save(&mut self, path: &Path, overwrite: bool) -> Result<(), StoreError> {
        self.history.commit();
        let own = self.file.as_ref().filter(|file| file.path == path);
        let stamp = fh_store::save(path, self.plan(), own.map(|file| &file.stamp), overwrite)?;
        self.file = Some(PlanFile { path: path.to_owned(), stamp });
        self.saved = Some(self.history.snapshot());
        Ok(())
    }

    fn rebalance(&mut self) {
        if self.balanced != self.history.revision() {
            self.balance = balance(self.history.plan());
            self.spread = spread(self.history.plan());
            self.balanced = self.history.revision();
        }
    }
}
