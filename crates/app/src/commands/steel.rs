//! The commands of the place for steel, and which others may be used there.

use super::row::Row;
use super::{file, help};
use crate::state::{Command, Desk, SteelTab};
use egui::{Key, KeyboardShortcut, Modifiers};

const ALT: Modifiers = Modifiers::ALT;

pub(super) const ROWS: [Row; 5] = [
    Row::new(
        Command::ShowSteel,
        "Steel",
        "Show which bar, the rack, the cut list and the quote; or go back to the plan.",
    )
    .keys(KeyboardShortcut::new(Modifiers::NONE, Key::F8))
    .chosen(|desk| desk.steel.is_open()),
    Row::new(Command::WhichBar, "Which bar", "Show every bar that the piece can be made from.")
        .keys(KeyboardShortcut::new(ALT, Key::Num1))
        .chosen(|desk| shows(desk, SteelTab::Which)),
    Row::new(Command::Rack, "Rack", "Show the bars on hand.")
        .keys(KeyboardShortcut::new(ALT, Key::Num2))
        .chosen(|desk| shows(desk, SteelTab::Rack)),
    Row::new(Command::CutList, "Cut list", "Show which piece is cut from which bar.")
        .keys(KeyboardShortcut::new(ALT, Key::Num3))
        .chosen(|desk| shows(desk, SteelTab::Cut)),
    Row::new(Command::Quote, "Quote", "Show what the job costs, and what to ask for it.")
        .keys(KeyboardShortcut::new(ALT, Key::Num4))
        .chosen(|desk| shows(desk, SteelTab::Quote)),
];

fn shows(desk: &Desk<'_>, tab: SteelTab) -> bool {
    desk.steel.is_open() && desk.steel.tab == tab
}

/// Whether the rack is in front.
pub(super) fn is_at_the_rack(desk: &Desk<'_>) -> bool {
    shows(desk, SteelTab::Rack)
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
        || of(&ROWS)
        || matches!(
            command,
            Command::ShowOrder
                | Command::AtTheAnvil
                | Command::Undo
                | Command::Redo
                | Command::Inches
                | Command::Millimeters
                | Command::LargerText
                | Command::SmallerText
        )
}
