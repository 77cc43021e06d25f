//! A dialog that tells something and waits until it was read.

use super::frame::{Frame, main_button};
use crate::state::{Desk, Request};
use crate::theme::space::dialog;
use egui::Context;

/// Something to be told.
pub(crate) struct Message {
    title: &'static str,
    words: String,
}

impl Message {
    /// Words under a head.
    pub(crate) fn new(title: &'static str, words: impl ToString) -> Self {
        Self { title, words: words.to_string() }
    }

    pub(super) fn show(&self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        Frame { title: self.title, width: dialog::QUESTION }.show(
            ctx,
            desk,
            out,
            |ui, _| {
                ui.label(&self.words);
            },
            |ui, out, ()| {
                if main_button(ui, desk.theme, "OK", true) {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}
