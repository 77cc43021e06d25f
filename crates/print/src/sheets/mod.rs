//! The sheets: what is drawn on the page for the smith.

mod check_lines;
mod document;
mod flow;
mod ladder;
mod letters;
mod mark_sheet;
mod names;
mod paragraph;
mod spread;
mod templates;
mod title;
mod type_sizes;

pub use document::{Sheet, document, ladder_sheet, mark_sheet, template_sheet};
