//! First Heat, a forging-plan editor: the one binary.
//!
//! Without a subcommand it opens the editor; each subcommand does the same work without a screen.

mod bars;
mod caution_report;
mod check;
mod cli;
mod completions;
mod cut;
mod cut_report;
mod editor;
mod export;
mod failure;
mod finding_report;
mod input;
mod kept;
mod list;
mod list_cli;
mod list_report;
mod marks;
mod marks_report;
mod new;
mod order;
mod output;
mod paper_name;
mod quote;
mod quote_report;
mod rack;
mod rack_cli;
mod rack_report;
mod schema;
mod sheet;
mod steps;
mod steps_report;
mod table;
mod window;

use clap::Parser;
use cli::{Cli, Command};
use failure::Failure;
use std::process::ExitCode;

fn main() -> ExitCode {
    let done = Cli::try_parse().map_or_else(|error| misread(&error), run);
    done.unwrap_or_else(Failure::report)
}

fn run(cli: Cli) -> Result<ExitCode, Failure> {
    match cli.command {
        None => editor::run(cli.plan),
        Some(Command::Marks(args)) => marks::run(&args),
        Some(Command::Check(args)) => check::run(&args),
        Some(Command::Steps(args)) => steps::run(&args),
        Some(Command::Sheet(args)) => sheet::run(&args),
        Some(Command::Export(args)) => export::run(&args),
        Some(Command::New(args)) => new::run(&args),
        Some(Command::Bars(args)) => bars::run(&args),
        Some(Command::Cut(args)) => cut::run(&args),
        Some(Command::Quote(args)) => quote::run(&args),
        Some(Command::Rack(command)) => rack::run(&command),
        Some(Command::Schema(args)) => schema::run(&args),
        Some(Command::Completions(args)) => completions::run(&args),
    }
}

/// What was typed is no command: help that was asked for, or a failure in one line.
fn misread(error: &clap::Error) -> Result<ExitCode, Failure> {
    let words = error.render().to_string();
    if !error.use_stderr() {
        output::print(&words)?;
        return Ok(ExitCode::SUCCESS);
    }
    // What is wrong stands first, then the way the command is used, which is told by its help.
    let is_help = |line: &&str| line.starts_with("Usage:") || line.starts_with("For more information");
    let what = words.lines().take_while(|line| !is_help(line)).map(str::trim).filter(|line| !line.is_empty());
    let what = what.collect::<Vec<_>>().join(" ");
    let what = what.strip_prefix("error: ").unwrap_or(&what);
    Err(Failure::new(format!("{what} (firstheat --help shows the commands)")))
}
