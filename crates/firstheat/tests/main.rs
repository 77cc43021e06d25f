//! The command line, really run.

mod beds;
mod blanks;
mod command_line;
mod cut;
mod rack;
mod steps;
