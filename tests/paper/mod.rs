//! Printed paper: the demos' mark sheets are rendered and measured, as a smith would with a rule.
//!
//! The pages are rendered by `pdftoppm` and read by `pdfinfo` and `pdftotext` of the Debian package `poppler-utils`.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod bench;
mod check_lines;
mod marks;
mod page;
mod repeats;
mod slits;
mod steps;
mod svg;
mod templates;
mod words;

use fh_core::balance::{Balance, balance};
use fh_core::file;
use fh_core::plan::Plan;
use fh_print::drawing::Drawing;
use fh_print::paper::{Orientation, Paper};
use fh_store::demos::DEMOS;
use std::path::PathBuf;
use std::process::Command;
use tempfile::TempDir;

/// How close a printed length must come, in mm.
const CLOSE_MM: f64 = 0.1;

/// A demo's mark sheet, printed.
struct Printed {
    plan: Plan,
    balance: Balance,
    drawing: Drawing,
    folder: TempDir,
}

impl Printed {
    /// Prints a demo.
    fn new(file_name: &str, paper: Paper, orientation: Orientation) -> Self {
        let demo = DEMOS.iter().find(|demo| demo.file_name == file_name).unwrap();
        Self::of(file::read(demo.text.as_bytes()).unwrap(), |plan, balance| {
            fh_print::sheets::mark_sheet(plan, balance, paper, orientation)
        })
    }

    /// Prints a sheet of a plan.
    fn of(plan: Plan, sheet: impl FnOnce(&Plan, &Balance) -> Drawing) -> Self {
        let balance = balance(&plan);
        let drawing = sheet(&plan, &balance);
        let folder = tempfile::tempdir().unwrap();
        let printed = Self { plan, balance, drawing, folder };
        std::fs::write(printed.pdf(), fh_print::pdf(&printed.drawing).unwrap()).unwrap();
        printed
    }

    fn pdf(&self) -> PathBuf {
        self.folder.path().join("sheet.pdf")
    }
}

/// What a program writes to its output.
fn run(program: &str, arguments: &[&str]) -> String {
    let output = Command::new(program).args(arguments).output().unwrap_or_else(|error| {
        panic!("{program} does not run ({error}): these tests need the packages poppler-utils and librsvg2-bin")
    });
    assert!(output.status.success(), "{program} {arguments:?}: {}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8_lossy(&output.stdout).into_owned()
}
