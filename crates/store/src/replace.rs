//! Replacing a file whole: whoever reads it finds the old text or the new one, never a part, whatever is killed when.

use crate::StoreError;
use std::fs::{self, File, Metadata};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use std::time::Duration;
use tempfile::{Builder, NamedTempFile};

/// What the names of files that are being written begin and end with.
const PREFIX: &str = ".firstheat-";
const SUFFIX: &str = ".saving";

/// No save takes this long; a file that is still being written after it was left by a killed program.
const STALE: Duration = Duration::from_secs(60 * 60);

/// How many links to follow before they must be a circle.
const MOST_LINKS: usize = 40;

/// What to do where the file is already there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Existing {
    /// Take its place.
    Replace,
    /// Refuse.
    Keep,
}

/// Writes a file whole, in place of any that is there, and waits until it is on the disk. Links are followed, permissions kept.
///
/// # Errors
/// When it cannot be written, or what is there is write-protected; what was there is then still there.
pub fn replace(path: &Path, bytes: &[u8]) -> Result<(), StoreError> {
    write_whole(path, bytes, Existing::Replace)
}

/// Makes the folder of a file, and those above it.
pub(crate) fn make_folder_of(path: &Path) -> Result<(), StoreError> {
    path.parent().map_or(Ok(()), |folder| fs::create_dir_all(folder).map_err(|error| StoreError::write(folder, error)))
}

/// How many bytes at its beginning tell what kind of file it is.
const HEAD: usize = 4;

/// Writes a file whole, in place of one of the same kind: one that begins as this one does. An empty file is of any kind.
///
/// # Errors
/// When a file of another kind has this name, when it is write-protected, and when it cannot be written.
pub fn replace_same_kind(path: &Path, bytes: &[u8]) -> Result<(), StoreError> {
    let mut head = Vec::new();
    let is_file = fs::metadata(path).is_ok_and(|metadata| metadata.is_file());
    if is_file {
        // One that cannot be read may be of any kind.
        let read = File::open(path).and_then(|file| file.take(HEAD as u64).read_to_end(&mut head));
        read.map_err(|error| StoreError::read(path, error))?;
    }
    let same = head.is_empty() || bytes.get(..HEAD) == Some(head.as_slice());
    if same { replace(path, bytes) } else { Err(StoreError::OtherKind { path: path.to_owned() }) }
}

/// Writes a new file whole, and waits until it is on the disk.
///
/// # Errors
/// When there is a file of this name already, and when it cannot be written.
pub fn write_new(path: &Path, bytes: &[u8]) -> Result<(), StoreError> {
    write_whole(path, bytes, Existing::Keep)
}

pub(crate) fn write_whole(path: &Path, bytes: &[u8], existing: Existing) -> Result<(), StoreError> {
    let target = follow_links(path).map_err(|error| StoreError::write(path, error))?;
    let there = fs::metadata(&target).ok();
    if there.as_ref().is_some_and(|metadata| !metadata.is_file()) {
        return Err(StoreError::NotAFile { path: path.to_owned() });
    }
    if existing == Existing::Replace && there.as_ref().is_some_and(|metadata| is_protected(&target, metadata)) {
        return Err(StoreError::Protected { path: path.to_owned() });
    }
    put(&target, bytes, there.as_ref(), existing).map_err(|error| match error.kind() {
        io::ErrorKind::AlreadyExists => StoreError::AlreadyThere { path: path.to_owned() },
        _ => StoreError::write(path, error),
    })
}

/// Whether a file may not be written. A new one could take its place all the same, but that was not meant.
fn is_protected(target: &Path, metadata: &Metadata) -> bool {
    let refused = |error: io::Error| error.kind() == io::ErrorKind::PermissionDenied;
    metadata.permissions().readonly() || File::options().append(true).open(target).is_err_and(refused)
}

fn put(target: &Path, bytes: &[u8], there: Option<&Metadata>, existing: Existing) -> io::Result<()> {
    let folder = target.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut beside = new_file_in(folder)?;
    beside.write_all(bytes)?;
    if let Some(there) = there {
        keep_owner(beside.as_file(), there);
        beside.as_file().set_permissions(there.permissions())?;
    }
    beside.as_file().sync_all()?;
    match existing {
        Existing::Replace => beside.persist(target),
        Existing::Keep => beside.persist_noclobber(target),
    }
    .map_err(|failed| failed.error)?;
    sync_folder(folder)?;
    sweep(folder);
    Ok(())
}

/// A file keeps its owner and its group, where the user may give files away.
#[cfg(unix)]
fn keep_owner(file: &File, there: &Metadata) {
    use std::os::unix::fs::{MetadataExt, fchown};
    let own = file.metadata().ok().map(|metadata| (metadata.uid(), metadata.gid()));
    if own != Some((there.uid(), there.gid())) {
        // Few may; the file is then the user's own.
        let _ = fchown(file, Some(there.uid()), Some(there.gid()));
    }
}

#[cfg(not(unix))]
fn keep_owner(_: &File, _: &Metadata) {}

/// Removes what killed saves left in a folder. One that is still being written is younger than [`STALE`].
fn sweep(folder: &Path) {
    for file in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = file.file_name();
        let name = name.to_string_lossy();
        let age = file.metadata().and_then(|metadata| metadata.modified()).ok().and_then(|time| time.elapsed().ok());
        if name.starts_with(PREFIX) && name.ends_with(SUFFIX) && age.is_some_and(|age| age > STALE) {
            // Litter that cannot be removed does no harm.
            let _ = fs::remove_file(file.path());
        }
    }
}

