//! The commands for plans as files, and for the printed sheet.

use super::row::Row;
use crate::state::Command;
use egui::{Key, KeyboardShortcut, Modifiers};

const CTRL: Modifiers = Modifiers::COMMAND;
const CTRL_SHIFT: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);

pub(super) const ROWS: [Row; 7] = [
    Row::new(Command::New, "New plan…", "Start an empty plan; choose the bar first.")
        .keys(KeyboardShortcut::new(CTRL, Key::N)),
    Row::new(Command::Open, "Open…", "Open a plan or a job from a file.").keys(KeyboardShortcut::new(CTRL, Key::O)),
    Row::new(Command::Save, "Save", "Save the plan in its file; beside a cut list or a quote, the job.").keys(KeyboardShortcut::new(CTRL, Key::S)),
    Row::new(Command::SaveAs, "Save as…", "Save the plan, or the job that is in front, in another file.")
        .keys(KeyboardShortcut::new(CTRL_SHIFT, Key::S)),
    Row::new(
        Command::PrintMarkSheet,
        "Print sheets…",
        "Make the printed sheets: marks, bench sheet, templates, ladder, step cards, short table, gauges; beside a cut list or a quote, its own.",
    )
    .keys(KeyboardShortcut::new(CTRL, Key::P)),
    Row::new(Command::Export, "Export…", "Write the piece as STL or OBJ, or its flat outlines as DXF or SVG, in mm.")
        .keys(KeyboardShortcut::new(CTRL, Key::E)),
    Row::new(Command::Quit, "Quit", "Close the program.").keys(KeyboardShortcut::new(CTRL, Key::Q)),
];

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
                Sheet::Bench => "bench sheet",
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
