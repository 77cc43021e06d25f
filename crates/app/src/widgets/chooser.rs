//! A list to choose one of a few from. Letters choose what begins with them, arrows go on from what is chosen, and Enter
//! closes the list.

use super::row;
use crate::theme::Theme;
use egui::{ComboBox, Event, Id, Response, Ui};
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
    let at = choices.iter().position(|(choice, _)| *choice == now);
    let words: Vec<&str> = choices.iter().map(|(_, words)| words.as_str()).collect();
    row::show(ui, theme, label, |ui| {
        let width = ui.available_width().min(theme.scaled(WIDEST));
        let shown_words = at.and_then(|at| words.get(at)).copied().unwrap_or("");
        let combo = ComboBox::from_id_salt(("chooser", name)).selected_text(shown_words).width(width).truncate();
        let shown = combo.show_ui(ui, |ui| list(ui, name, at, &words));
        shown.response.clone().accessible_name(name);
        let by_letter = shown.response.has_focus().then(|| lettered(ui, at, &words)).flatten();
        let chosen = shown.inner.flatten();
        if chosen.is_some() {
            // The keyboard goes back to where the list was opened.
            shown.response.request_focus();
        }
        let (choice, _) = choices.get(chosen.or(by_letter)?)?;
        Some(*choice).filter(|choice| *choice != now)
    })
}

/// The open list; what was chosen in it.
fn list(ui: &mut Ui, name: &str, at: Option<usize>, words: &[&str]) -> Option<usize> {
    let lines: Vec<Response> =
        words.iter().enumerate().map(|(index, words)| ui.selectable_label(at == Some(index), *words)).collect();
    if is_just_opened(ui, name)
        && let Some(line) = at.and_then(|at| lines.get(at))
    {
        line.request_focus();
    }
    let focused = lines.iter().position(Response::has_focus);
    if let Some(line) = lettered(ui, focused, words).and_then(|to| lines.get(to)) {
        line.request_focus();
    }
    let chosen = lines.iter().position(Response::clicked);
    if chosen.is_some() {
        ui.close();
    }
    chosen
}

/// Whether the list was not shown in the frame before.
fn is_just_opened(ui: &Ui, name: &str) -> bool {
    let slot = Id::unique(("chooser was shown", name));
    let now = ui.ctx().cumulative_frame_nr();
    let before = ui.data_mut(|data| data.get_temp::<u64>(slot));
    ui.data_mut(|data| data.insert_temp(slot, now));
    before.is_none_or(|before| before + 1 < now)
}

/// The next choice after a place that begins with the letter that was typed.
fn lettered(ui: &Ui, at: Option<usize>, words: &[&str]) -> Option<usize> {
    let letter = ui.input(|input| {
        input.events.iter().rev().find_map(|event| match event {
            Event::Text(text) => text.chars().next().filter(|letter| letter.is_alphanumeric()),
            _ => None,
        })
    })?;
    let begins = |index: &usize| {
        let first = words.get(*index).and_then(|words| words.chars().find(|c| c.is_alphanumeric()));
        first.is_some_and(|first| first.to_lowercase().eq(letter.to_lowercase()))
    };
    let from = at.map_or(0, |at| at + 1);
    (from..words.len()).chain(0..from.min(words.len())).find(begins)
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
