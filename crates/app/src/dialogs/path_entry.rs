//! A field for the path of a file, with a button that asks the system's own dialog.

use crate::state::{Desk, Request};
use crate::theme::{Text, space};
use egui::{RichText, TextEdit, Ui};
use std::path::{Path, PathBuf};

/// The button beside it.
const BROWSE: &str = "Browse…";

/// A path being typed.
pub(crate) struct PathEntry {
    text: String,
    /// What stands in it while it is empty.
    hint: &'static str,
    /// Why the path cannot be taken, or why there is no dialog.
    said: Option<String>,
    asked_for_keyboard: bool,
}

impl PathEntry {
    /// A field that begins with this path.
    pub(crate) fn new(path: &Path) -> Self {
        Self { text: path.display().to_string(), hint: "", said: None, asked_for_keyboard: false }
    }

    /// An empty field with a hint.
    pub(crate) fn empty(hint: &'static str) -> Self {
        Self { hint, ..Self::new(Path::new("")) }
    }

    /// The path, where one is typed. `~` is the home folder.
    pub(crate) fn path(&self) -> Option<PathBuf> {
        let text = self.text.trim();
        if text.is_empty() {
            return None;
        }
        let home = std::env::var_os("HOME").filter(|home| !home.is_empty());
        match (text.strip_prefix("~/"), home) {
            (Some(rest), Some(home)) => Some(Path::new(&home).join(rest)),
            _ => Some(PathBuf::from(text)),
        }
    }

    /// Puts a path in the field.
    pub(crate) fn set(&mut self, path: &Path) {
        *self = Self { asked_for_keyboard: true, ..Self::new(path) };
    }

    /// Says something below the field, and gives the keyboard back to it: the path is to be mended.
    pub(crate) fn say(&mut self, words: impl Into<String>) {
        self.said = Some(words.into());
        self.asked_for_keyboard = false;
    }

    /// Shows the field.
    pub(crate) fn show(&mut self, ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let theme = desk.theme;
        let label = ui.label("File");
        ui.horizontal(|ui| {
            let browse = button_width(ui, BROWSE) + ui.spacing().item_spacing.x;
            let width = (ui.available_width() - browse).max(browse);
            let field = TextEdit::singleline(&mut self.text)
                .hint_text(self.hint)
                .desired_width(width)
                .min_size(egui::vec2(0.0, theme.scaled(space::TARGET)));
            let field = ui.add(field.align(egui::Align2::LEFT_CENTER)).labelled_by(label.id);
            if !self.asked_for_keyboard {
                self.asked_for_keyboard = true;
                field.request_focus();
            }
            if field.changed() {
                self.said = None;
            }
            if ui.button(BROWSE).on_hover_text("Choose the file in the system's own dialog.").clicked() {
                out.push(Request::Browse);
            }
        });
        if let Some(said) = &self.said {
            ui.label(RichText::new(format!("■ {said}")).text_style(Text::Small.style()).color(theme.stop));
        }
    }
}

/// How wide a button of these words is.
fn button_width(ui: &Ui, words: &str) -> f32 {
    let font = egui::TextStyle::Button.resolve(ui.style());
    let words = ui.painter().layout_no_wrap(words.to_owned(), font, ui.visuals().text_color());
    words.size().x + 2.0 * ui.spacing().button_padding.x
}
