//! `firstheat sheet`: the printed sheets.

use crate::cli::{SheetArgs, SheetName};
use crate::failure::Failure;
use crate::{input, output};
use fh_core::balance::balance;
use fh_core::plan::Plan;
use fh_measure::counted;
use fh_print::drawing::Drawing;
use fh_print::paper::Paper;
use fh_print::sheets::{Sheet, document, usual_orientation};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Writes the sheets of a plan.
pub(crate) fn run(args: &SheetArgs) -> Result<ExitCode, Failure> {
    let sheets = sheets(&args.what);
    let kind = FileKind::of(&args.output)?;
    let plan = input::read(&args.plan)?;
    let paper = args.paper.paper();
    let (files, pages) = write(&plan, &sheets, paper, kind, args)?;
    let pages = counted(pages, "page");
    let said = match files.as_slice() {
        [first, .., last] => {
            let (first, last) = (first.display(), last.display());
            format!("wrote {pages}, {first} to {last}; print them at 100 %\n")
        }
        _ => format!("wrote {}, {pages}; print at 100 %\n", args.output.display()),
    };
    output::print(&said)?;
    Ok(ExitCode::SUCCESS)
}

/// The sheets to print, each once.
fn sheets(names: &[SheetName]) -> Vec<Sheet> {
    let mut sheets = Vec::new();
    for name in names {
        let sheet = match name {
            SheetName::Marks => Sheet::Marks,
            SheetName::Bench => Sheet::Bench,
            SheetName::Templates => Sheet::Templates,
            SheetName::Ladder => Sheet::Ladder,
            SheetName::Steps => Sheet::Steps,
            SheetName::StepsShort => Sheet::StepList,
            SheetName::Gauges => Sheet::Gauges,
        };
        if !sheets.contains(&sheet) {
            sheets.push(sheet);
        }
    }
    sheets
}

/// A kind of file that sheets are written to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum FileKind {
    /// For printing.
    Pdf,
    /// For drawing programs and browsers.
    Svg,
}

impl FileKind {
    fn of(path: &Path) -> Result<Self, Failure> {
        let ending = path.extension().and_then(|ending| ending.to_str()).map(str::to_ascii_lowercase);
        match ending.as_deref() {
            Some("pdf") => Ok(Self::Pdf),
            Some("svg") => Ok(Self::Svg),
            _ => Err(Failure::new(format!("a sheet is written as .pdf or .svg, not as {}", path.display()))),
        }
    }
}

/// The mark sheet of a plan.
pub(crate) fn marks_pdf(plan: &Plan, paper: Paper) -> Result<Vec<u8>, Failure> {
    pdf(&drawing(plan, &[Sheet::Marks], paper))
}

fn drawing(plan: &Plan, sheets: &[Sheet], paper: Paper) -> Drawing {
    document(plan, &balance(plan), sheets, paper, usual_orientation(sheets))
}

fn pdf(drawing: &Drawing) -> Result<Vec<u8>, Failure> {
    fh_print::pdf(drawing).map_err(Failure::new)
}

/// Writes a drawing to a file; as SVG to a file for each page. Gives the first.
pub(crate) fn write_drawing(drawing: &Drawing, path: &Path, force: bool) -> Result<PathBuf, Failure> {
    match FileKind::of(path)? {
        FileKind::Pdf => {
            output::write_file(path, &pdf(drawing)?, force)?;
            Ok(path.to_owned())
        }
        FileKind::Svg => {
            let files = fh_store::replace_pages(path, &fh_print::svg(drawing), force).map_err(output::not_written)?;
            Ok(files.into_iter().next().unwrap_or_else(|| path.to_owned()))
        }
    }
}

/// Writes sheets of a plan: to one file, or as SVG to a file for each page. Gives the files, and how many pages there are.
fn write(
    plan: &Plan,
    sheets: &[Sheet],
    paper: Paper,
    kind: FileKind,
    args: &SheetArgs,
) -> Result<(Vec<PathBuf>, usize), Failure> {
    let drawing = drawing(plan, sheets, paper);
    let path = &args.output;
    let files = match kind {
        FileKind::Pdf => {
            output::write_file(path, &pdf(&drawing)?, args.force)?;
            vec![path.clone()]
        }
        FileKind::Svg => {
            fh_store::replace_pages(path, &fh_print::svg(&drawing), args.force).map_err(output::not_written)?
        }
    };
    Ok((files, drawing.pages.len()))
}
