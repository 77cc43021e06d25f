//! The command line of the rack: its words and its help.

use crate::list_cli::BookArgs;
use clap::{Args, Subcommand};
use std::path::PathBuf;

/// What is done with the rack.
#[derive(Debug, Subcommand)]
pub(crate) enum RackCommand {
    /// Lists the bars on hand, what they weigh, and what was booked.
    #[command(after_help = "Example:\n  firstheat rack list --json")]
    List(ListArgs),
    /// Puts bars on the rack.
    #[command(
        after_help = "Examples:\n  firstheat rack add \"3 x 12 mm square, 2.4 m\" --lies \"left, below\"\n  firstheat rack add \"1/2 in round, 20 ft\" --measured \"20 ft 1 1/4 in\" --end \"1 in\""
    )]
    Add(AddArgs),
    /// Takes bars off the rack; never more than there are.
    #[command(after_help = "Example:\n  firstheat rack take \"2 x 12 mm square, 2.4 m\"")]
    Take(TakeArgs),
    /// Books the cut list of plans or a job: its bars are taken off the rack, its offcuts put on it.
    #[command(after_help = "Example:\n  firstheat rack book three-beds.job.json")]
    Book(BookArgs),
    /// Undoes a booking: its bars are back on the rack, its offcuts off it.
    #[command(after_help = "Examples:\n  firstheat rack undo\n  firstheat rack undo 3")]
    Undo(UndoArgs),
}

/// The rack's file.
#[derive(Debug, Args)]
pub(crate) struct RackFile {
    /// The file of the rack; the program's own where none is named.
    #[arg(long, value_name = "FILE")]
    pub(crate) rack: Option<PathBuf>,
}

/// A rack to list.
#[derive(Debug, Args)]
pub(crate) struct ListArgs {
    #[command(flatten)]
    pub(crate) file: RackFile,
    /// Prints JSON for other programs.
    #[arg(long)]
    pub(crate) json: bool,
}

/// Bars to put on the rack.
#[derive(Debug, Args)]
pub(crate) struct AddArgs {
    #[command(flatten)]
    pub(crate) file: RackFile,
    /// The bars as they are said: "3 x 12 mm square, 2.4 m".
    pub(crate) bar: String,
    /// The material; mild steel where none is named.
    #[arg(long)]
    pub(crate) material: Option<String>,
    /// The length as measured, where it is not the one that the bar is called by.
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) measured: Option<String>,
    /// How much of one end gives no piece.
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) end: Option<String>,
    /// What it cost: "9.60 each", "1.85 per kg".
    #[arg(long, allow_hyphen_values = true)]
    pub(crate) price: Option<String>,
    /// Where it lies.
    #[arg(long, value_name = "PLACE")]
    pub(crate) lies: Option<String>,
    /// Free words.
    #[arg(long)]
    pub(crate) note: Option<String>,
}

/// Bars to take off the rack.
#[derive(Debug, Args)]
pub(crate) struct TakeArgs {
    #[command(flatten)]
    pub(crate) file: RackFile,
    /// The bars as they are said: "2 x 12 mm square, 2.4 m".
    pub(crate) bar: String,
    /// The material; mild steel where none is named.
    #[arg(long)]
    pub(crate) material: Option<String>,
    /// Where they lie; anywhere where no place is named.
    #[arg(long, value_name = "PLACE")]
    pub(crate) lies: Option<String>,
}

/// A booking to undo.
#[derive(Debug, Args)]
pub(crate) struct UndoArgs {
    #[command(flatten)]
    pub(crate) file: RackFile,
    /// Its number; the latest where none is named.
    pub(crate) number: Option<u32>,
}
