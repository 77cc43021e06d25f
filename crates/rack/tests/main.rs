//! The cut list, checked against cases whose best is proven, and against itself by two ways.

mod cases;
mod two_ways;
