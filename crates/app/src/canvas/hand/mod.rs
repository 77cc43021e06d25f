//! The hand: what the pointer and the keys do to the strips.

mod boundary;
mod cursor;
mod drag;
mod entry;
mod figure_names;
mod figures;
mod focus;
mod holes;
mod segments;
mod steer;
mod tag;
