//! The dialogs that ask which file to open, and in which to save.

use super::frame::{Frame, main_button, other_button};
use super::path_entry::PathEntry;
use crate::state::{Desk, Request};
use crate::theme::{Text, space};
use egui::{Button, Context, RichText, Ui};
use fh_store::demos::DEMOS;
use std::path::{Path, PathBuf};

/// How many recent plans are offered.
const MOST_RECENT: usize = 8;

/// Which plan to open: a path, or one of the recent and the demo plans.
pub(crate) struct OpenPlan {
    pub(crate) entry: PathEntry,
}

impl OpenPlan {
    /// Begins in a folder.
    pub(crate) fn new(folder: Option<&Path>) -> Self {
        let start = folder.map_or_else(PathBuf::new, |folder| folder.join(""));
        Self { entry: PathEntry::new(&start) }
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: "Open a plan", width: 560.0 };
        let Self { entry } = self;
        frame.show(
            ctx,
            desk,
            out,
            |ui, out| {
                entry.show(ui, desk, out);
                recent(ui, desk, out);
                demos(ui, desk, out);
                entry.path().filter(|path| !path.is_dir())
            },
            |ui, out, chosen| {
                if main_button(ui, desk.theme, "Open", chosen.is_some())
                    && let Some(path) = chosen
                {
                    out.push(Request::Open(path));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}

fn head(ui: &mut Ui, desk: &Desk<'_>, words: &str) {
    ui.add_space(space::GROUP);
    ui.label(RichText::new(words).text_style(Text::Heading.style()).color(desk.theme.ink));
}

fn recent(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    if desk.recent.paths().is_empty() {
        return;
    }
    head(ui, desk, "Recent plans");
    for path in desk.recent.paths().iter().take(MOST_RECENT) {
        let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        let folder = path.parent().map(|folder| folder.display().to_string()).unwrap_or_default();
        let button = Button::new(name).right_text(RichText::new(folder).color(desk.theme.ink_quiet)).truncate();
        if ui.add_sized([ui.available_width(), desk.theme.scaled(space::TARGET)], button).clicked() {
            out.push(Request::Open(path.clone()));
        }
    }
}

fn demos(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    head(ui, desk, "Demo plans");
    ui.horizontal_wrapped(|ui| {
        for (index, demo) in DEMOS.iter().enumerate() {
            if ui.button(demo.title).clicked() {
                out.push(Request::OpenDemo(index));
            }
        }
    });
}

/// In which file to save.
pub(crate) struct SavePlan {
    pub(crate) entry: PathEntry,
    /// Whether a file of this name was found and may be replaced.
    found: Option<PathBuf>,
}

impl SavePlan {
    /// Begins with a path.
    pub(crate) fn new(path: &Path) -> Self {
        Self { entry: PathEntry::new(path), found: None }
    }

    /// There is a file of this name already.
    pub(crate) fn found(&mut self, path: PathBuf) {
        self.entry.say("There is a file of this name already. Replace it, or choose another name.");
        self.found = Some(path);
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: "Save the plan", width: 560.0 };
        let Self { entry, found } = self;
        frame.show(
            ctx,
            desk,
            out,
            |ui, out| {
                entry.show(ui, desk, out);
                let hint = "Plans are files that end in .plan.json.";
                ui.label(RichText::new(hint).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
                entry.path().filter(|path| !path.is_dir()).map(with_ending)
            },
            |ui, out, chosen| {
                let replace = chosen.is_some() && chosen == *found;
                let words = if replace { "Replace it" } else { "Save" };
                if main_button(ui, desk.theme, words, chosen.is_some())
                    && let Some(path) = chosen
                {
                    out.push(Request::SaveTo(path, replace));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}

/// The path with the ending of plans, where it has none.
fn with_ending(path: PathBuf) -> PathBuf {
    if path.extension().is_some_and(|ending| ending == "json") {
        return path;
    }
    // Behind whatever the smith wrote: hook-v1.2 has no ending of its own.
    let mut whole = path.into_os_string();
    whole.push(".plan.json");
    whole.into()
}
