//! A row of the table of commands.

use crate::state::{Command, Desk};
use egui::KeyboardShortcut;

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
    pub(super) const fn new(command: Command, text: &'static str, tip: &'static str) -> Self {
        Self { command, text, tip, keys: None, while_typing: WhileTyping::Works, enabled: |_| true, chosen: None }
    }

    pub(super) const fn keys(mut self, keys: KeyboardShortcut) -> Self {
        self.keys = Some(keys);
        self
    }

    pub(super) const fn while_typing(mut self, while_typing: WhileTyping) -> Self {
        self.while_typing = while_typing;
        self
    }

    pub(super) const fn when(mut self, enabled: fn(&Desk<'_>) -> bool) -> Self {
        self.enabled = enabled;
        self
    }

    pub(super) const fn chosen(mut self, chosen: fn(&Desk<'_>) -> bool) -> Self {
        self.chosen = Some(chosen);
        self
    }
}
