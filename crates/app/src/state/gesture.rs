//! What the hand does from taking hold of something to letting it go: one step that can be undone.

use fh_core::edit::Edit;

/// A part of a gesture: of a drag, or of one nudge by the keyboard.
#[derive(Clone, Debug, PartialEq)]
pub enum Gesture {
    /// Something is taken in hand.
    Begin,
    /// What is in hand is moved: a change of the plan, counted from where the gesture began.
    Drag(Box<Edit>),
    /// It is let go: one step that can be undone.
    Commit,
    /// It is put back.
    Cancel,
}
