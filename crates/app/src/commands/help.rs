//! The commands that explain the program.

use super::row::Row;
use crate::state::Command;
use egui::{Key, KeyboardShortcut, Modifiers};

pub(super) const ROWS: [Row; 5] = [
    Row::new(Command::Find, "Find…", "Find a command, a part, a finding or a page of the handbook by any word.")
        .keys(KeyboardShortcut::new(Modifiers::COMMAND, Key::F)),
    Row::new(Command::Handbook, "Handbook…", "Read the handbook; it is built in, and searched by any word.")
        .keys(KeyboardShortcut::new(Modifiers::COMMAND, Key::F1)),
    Row::new(Command::Tour, "Tour of the screen", "Show what is where, in eight short notes.")
        .keys(KeyboardShortcut::new(Modifiers::SHIFT, Key::F1)),
    Row::new(Command::KeyboardList, "Keys…", "List the keys of every command.")
        .keys(KeyboardShortcut::new(Modifiers::NONE, Key::F1)),
    Row::new(Command::About, "About First Heat…", "The version, and the licence of the fonts."),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::dialogs::TOUR_NOTES;

    #[test]
    fn the_tour_has_as_many_notes_as_are_promised() {
        let words = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
        let promised = format!("in {} short notes", words[TOUR_NOTES - 1]);
        assert!(Command::Tour.row().tip.contains(&promised), "{promised}");
    }
}
