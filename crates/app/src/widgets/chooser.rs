//! A list to choose one of a few from.

use super::row;
use crate::theme::Theme;
use egui::{ComboBox, Ui};

/// The widest a chooser grows, in points at normal text size.
const WIDEST: f32 = 240.0;

/// Shows a chooser; the choice, where another one was made.
pub(crate) fn show<T: Copy + PartialEq>(
    ui: &mut Ui,
    theme: &Theme,
    label: &str,
    name: &str,
    now: T,
    choices: &[(T, String)],
) -> Option<T> {
    let words = choices.iter().find(|(choice, _)| *choice == now).map_or("", |(_, words)| words.as_str());
    row::show(ui, theme, label, |ui| {
        let width = ui.available_width().min(theme.scaled(WIDEST));
        let combo = ComboBox::from_id_salt(("chooser", name)).selected_text(words).width(width).truncate();
        let shown = combo.show_ui(ui, |ui| {
            let mut chosen = None;
            for (choice, words) in choices {
                if ui.selectable_label(*choice == now, words).clicked() {
                    chosen = Some(*choice);
                }
            }
            chosen
        });
        shown.response.accessible_name(name);
        shown.inner.flatten().filter(|chosen| *chosen != now)
    })
}
