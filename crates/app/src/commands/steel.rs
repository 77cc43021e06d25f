//! The command of the place for steel, and which others may be used there.

use super::row::Row;
use super::{file, help};
use crate::state::{Command, Desk, SteelTab};
use egui::{Key, KeyboardShortcut, Modifiers};

pub(super) const ROWS: [Row; 1] = [Row::new(
    Command::ShowSteel,
    "Steel",
    "Show which bar, the rack, the cut list and the quote; or go back to the plan.",
)
.keys(KeyboardShortcut::new(Modifiers::NONE, Key::F8))
.chosen(|desk| desk.steel.is_open())];

/// Whether the rack is in front.
pub(super) fn is_at_the_rack(desk: &Desk<'_>) -> bool {
    desk.steel.is_open() && desk.steel.tab == SteelTab::Rack
}

/// Whether a change of the rack can be taken back.
pub(super) fn can_undo(desk: &Desk<'_>) -> bool {
    desk.steel.stock.as_ref().is_some_and(crate::state::steel::Stocked::can_undo)
}

/// Whether a command makes sense while steel is shown.
pub(super) fn is_beside(command: Command) -> bool {
    let of = |rows: &[Row]| rows.iter().any(|row| row.command == command);
    of(&file::ROWS)
        || of(&help::ROWS)
        || matches!(
            command,
            Command::ShowSteel
                | Command::ShowOrder
                | Command::AtTheAnvil
                | Command::Undo
                | Command::Redo
                | Command::Inches
                | Command::Millimeters
                | Command::LargerText
                | Command::SmallerText
        )
}
