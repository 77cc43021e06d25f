//! The sheets, read back.

mod bench;
mod cards;
mod cautions;
mod cut_to_shape;
mod demo_sheets;
mod ladder;
mod laid_off;
mod mark_sheet;
mod opening;
mod reading;
mod sound;
mod steps;
mod templates;
