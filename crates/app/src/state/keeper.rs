//! Keeps unsaved work in the journal a short while after each change, and drops it once it is saved.

use fh_store::{Home, Journal, Stamp, StoreError};
use std::path::Path;

/// How long after the last change work is written, in seconds.
const REST: f64 = 0.6;
/// How long work may go unwritten while it is being changed all the time, in seconds.
const LONGEST: f64 = 3.0;

/// Work that may have to be kept.
pub(crate) struct Unsaved<'a> {
    /// Whether anything would be lost if the program ended now.
    pub(crate) is_changed: bool,
    /// A number that no other work of its sort has, and one that changes whenever the work does.
    pub(crate) place: (u64, u64),
    /// Its file, and what that looked like.
    pub(crate) file: Option<(&'a Path, &'a Stamp)>,
    /// The work in the words of its file.
    pub(crate) text: &'a dyn Fn() -> String,
}

/// The journal of a plan or a job in hand, and what is in it.
#[derive(Default)]
pub(crate) struct Keeper {
    journal: Option<Journal>,
    seen: Option<(u64, u64)>,
    changed_at: Option<f64>,
    first_change: Option<f64>,
    holds_work: bool,
}

impl Keeper {
    /// Looks at the work at a time in seconds: how long until it wants to look again, where work waits to be written.
    pub(crate) fn watch(
        &mut self,
        home: Option<&Home>,
        work: &Unsaved<'_>,
        now: f64,
    ) -> Result<Option<f64>, StoreError> {
        let Some(home) = home else { return Ok(None) };
        if !work.is_changed {
            return self.let_go(work).map(|()| None);
        }
        if self.seen != Some(work.place) {
            self.seen = Some(work.place);
            self.changed_at = Some(now);
            self.first_change.get_or_insert(now);
        }
        let (Some(changed), Some(first)) = (self.changed_at, self.first_change) else { return Ok(None) };
        let due = (changed + REST).min(first + LONGEST);
        if now < due {
            return Ok(Some(due - now));
        }
        (self.changed_at, self.first_change) = (None, None);
        self.write(home, work).map(|()| None)
    }

    /// Writes the work now.
    pub(crate) fn write(&mut self, home: &Home, work: &Unsaved<'_>) -> Result<(), StoreError> {
        if self.journal.is_none() {
            self.journal = Some(Journal::open(home)?);
        }
        if let Some(journal) = &self.journal {
            journal.write_text(work.file, (work.text)())?;
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

    fn let_go(&mut self, work: &Unsaved<'_>) -> Result<(), StoreError> {
        self.seen = Some(work.place);
        if self.holds_work || self.changed_at.is_some() { self.clear() } else { Ok(()) }
    }
}
