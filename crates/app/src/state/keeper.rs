//! Keeps unsaved work in the journal a short while after each change, and drops it once it is saved.

use super::Document;
use fh_store::{Home, Journal, StoreError};

/// How long after the last change work is written, in seconds.
const REST: f64 = 0.6;
/// How long work may go unwritten while it is being changed all the time, in seconds.
const LONGEST: f64 = 3.0;

/// The journal of the open plan, and what is in it.
#[derive(Default)]
pub(crate) struct Keeper {
    journal: Option<Journal>,
    seen: Option<(u64, u64)>,
    changed_at: Option<f64>,
    first_change: Option<f64>,
    holds_work: bool,
}

impl Keeper {
    /// Looks at the plan at a time in seconds: how long until it wants to look again, where work waits to be written.
    pub(crate) fn watch(
        &mut self,
        home: Option<&Home>,
        document: &Document,
        now: f64,
    ) -> Result<Option<f64>, StoreError> {
        let Some(home) = home else { return Ok(None) };
        if !document.is_changed() {
            return self.let_go(document).map(|()| None);
        }
        let place = (document.serial(), document.revision());
        if self.seen != Some(place) {
            self.seen = Some(place);
            self.changed_at = Some(now);
            self.first_change.get_or_insert(now);
        }
        let (Some(changed), Some(first)) = (self.changed_at, self.first_change) else { return Ok(None) };
        let due = (changed + REST).min(first + LONGEST);
        if now < due {
            return Ok(Some(due - now));
        }
        (self.changed_at, self.first_change) = (None, None);
        self.write(home, document).map(|()| None)
    }

    /// Writes the work now.
    pub(crate) fn write(&mut self, home: &Home, document: &Document) -> Result<(), StoreError> {
        if self.journal.is_none() {
            self.journal = Some(Journal::open(home)?);
        }
        if let Some(journal) = &self.journal {
            journal.write(document.file().map(|file| (file.path.as_path(), &file.stamp)), document.plan())?;
            self.holds_work = true;
        }
        Ok(())
    }

    /// The work was saved or let go.
    pub(crate) fn clear(&mut self) -> Result<(), StoreError> {
        (self.changed_at, self.first_change, self.holds_work) = (None, None, false);
        self.journal.as_ref().map_or(Ok(()), Journal::clear)
    }

    /// Closes the journal at the end of the program, with whatever is in it.
    pub(crate) fn close(&mut self) -> Result<(), StoreError> {
        self.journal.take().map_or(Ok(()), Journal::close)
    }

    fn let_go(&mut self, document: &Document) -> Result<(), StoreError> {
        self.seen = Some((document.serial(), document.revision()));
        if self.holds_work || self.changed_at.is_some() { self.clear() } else { Ok(()) }
    }
}
