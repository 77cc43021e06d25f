//! Quantities as people write them, from outside.

mod file_text;
mod ranges;
mod reference;
mod typed;
mod written;
