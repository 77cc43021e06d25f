//! `firstheat cut`: a list of lengths cut from bars.

use crate::check::as_json;
use crate::cli::CutArgs;
use crate::cut_report::{CutReport, words};
use crate::failure::Failure;
use crate::input::is_standard;
use crate::output;
use fh_rack::cut::cut;
use fh_rack::lengths;
use std::fs::{self, File};
use std::io;
use std::path::Path;
use std::process::ExitCode;

/// The exit status where some piece finds no bar.
const LEFT: u8 = 1;

/// Cuts the list and prints the bars.
pub(crate) fn run(args: &CutArgs) -> Result<ExitCode, Failure> {
    let of_the_file = |error: &dyn std::fmt::Display| Failure::new(format!("{}: {error}", args.lengths.display()));
    let bytes = bytes(&args.lengths).map_err(|error| of_the_file(&error))?;
    let lengths = lengths::read(&String::from_utf8_lossy(&bytes)).map_err(|error| of_the_file(&error))?;
    let answer = cut(&lengths.problem, &|| true, &mut |_| ());
    let report = CutReport::new(&lengths, &answer);
    output::print(&if args.json { as_json(&report)? } else { words(&report) })?;
    Ok(if answer.left.is_empty() { ExitCode::SUCCESS } else { ExitCode::from(LEFT) })
}

fn bytes(path: &Path) -> io::Result<Vec<u8>> {
    if is_standard(path) {
        return fh_store::read_at_most(&mut io::stdin().lock());
    }
    if !fs::metadata(path)?.is_file() {
        return Err(io::Error::other("this is no file"));
    }
    fh_store::read_at_most(&mut File::open(path)?)
}
