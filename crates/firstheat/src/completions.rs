//! `firstheat completions`: completion scripts for shells.

use crate::cli::{Cli, CompletionsArgs};
use crate::failure::Failure;
use clap::CommandFactory;
use std::io::{self, Write};
use std::process::ExitCode;

/// Prints the script for a shell.
pub(crate) fn run(args: &CompletionsArgs) -> Result<ExitCode, Failure> {
    // Generated into memory: the generator panics where its output is closed.
    let mut script = Vec::new();
    clap_complete::generate(args.shell, &mut Cli::command(), "firstheat", &mut script);
    io::stdout().lock().write_all(&script)?;
    Ok(ExitCode::SUCCESS)
}
