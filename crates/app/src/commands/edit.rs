//! The commands that take steps back, and that carry segments from one place to another.

use super::row::{Row, WhileTyping};
use crate::state::{Command, Desk};
use egui::{Key, KeyboardShortcut, Modifiers};

const CTRL: Modifiers = Modifiers::COMMAND;
const CTRL_SHIFT: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);

pub(super) const ROWS: [Row; 5] = [
    Row::new(Command::Undo, "Undo", "Undo the last change.")
        .keys(KeyboardShortcut::new(CTRL, Key::Z))
        .while_typing(WhileTyping::NotWhileUnsettled)
        .when(|desk| desk.document.can_undo()),
    Row::new(Command::Redo, "Redo", "Redo the change you undid.")
        .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::Z))
        .while_typing(WhileTyping::NotWhileUnsettled)
        .when(|desk| desk.document.can_redo()),
    Row::new(Command::Cut, "Cut part", "Take the selected part out and keep it for pasting.")
        .keys(KeyboardShortcut::new(CTRL, Key::X))
        .while_typing(WhileTyping::Not)
        .when(has_segment),
    Row::new(Command::Copy, "Copy part", "Keep the selected part for pasting, here or in another plan.")
        .keys(KeyboardShortcut::new(CTRL, Key::C))
        .while_typing(WhileTyping::Not)
        .when(has_segment),
    Row::new(Command::Paste, "Paste part", "Put the kept part after the selected one.")
        .keys(KeyboardShortcut::new(CTRL, Key::V))
        .while_typing(WhileTyping::Not),
];

pub(super) fn has_segment(desk: &Desk<'_>) -> bool {
    desk.selection.segment().is_some() && shows_the_plan(desk)
}

/// Whether the finished bars are shown. Where they are shown after a step, nothing may happen to parts unseen.
pub(super) fn shows_the_plan(desk: &Desk<'_>) -> bool {
    desk.shown().is_none()
}
