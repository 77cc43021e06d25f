//! The commands: one list with the words, the keys, when each may be used, and the function that does it.

mod edit;
mod file;
mod help;
mod keys;
mod order;
mod piece;
mod segment;
mod view;

pub(crate) use keys::{Typing, keys_text, take_pressed};

use crate::editor::Editor;
use crate::state::Desk;
use egui::KeyboardShortcut;

/// A command.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) enum Command {
    New,
    Open,
    Save,
    SaveAs,
    PrintMarkSheet,
    Export,
    Quit,
    Undo,
    Redo,
    Cut,
    Copy,
    Paste,
    Duplicate,
    Remove,
    AddBefore,
    AddAfter,
    InsertMotif,
    SaveMotif,
    MoveUp,
    MoveDown,
    NextSegment,
    PreviousSegment,
    TypeSize,
    AddBar,
    RemoveBar,
    ZoomIn,
    ZoomOut,
    ZoomFit,
    ViewSide,
    ViewTop,
    ViewBoth,
    TrueThickness,
    DoubleThickness,
    FourfoldThickness,
    Inches,
    Millimeters,
    LargerText,
    SmallerText,
    NextFinding,
    ShowPiece,
    PieceFront,
    PieceSide,
    PieceTop,
    PieceTurned,
    PieceFit,
    PieceLarger,
    PieceSmaller,
    Measure,
    LayPicture,
    AdjustPicture,
    ShowOrder,
    NextStep,
    PreviousStep,
    PlaySteps,
    AddStep,
    DuplicateStep,
    RemoveStep,
    MergeSteps,
    SplitStep,
    StepUp,
    StepDown,
    ProposeAgain,
    AtTheAnvil,
    Tour,
    KeyboardList,
    About,
}

/// Everything about a command.
pub(crate) struct Row {
    /// The command.
    pub(crate) command: Command,
    /// Its words in menus; `…` where it asks for more.
    pub(crate) text: &'static str,
    /// One line on what it does.
    pub(crate) tip: &'static str,
    /// Its keys.
    pub(crate) keys: Option<KeyboardShortcut>,
    /// Whether it may take its keys from a text field.
    pub(crate) while_typing: WhileTyping,
    /// Whether it may be used now.
    pub(crate) enabled: fn(&Desk<'_>) -> bool,
    /// Whether its choice is the one in force, for commands that choose.
    pub(crate) chosen: Option<fn(&Desk<'_>) -> bool>,
    /// Does it.
    pub(crate) run: fn(&mut Editor, &egui::Context),
}

/// Whether a command may take its keys from a text field that has the keyboard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum WhileTyping {
    /// Always.
    Works,
    /// Not while the field holds text that is not in the plan yet.
    NotWhileUnsettled,
    /// Never.
    Not,
}

impl Row {
    /// A command that may always be used and has no keys.
    const fn new(
        command: Command,
        text: &'static str,
        tip: &'static str,
        run: fn(&mut Editor, &egui::Context),
    ) -> Self {
        Self { command, text, tip, keys: None, while_typing: WhileTyping::Works, enabled: |_| true, chosen: None, run }
    }

    const fn keys(mut self, keys: KeyboardShortcut) -> Self {
        self.keys = Some(keys);
        self
    }

    const fn while_typing(mut self, while_typing: WhileTyping) -> Self {
        self.while_typing = while_typing;
        self
    }

    const fn when(mut self, enabled: fn(&Desk<'_>) -> bool) -> Self {
        self.enabled = enabled;
        self
    }

    const fn chosen(mut self, chosen: fn(&Desk<'_>) -> bool) -> Self {
        self.chosen = Some(chosen);
        self
    }
}

/// The commands as the list of keys groups them.
pub(crate) const GROUPS: [(&str, &[Row]); 7] = [
    ("File", &file::ROWS),
    ("Edit", &edit::ROWS),
    ("Segment", &segment::ROWS),
    ("View", &view::ROWS),
    ("Piece", &piece::ROWS),
    ("Order of work", &order::ROWS),
    ("Help", &help::ROWS),
];

/// Every command.
pub(crate) fn all() -> impl Iterator<Item = &'static Row> {
    GROUPS.iter().flat_map(|(_, rows)| rows.iter())
}

impl Command {
    /// Everything about it.
    pub(crate) fn row(self) -> &'static Row {
        all().find(|row| row.command == self).unwrap_or(&help::ROWS[0])
    }

    /// Does it, where it may be used now.
    pub(crate) fn run(self, editor: &mut Editor, ctx: &egui::Context) {
        let row = self.row();
        if (row.enabled)(&editor.desk()) {
            (row.run)(editor, ctx);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashSet;

    #[test]
    fn no_two_commands_share_their_keys() {
        let mut seen = HashSet::new();
        for row in all() {
            if let Some(keys) = row.keys {
                assert!(seen.insert(keys), "{} has keys that another command has", row.text);
            }
        }
    }

    #[test]
    fn every_command_has_words_of_its_own() {
        let (mut commands, mut texts) = (HashSet::new(), HashSet::new());
        for row in all() {
            assert!(commands.insert(row.command), "{} is listed twice", row.text);
            assert!(texts.insert(row.text), "two commands are called {}", row.text);
            assert!(row.tip.ends_with('.'), "{} is explained in a sentence", row.text);
            assert_eq!(row.command.row().text, row.text);
        }
    }

    #[test]
    fn no_keys_write_text() {
        for row in all() {
            let Some(keys) = row.keys else { continue };
            let plain = keys.modifiers.is_none() || keys.modifiers == egui::Modifiers::SHIFT;
            let writes = keys.logical_key.name().chars().count() == 1;
            assert!(!(plain && writes), "{} would be typed into a field", row.text);
        }
    }
}
