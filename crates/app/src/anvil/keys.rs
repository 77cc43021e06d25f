//! The keys at the anvil: whatever a foot switch or a gloved finger may press.

use egui::{Context, Event, Key};

/// What a key does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Turn {
    Next,
    Back,
    /// The clock starts anew.
    Clock,
    Leave,
}

fn turn(key: Key) -> Option<Turn> {
    match key {
        Key::Escape | Key::F11 => Some(Turn::Leave),
        Key::ArrowLeft | Key::ArrowUp | Key::PageUp | Key::Backspace => Some(Turn::Back),
        Key::Home => Some(Turn::Clock),
        Key::ArrowRight | Key::ArrowDown | Key::PageDown | Key::Space | Key::Enter | Key::End => Some(Turn::Next),
        key => is_letter(key).then_some(Turn::Next),
    }
}

fn is_letter(key: Key) -> bool {
    let name = key.name();
    name.len() == 1 && name.chars().all(|letter| letter.is_ascii_alphabetic())
}

/// What was pressed since the last frame; nobody else reads these keys then. A key that is held down turns one page only.
pub(super) fn pressed(ctx: &Context) -> Vec<Turn> {
    let mut found = Vec::new();
    ctx.input_mut(|input| {
        input.events.retain(|event| {
            let Event::Key { key, pressed, repeat, modifiers, .. } = event else { return true };
            let Some(turn) = turn(*key).filter(|_| !modifiers.command && !modifiers.alt) else { return true };
            if *pressed && !*repeat {
                found.push(turn);
            }
            false
        });
    });
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn any_letter_goes_on_and_no_figure_does() {
        for key in [Key::A, Key::B, Key::M, Key::Z, Key::Space, Key::Enter, Key::PageDown, Key::ArrowRight] {
            assert_eq!(turn(key), Some(Turn::Next), "{key:?}");
        }
        for key in [Key::ArrowLeft, Key::PageUp, Key::Backspace] {
            assert_eq!(turn(key), Some(Turn::Back), "{key:?}");
        }
        assert_eq!(turn(Key::Num5), None);
        assert_eq!(turn(Key::F5), None);
        assert_eq!(turn(Key::Escape), Some(Turn::Leave));
    }
}
