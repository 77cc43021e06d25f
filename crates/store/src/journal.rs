//! Unsaved work, written as it is made and offered back after the program was killed.
//!
//! Each open document has two files in the journal's folder: `NAME.lock`, locked for as long as the program that made it
//! lives, and `NAME.json` with the work, there only while some is unsaved. The system drops the lock of a program that is
//! killed, so a `NAME.json` whose lock is free is left over.

use crate::replace::replace;
use crate::{Home, Stamp, StoreError};
use fh_core::file::{self, FileError};
use fh_core::plan::Plan;
use serde::{Deserialize, Serialize};
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::time::SystemTime;

/// The journal of one open document.
#[derive(Debug)]
pub struct Journal {
    place: Place,
}

/// Unsaved work of a program that is gone. While this lives, no other program is offered it.
#[derive(Debug)]
pub struct Leftover {
    place: Place,
    entry: Entry,
}

/// The two files of a document, the first of them held locked.
#[derive(Debug)]
struct Place {
    lock_file: PathBuf,
    work_file: PathBuf,
    _lock: File,
}

/// What the journal holds of a document.
#[derive(Debug, Serialize, Deserialize)]
struct Entry {
    /// The file that the document was read from or last saved to.
    document: Option<PathBuf>,
    /// What that file looked like then.
    stamp: Option<Stamp>,
    /// When this was written.
    written: SystemTime,
    /// The plan, in the words of its file.
    plan: String,
}

impl Journal {
    /// Opens a journal for a document.
    ///
    /// # Errors
    /// When its folder cannot be written.
    pub fn open(home: &Home) -> Result<Self, StoreError> {
        let folder = home.journal_folder();
        let cannot = |error| StoreError::write(&folder, error);
        fs::create_dir_all(&folder).map_err(cannot)?;
        let file = tempfile::Builder::new().prefix("work-").suffix(".lock").tempfile_in(&folder).map_err(cannot)?;
        // Locked before it is kept: one that is free is left over.
        file.as_file().try_lock().map_err(|error| cannot(error.into()))?;
        let (lock, lock_file) = file.keep().map_err(|failed| cannot(failed.error))?;
        Ok(Self { place: Place::new(lock_file, lock) })
    }

    /// Writes the unsaved work, and the file that it belongs to as it was when it was read or last saved.
    ///
    /// # Errors
    /// When it cannot be written.
    pub fn write(&self, document: Option<(&Path, &Stamp)>, plan: &Plan) -> Result<(), StoreError> {
        // A name that is not UTF-8 cannot stand in JSON; the work is then kept without it.
        let document = document.filter(|(path, _)| path.to_str().is_some());
        let entry = Entry {
            document: document.map(|(path, _)| std::path::absolute(path).unwrap_or_else(|_| path.to_owned())),
            stamp: document.map(|(_, stamp)| stamp.clone()),
            written: SystemTime::now(),
            plan: file::write(plan),
        };
        let path = &self.place.work_file;
        let text = serde_json::to_string(&entry).map_err(|error| StoreError::write(path, error.into()))?;
        replace(path, text.as_bytes())
    }

    /// Forgets the unsaved work: it was saved, or the user let it go.
    ///
    /// # Errors
    /// When it cannot be removed.
    pub fn clear(&self) -> Result<(), StoreError> {
        remove(&self.place.work_file)
    }

    /// Closes the journal of a document that is closed, with whatever work is in it.
    ///
    /// Dropping a journal without this keeps the work, so that a panic does not take it along.
    ///
    /// # Errors
    /// When it cannot be removed.
    pub fn close(self) -> Result<(), StoreError> {
        self.place.remove()
    }

    /// The unsaved work of programs that are gone, the latest first. What cannot be read is passed over.
    pub fn leftovers(home: &Home) -> Vec<Leftover> {
        let files = fs::read_dir(home.journal_folder()).into_iter().flatten().flatten();
        let locks = files.map(|file| file.path()).filter(|path| path.extension().is_some_and(|end| end == "lock"));
        let mut left: Vec<_> = locks.filter_map(|lock_file| left_over(&lock_file)).collect();
        left.sort_by_key(|leftover| std::cmp::Reverse(leftover.entry.written));
        left
    }
}

