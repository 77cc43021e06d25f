//! The sheets: what is drawn on the page for the smith.

mod cautions;
mod check_lines;
mod document;
mod fact_boxes;
mod findings;
mod flow;
mod gauges;
mod ladder;
mod letters;
mod mark_sheet;
mod names;
mod paragraph;
mod sizes_in_words;
mod spread;
mod steps;
mod templates;
mod title;
mod type_sizes;

pub use document::{Sheet, document, document_for, ladder_sheet, mark_sheet, template_sheet, usual_orientation};
