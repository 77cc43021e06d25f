//! Keys: how they are written, and which command was pressed.

use super::all;
use super::row::{Row, WhileTyping};
use crate::state::Command;
use egui::{Context, KeyboardShortcut};

/// The keys of a command as they are written in menus: `Ctrl+Shift+S`.
pub(crate) fn keys_text(ctx: &Context, command: Command) -> String {
    let words = command.row().keys.map_or_else(String::new, |keys| ctx.format_shortcut(&keys));
    // The signs on the keys, not their names.
    let signs = [("OpenBracket", "["), ("CloseBracket", "]"), ("Plus", "+"), ("Minus", "−"), ("Equals", "=")];
    signs.iter().fold(words, |words, (name, sign)| words.replace(name, sign))
}

/// Who has the keyboard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Typing {
    /// No text field.
    No,
    /// A text field that holds what is in the plan.
    Settled,
    /// A text field with text that is not in the plan yet.
    Unsettled,
}

impl Typing {
    fn leaves(self, row: &Row) -> bool {
        match row.while_typing {
            WhileTyping::Works => true,
            WhileTyping::NotWhileUnsettled => self != Self::Unsettled,
            WhileTyping::Not => self == Self::No,
        }
    }
}

/// Takes the commands that were pressed.
pub(crate) fn take_pressed(ctx: &Context, typing: Typing) -> Vec<Command> {
    let mut rows: Vec<_> = all().filter(|row| typing.leaves(row)).collect();
    // Keys with more modifiers first: Ctrl+Z must not take Ctrl+Shift+Z.
    rows.sort_by_key(|row| std::cmp::Reverse(row.keys.map_or(0, |keys| modifiers(&keys))));
    let pressed = rows.into_iter().filter(|row| row.keys.is_some_and(|keys| pressed(ctx, &keys)));
    pressed.map(|row| row.command).collect()
}

fn pressed(ctx: &Context, keys: &KeyboardShortcut) -> bool {
    ctx.input_mut(|input| input.consume_shortcut(keys))
}

fn modifiers(keys: &KeyboardShortcut) -> u8 {
    let held = keys.modifiers;
    u8::from(held.alt) + u8::from(held.shift) + u8::from(held.command || held.ctrl)
}
