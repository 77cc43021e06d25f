//! What can go wrong between a plan and the disk.

use fh_core::file::FileError;
use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

/// What can go wrong between a plan and the disk. The file stands last in each sentence.
#[derive(Debug)]
pub enum StoreError {
    /// The file cannot be read.
    Read {
        /// The file.
        path: PathBuf,
        /// Why.
        source: io::Error,
    },
    /// The file cannot be written.
    Write {
        /// The file.
        path: PathBuf,
        /// Why.
        source: io::Error,
    },
    /// It is a folder, a pipe or a device.
    NotAFile {
        /// What is there.
        path: PathBuf,
    },
    /// It is no plan that this program can read.
    NotAPlan {
        /// The file.
        path: PathBuf,
        /// Where, and why.
        error: FileError,
    },
    /// A new plan would overwrite a file that is already there.
    AlreadyThere {
        /// The file.
        path: PathBuf,
    },
    /// Someone else changed the file since it was read.
    ChangedOnDisk {
        /// The file.
        path: PathBuf,
    },
    /// The file is protected against being written.
    Protected {
        /// The file.
        path: PathBuf,
    },
    /// A file that is written would take the place of one of another kind.
    OtherKind {
        /// The file.
        path: PathBuf,
    },
    /// The folder for settings and the journal cannot be named.
    NoHome,
}

impl StoreError {
    pub(crate) fn read(path: &Path, source: io::Error) -> Self {
        Self::Read { path: path.to_owned(), source }
    }

    pub(crate) fn write(path: &Path, source: io::Error) -> Self {
        Self::Write { path: path.to_owned(), source }
    }
}

impl fmt::Display for StoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Read { path, source } => write!(f, "cannot read, {}: {}", reason(source), path.display()),
            Self::Write { path, source } => write!(f, "cannot write, {}: {}", reason(source), path.display()),
            Self::NotAFile { path } => {
                write!(f, "this is a folder, a pipe or a device, not a file: {}", path.display())
            }
            Self::NotAPlan { path, error } => write!(f, "{error} ({})", path.display()),
            Self::AlreadyThere { path } => write!(f, "there is already a file of this name: {}", path.display()),
            Self::ChangedOnDisk { path } => {
                write!(f, "the file was changed by someone else since it was opened: {}", path.display())
            }
            Self::Protected { path } => write!(f, "the file is write-protected: {}", path.display()),
            Self::OtherKind { path } => {
                write!(f, "there is already a file of another kind of this name: {}", path.display())
            }
            Self::NoHome => f.write_str("there is no home folder to keep settings in; set FIRSTHEAT_HOME to one"),
        }
    }
}

/// Why the system refused, in plain words where it is one of the usual reasons.
fn reason(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::NotFound => "there is no such file or folder".to_owned(),
        io::ErrorKind::PermissionDenied => "permission refused".to_owned(),
        io::ErrorKind::StorageFull => "the disk is full".to_owned(),
        io::ErrorKind::ReadOnlyFilesystem => "the disk is read-only".to_owned(),
        _ => error.to_string(),
    }
}

impl std::error::Error for StoreError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            Self::Read { source, .. } | Self::Write { source, .. } => Some(source),
            Self::NotAPlan { error, .. } => Some(error),
            Self::NotAFile { .. }
            | Self::AlreadyThere { .. }
            | Self::ChangedOnDisk { .. }
            | Self::Protected { .. }
            | Self::OtherKind { .. }
            | Self::NoHome => None,
        }
    }
}
