//! `firstheat schema`: the JSON Schema of a file.

use crate::cli::{FileSort, SchemaArgs};
use crate::failure::Failure;
use crate::output;
use fh_rack::kept::{job, merchant, rack, shop};
use std::process::ExitCode;

/// Prints the schema.
pub(crate) fn run(args: &SchemaArgs) -> Result<ExitCode, Failure> {
    let schema = match args.file {
        FileSort::Plan => fh_core::file::schema(),
        FileSort::Rack => rack::schema(),
        FileSort::Merchant => merchant::schema(),
        FileSort::Shop => shop::schema(),
        FileSort::Job => job::schema(),
    };
    output::print(&format!("{schema:#}\n"))?;
    Ok(ExitCode::SUCCESS)
}
