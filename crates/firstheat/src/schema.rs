//! `firstheat schema`: the JSON Schema of the plan file.

use crate::failure::Failure;
use crate::output;
use std::process::ExitCode;

/// Prints the schema.
pub(crate) fn run() -> Result<ExitCode, Failure> {
    output::print(&format!("{:#}\n", fh_core::file::schema()))?;
    Ok(ExitCode::SUCCESS)
}
