//! Quantities as they are said in the files of the rack: bars, sections, prices, times, shares. What was typed is kept.

pub mod bar;
pub mod money;
pub mod percent;
pub mod price;
pub mod section;
pub mod time;
pub mod written;
