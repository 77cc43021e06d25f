//! The sheets: what is drawn on the page for the smith.

mod bench;
mod cautions;
mod check_lines;
mod cut_list;
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
mod quote_page;
mod rows;
mod sizes_in_words;
mod spread;
mod steps;
mod templates;
mod title;
mod type_sizes;

pub use cut_list::{CutHead, cut_sheets};
pub use document::{Sheet, document, document_for, ladder_sheet, mark_sheet, template_sheet, usual_orientation};
pub use quote_page::{QuoteHead, customer_page, reckoning};
