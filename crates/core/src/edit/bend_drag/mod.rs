//! A bend dragged by hand: the size that is written changes, never one that follows.

mod drag;
mod knob;
mod scroll;
mod sizes;
mod write;

pub use drag::{BendDrag, BendTo};
pub use knob::Knob;
pub use sizes::BendSizes;

#[cfg(test)]
mod tests;
