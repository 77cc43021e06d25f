//! The commands for plans as files, and for the printed sheet.

use super::{Command, Row};
use crate::editor::Editor;
use crate::state::Then;
use egui::{Context, Key, KeyboardShortcut, Modifiers};

const CTRL: Modifiers = Modifiers::COMMAND;
const CTRL_SHIFT: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);

pub(super) const ROWS: [Row; 7] = [
    Row::new(Command::New, "New plan…", "Begin an empty plan: choose the bar first.", new)
        .keys(KeyboardShortcut::new(CTRL, Key::N)),
    Row::new(Command::Open, "Open…", "Open a plan from a file.", open).keys(KeyboardShortcut::new(CTRL, Key::O)),
    Row::new(Command::Save, "Save", "Save the plan in its file.", save).keys(KeyboardShortcut::new(CTRL, Key::S)),
    Row::new(Command::SaveAs, "Save as…", "Save the plan in another file.", save_as)
        .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::S)),
    Row::new(
        Command::PrintMarkSheet,
        "Print sheets…",
        "Make the printed sheets: marks, templates, ladder, step cards, short table, gauges; as PDF or SVG.",
        print_mark_sheet,
    )
    .keys(KeyboardShortcut::new(CTRL, Key::P)),
    Row::new(
        Command::Export,
        "Write for other programs…",
        "Write the piece as STL or OBJ, or its flat outlines as DXF or SVG, in mm.",
        write_export,
    )
    .keys(KeyboardShortcut::new(CTRL, Key::E)),
    Row::new(Command::Quit, "Quit", "Close the program.", quit).keys(KeyboardShortcut::new(CTRL, Key::Q)),
];

fn new(editor: &mut Editor, ctx: &Context) {
    editor.leave_then(Then::New, ctx);
}

fn open(editor: &mut Editor, ctx: &Context) {
    editor.leave_then(Then::AskOpen, ctx);
}

fn save(editor: &mut Editor, ctx: &Context) {
    editor.save(ctx);
}

fn save_as(editor: &mut Editor, _: &Context) {
    editor.ask_save_as();
}

fn print_mark_sheet(editor: &mut Editor, _: &Context) {
    editor.ask_sheet();
}

fn write_export(editor: &mut Editor, _: &Context) {
    editor.ask_export();
}

fn quit(editor: &mut Editor, ctx: &Context) {
    editor.leave_then(Then::Close, ctx);
}

#[cfg(test)]
mod tests {
    use super::*;
    use fh_print::sheets::Sheet;

    #[test]
    fn the_words_for_printing_name_every_sheet() {
        let tip = Command::PrintMarkSheet.row().tip;
        for sheet in Sheet::ALL {
            let word = match sheet {
                Sheet::Marks => "marks",
                Sheet::Templates => "templates",
                Sheet::Ladder => "ladder",
                Sheet::Steps => "step cards",
                Sheet::StepList => "short table",
                Sheet::Gauges => "gauges",
            };
            assert!(tip.contains(word), "{word}");
        }
    }
}
