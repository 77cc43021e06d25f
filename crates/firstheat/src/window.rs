//! The editor's window.

use std::path::PathBuf;

/// Opens the window and stays until it is closed.
pub(crate) fn open(plan: Option<PathBuf>) -> Result<(), String> {
    fh_app::run(fh_app::Start { plan }).map_err(|error| error.to_string())
}
