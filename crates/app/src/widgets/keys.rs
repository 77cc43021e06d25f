//! Keys that a place of the window takes while it has the keyboard.

use egui::{Event, InputState, Key, Modifiers};

/// What was asked for by keys since the last frame, in turn; nobody else reads these keys then, and a key that asks for nothing is
/// left to others.
pub(crate) fn take<T>(input: &mut InputState, asked: impl Fn(Key, Modifiers) -> Option<T>) -> Vec<T> {
    let mut found = Vec::new();
    input.events.retain(|event| {
        let Event::Key { key, pressed: true, modifiers, .. } = event else { return true };
        let asked = asked(*key, *modifiers);
        let is_left = asked.is_none();
        found.extend(asked);
        is_left
    });
    found
}
