//! The dialog that offers back the work of a program that was killed.

use super::frame::{Frame, other_button};
use crate::state::{Desk, Request};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use egui::{Context, RichText, Ui};
use fh_core::describe::short_name;
use fh_measure::counted;
use fh_rack::kept::job;
use fh_store::{Leftover, Leftovers, StoreError};
use std::path::{Path, PathBuf};
use std::time::SystemTime;

/// Work that was left over, the latest first.
pub(crate) struct Recovered {
    rows: Vec<Row>,
    broken: Vec<PathBuf>,
}

/// One piece of work.
struct Row {
    /// The work, while this dialog holds it.
    work: Leftover,
    /// Whether it is a job rather than a plan.
    is_job: bool,
    /// Its title, or why it cannot be read.
    title: Result<String, String>,
    /// What came of copying it.
    copied: Option<String>,
}

impl Recovered {
    /// The dialog for what was left over.
    pub(crate) fn new(left: Leftovers) -> Self {
        let row = |work: Leftover| {
            let is_job = job::is_job(work.text().as_bytes());
            let title = if is_job {
                job::read(work.text().as_bytes()).map(|job| job.title)
            } else {
                work.plan().map(|plan| plan.title)
            };
            Row { work, is_job, title: title.map_err(|error| error.to_string()), copied: None }
        };
        Self { rows: left.work.into_iter().map(row).collect(), broken: left.broken }
    }

    /// Takes one piece of work out of the dialog.
    pub(crate) fn take(&mut self, index: usize) -> Option<Leftover> {
        (index < self.rows.len()).then(|| self.rows.remove(index).work)
    }

    /// Whether there is work in it of the sort that was not taken.
    pub(crate) fn has_other_sort(&self, took_job: bool) -> bool {
        self.rows.iter().any(|row| row.is_job != took_job)
    }

    /// Whether there is no more work in it.
    pub(crate) fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// Writes the words of a piece of work to a file that is not there yet: beside its own file, or else in a folder.
    pub(crate) fn copy(&mut self, index: usize, folder: &Path) {
        let Some(row) = self.rows.get_mut(index) else { return };
        let own = row.work.document();
        let folder = own.and_then(Path::parent).filter(|folder| folder.is_dir()).unwrap_or(folder);
        let name = own.and_then(Path::file_name).map_or_else(|| "work".into(), |name| name.to_string_lossy());
        let stem = name.trim_end_matches(".json").trim_end_matches(".plan").trim_end_matches(".job");
        let ending = if row.is_job { job::ENDING } else { ".plan.json" };
        row.copied = Some(match copy(&row.work, folder, stem, ending) {
            Ok(path) => format!("Copied to {}", path.display()),
            Err(error) => format!("■ {error}"),
        });
    }

    pub(super) fn show(&self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        Frame { title: "Unsaved work was found", width: dialog::FORM }.show(
            ctx,
            desk,
            out,
            |ui, out| {
                ui.label("Last time, the program closed before this was saved.");
                for (index, row) in self.rows.iter().enumerate() {
                    row.show(ui, desk, index, out);
                }
                for path in &self.broken {
                    ui.add_space(space::GROUP);
                    ui.label(format!("■ This cannot be read, and was kept: {}", path.display()));
                }
            },
            |ui, out, ()| {
                let words = if self.is_empty() { "OK" } else { "Decide later" };
                if other_button(ui, words) {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}

/// How many names are tried.
const MOST_COPIES: usize = 99;

fn copy(work: &Leftover, folder: &Path, stem: &str, ending: &str) -> Result<PathBuf, StoreError> {
    let mut number = 1;
    loop {
        let count = if number == 1 { String::new() } else { format!("-{number}") };
        let path = folder.join(format!("{stem}-recovered{count}{ending}"));
        match work.save_copy(&path) {
            Ok(()) => return Ok(path),
            Err(StoreError::AlreadyThere { .. }) if number < MOST_COPIES => number += 1,
            Err(error) => return Err(error),
        }
    }
}

impl Row {
    fn show(&self, ui: &mut Ui, desk: &Desk<'_>, index: usize, out: &mut Vec<Request>) {
        ui.add_space(space::GROUP);
        let name = self.title.as_ref().ok().filter(|title| !title.trim().is_empty());
        let name = name.map_or_else(|| "Untitled".to_owned(), |name| short_name(name));
        let what = if self.is_job { "job" } else { "work" };
        let head = format!("Recovered {what} from {}: {name}", age(self.work.written()));
        ui.label(RichText::new(head).text_style(Text::Strong.style()));
        let place =
            self.work.document().map_or_else(|| "never saved in a file".to_owned(), |path| path.display().to_string());
        ui.label(RichText::new(place).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
        if let Err(why) = &self.title {
            ui.label(format!("■ This version cannot read it: {why}"));
        }
        if let Some(copied) = &self.copied {
            ui.label(copied);
        }
        ui.horizontal(|ui| {
            if self.title.is_ok() && ui.button("Open").clicked() {
                out.push(Request::Recovered(index, true));
            }
            if self.title.is_err() && ui.button("Save a copy").clicked() {
                out.push(Request::CopyRecovered(index));
            }
            if ui.button("Discard").clicked() {
                out.push(Request::Recovered(index, false));
            }
        });
    }
}

/// How long ago, as people say it.
fn age(written: SystemTime) -> String {
    let seconds = written.elapsed().map_or(0, |age| age.as_secs());
    let count = |count: u64, unit: &str| format!("{} ago", counted(count, unit));
    match seconds {
        0..=89 => "a minute ago".to_owned(),
        90..=5_399 => count((seconds + 30) / 60, "minute"),
        5_400..=129_599 => count((seconds + 1_800) / 3_600, "hour"),
        _ => count((seconds + 43_200) / 86_400, "day"),
    }
}
