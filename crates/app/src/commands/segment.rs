//! The commands that change which segments there are and in what order.

use super::edit::{has_segment, shows_the_plan};
use super::row::{Row, WhileTyping};
use crate::state::{Command, Desk};
use egui::{Key, KeyboardShortcut, Modifiers};
use fh_core::plan::Chain;

const CTRL: Modifiers = Modifiers::COMMAND;
const CTRL_SHIFT: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);

pub(super) const ROWS: [Row; 16] = [
    Row::new(Command::AddAfter, "Add part after…", "Add a part after the selected one; choose its form.")
        .keys(KeyboardShortcut::new(CTRL, Key::Enter))
        .when(shows_the_plan),
    Row::new(Command::AddBefore, "Add part before…", "Add a part before the selected one; choose its form.")
        .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::Enter))
        .when(shows_the_plan),
    Row::new(Command::InsertMotif, "Put in a kept part…", "Put in a run of parts that you kept, scaled if you wish.")
        .keys(KeyboardShortcut::new(CTRL, Key::M))
        .when(shows_the_plan),
    Row::new(
        Command::SaveMotif,
        "Keep this part…",
        "Keep the selected part, and those after it, to be put into any plan.",
    )
    .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::M))
    .when(has_segment),
    Row::new(Command::ScaleParts, "Scale part…", "Multiply every length of the selected parts by a number.")
        .when(has_segment),
    Row::new(Command::Duplicate, "Duplicate part", "Put a copy of the selected part after it.")
        .keys(KeyboardShortcut::new(CTRL, Key::D))
        .when(has_segment),
    Row::new(Command::Remove, "Remove part", "Take the selected part out of the bar.")
        .keys(KeyboardShortcut::new(Modifiers::NONE, Key::Delete))
        .while_typing(WhileTyping::Not)
        .when(has_segment),
    Row::new(Command::MoveUp, "Move up", "Move the selected part towards the datum end.")
        .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::ArrowUp))
        .when(|desk| shows_the_plan(desk) && above(desk).is_some()),
    Row::new(Command::MoveDown, "Move down", "Move the selected part away from the datum end.")
        .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::ArrowDown))
        .when(|desk| shows_the_plan(desk) && below(desk).is_some()),
    Row::new(Command::NextSegment, "Next part", "Select the part after the selected one.")
        .keys(KeyboardShortcut::new(CTRL, Key::ArrowDown)),
    Row::new(Command::PreviousSegment, "Previous part", "Select the part before the selected one.")
        .keys(KeyboardShortcut::new(CTRL, Key::ArrowUp)),
    Row::new(Command::TypeSize, "Type its size", "Type over the first size of the selected part.")
        .keys(KeyboardShortcut::new(Modifiers::NONE, Key::F2))
        .when(has_segment),
    Row::new(Command::FixMark, "Fix its mark", "Keep the mark at the part's end where it is, whatever the parts take.")
        .keys(KeyboardShortcut::new(CTRL, Key::K))
        .when(|desk| has_segment(desk) && mark_is_fixed(desk) == Some(false)),
    Row::new(Command::LoosenMark, "Loosen its mark", "Let the mark at the part's end follow from the parts again.")
        .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::K))
        .when(|desk| has_segment(desk) && mark_is_fixed(desk) == Some(true)),
    Row::new(Command::AddBar, "Add a bar", "Add a second bar of the same stock to the plan.").when(shows_the_plan),
    Row::new(Command::RemoveBar, "Remove this bar", "Take the bar and all its parts out of the plan.")
        .when(|desk| shows_the_plan(desk) && desk.document.plan().bars.len() > 1),
];

/// The segment before the selected one in its chain.
pub(crate) fn above(desk: &Desk<'_>) -> Option<usize> {
    desk.document.plan().bars.get(desk.selection.bar)?.before_in_chain(desk.selection.segment()?).pop()
}

/// The segment after the selected one in its chain.
pub(crate) fn below(desk: &Desk<'_>) -> Option<usize> {
    desk.document.plan().bars.get(desk.selection.bar)?.next_in_chain(desk.selection.segment()?)
}

/// Whether the mark at the selected segment's end is fixed; none where it cannot be: in a branch, and where none is selected.
fn mark_is_fixed(desk: &Desk<'_>) -> Option<bool> {
    let bar = desk.document.plan().bars.get(desk.selection.bar)?;
    let segment = desk.selection.segment()?;
    let is_on_bar = matches!(bar.place_of(segment)?, (Chain::Bar, _));
    is_on_bar.then(|| bar.segment(segment).is_some_and(|segment| segment.ends_at.is_some()))
}
