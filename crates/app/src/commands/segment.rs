//! The commands that change which segments there are and in what order.

use super::edit::{has_segment, shows_the_plan};
use super::{Command, Row, WhileTyping};
use crate::editor::Editor;
use crate::state::{Desk, Side};
use crate::widgets::entry::ask_for_size;
use egui::{Context, Key, KeyboardShortcut, Modifiers};

const CTRL: Modifiers = Modifiers::COMMAND;
const CTRL_SHIFT: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);

pub(super) const ROWS: [Row; 13] = [
    Row::new(
        Command::AddAfter,
        "Add segment after…",
        "Add a segment after the selected one; choose its form.",
        add_after,
    )
    .keys(KeyboardShortcut::new(CTRL, Key::Enter))
    .when(shows_the_plan),
    Row::new(
        Command::AddBefore,
        "Add segment before…",
        "Add a segment before the selected one; choose its form.",
        add_before,
    )
    .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::Enter))
    .when(shows_the_plan),
    Row::new(
        Command::InsertMotif,
        "Insert motif…",
        "Put a run of segments that you kept into the bar, larger or smaller where you wish.",
        insert_motif,
    )
    .keys(KeyboardShortcut::new(CTRL, Key::M))
    .when(shows_the_plan),
    Row::new(
        Command::SaveMotif,
        "Save as motif…",
        "Keep the selected segment, and those after it, to be put into any plan.",
        save_motif,
    )
    .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::M))
    .when(has_segment),
    Row::new(Command::Duplicate, "Duplicate segment", "Put a copy of the selected segment after it.", duplicate)
        .keys(KeyboardShortcut::new(CTRL, Key::D))
        .when(has_segment),
    Row::new(Command::Remove, "Remove segment", "Take the selected segment out of the bar.", remove)
        .keys(KeyboardShortcut::new(Modifiers::NONE, Key::Delete))
        .while_typing(WhileTyping::Not)
        .when(has_segment),
    Row::new(Command::MoveUp, "Move up", "Move the selected segment toward the datum end.", move_up)
        .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::ArrowUp))
        .when(|desk| shows_the_plan(desk) && above(desk).is_some()),
    Row::new(Command::MoveDown, "Move down", "Move the selected segment away from the datum end.", move_down)
        .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::ArrowDown))
        .when(|desk| shows_the_plan(desk) && below(desk).is_some()),
    Row::new(Command::NextSegment, "Next segment", "Select the segment after the selected one.", next)
        .keys(KeyboardShortcut::new(CTRL, Key::ArrowDown)),
    Row::new(Command::PreviousSegment, "Previous segment", "Select the segment before the selected one.", previous)
        .keys(KeyboardShortcut::new(CTRL, Key::ArrowUp)),
    Row::new(Command::TypeSize, "Type its size", "Type over the first size of the selected segment.", |_, ctx| {
        ask_for_size(ctx);
    })
    .keys(KeyboardShortcut::new(Modifiers::NONE, Key::F2))
    .when(has_segment),
    Row::new(Command::AddBar, "Add a bar", "Add a second bar of the same stock to the plan.", add_bar)
        .when(shows_the_plan),
    Row::new(Command::RemoveBar, "Remove this bar", "Take the bar and all its segments out of the plan.", remove_bar)
        .when(|desk| shows_the_plan(desk) && desk.document.plan().bars.len() > 1),
];

/// The segment before the selected one in its chain.
fn above(desk: &Desk<'_>) -> Option<usize> {
    desk.document.plan().bars.get(desk.selection.bar)?.before_in_chain(desk.selection.segment()?).pop()
}

/// The segment after the selected one in its chain.
fn below(desk: &Desk<'_>) -> Option<usize> {
    desk.document.plan().bars.get(desk.selection.bar)?.next_in_chain(desk.selection.segment()?)
}

fn add_after(editor: &mut Editor, _: &Context) {
    editor.ask_form(Side::After);
}

fn add_before(editor: &mut Editor, _: &Context) {
    editor.ask_form(Side::Before);
}

fn insert_motif(editor: &mut Editor, _: &Context) {
    editor.ask_insert_motif();
}

fn save_motif(editor: &mut Editor, _: &Context) {
    editor.ask_save_motif();
}

fn duplicate(editor: &mut Editor, _: &Context) {
    if let Some(segment) = editor.selected_segment().cloned() {
        editor.insert_segment(segment, Side::After);
    }
}

fn remove(editor: &mut Editor, _: &Context) {
    editor.remove_segment();
}

fn move_up(editor: &mut Editor, _: &Context) {
    let (from, to) = (editor.selection.segment(), above(&editor.desk()));
    if let Some((from, to)) = from.zip(to) {
        editor.move_segment(from, to);
    }
}

fn move_down(editor: &mut Editor, _: &Context) {
    let (from, to) = (editor.selection.segment(), below(&editor.desk()));
    if let Some((from, to)) = from.zip(to) {
        editor.move_segment(from, to);
    }
}

fn next(editor: &mut Editor, _: &Context) {
    select(editor, 1);
}

fn previous(editor: &mut Editor, _: &Context) {
    select(editor, -1);
}

/// Selects a line further on; where the bar is shown after a step, another step.
fn select(editor: &mut Editor, below: isize) {
    if editor.desk().shown().is_some() {
        editor.step_by(below);
    } else {
        editor.select_line(below);
    }
}

fn add_bar(editor: &mut Editor, _: &Context) {
    editor.add_bar();
}

fn remove_bar(editor: &mut Editor, _: &Context) {
    editor.remove_bar();
}
