//! The command line, really run.

mod beds;
mod command_line;
mod cut;
mod rack;
mod steps;
mod told;