fn new_file_in(folder: &Path) -> io::Result<NamedTempFile> {
    let mut builder = Builder::new();
    builder.prefix(PREFIX).suffix(SUFFIX);
    // Like any new file: what the user's umask leaves of it.
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    builder.tempfile_in(folder)
}

/// Forces the folder's new entry to the disk. Only Unix has folders that can be opened for this.
fn sync_folder(folder: &Path) -> io::Result<()> {
    if cfg!(unix) { File::open(folder)?.sync_all() } else { Ok(()) }
}

/// The file that a path means in the end, whether it is there or not.
fn follow_links(path: &Path) -> io::Result<PathBuf> {
    let mut path = path.to_owned();
    for _ in 0..MOST_LINKS {
        match fs::read_link(&path) {
            Ok(link) => path = path.parent().unwrap_or(Path::new("")).join(link),
            Err(_) => return Ok(path),
        }
    }
    Err(io::Error::other("its links form a loop"))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_replaced_and_nothing_is_left_beside_it() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.json");
        replace(&path, b"one").unwrap();
        replace(&path, b"two").unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"two");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
    }

    #[test]
    fn what_killed_saves_left_is_swept_up() {
        let folder = tempfile::tempdir().unwrap();
        let (old, young) = (folder.path().join(".firstheat-a.saving"), folder.path().join(".firstheat-b.saving"));
        let long_ago = std::time::SystemTime::now() - 2 * STALE;
        File::create(&old).unwrap().set_modified(long_ago).unwrap();
        File::create(&young).unwrap();
        replace(&folder.path().join("a.json"), b"one").unwrap();
        assert!(!old.exists() && young.exists());
    }

    #[test]
    fn what_is_there_is_kept_when_asked() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.json");
        replace(&path, b"one").unwrap();
        let refused = write_whole(&path, b"two", Existing::Keep);
        assert!(matches!(refused, Err(StoreError::AlreadyThere { .. })));
        assert_eq!(fs::read(&path).unwrap(), b"one");
    }

    #[cfg(unix)]
    #[test]
    fn links_are_followed_and_permissions_kept() {
        use std::fs::Permissions;
        use std::os::unix::fs::{PermissionsExt, symlink};
        let folder = tempfile::tempdir().unwrap();
        let (real, link) = (folder.path().join("real.json"), folder.path().join("link.json"));
        fs::write(&real, b"one").unwrap();
        fs::set_permissions(&real, Permissions::from_mode(0o640)).unwrap();
        symlink("real.json", &link).unwrap();
        replace(&link, b"two").unwrap();
        assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
        assert_eq!(fs::read(&real).unwrap(), b"two");
        assert_eq!(fs::metadata(&real).unwrap().permissions().mode() & 0o777, 0o640);
    }

    #[test]
    fn only_a_file_of_the_same_kind_is_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.svg");
        let refused = |there: &str| {
            fs::write(&path, there).unwrap();
            matches!(replace_same_kind(&path, b"<svg new"), Err(StoreError::OtherKind { .. }))
        };
        assert!(!refused("<svg old") && !refused(""));
        assert!(refused("{ \"firstheat\": 1 }") && refused("<s") && refused("%PDF-1.7"));
        assert_eq!(fs::read(&path).unwrap(), b"%PDF-1.7");
        replace_same_kind(&folder.path().join("new.svg"), b"<svg").unwrap();
        assert!(matches!(replace_same_kind(folder.path(), b"<svg"), Err(StoreError::NotAFile { .. })));
    }

    #[test]
    fn a_write_protected_file_is_not_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.json");
        fs::write(&path, b"one").unwrap();
        let mut permissions = fs::metadata(&path).unwrap().permissions();
        permissions.set_readonly(true);
        fs::set_permissions(&path, permissions).unwrap();
        let refused = replace(&path, b"two").unwrap_err();
        assert!(refused.to_string().starts_with("the file is write-protected: "), "{refused}");
        assert_eq!(fs::read(&path).unwrap(), b"one");
        assert!(matches!(write_new(&path, b"two"), Err(StoreError::AlreadyThere { .. })));
    }

    #[cfg(unix)]
    #[test]
    fn a_link_to_nothing_makes_the_file_it_names() {
        let folder = tempfile::tempdir().unwrap();
        let link = folder.path().join("link.json");
        std::os::unix::fs::symlink("later.json", &link).unwrap();
        replace(&link, b"one").unwrap();
        assert_eq!(fs::read(folder.path().join("later.json")).unwrap(), b"one");
    }

    #[cfg(unix)]
    #[test]
    fn a_circle_of_links_is_refused() {
        let folder = tempfile::tempdir().unwrap();
        let link = folder.path().join("link.json");
        std::os::unix::fs::symlink("link.json", &link).unwrap();
        assert!(replace(&link, b"one").is_err());
    }

    #[test]
    fn folders_and_devices_are_refused() {
        let folder = tempfile::tempdir().unwrap();
        assert!(matches!(replace(folder.path(), b"one"), Err(StoreError::NotAFile { .. })));
        let missing = folder.path().join("none/a.json");
        let words = replace(&missing, b"one").unwrap_err().to_string();
        assert!(words.starts_with("cannot write, there is no such file or folder: "), "{words}");
        assert!(words.ends_with("a.json"), "{words}");
    }
}
