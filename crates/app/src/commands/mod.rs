//! The table of commands: words, keys, and when each may be used. The editor does them.

mod edit;
mod file;
mod help;
mod keys;
mod order;
mod piece;
mod row;
mod segment;
mod steel;
mod view;
mod whole;

pub(crate) use keys::{Typing, keys_text, take_pressed};
pub(crate) use row::Row;
pub(crate) use segment::{above, below};

use crate::state::{Command, Desk};

/// The commands as the list of keys groups them.
pub(crate) const GROUPS: [(&str, &[Row]); 9] = [
    ("File", &file::ROWS),
    ("Edit", &edit::ROWS),
    ("Part", &segment::ROWS),
    ("The whole piece", &whole::ROWS),
    ("View", &view::ROWS),
    ("Piece", &piece::ROWS),
    ("Order of work", &order::ROWS),
    ("Steel", &steel::ROWS),
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

    /// Whether it may be used now: while steel stands in place of the plan, nothing is done to parts that are not seen.
    pub(crate) fn may_be_used(self, desk: &Desk<'_>) -> bool {
        match self {
            // In steel, undo takes back what was done there.
            Self::Undo if steel::takes_undo(desk) => steel::can_undo(desk),
            Self::Redo if steel::takes_undo(desk) => steel::can_redo(desk),
            _ => (self.row().enabled)(desk) && (!desk.steel.is_open() || steel::is_beside(self)),
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
