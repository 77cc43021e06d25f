//! The dialog that asks for a plan, or a job, that is cut together with the open plan.

use super::frame::{Frame, main_button, other_button};
use super::path_entry::PathEntry;
use crate::state::{Desk, Request, SteelAsk};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use egui::{Context, RichText};
use std::path::{Path, PathBuf};

/// The file of the plan.
pub(crate) struct AddPlan {
    pub(crate) entry: PathEntry,
}

impl AddPlan {
    /// Begins in a folder.
    pub(crate) fn new(folder: &Path) -> Self {
        // With its last stroke, so that a name can be typed at once.
        Self { entry: PathEntry::new(&folder.join("")) }
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let entry = &mut self.entry;
        Frame { title: "Add a plan or a job", width: dialog::FORM }.show(
            ctx,
            desk,
            out,
            |ui, out| {
                let recent: Vec<&PathBuf> = desk.recent.paths().iter().take(6).collect();
                for path in recent {
                    let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
                    if ui.button(name).on_hover_text(path.display().to_string()).clicked() {
                        out.push(Request::Steel(SteelAsk::AddPlan(path.clone())));
                    }
                }
                ui.add_space(space::GAP);
                entry.show(ui, desk, out);
                ui.add_space(space::GAP);
                let hint = "Of a job, every plan comes in with its count.";
                ui.label(RichText::new(hint).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
                entry.path().filter(|path| !path.is_dir())
            },
            |ui, out, chosen| {
                if main_button(ui, desk.theme, "Add it", chosen.is_some())
                    && let Some(path) = chosen
                {
                    out.push(Request::Steel(SteelAsk::AddPlan(path)));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}
