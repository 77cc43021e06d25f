//! The menu of a part: the same at its line in the list, on the strips and on the piece.

use super::command_button::menu_line;
use crate::state::{Command, Desk, Request};
use egui::{Popup, Response, SetOpenCommand, Ui};

/// What it offers; a gap stands between what belongs together.
const LINES: [&[Command]; 4] = [
    &[Command::AddBefore, Command::AddAfter, Command::InsertMotif],
    &[Command::TypeSize, Command::FixMark, Command::LoosenMark],
    &[Command::Cut, Command::Copy, Command::Paste, Command::Duplicate, Command::SaveMotif, Command::ScaleParts],
    &[Command::MoveUp, Command::MoveDown, Command::Remove],
];

/// The lines of the menu.
pub(crate) fn lines(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    for (index, group) in LINES.into_iter().enumerate() {
        if index > 0 {
            ui.separator();
        }
        for command in group {
            menu_line(ui, desk, *command, out);
        }
    }
}

/// The menu where something is drawn: it opens at the pointer, wherever that is in the drawing.
pub(crate) fn over(ui: &Ui, drawing: &Response, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let asked = drawing.contains_pointer() && ui.input(|input| input.pointer.secondary_clicked());
    let set = asked.then_some(SetOpenCommand::Bool(true));
    let menu = Popup::menu(drawing).open_memory(set).at_pointer_fixed();
    menu.show(|ui| lines(ui, desk, out));
}
