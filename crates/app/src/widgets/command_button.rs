//! Buttons for commands: their words, their keys, greyed where they cannot be used now.

use crate::commands::keys_text;
use crate::state::{Command, Desk, Request};
use egui::{Button, Response, RichText, Ui};

/// A line of a menu, its keys at the right.
pub(crate) fn menu_line(ui: &mut Ui, desk: &Desk<'_>, command: Command, out: &mut Vec<Request>) {
    let row = command.row();
    let keys = RichText::new(keys_text(ui.ctx(), command)).color(desk.theme.ink_quiet);
    let button = Button::new(row.text).right_text(keys).selected(row.chosen.is_some_and(|chosen| chosen(desk)));
    if ui.add_enabled(command.may_be_used(desk), button).on_hover_text(row.tip).clicked() {
        out.push(Request::Run(command));
        ui.close();
    }
}

/// A button in a bar: shorter words, its keys in the tooltip.
pub(crate) fn bar_button(
    ui: &mut Ui,
    desk: &Desk<'_>,
    command: Command,
    words: &str,
    out: &mut Vec<Request>,
) -> Response {
    let row = command.row();
    let response = ui.add_enabled(
        command.may_be_used(desk),
        Button::new(words).selected(row.chosen.is_some_and(|chosen| chosen(desk))),
    );
    let keys = keys_text(ui.ctx(), command);
    let tip = if keys.is_empty() { row.tip.to_owned() } else { format!("{} ({keys})", row.tip) };
    let name = row.text.trim_end_matches('…');
    let response = response.on_hover_text(tip.as_str()).on_disabled_hover_text(tip);
    if response.clicked() {
        out.push(Request::Run(command));
    }
    response.accessible_name(name)
}
