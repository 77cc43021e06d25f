//! The plan that a command works on.

use crate::failure::Failure;
use fh_core::file;
use fh_core::plan::Plan;
use fh_store::StoreError;
use std::io;
use std::path::Path;

/// Whether a path means standard input, or standard output where something is written.
pub(crate) fn is_standard(path: &Path) -> bool {
    path == Path::new("-")
}

/// Reads a plan from its file, or from standard input.
pub(crate) fn read(path: &Path) -> Result<Plan, Failure> {
    if !is_standard(path) {
        return Ok(fh_store::load(path)?.plan);
    }
    let path = Path::new("standard input").to_owned();
    let bytes = fh_store::read_at_most(&mut io::stdin().lock())
        .map_err(|source| Failure::new(StoreError::Read { path: path.clone(), source }))?;
    Ok(file::read(&bytes).map_err(|error| StoreError::NotAPlan { path, error })?)
}
