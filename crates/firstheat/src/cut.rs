//! `firstheat cut`: plans, a job or a bare list of lengths cut from bars.

use crate::check::as_json;
use crate::cut_report::{CutReport, words};
use crate::failure::Failure;
use crate::input::is_standard;
use crate::list::{self, LEFT};
use crate::list_cli::CutArgs;
use crate::output;
use fh_rack::cut::cut;
use fh_rack::lengths;
use std::fs::{self, File};
use std::io;
use std::path::Path;
use std::process::ExitCode;

/// Makes the list and prints the bars.
pub(crate) fn run(args: &CutArgs) -> Result<ExitCode, Failure> {
    match &args.lengths {
        Some(path) => bare_list(path, args.json),
        None => list::cut(args),
    }
}

fn bare_list(path: &Path, json: bool) -> Result<ExitCode, Failure> {
    let of_the_file = |error: &dyn std::fmt::Display| Failure::new(format!("{}: {error}", path.display()));
    let bytes = bytes(path).map_err(|error| of_the_file(&error))?;
    let lengths = lengths::read(&String::from_utf8_lossy(&bytes)).map_err(|error| of_the_file(&error))?;
    let answer = cut(&lengths.problem, &|| true, &mut |_| ());
    let report = CutReport::new(&lengths, &answer);
    output::print(&if json { as_json(&report)? } else { words(&report) })?;
    Ok(if answer.left.is_empty() { ExitCode::SUCCESS } else { ExitCode::from(LEFT) })
}

fn bytes(path: &Path) -> io::Result<Vec<u8>> {
    if is_standard(path) {
        return fh_store::read_at_most(&mut io::stdin().lock());
    }
    if !fs::metadata(path)?.is_file() {
        return Err(io::Error::other("this isn't a file"));
    }
    fh_store::read_at_most(&mut File::open(path)?)
}
