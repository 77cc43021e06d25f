//! A field for free words of more than one line.

use crate::widgets::prose::{self, Prose};
use egui::Ui;

/// How many lines the field shows.
const LINES: usize = 3;

/// Shows the field; the words, once they are taken.
pub(super) fn show(ui: &mut Ui, name: &str, now: Option<&str>) -> Option<Option<String>> {
    prose::show(ui, &Prose { name, hint: "", lines: LINES }, now)
}
