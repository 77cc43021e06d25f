//! What a file looked like when it was read, to notice that someone else changed it.

use serde::{Deserialize, Serialize};
use std::fs;
use std::io;
use std::path::Path;
use std::time::SystemTime;

/// What a file looked like: its length, its time and a check of its contents.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stamp {
    length: u64,
    modified: Option<SystemTime>,
    check: u64,
}

impl Stamp {
    /// The stamp of a file that has these contents.
    pub(crate) fn of(path: &Path, bytes: &[u8]) -> Self {
        let modified = fs::metadata(path).and_then(|metadata| metadata.modified()).ok();
        Self { length: bytes.len() as u64, modified, check: check_of(bytes) }
    }

    /// Whether the file's length and time are still the same. Quick enough to ask every second; it reads no contents.
    pub fn looks_unchanged(&self, path: &Path) -> bool {
        fs::metadata(path)
            .is_ok_and(|metadata| metadata.len() == self.length && metadata.modified().ok() == self.modified)
    }

    /// Whether the file still has the same contents, whatever its time says. A file that is gone has not.
    pub fn has_same_contents(&self, path: &Path) -> bool {
        fs::metadata(path).is_ok_and(|metadata| metadata.len() == self.length)
            && fs::read(path).is_ok_and(|bytes| check_of(&bytes) == self.check)
    }

    /// Whether someone else changed the file. One that is gone holds nothing that could be lost.
    pub fn is_changed(&self, path: &Path) -> bool {
        let gone = fs::metadata(path).is_err_and(|error| error.kind() == io::ErrorKind::NotFound);
        !gone && !self.has_same_contents(path)
    }
}

/// The 64-bit check sum of Fowler, Noll and Vo, variant 1a; constants from memory. It guards against accidents, not forgers.
fn check_of(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |check, byte| (check ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn the_check_sum_is_the_published_one() {
        // The published values of the empty text and of "a" (from memory).
        assert_eq!(check_of(b""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(check_of(b"a"), 0xaf63_dc4c_8601_ec8c);
    }

    #[test]
    fn only_other_contents_are_a_change() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.json");
        fs::write(&path, b"one").unwrap();
        let stamp = Stamp::of(&path, b"one");
        assert!(stamp.looks_unchanged(&path) && !stamp.is_changed(&path));
        fs::write(&path, b"one").unwrap();
        assert!(!stamp.is_changed(&path));
        fs::write(&path, b"two").unwrap();
        assert!(stamp.is_changed(&path));
        fs::remove_file(&path).unwrap();
        assert!(!stamp.is_changed(&path) && !stamp.has_same_contents(&path));
    }
}
