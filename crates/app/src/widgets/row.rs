//! One line of a panel: words at the left, a field at the right; the one above the other where there is no room.

use crate::theme::{Text, Theme, space};
use egui::{Align, Layout, RichText, Ui, vec2};

/// The width of the words, in points at normal text size.
const LABEL: f32 = 100.0;
/// The least width of a field beside them.
const FIELD: f32 = 132.0;

/// Shows a line.
pub(crate) fn show<R>(ui: &mut Ui, theme: &Theme, label: &str, field: impl FnOnce(&mut Ui) -> R) -> R {
    let label_width = theme.scaled(LABEL);
    let height = theme.scaled(space::TARGET);
    let words = RichText::new(label).color(theme.ink_quiet);
    if label.is_empty() {
        return field(ui);
    }
    if ui.available_width() < label_width + theme.scaled(FIELD) {
        ui.label(words);
        return field(ui);
    }
    ui.horizontal_top(|ui| {
        ui.allocate_ui_with_layout(vec2(label_width, height), Layout::left_to_right(Align::Center), |ui| {
            ui.set_min_size(vec2(label_width, height));
            ui.add(egui::Label::new(words).wrap());
        });
        field(ui)
    })
    .inner
}

/// A line that is only read: its value stands at the right edge so that figures line up.
pub(crate) fn fact(ui: &mut Ui, theme: &Theme, label: &str, value: &str) {
    ui.horizontal(|ui| {
        ui.label(RichText::new(label).color(theme.ink_quiet));
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            ui.label(RichText::new(value).text_style(Text::Body.style()).color(theme.ink));
        });
    });
}
