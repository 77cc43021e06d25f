//! Where a command writes to: standard output, and files.

use crate::failure::Failure;
use fh_store::StoreError;
use std::io::{self, Write};
use std::path::Path;

/// Prints a whole text.
pub(crate) fn print(text: &str) -> Result<(), Failure> {
    let mut out = io::stdout().lock();
    out.write_all(text.as_bytes())?;
    out.flush()?;
    Ok(())
}

/// Writes a file in place of one of the same kind; of another kind only where that is forced.
pub(crate) fn write_file(path: &Path, bytes: &[u8], force: bool) -> Result<(), Failure> {
    if force {
        return Ok(fh_store::replace(path, bytes)?);
    }
    fh_store::replace_same_kind(path, bytes).map_err(not_written)
}

/// Why a file was not written; where another stands there, what would overwrite it.
pub(crate) fn not_written(error: StoreError) -> Failure {
    match error {
        StoreError::OtherKind { .. } => Failure::new(format!("{error}; --force overwrites it")),
        _ => Failure::new(error),
    }
}
