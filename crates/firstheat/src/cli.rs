//! The command line: its words and its help.

use crate::list_cli::{BarsArgs, CutArgs, QuoteArgs};
use crate::paper_name::PaperName;
use crate::rack_cli::RackCommand;
use clap::{Args, Parser, Subcommand, ValueEnum};
use clap_complete::Shell;
use fh_core::plan::Plan;
use fh_measure::{MeasureError, WrittenShare};
use std::path::PathBuf;

const EXAMPLES: &str = "\
Examples:
  firstheat                                        open the editor with a demo plan
  firstheat gate-hook.plan.json                    open a plan
  firstheat new --stock \"1/2 in square\" -o hook.plan.json
  firstheat marks hook.plan.json                   the marks and the balance, as a table
  firstheat marks hook.plan.json --json            the same for other programs
  firstheat check hook.plan.json                   what to know before the bar is hot
  firstheat steps hook.plan.json                   the order of work, step by step
  firstheat sheet hook.plan.json -o hook.pdf       the mark sheet and the bench sheet
  firstheat sheet hook.plan.json -o hook.pdf --what marks,templates
  firstheat bars hook.plan.json                    which bar it can be made from
  firstheat cut hook.plan.json pin.plan.json       how to cut bars for them, the rack first
  firstheat rack add \"3 x 12 mm square, 2.4 m\"     bars on hand
  firstheat marks - < hook.plan.json               read the plan from standard input

Exit status: 0 when all went well, 1 when `check` found a stop, 2 when a plan cannot be read or a command is wrong.";

/// Plans a hand-forged piece: from the finished sizes to the marks on the bar, and a mark sheet at full scale.
#[derive(Debug, Parser)]
#[command(name = "firstheat", version, after_help = EXAMPLES, args_conflicts_with_subcommands = true)]
pub(crate) struct Cli {
    /// The plan to open in the editor; a demo plan where none is named.
    pub(crate) plan: Option<PathBuf>,
    #[command(subcommand)]
    pub(crate) command: Option<Command>,
}

/// What is done without a screen.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Prints the marks and the balance.
    #[command(after_help = "Example:\n  firstheat marks hook.plan.json --json")]
    Marks(ReadArgs),
    /// Prints the findings; the exit status is 1 where one of them is a stop.
    #[command(after_help = "Example:\n  firstheat check hook.plan.json && firstheat sheet hook.plan.json -o hook.pdf")]
    Check(ReadArgs),
    /// Prints the order of work: steps, heats, tools, and what is wrong with the order.
    #[command(after_help = "Example:\n  firstheat steps hook.plan.json --json")]
    Steps(ReadArgs),
    /// Writes the printed sheets.
    #[command(
        after_help = "Examples:\n  firstheat sheet hook.plan.json -o hook.pdf --paper letter\n  firstheat sheet hook.plan.json -o hook.pdf --what marks,templates\n\nPrint at 100 %, and hold a rule to the check lines."
    )]
    Sheet(SheetArgs),
    /// Writes the piece or its flat outlines for other programs, in mm.
    #[command(
        after_help = "Examples:\n  firstheat export hook.plan.json -o hook.stl\n  firstheat export hook.plan.json -o leaves.dxf"
    )]
    Export(ExportArgs),
    /// Writes an empty plan to start from.
    #[command(
        after_help = "Examples:\n  firstheat new --stock \"1/2 in square\" -o hook.plan.json\n  firstheat new --stock \"30 x 8 mm flat\" -o hinge.plan.json"
    )]
    New(NewArgs),
    /// Prints every section that a plan's bars can be made from, and what each asks for.
    #[command(
        after_help = "Examples:\n  firstheat bars hook.plan.json\n  firstheat bars hook.plan.json --by-cost --all"
    )]
    Bars(BarsArgs),
    /// Makes the cut list of plans or a job, the rack first; the exit status is 1 where some piece finds no bar.
    #[command(
        after_help = "Examples:\n  firstheat cut hook.plan.json pin.plan.json\n  firstheat cut three-beds.job.json -o cut.pdf\n  firstheat cut --lengths saw.json\n\nThe files: docs/rack-files.md and docs/command-line.md."
    )]
    Cut(CutArgs),
    /// Works out what a plan or a job costs, and what to charge for it.
    #[command(
        after_help = "Examples:\n  firstheat quote three-beds.job.json --count 1,10,40\n  firstheat quote hook.plan.json -o quote.pdf\n  firstheat quote hook.plan.json -o figures.pdf --paper-for smith"
    )]
    Quote(QuoteArgs),
    /// Shows and changes the rack: the bars on hand.
    #[command(subcommand)]
    Rack(RackCommand),
    /// Prints the JSON Schema of a file: the plan's where none is named.
    Schema(SchemaArgs),
    /// Prints a completion script for a shell.
    #[command(
        after_help = "Example:\n  firstheat completions bash > ~/.local/share/bash-completion/completions/firstheat"
    )]
    Completions(CompletionsArgs),
}

