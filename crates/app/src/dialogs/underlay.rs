//! The dialog that lays a picture under the piece.

use super::frame::{Frame, main_button, other_button};
use super::path_entry::PathEntry;
use crate::piece_view::seen_from;
use crate::state::{Desk, Request};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use egui::{Context, RichText};
use fh_core::plan::UnderlayView;
use std::path::{Path, PathBuf};

/// File and view of the picture.
pub(crate) struct LayPicture {
    pub(crate) entry: PathEntry,
    view: UnderlayView,
}

impl LayPicture {
    /// Begins with a file or a folder, and a view.
    pub(crate) fn new(path: &Path, view: UnderlayView) -> Self {
        Self { entry: PathEntry::new(path), view }
    }

    /// The system's dialog gave a file: what is to be laid.
    pub(crate) fn lay(&self, path: PathBuf) -> Request {
        Request::LayPicture(path, self.view)
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: "Add a picture to trace", width: dialog::FORM };
        let Self { entry, view } = self;
        frame.show(
            ctx,
            desk,
            out,
            |ui, out| {
                entry.show(ui, desk, out);
                ui.add_space(space::GAP);
                ui.horizontal_wrapped(|ui| {
                    ui.label("It shows the piece");
                    for choice in UnderlayView::ALL {
                        ui.radio_value(view, choice, seen_from(choice));
                    }
                });
                ui.add_space(space::GAP);
                let hint = "A sketch, a photograph or a scan as PNG or JPEG. The plan keeps the name of the file, not the \
                            picture: keep it beside the plan.";
                ui.label(RichText::new(hint).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
                (entry.path().filter(|path| !path.is_dir()), *view)
            },
            |ui, out, (chosen, view)| {
                if main_button(ui, desk.theme, "Lay it under the piece", chosen.is_some())
                    && let Some(path) = chosen
                {
                    out.push(Request::LayPicture(path, view));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}
