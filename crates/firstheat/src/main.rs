//! First Heat, a forging-plan editor: the one binary.
//!
//! Without a subcommand it opens the editor; each subcommand does the same work without a screen.

mod check;
mod cli;
mod completions;
mod editor;
mod export;
mod failure;
mod finding_report;
mod input;
mod marks;
mod marks_report;
mod new;
mod output;
mod schema;
mod sheet;
mod steps;
mod steps_report;
mod stock;
mod table;
mod window;

use clap::Parser;
use cli::{Cli, Command};
use failure::Failure;
use std::process::ExitCode;

fn main() -> ExitCode {
    let cli = Cli::parse();
    let done = match cli.command {
        None => editor::run(cli.plan),
        Some(Command::Marks(args)) => marks::run(&args),
        Some(Command::Check(args)) => check::run(&args),
        Some(Command::Steps(args)) => steps::run(&args),
        Some(Command::Sheet(args)) => sheet::run(&args),
        Some(Command::Export(args)) => export::run(&args),
        Some(Command::New(args)) => new::run(&args),
        Some(Command::Schema) => schema::run(),
        Some(Command::Completions(args)) => completions::run(&args),
    };
    done.unwrap_or_else(Failure::report)
}
