//! The sheets: what is drawn on the page for the smith.

mod check_lines;
mod flow;
mod ladder;
mod mark_sheet;
mod names;
mod paragraph;
mod spread;
mod type_sizes;

pub use ladder::ladder_sheet;
pub use mark_sheet::mark_sheet;
