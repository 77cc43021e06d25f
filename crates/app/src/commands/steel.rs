//! The commands of the place for steel, and which others may be used there.

use super::row::Row;
use super::{file, help};
use crate::state::{Command, Desk, SteelTab};
use egui::{Key, KeyboardShortcut, Modifiers};

const ALT: Modifiers = Modifiers::ALT;

pub(super) const ROWS: [Row; 8] = [
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
    Row::new(Command::Quote, "Quote", "Show what the job costs, and what to charge for it.")
        .keys(KeyboardShortcut::new(ALT, Key::Num4))
        .chosen(|desk| shows(desk, SteelTab::Quote)),
    Row::new(Command::Job, "Job", "Show the plans of the job, whom it is for, and what is agreed.")
        .keys(KeyboardShortcut::new(ALT, Key::Num5))
        .chosen(|desk| shows(desk, SteelTab::Job)),
    Row::new(Command::Merchant, "Merchant", "Show what can be bought, and at what price.")
        .keys(KeyboardShortcut::new(ALT, Key::Num6))
        .chosen(|desk| shows(desk, SteelTab::Merchant)),
    Row::new(
        Command::ShopFigures,
        "Shop",
        "Show what an hour costs, how things are cut, and what is added to the cost.",
    )
    .keys(KeyboardShortcut::new(ALT, Key::Num7))
    .chosen(|desk| shows(desk, SteelTab::Shop)),
];

fn shows(desk: &Desk<'_>, tab: SteelTab) -> bool {
    desk.steel.is_open() && desk.steel.tab == tab
}

/// Whether undo and redo are about what steel shows, and not about the plan.
pub(super) fn takes_undo(desk: &Desk<'_>) -> bool {
    desk.steel.is_open() && desk.steel.tab != SteelTab::Which
}

/// Whether a change of what it shows can be taken back.
pub(super) fn can_undo(desk: &Desk<'_>) -> bool {
    let Some(stock) = &desk.steel.stock else { return false };
    match desk.steel.tab {
        SteelTab::Rack => stock.rack.can_undo(),
        SteelTab::Merchant => stock.merchant.can_undo(),
        SteelTab::Shop => stock.shop.can_undo(),
        SteelTab::Quote => desk.steel.last_changed().is_some(),
        _ => desk.steel.job.can_undo(),
    }
}

/// Whether a change can be done again: of the job alone, as the others are saved at once.
pub(super) fn can_redo(desk: &Desk<'_>) -> bool {
    desk.steel.tab.is_of_job() && desk.steel.job.can_redo()
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
