//! Keeping a file aside that cannot be read, or not all of it, before another takes its place.

use crate::reading::read_file;
use crate::{StoreError, write_new};
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};

/// How many are kept of one file; with more, something is broken that another copy does not mend.
const MOST: usize = 20;

/// Keeps a file as `NAME.broken` beside it, or `NAME.broken-2` where that is another; where it is kept. A copy is made, and what
/// is kept already is not kept twice; what cannot be copied is moved away.
///
/// # Errors
/// When it can neither be copied nor moved.
pub(crate) fn keep_aside(path: &Path) -> Result<PathBuf, StoreError> {
    let bytes = read_file(path).ok();
    for number in 1..=MOST {
        let aside = aside(path, number);
        let is_there = fs::symlink_metadata(&aside).is_ok();
        match &bytes {
            Some(bytes) if is_there && read_file(&aside).is_ok_and(|kept| kept == *bytes) => return Ok(aside),
            _ if is_there => {}
            Some(bytes) => return write_new(&aside, bytes).map(|()| aside),
            None => return fs::rename(path, &aside).map(|()| aside).map_err(|error| StoreError::write(path, error)),
        }
    }
    Err(StoreError::AlreadyThere { path: aside(path, MOST) })
}

fn aside(path: &Path, number: usize) -> PathBuf {
    let mut name: OsString = path.as_os_str().to_owned();
    name.push(if number == 1 { ".broken".to_owned() } else { format!(".broken-{number}") });
    name.into()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn each_broken_file_is_kept_once() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("tools.json");
        for (contents, name) in
            [("one", "tools.json.broken"), ("one", "tools.json.broken"), ("two", "tools.json.broken-2")]
        {
            fs::write(&path, contents).unwrap();
            let kept = keep_aside(&path).unwrap();
            assert_eq!(kept.file_name().unwrap(), name);
            assert_eq!(fs::read_to_string(kept).unwrap(), contents);
        }
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 3);
    }

    #[test]
    fn what_is_too_large_to_be_copied_is_moved() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("tools.json");
        fs::File::create(&path).unwrap().set_len(30 * 1024 * 1024).unwrap();
        let kept = keep_aside(&path).unwrap();
        assert!(!path.exists() && kept.ends_with("tools.json.broken"));
    }
}