/// The work behind a lock file, where its program is gone and left some.
fn left_over(lock_file: &Path) -> Option<Leftover> {
    let lock = File::options().read(true).write(true).open(lock_file).ok()?;
    lock.try_lock().ok()?;
    let place = Place::new(lock_file.to_owned(), lock);
    if !place.work_file.exists() {
        // Its program was killed with nothing unsaved.
        let _ = place.remove();
        return None;
    }
    let bytes = fs::read(&place.work_file).ok()?;
    let entry = serde_json::from_slice(&bytes).ok()?;
    Some(Leftover { place, entry })
}

impl Leftover {
    /// The file that the work belongs to; none where it was never saved.
    pub fn document(&self) -> Option<&Path> {
        self.entry.document.as_deref()
    }

    /// What that file looked like when the work began.
    pub fn stamp(&self) -> Option<&Stamp> {
        self.entry.stamp.as_ref()
    }

    /// When the work was last written.
    pub fn written(&self) -> SystemTime {
        self.entry.written
    }

    /// The plan.
    ///
    /// # Errors
    /// When this program cannot read it; [`Leftover::text`] still gives its words.
    pub fn plan(&self) -> Result<Plan, FileError> {
        file::read(self.entry.plan.as_bytes())
    }

    /// The plan in the words of its file.
    pub fn text(&self) -> &str {
        &self.entry.plan
    }

    /// Forgets the work for good. Dropped without this, it is offered again.
    ///
    /// # Errors
    /// When it cannot be removed.
    pub fn discard(self) -> Result<(), StoreError> {
        self.place.remove()
    }
}

impl Place {
    fn new(lock_file: PathBuf, lock: File) -> Self {
        Self { work_file: lock_file.with_extension("json"), lock_file, _lock: lock }
    }

    fn remove(&self) -> Result<(), StoreError> {
        remove(&self.work_file)?;
        remove(&self.lock_file)
    }
}

/// Removes a file; one that is not there is none to remove.
fn remove(path: &Path) -> Result<(), StoreError> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => Err(StoreError::write(path, error)),
        _ => Ok(()),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::demos::DEMOS;

    fn plan() -> Plan {
        file::read(DEMOS[0].text.as_bytes()).unwrap()
    }

    #[test]
    fn work_of_a_living_program_is_not_left_over() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        let journal = Journal::open(&home).unwrap();
        journal.write(None, &plan()).unwrap();
        assert!(Journal::leftovers(&home).is_empty());
    }

    #[test]
    fn work_that_was_not_closed_is_offered_until_it_is_discarded() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        let document = folder.path().join("a.plan.json");
        let stamp = crate::save(&document, &plan(), None, false).unwrap();
        let journal = Journal::open(&home).unwrap();
        journal.write(Some((&document, &stamp)), &plan()).unwrap();
        drop(journal);
        for _ in 0..2 {
            let mut left = Journal::leftovers(&home);
            assert_eq!(left.len(), 1);
            assert!(Journal::leftovers(&home).is_empty(), "offered twice at once");
            let leftover = left.pop().unwrap();
            assert_eq!(leftover.document(), Some(document.as_path()));
            assert_eq!(leftover.stamp(), Some(&stamp));
            assert_eq!(leftover.plan().unwrap(), plan());
        }
        Journal::leftovers(&home).pop().unwrap().discard().unwrap();
        assert_eq!(fs::read_dir(home.journal_folder()).unwrap().count(), 0);
    }

    #[test]
    fn saved_and_closed_work_leaves_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        let saved = Journal::open(&home).unwrap();
        saved.write(None, &plan()).unwrap();
        saved.clear().unwrap();
        saved.clear().unwrap();
        drop(saved);
        let closed = Journal::open(&home).unwrap();
        closed.write(None, &plan()).unwrap();
        closed.close().unwrap();
        assert!(Journal::leftovers(&home).is_empty());
        assert_eq!(fs::read_dir(home.journal_folder()).unwrap().count(), 0);
    }

    #[test]
    fn broken_work_is_passed_over() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        fs::create_dir_all(home.journal_folder()).unwrap();
        fs::write(home.journal_folder().join("work-x.lock"), "").unwrap();
        fs::write(home.journal_folder().join("work-x.json"), "{").unwrap();
        assert!(Journal::leftovers(&home).is_empty());
    }
}
