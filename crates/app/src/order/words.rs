//! A field for one line of words.

use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields};
use egui::Ui;

/// A field for one line of words.
pub(super) fn words(ui: &mut Ui, sizing: &Sizing<'_>, label: &str, own: &str, now: &mut Option<String>) {
    let hint = if now.is_none() { own } else { "" };
    let entry = Entry::named(label, label).hint(hint);
    if let Some(typed) = fields::optional_words(ui, sizing, &entry, now.as_deref()) {
        *now = typed;
    }
}
