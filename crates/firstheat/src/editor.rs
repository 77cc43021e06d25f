//! `firstheat [PLAN]`: the editor, or without a display the marks and the mark sheet.

use crate::failure::Failure;
use crate::{input, marks, new, order, output, sheet, window};
use fh_core::balance::balance;
use fh_core::file;
use fh_core::plan::Plan;
use fh_print::paper::Paper;
use fh_store::StoreError;
use fh_store::demos::DEMOS;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Opens the editor.
pub(crate) fn run(path: Option<PathBuf>) -> Result<ExitCode, Failure> {
    if !has_display() {
        return without_a_window(path.as_deref(), "There is no display to open the editor on.");
    }
    if path.as_deref().is_some_and(input::is_standard) {
        return Err(Failure::new("the editor opens files; `firstheat marks -` reads standard input"));
    }
    match window::open(path.clone()) {
        Ok(()) => Ok(ExitCode::SUCCESS),
        Err(error) => without_a_window(path.as_deref(), &format!("The editor's window cannot be opened: {error}.")),
    }
}

/// The plan of a file, or the first of a job's.
fn first_plan(path: &Path) -> Result<Plan, Failure> {
    let order = order::read(&[path.to_owned()])?;
    let first = order.plans.into_iter().next();
    Ok(first.ok_or_else(|| Failure::new(format!("a job needs at least one plan ({})", path.display())))?.plan)
}

/// The first demo plan.
fn demo() -> Result<(String, Plan), Failure> {
    let demo = DEMOS.first().ok_or_else(|| Failure::new("there is no demo plan"))?;
    let plan = file::read(demo.text.as_bytes()).map_err(Failure::new)?;
    Ok((new::stem(Path::new(demo.file_name)), plan))
}

/// Whether a window could be opened. Only where the variables of X11 and Wayland matter can this be told beforehand.
fn has_display() -> bool {
    let is_set = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    cfg!(not(all(unix, not(target_os = "macos")))) || is_set("DISPLAY") || is_set("WAYLAND_DISPLAY")
}

/// Shows what can be shown without a window: the mark sheet as a file in the working folder, and the marks.
fn without_a_window(path: Option<&Path>, why: &str) -> Result<ExitCode, Failure> {
    let (name, plan) = match path {
        Some(path) => (new::stem(path), first_plan(path)?),
        None => demo()?,
    };
    let name = if matches!(name.as_str(), "" | "-") { "plan" } else { &name };
    let written = sheet::marks_pdf(&plan, Paper::A4).and_then(|bytes| write_beside(name, &bytes));
    let about = match &written {
        Ok(sheet) => format!("Its mark sheet was written to {}; print it at 100 %.", sheet.display()),
        Err(_) => "Its mark sheet could not be written here.".to_owned(),
    };
    output::print(&format!("{why}\n{about}\n\n{}", marks::words(&plan, &balance(&plan))))?;
    written.map(|_| ExitCode::SUCCESS)
}

/// How many names are tried.
const MOST_NAMES: usize = 99;

/// Writes a mark sheet into the working folder, over no file that is there; the file.
fn write_beside(name: &str, bytes: &[u8]) -> Result<PathBuf, Failure> {
    let mut number = 1;
    loop {
        let count = if number == 1 { String::new() } else { format!("-{number}") };
        let sheet = PathBuf::from(format!("{name}-marks{count}.pdf"));
        match fh_store::write_new(&sheet, bytes) {
            Ok(()) => return Ok(sheet),
            Err(StoreError::AlreadyThere { .. }) if number < MOST_NAMES => number += 1,
            Err(error) => return Err(error.into()),
        }
    }
}
