//! What is wrong with a value of a plan file.

use super::key_path::KeyPath;

/// Something wrong with a value.
#[derive(Debug)]
pub struct Fault {
    /// Its key.
    pub(super) path: KeyPath,
    /// What was read, and what would be right.
    pub(super) message: String,
}

impl Fault {
    /// What is wrong with the value at a key.
    pub fn new(path: KeyPath, message: impl Into<String>) -> Self {
        Self { path, message: message.into() }
    }
}

/// Nothing, or what is wrong.
pub(crate) type Checked = Result<(), Fault>;

/// Says what is wrong with a value.
pub(crate) fn refuse(path: KeyPath, message: impl Into<String>) -> Checked {
    Err(Fault { path, message: message.into() })
}
