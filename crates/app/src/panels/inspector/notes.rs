//! A field for free words of more than one line. They are taken when the field is left.

use egui::{Id, TextEdit, Ui};

/// How many lines the field shows.
const LINES: usize = 3;

/// Shows the field; the words, once they are taken.
pub(super) fn show(ui: &mut Ui, name: &str, now: Option<&str>) -> Option<Option<String>> {
    let id = ui.make_persistent_id(name);
    let now = now.unwrap_or("");
    let typed = ui.data(|data| data.get_temp::<(String, String)>(id)).filter(|(over, _)| over == now);
    let mut text = typed.map_or_else(|| now.to_owned(), |(_, text)| text);
    let field = TextEdit::multiline(&mut text).id(id).desired_rows(LINES).desired_width(f32::INFINITY);
    let response = ui.add(field).accessible_name(name);
    if response.lost_focus() {
        ui.data_mut(|data| data.remove::<(String, String)>(id));
        let words = text.trim_end();
        return (words != now).then(|| (!words.is_empty()).then(|| words.to_owned()));
    }
    remember(ui, id, now, text);
    None
}

fn remember(ui: &Ui, id: Id, now: &str, text: String) {
    if text != now {
        ui.data_mut(|data| data.insert_temp(id, (now.to_owned(), text)));
    }
}
