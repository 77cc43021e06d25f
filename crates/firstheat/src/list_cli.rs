//! The command line of cut lists, of which bar, and of quotes: its words and its help.

use crate::paper_name::PaperName;
use clap::{Args, ValueEnum};
use std::path::PathBuf;

/// A plan to find a bar for.
#[derive(Debug, Args)]
pub(crate) struct BarsArgs {
    /// The plan; `-` reads standard input.
    pub(crate) plan: PathBuf,
    /// The file of the rack; the program's own where none is named.
    #[arg(long, value_name = "FILE")]
    pub(crate) rack: Option<PathBuf>,
    /// The merchant's list; the program's own where none is named.
    #[arg(long, value_name = "FILE")]
    pub(crate) merchant: Option<PathBuf>,
    /// Puts the cheapest first, in place of the one that is least work.
    #[arg(long)]
    pub(crate) by_cost: bool,
    /// Leaves heats and minutes out, which take longest to work out.
    #[arg(long)]
    pub(crate) quick: bool,
    /// Prints every section that it can be made from.
    #[arg(long)]
    pub(crate) all: bool,
    /// Prints JSON for other programs.
    #[arg(long)]
    pub(crate) json: bool,
}

/// What a list is cut from.
#[derive(Debug, Args)]
pub(crate) struct StockArgs {
    /// The file of the rack; the program's own where none is named.
    #[arg(long, value_name = "FILE")]
    pub(crate) rack: Option<PathBuf>,
    /// The merchant's list; the program's own where none is named.
    #[arg(long, value_name = "FILE")]
    pub(crate) merchant: Option<PathBuf>,
    /// The shop's figures; the program's own where none are named.
    #[arg(long, value_name = "FILE")]
    pub(crate) shop: Option<PathBuf>,
    /// The width of a cut, in place of that of the way of cutting: "2 mm".
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) kerf: Option<String>,
    /// Offcuts from this length are kept: "300 mm".
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) keep: Option<String>,
}

/// A list to cut.
#[derive(Debug, Args)]
pub(crate) struct CutArgs {
    /// Plans, or one job; `-` reads a plan from standard input.
    #[arg(value_name = "PLAN|JOB", required_unless_present = "lengths")]
    pub(crate) plans: Vec<PathBuf>,
    /// A bare list of bars and pieces in place of plans; `-` reads standard input.
    #[arg(long, value_name = "FILE", conflicts_with = "plans")]
    pub(crate) lengths: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) stock: StockArgs,
    /// Writes the sheets to this file, .pdf or .svg: cut list, what to buy, labels for offcuts.
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<PathBuf>,
    /// The size of the paper.
    #[arg(long, value_enum, ignore_case = true, default_value_t = PaperName::A4)]
    pub(crate) paper: PaperName,
    /// Overwrites a file of another kind.
    #[arg(long)]
    pub(crate) force: bool,
    /// Prints JSON for other programs.
    #[arg(long)]
    pub(crate) json: bool,
}

/// A cut list to book on the rack.
#[derive(Debug, Args)]
pub(crate) struct BookArgs {
    /// Plans, or one job.
    #[arg(value_name = "PLAN|JOB", required = true)]
    pub(crate) plans: Vec<PathBuf>,
    #[command(flatten)]
    pub(crate) stock: StockArgs,
}

/// A job to quote for.
#[derive(Debug, Args)]
pub(crate) struct QuoteArgs {
    /// Plans, or one job.
    #[arg(value_name = "PLAN|JOB", required = true)]
    pub(crate) plans: Vec<PathBuf>,
    #[command(flatten)]
    pub(crate) stock: StockArgs,
    /// For how many of it, separated by commas.
    #[arg(long, value_delimiter = ',', default_value = "1")]
    pub(crate) count: Vec<u32>,
    /// Writes a paper to this file, .pdf or .svg.
    #[arg(short, long, value_name = "FILE")]
    pub(crate) output: Option<PathBuf>,
    /// Whom that paper is for.
    #[arg(long, value_enum, ignore_case = true, default_value_t = PaperFor::Customer)]
    pub(crate) paper_for: PaperFor,
    /// The size of the paper.
    #[arg(long, value_enum, ignore_case = true, default_value_t = PaperName::A4)]
    pub(crate) paper: PaperName,
    /// Overwrites a file of another kind.
    #[arg(long)]
    pub(crate) force: bool,
    /// Prints JSON for other programs.
    #[arg(long)]
    pub(crate) json: bool,
}

/// Whom a paper is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum PaperFor {
    /// A picture, what is made, the price and what holds of it.
    Customer,
    /// Every line with what it follows from.
    Smith,
}
