//! What the hand did on the drawing.

use crate::state::{Gesture, Request};

/// What the hand did on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub enum CanvasEvent {
    /// A segment was chosen, or none.
    Select(Option<usize>),
    /// One more segment was chosen, or one less; or all up to it.
    Extend {
        /// The segment.
        to: usize,
        /// Whether all up to it.
        run: bool,
    },
    /// A boundary is taken, moved, let go or put back.
    Gesture(Gesture),
    /// The pointer lies over the bars: where on the starting bar, in mm; none once it has left them.
    Cursor(Option<f64>),
    /// A segment was clicked twice: the field of its length should take the keyboard.
    EditExact {
        /// The segment.
        segment: usize,
    },
    /// One line for the status bar.
    Status(String),
}

impl From<CanvasEvent> for Request {
    fn from(event: CanvasEvent) -> Self {
        match event {
            CanvasEvent::Select(segment) => Self::Pick(segment),
            CanvasEvent::Extend { to, run } => Self::Extend { to, run },
            CanvasEvent::Gesture(gesture) => Self::Gesture(gesture),
            CanvasEvent::Cursor(mm) => Self::Cursor(mm),
            CanvasEvent::EditExact { segment } => Self::TypeSize(segment),
            CanvasEvent::Status(words) => Self::Say(words),
        }
    }
}
