//! Unsaved work, written as it is made and offered back after the program was killed.
//!
//! Each open document has two files in the journal's folder: `NAME.lock`, locked for as long as the program that made it
//! lives, and `NAME.json` with the work, there only while some is unsaved. The system drops the lock of a program that is
//! killed, so a `NAME.json` whose lock is free is left over.

use crate::aside::keep_aside;
use crate::replace::{replace, write_new};
use crate::{Home, Stamp, StoreError};
use fh_core::file::{self, FileError};
use fh_core::plan::Plan;
use serde::{Deserialize, Serialize};
use std::fs::{self, File};
use std::io::{self, Read};
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
    /// The work, in the words of its file; the key is as old as the journal, when there were plans alone.
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
        self.write_text(document, file::write(plan))
    }

    /// The same, of work in the words of its file: a plan's, or a job's.
    ///
    /// # Errors
    /// When it cannot be written.
    pub fn write_text(&self, document: Option<(&Path, &Stamp)>, text: String) -> Result<(), StoreError> {
        // A name that is not UTF-8 cannot stand in JSON; the work is then kept without it.
        let document = document.filter(|(path, _)| path.to_str().is_some());
        let entry = Entry {
            document: document.map(|(path, _)| std::path::absolute(path).unwrap_or_else(|_| path.to_owned())),
            stamp: document.map(|(_, stamp)| stamp.clone()),
            written: SystemTime::now(),
            plan: text,
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

    /// The unsaved work of programs that are gone. What cannot be read is kept aside.
    pub fn leftovers(home: &Home) -> Leftovers {
        let files = fs::read_dir(home.journal_folder()).into_iter().flatten().flatten();
        let locks = files.map(|file| file.path()).filter(|path| path.extension().is_some_and(|end| end == "lock"));
        let mut all = Leftovers::default();
        for lock_file in locks {
            match left_over(&lock_file) {
                Some(Left::Work(leftover)) => all.work.push(leftover),
                Some(Left::Broken(kept)) => all.broken.push(kept),
                None => {}
            }
        }
        all.work.sort_by_key(|leftover| std::cmp::Reverse(leftover.entry.written));
        all.broken.sort();
        all
    }
}

/// What programs that are gone have left.
#[derive(Debug, Default)]
pub struct Leftovers {
    /// Their unsaved work, the latest first.
    pub work: Vec<Leftover>,
    /// The files, kept aside, of entries that could not be read. They are not found again.
    pub broken: Vec<PathBuf>,
}

/// What lies behind a lock file.
enum Left {
    Work(Leftover),
    Broken(PathBuf),
}

/// The work behind a lock file, where its program is gone and left some.
fn left_over(lock_file: &Path) -> Option<Left> {
    let lock = File::options().read(true).write(true).open(lock_file).ok()?;
    lock.try_lock().ok()?;
    let place = Place::new(lock_file.to_owned(), lock);
    if !place.work_file.exists() {
        // Its program was killed with nothing unsaved.
        let _ = place.remove();
        return None;
    }
    let bytes = match read_entry(&place.work_file) {
        Ok(bytes) => bytes,
        Err(error) if error.kind() == io::ErrorKind::PermissionDenied => return None,
        Err(_) => Vec::new(),
    };
    match serde_json::from_slice(&bytes) {
        Ok(entry) => Some(Left::Work(Leftover { place, entry })),
        // Where it cannot be kept aside it stays as it is, for another day.
        Err(_) => {
            let kept = keep_aside(&place.work_file).ok()?;
            place.remove().ok()?;
            Some(Left::Broken(kept))
        }
    }
}

/// The bytes of an entry. The plan's quotes are escaped in it, so that it may be twice as large as its plan.
fn read_entry(path: &Path) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    File::open(path)?.take(3 * file::MOST_BYTES).read_to_end(&mut bytes)?;
    Ok(bytes)
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

    /// The work in the words of its file: a plan's, or a job's.
    pub fn text(&self) -> &str {
        &self.entry.plan
    }

    /// Writes the work, in the words of its file, to a file that is not there yet.
    ///
    /// # Errors
    /// When there is a file of this name already, and when it cannot be written.
    pub fn save_copy(&self, path: &Path) -> Result<(), StoreError> {
        write_new(path, self.entry.plan.as_bytes())
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
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(StoreError::write(path, error)),
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
        assert!(Journal::leftovers(&home).work.is_empty());
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
            let mut left = Journal::leftovers(&home).work;
            assert_eq!(left.len(), 1);
            assert!(Journal::leftovers(&home).work.is_empty(), "offered twice at once");
            let leftover = left.pop().unwrap();
            assert_eq!(leftover.document(), Some(document.as_path()));
            assert_eq!(leftover.stamp(), Some(&stamp));
            assert_eq!(leftover.plan().unwrap(), plan());
        }
        Journal::leftovers(&home).work.pop().unwrap().discard().unwrap();
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
        assert!(Journal::leftovers(&home).work.is_empty());
        assert_eq!(fs::read_dir(home.journal_folder()).unwrap().count(), 0);
    }

    #[test]
    fn broken_work_is_told_once_and_kept_aside() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        fs::create_dir_all(home.journal_folder()).unwrap();
        fs::write(home.journal_folder().join("work-x.lock"), "").unwrap();
        fs::write(home.journal_folder().join("work-x.json"), "{").unwrap();
        let left = Journal::leftovers(&home);
        assert_eq!(left.broken, [home.journal_folder().join("work-x.json.broken")]);
        assert_eq!(fs::read_to_string(&left.broken[0]).unwrap(), "{");
        let again = Journal::leftovers(&home);
        assert!(left.work.is_empty() && again.work.is_empty() && again.broken.is_empty());
        assert_eq!(fs::read_dir(home.journal_folder()).unwrap().count(), 1);
    }

    #[test]
    fn work_that_is_no_plan_can_be_copied() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        let journal = Journal::open(&home).unwrap();
        journal.write(None, &plan()).unwrap();
        let entry = fs::read_to_string(&journal.place.work_file).unwrap();
        fs::write(&journal.place.work_file, entry.replacen("firstheat", "lastheat", 1)).unwrap();
        drop(journal);
        let left = Journal::leftovers(&home).work.pop().unwrap();
        assert!(left.plan().is_err());
        let copy = folder.path().join("copy.plan.json");
        left.save_copy(&copy).unwrap();
        assert_eq!(fs::read_to_string(&copy).unwrap(), left.text());
        assert!(matches!(left.save_copy(&copy), Err(StoreError::AlreadyThere { .. })));
    }
}