/// A plan to read.
#[derive(Debug, Args)]
pub(crate) struct ReadArgs {
    /// The plan; `-` reads standard input.
    pub(crate) plan: PathBuf,
    /// Prints JSON for other programs.
    #[arg(long)]
    pub(crate) json: bool,
}

/// A plan to print.
#[derive(Debug, Args)]
pub(crate) struct SheetArgs {
    /// The plan; `-` reads standard input.
    pub(crate) plan: PathBuf,
    /// The file to write, .pdf or .svg; as .svg each page is a file of its own, hook-1.svg, hook-2.svg and so on.
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: PathBuf,
    /// The size of the paper.
    #[arg(long, value_enum, ignore_case = true, default_value_t = PaperName::A4)]
    pub(crate) paper: PaperName,
    /// Which sheets, in the order given, separated by commas.
    #[arg(long, value_enum, ignore_case = true, value_delimiter = ',', default_value = "marks,bench")]
    pub(crate) what: Vec<SheetName>,
    /// Overwrites a file of another kind.
    #[arg(long)]
    pub(crate) force: bool,
}

/// A file to print the schema of.
#[derive(Debug, Args)]
pub(crate) struct SchemaArgs {
    /// Which file.
    #[arg(value_enum, ignore_case = true, default_value_t = FileSort::Plan)]
    pub(crate) file: FileSort,
}

/// A sort of file.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum FileSort {
    /// A plan.
    Plan,
    /// The bars on hand.
    Rack,
    /// What can be bought.
    Merchant,
    /// What an hour costs, ways of cutting, profit, tax.
    Shop,
    /// Plans with counts, and whom for.
    Job,
}

/// A kind of sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum SheetName {
    /// The bar at full scale with its marks.
    Marks,
    /// One leaf to forge from: the piece, its marks and every step in a line.
    Bench,
    /// A card for each step of the work.
    Steps,
    /// The whole work in a table.
    StepsShort,
    /// A strip of sheet to cut, with a notch for each size.
    Gauges,
    /// Templates to lay the hot iron on, at full scale.
    Templates,
    /// How long each part comes out if it is left fat or drawn thin.
    Ladder,
}

/// A plan to write for other programs.
#[derive(Debug, Args)]
pub(crate) struct ExportArgs {
    /// The plan; `-` reads standard input.
    pub(crate) plan: PathBuf,
    /// The file to write: .stl or .obj for the piece, .dxf or .svg for its flat outlines.
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: PathBuf,
    /// Overwrites a file of another kind.
    #[arg(long)]
    pub(crate) force: bool,
}

/// An empty plan to write.
#[derive(Debug, Args)]
pub(crate) struct NewArgs {
    /// The starting bar, for example "1/2 in square", "12 mm round", "30 x 8 mm flat".
    #[arg(long)]
    pub(crate) stock: String,
    /// The file to write; `-` writes standard output.
    #[arg(short, long, value_name = "PLAN")]
    pub(crate) output: PathBuf,
    /// Title of the piece; the file's name if left out.
    #[arg(long)]
    pub(crate) title: Option<String>,
    /// The share of the metal that the fire takes; "0 %" for none.
    #[arg(long, default_value = Plan::USUAL_SCALE, value_parser = scale)]
    pub(crate) scale: WrittenShare,
    /// Overwrites a file that is already there.
    #[arg(long)]
    pub(crate) force: bool,
}

/// Reads a share.
fn scale(text: &str) -> Result<WrittenShare, MeasureError> {
    WrittenShare::parse(text, true)
}

/// A shell to print a completion script for.
#[derive(Debug, Args)]
pub(crate) struct CompletionsArgs {
    /// The shell.
    #[arg(value_enum)]
    pub(crate) shell: Shell,
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn the_command_line_is_sound() {
        Cli::command().debug_assert();
    }
}
