//! A plan in its file.

use crate::document::save_text;
use crate::reading::read_file;
use crate::{Stamp, StoreError};
use fh_core::file;
use fh_core::plan::Plan;
use std::path::Path;

/// A plan and what its file looked like.
#[derive(Clone, Debug, PartialEq)]
pub struct Loaded {
    /// The plan.
    pub plan: Plan,
    /// What its file looked like.
    pub stamp: Stamp,
}

/// Reads a plan from its file.
///
/// # Errors
/// When the file cannot be read, or is no plan. A file that is far too large is refused before it is read.
pub fn load(path: &Path) -> Result<Loaded, StoreError> {
    let bytes = read_file(path)?;
    let not_a_plan = |error| StoreError::NotAPlan { path: path.to_owned(), error };
    let plan = file::read(&bytes).map_err(not_a_plan)?;
    Ok(Loaded { plan, stamp: Stamp::of(path, &bytes) })
}

/// Saves a plan whole, and waits until it is on the disk. `expected` is what the file looked like when it was read or last
/// saved; none for a new file. With `overwrite`, whatever is there is replaced.
///
/// # Errors
/// When the file was changed by someone else or is there unexpectedly, and when it cannot be written.
pub fn save(path: &Path, plan: &Plan, expected: Option<&Stamp>, overwrite: bool) -> Result<Stamp, StoreError> {
    save_text(path, &file::write(plan), expected, overwrite)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::demos::DEMOS;
    use std::fs::{self, File};

    fn plan() -> Plan {
        file::read(DEMOS[0].text.as_bytes()).unwrap()
    }

    #[test]
    fn a_saved_plan_is_the_plan_that_loads() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.plan.json");
        let stamp = save(&path, &plan(), None, false).unwrap();
        assert_eq!(load(&path).unwrap(), Loaded { plan: plan(), stamp });
    }

    #[test]
    fn a_file_changed_by_someone_else_is_not_overwritten_unasked() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.plan.json");
        let stamp = save(&path, &plan(), None, false).unwrap();
        fs::write(&path, "theirs").unwrap();
        let refused = save(&path, &plan(), Some(&stamp), false).unwrap_err();
        assert!(matches!(refused, StoreError::ChangedOnDisk { .. }));
        assert_eq!(fs::read_to_string(&path).unwrap(), "theirs");
        save(&path, &plan(), Some(&stamp), true).unwrap();
        assert_eq!(load(&path).unwrap().plan, plan());
    }

    #[test]
    fn a_new_plan_does_not_overwrite_a_file_unasked() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.plan.json");
        fs::write(&path, "theirs").unwrap();
        assert!(matches!(save(&path, &plan(), None, false), Err(StoreError::AlreadyThere { .. })));
        save(&path, &plan(), None, true).unwrap();
    }

    #[test]
    fn a_file_that_is_gone_is_written_again() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.plan.json");
        let stamp = save(&path, &plan(), None, false).unwrap();
        fs::remove_file(&path).unwrap();
        save(&path, &plan(), Some(&stamp), false).unwrap();
        assert_eq!(load(&path).unwrap().plan, plan());
    }

    #[test]
    fn a_file_of_100_mb_is_refused_unread() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("large.plan.json");
        File::create(&path).unwrap().set_len(100 * 1024 * 1024).unwrap();
        let words = load(&path).unwrap_err().to_string();
        assert!(words.starts_with("the file has 100 MB, and a plan has 16 MB at most"), "{words}");
    }

    #[test]
    fn errors_name_the_file_last() {
        let folder = tempfile::tempdir().unwrap();
        let words = load(&folder.path().join("none.plan.json")).unwrap_err().to_string();
        assert!(words.starts_with("cannot read, there is no such file or folder: /"), "{words}");
        let path = folder.path().join("broken.plan.json");
        fs::write(&path, "{\n  \"firstheat\": 1,\n  \"bars\": [],\n}").unwrap();
        let words = load(&path).unwrap_err().to_string();
        assert!(words.starts_with("line 4, column 1: ") && words.ends_with("broken.plan.json)"), "{words}");
        assert!(matches!(load(folder.path()), Err(StoreError::NotAFile { .. })));
    }
}
