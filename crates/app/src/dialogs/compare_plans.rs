//! The dialog that holds the plan against another one, or against itself as it was saved.

use super::frame::{Frame, main_button, other_button};
use super::path_entry::PathEntry;
use crate::state::{Against, Desk, Request, WholeAsk};
use crate::theme::space;
use crate::theme::space::dialog;
use crate::widgets::compared;
use egui::{Context, RichText, Ui};
use fh_store::demos::DEMOS;
use fh_work::ComparedGroup;
use std::path::{Path, PathBuf};

/// How many recent plans are offered.
const MOST_RECENT: usize = 6;

/// What the plan is held against: being chosen, or shown.
pub(crate) struct ComparePlans {
    pub(crate) entry: PathEntry,
    /// Where a file is that is named without its folder.
    folder: PathBuf,
    /// Whether the plan is another than it was saved.
    has_saved: bool,
    shown: Option<Shown>,
}

/// Two plans side by side.
struct Shown {
    /// What the other one is called.
    other: String,
    groups: Vec<ComparedGroup>,
    only_what_differs: bool,
}

impl ComparePlans {
    /// Begins in a folder; `has_saved` where the plan is another than it was saved.
    pub(crate) fn new(folder: &Path, has_saved: bool) -> Self {
        let entry = PathEntry::empty("another plan's file");
        Self { entry, folder: folder.to_owned(), has_saved, shown: None }
    }

    /// Shows what was found; `other` is what the other plan is called.
    pub(crate) fn found(&mut self, other: String, groups: Vec<ComparedGroup>) {
        self.shown = Some(Shown { other, groups, only_what_differs: true });
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        match self.shown {
            Some(_) => self.show_found(ctx, desk, out),
            None => self.ask(ctx, desk, out),
        }
    }

    fn ask(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let Self { entry, folder, has_saved, .. } = self;
        let has_saved = *has_saved;
        let contents = |ui: &mut Ui, out: &mut Vec<Request>| {
            ui.label("What is this plan held against?");
            ui.add_space(space::GAP);
            choices(ui, desk, has_saved, out);
            ui.add_space(space::GAP);
            entry.show(ui, desk, out);
            entry.path().map(|path| folder.join(path)).filter(|path| !path.is_dir())
        };
        let frame = Frame { title: "Compare", width: dialog::FORM };
        frame.show(ctx, desk, out, contents, |ui, out, chosen| {
            if main_button(ui, desk.theme, "Compare", chosen.is_some())
                && let Some(path) = chosen
            {
                out.push(Request::Whole(WholeAsk::Compare(Against::File(path))));
            }
            if other_button(ui, "Cancel") {
                out.push(Request::CloseDialog);
            }
        });
    }

    fn show_found(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let mut goes_back = false;
        let Some(shown) = &mut self.shown else { return };
        let contents = |ui: &mut Ui, _: &mut Vec<Request>| {
            ui.checkbox(&mut shown.only_what_differs, "Only what differs");
            ui.add_space(space::GAP);
            let heads = [shown.other.as_str(), "as it stands"];
            compared::show(ui, desk.theme, heads, &shown.groups, shown.only_what_differs);
        };
        let title = format!("{} beside {}", desk.document.name(), shown.other.clone());
        Frame { title: &title, width: dialog::TABLE }.show(ctx, desk, out, contents, |ui, out, ()| {
            if main_button(ui, desk.theme, "Close", true) {
                out.push(Request::CloseDialog);
            }
            goes_back = other_button(ui, "Another plan…");
        });
        if goes_back {
            self.shown = None;
        }
    }
}

/// The plan as it was saved, plans that were open, and the demo plans.
fn choices(ui: &mut Ui, desk: &Desk<'_>, has_saved: bool, out: &mut Vec<Request>) {
    if has_saved && ui.button("This plan as it was saved").clicked() {
        out.push(Request::Whole(WholeAsk::Compare(Against::Saved)));
    }
    let whole = |path: &Path| path.canonicalize().ok();
    let own = desk.document.file().and_then(|file| whole(&file.path));
    let is_other = |path: &&PathBuf| own.is_none() || whole(path) != own;
    let recent: Vec<&PathBuf> = desk.recent.paths().iter().filter(is_other).take(MOST_RECENT).collect();
    let quiet = |words: &str| RichText::new(words.to_owned()).color(desk.theme.ink_quiet);
    if !recent.is_empty() {
        ui.horizontal_wrapped(|ui| {
            ui.label(quiet("Plans that were open"));
            for path in recent {
                let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
                if ui.button(name).on_hover_text(path.display().to_string()).clicked() {
                    out.push(Request::Whole(WholeAsk::Compare(Against::File(path.clone()))));
                }
            }
        });
    }
    ui.horizontal_wrapped(|ui| {
        ui.label(quiet("Demo plans"));
        for (index, demo) in DEMOS.iter().enumerate() {
            if ui.button(demo.title).clicked() {
                out.push(Request::Whole(WholeAsk::Compare(Against::Demo(index))));
            }
        }
    });
}
