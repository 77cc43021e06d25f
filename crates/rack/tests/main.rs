//! The cut list, checked against cases whose best is proven, and against itself by two ways; the files of the rack.

#![allow(clippy::unwrap_used, reason = "tests")]

mod cases;
mod files;
mod lists;
mod quotes;
mod two_ways;
