//! The sheets: what is drawn on the page for the smith.

mod check_lines;
mod flow;
mod mark_sheet;
mod paragraph;
mod type_sizes;
pub use mark_sheet::mark_sheet;
