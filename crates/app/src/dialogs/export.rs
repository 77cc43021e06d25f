//! The dialog that writes the piece or its flat outlines for other programs.

use super::frame::{Frame, main_button, other_button};
use super::path_entry::PathEntry;
use crate::state::{Desk, Request};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use egui::{Context, RichText, Ui};
use fh_piece::files::FileKind;
use std::path::{Path, PathBuf};

/// Kind and file of what is written.
pub(crate) struct ExportFile {
    pub(crate) entry: PathEntry,
    kind: FileKind,
}

impl ExportFile {
    /// Begins with a path without its ending.
    pub(crate) fn new(path: &Path) -> Self {
        let kind = FileKind::Stl;
        Self { entry: PathEntry::new(&path.with_extension(kind.ending())), kind }
    }

    /// The kind of file that is chosen.
    pub(crate) fn kind(&self) -> FileKind {
        self.kind
    }

    /// The system's dialog gave a file: what is to be written.
    pub(crate) fn write(&self, path: PathBuf) -> Request {
        Request::WriteExport(path, self.kind)
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: "Export", width: dialog::FORM };
        let Self { entry, kind } = self;
        frame.show(
            ctx,
            desk,
            out,
            |ui, out| {
                choices(ui, entry, kind);
                ui.add_space(space::GAP);
                entry.show(ui, desk, out);
                ui.add_space(space::GAP);
                let hint = "All sizes are in mm. Each part is a closed solid of its own.";
                ui.label(RichText::new(hint).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
                (entry.path().filter(|path| !path.is_dir()), *kind)
            },
            |ui, out, (chosen, kind)| {
                if main_button(ui, desk.theme, "Write the file", chosen.is_some())
                    && let Some(path) = chosen
                {
                    out.push(Request::WriteExport(path, kind));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}

fn choices(ui: &mut Ui, entry: &mut PathEntry, kind: &mut FileKind) {
    ui.horizontal_wrapped(|ui| {
        ui.label("What");
        for choice in FileKind::ALL {
            if ui.radio_value(kind, choice, choice.name()).changed()
                && let Some(path) = entry.path()
            {
                entry.set(&path.with_extension(choice.ending()));
            }
        }
    });
}
