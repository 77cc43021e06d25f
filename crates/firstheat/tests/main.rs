//! The command line, really run.

mod command_line;
mod cut;
mod rack;
mod steps;
