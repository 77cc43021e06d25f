//! A file of the rack on disk: read, and saved as safely as a plan; and changed in one go, while no other program of ours can.

use crate::reading::read_file;
use crate::replace::{Existing, make_folder_of, write_whole};
use crate::{Stamp, StoreError};
use fh_core::file::FileError;
use std::fs::{File, TryLockError};
use std::io;
use std::path::Path;
use std::thread::sleep;
use std::time::Duration;

/// How often, and how far apart, a file is asked for that another program of ours is changing.
const TRIES: usize = 500;
const PAUSE: Duration = Duration::from_millis(10);

/// What was read of a file, and what the file looked like.
#[derive(Clone, Debug, PartialEq)]
pub struct Document<T> {
    /// What it holds.
    pub value: T,
    /// What the file looked like; none where there is no file yet.
    pub stamp: Option<Stamp>,
}

/// Reads a file with the reader of its sort.
///
/// # Errors
/// When it cannot be read, or is not of that sort.
pub fn load<T>(path: &Path, read: fn(&[u8]) -> Result<T, FileError>) -> Result<Document<T>, StoreError> {
    let bytes = read_file(path)?;
    let value = read(&bytes).map_err(|error| StoreError::NotAPlan { path: path.to_owned(), error })?;
    Ok(Document { value, stamp: Some(Stamp::of(path, &bytes)) })
}

/// The same; where there is no file, what stands in its place.
///
/// # Errors
/// When it is there and cannot be read, or is not of that sort.
pub fn load_or<T>(
    path: &Path,
    read: fn(&[u8]) -> Result<T, FileError>,
    instead: impl FnOnce() -> T,
) -> Result<Document<T>, StoreError> {
    match load(path, read) {
        Err(StoreError::Read { source, .. }) if source.kind() == io::ErrorKind::NotFound => {
            Ok(Document { value: instead(), stamp: None })
        }
        other => other,
    }
}

/// Saves a file's text whole, and waits until it is on the disk. `expected` is what the file looked like when it was read;
/// none for a new one. With `overwrite`, whatever is there is replaced.
///
/// # Errors
/// When someone else changed it or it is there unexpectedly, and when it cannot be written; what was there is then still there.
pub fn save_text(path: &Path, text: &str, expected: Option<&Stamp>, overwrite: bool) -> Result<Stamp, StoreError> {
    let existing = match expected {
        _ if overwrite => Existing::Replace,
        Some(stamp) if stamp.is_changed(path) => return Err(StoreError::ChangedOnDisk { path: path.to_owned() }),
        Some(_) => Existing::Replace,
        None => Existing::Keep,
    };
    write_whole(path, text.as_bytes(), existing)?;
    Ok(Stamp::of(path, text.as_bytes()))
}

/// Changes a file in one go: it is held, read, changed and saved, so that what another program of ours writes meanwhile is
/// not lost. Where there is no file yet, what stands in its place is changed. What `change` refuses leaves the file as it was.
///
/// # Errors
/// When it cannot be read or written, someone else changed it in between, or the change is refused.
pub fn change<T, R, E: From<StoreError>>(
    path: &Path,
    sort: Sort<T>,
    change: impl FnOnce(&T) -> Result<(T, R), E>,
) -> Result<R, E> {
    make_folder_of(path)?;
    let _held = hold(path)?;
    let was = load_or(path, sort.read, sort.instead)?;
    let (next, told) = change(&was.value)?;
    save_text(path, &(sort.write)(&next), was.stamp.as_ref(), false)?;
    Ok(told)
}

/// How files of a sort are read and written, and what stands in the place of one that is not there.
#[derive(Debug)]
pub struct Sort<T> {
    /// Reads one.
    pub read: fn(&[u8]) -> Result<T, FileError>,
    /// Writes one.
    pub write: fn(&T) -> String,
    /// In place of one that is not there.
    pub instead: fn() -> T,
}

// By hand: what stands in a file need not be copied for it.
impl<T> Clone for Sort<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Sort<T> {}

/// Holds a file against other programs of ours. On a disk where nothing can be held the change goes on: the stamp is still
/// looked at before the file is written.
fn hold(path: &Path) -> Result<Option<File>, StoreError> {
    let mut name = path.as_os_str().to_owned();
    name.push(".lock");
    let Ok(file) = File::options().create(true).truncate(false).write(true).open(name) else { return Ok(None) };
    for _ in 0..TRIES {
        match file.try_lock() {
            Ok(()) => return Ok(Some(file)),
            Err(TryLockError::WouldBlock) => sleep(PAUSE),
            Err(TryLockError::Error(_)) => return Ok(None),
        }
    }
    Err(StoreError::write(path, io::Error::other("another program is changing it")))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use std::fs;

    fn read(bytes: &[u8]) -> Result<u64, FileError> {
        Ok(String::from_utf8_lossy(bytes).trim().parse().unwrap_or(0))
    }

    const SORT: Sort<u64> = Sort { read, write: |count| format!("{count}\n"), instead: || 0 };

    fn count_up(path: &Path) -> Result<u64, StoreError> {
        change(path, SORT, |count| Ok((count + 1, count + 1)))
    }

    #[test]
    fn changes_made_at_once_are_all_kept() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("deep/rack.json");
        std::thread::scope(|scope| {
            for _ in 0..8 {
                scope.spawn(|| (0..5).for_each(|_| assert!(count_up(&path).is_ok())));
            }
        });
        assert_eq!(fs::read_to_string(&path).unwrap(), "40\n");
    }

    #[test]
    fn a_file_that_a_text_editor_changed_in_between_is_not_overwritten() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("rack.json");
        fs::write(&path, "3").unwrap();
        let refused = change(&path, SORT, |count| {
            fs::write(&path, "700").unwrap();
            Ok::<_, StoreError>((count + 1, ()))
        });
        assert!(matches!(refused, Err(StoreError::ChangedOnDisk { .. })));
        assert_eq!(fs::read_to_string(&path).unwrap(), "700");
    }

    #[test]
    fn a_refused_change_leaves_the_file_as_it_was() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("rack.json");
        fs::write(&path, "3").unwrap();
        let refused: Result<(), StoreError> = change(&path, SORT, |_| Err(StoreError::NoHome));
        assert!(refused.is_err());
        assert_eq!(fs::read_to_string(&path).unwrap(), "3");
    }

    #[test]
    fn a_new_file_does_not_take_the_place_of_another() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("rack.json");
        let new = load_or(&path, read, || 5).unwrap();
        assert_eq!(new, Document { value: 5, stamp: None });
        fs::write(&path, "theirs").unwrap();
        assert!(matches!(save_text(&path, "5", None, false), Err(StoreError::AlreadyThere { .. })));
        assert_eq!(fs::read_to_string(&path).unwrap(), "theirs");
    }
}
