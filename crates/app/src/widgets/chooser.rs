//! A list to choose one of a few from.

use super::row;
use crate::theme::Theme;
use egui::{ComboBox, Ui};
use fh_core::describe::short_name;

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

/// A list of names to choose one from; a name that is not among them stands at its end.
pub(crate) fn by_name(
    ui: &mut Ui,
    theme: &Theme,
    (label, name): (&str, &str),
    names: &[&str],
    now: &str,
) -> Option<String> {
    let mut all: Vec<&str> = names.iter().copied().filter(|name| !name.is_empty()).collect();
    all.dedup();
    let at = all.iter().position(|name| *name == now);
    let mut choices: Vec<(Option<usize>, String)> =
        all.iter().enumerate().map(|(at, name)| (Some(at), short_name(name))).collect();
    if at.is_none() {
        choices.push((None, format!("“{}” (missing)", short_name(now))));
    }
    let chosen = show(ui, theme, label, name, at, &choices)?;
    all.get(chosen?).map(|name| (*name).to_owned())
}
