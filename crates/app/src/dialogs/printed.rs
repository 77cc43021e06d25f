//! What was printed and in which file, with buttons to open it.

use super::frame::{Frame, main_button, other_button};
use crate::state::{Desk, Request};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use egui::{Context, RichText};
use std::path::{Path, PathBuf};

/// What was printed.
pub(crate) struct Printed {
    words: String,
    hint: &'static str,
    file: PathBuf,
    said: Option<String>,
}

impl Printed {
    /// What was printed in words, what to do with it, and the first file that it is in.
    pub(crate) fn new(words: String, hint: &'static str, file: &Path) -> Self {
        Self { words, hint, file: file.to_owned(), said: None }
    }

    /// Says why it was not opened.
    pub(crate) fn say(&mut self, words: String) {
        self.said = Some(words);
    }

    pub(super) fn show(&self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let theme = desk.theme;
        Frame { title: "Ready to print", width: dialog::QUESTION }.show(
            ctx,
            desk,
            out,
            |ui, _| {
                ui.label(&self.words);
                ui.add_space(space::TIGHT);
                ui.label(RichText::new(self.hint).text_style(Text::Small.style()).color(theme.ink_quiet));
                if let Some(said) = &self.said {
                    ui.add_space(space::TIGHT);
                    ui.label(RichText::new(format!("■ {said}")).color(theme.stop));
                }
            },
            |ui, out, ()| {
                if main_button(ui, theme, "Open", true) {
                    out.push(Request::ShowOutside(self.file.clone()));
                }
                if other_button(ui, "Open folder") {
                    let folder = self.file.parent().filter(|folder| !folder.as_os_str().is_empty());
                    out.push(Request::ShowOutside(folder.unwrap_or(Path::new(".")).to_owned()));
                }
                if other_button(ui, "Close") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}
