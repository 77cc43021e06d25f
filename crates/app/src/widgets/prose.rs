//! A field for words of more than one line. They are taken when the field is left.

use egui::{Id, RichText, TextEdit, Ui};

/// The most letters that it holds, whatever is pasted into it: some twenty pages.
const MOST_LETTERS: usize = 50_000;

/// A field's name, what stands in it while it is empty, and how many lines it shows.
pub(crate) struct Prose<'a> {
    /// Its name for people and screen readers.
    pub(crate) name: &'a str,
    /// What stands in it while it is empty.
    pub(crate) hint: &'a str,
    /// How many lines it shows at least.
    pub(crate) lines: usize,
}

/// Shows the field; the words, once they are taken.
pub(crate) fn show(ui: &mut Ui, prose: &Prose<'_>, now: Option<&str>) -> Option<Option<String>> {
    let id = ui.make_persistent_id(prose.name);
    let now = now.unwrap_or("");
    // A file may hold more than a field can show; it stays as it is until something else is typed.
    let now = now.char_indices().nth(MOST_LETTERS).map_or(now, |(end, _)| &now[..end]);
    let typed = ui.data(|data| data.get_temp::<(String, String)>(id)).filter(|(over, _)| over == now);
    let mut text = typed.map_or_else(|| now.to_owned(), |(_, text)| text);
    let hint = RichText::new(prose.hint).color(ui.visuals().weak_text_color());
    let field = TextEdit::multiline(&mut text)
        .id(id)
        .desired_rows(prose.lines)
        .desired_width(f32::INFINITY)
        .char_limit(MOST_LETTERS);
    let response = ui.add(field.hint_text(hint)).accessible_name(prose.name);
    if response.lost_focus() {
        ui.data_mut(|data| data.remove::<(String, String)>(id));
        let words = text.trim_end();
        return (text != now && words != now).then(|| (!words.is_empty()).then(|| words.to_owned()));
    }
    remember(ui, id, now, text);
    None
}

fn remember(ui: &Ui, id: Id, now: &str, text: String) {
    if text != now {
        ui.data_mut(|data| data.insert_temp(id, (now.to_owned(), text)));
    }
}
