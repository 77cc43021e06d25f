//! What is asked for about steel. It is done after the frame.

use super::Filter;
use crate::state::{Choice, PaperSize, Then};
use fh_rack::kept::job::Job;
use fh_rack::kept::merchant::Merchant;
use fh_rack::kept::rack::RackBar;
use fh_rack::kept::shop::Shop;
use fh_rack::said::section::Alike;
use fh_rack::which::options::By;
use std::path::PathBuf;

/// The parts of the place for steel.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum SteelTab {
    /// Which bar the piece is made from.
    #[default]
    Which,
    /// The bars on hand.
    Rack,
    /// What is cut from which bar.
    Cut,
    /// What to ask for it.
    Quote,
    /// The job: its plans, whom it is for, what is agreed.
    Job,
    /// What can be bought, and at what price.
    Merchant,
    /// What an hour costs, how things are cut, what is put on.
    Shop,
}

impl SteelTab {
    /// Whether it is about the job in hand: saving and taking back are then of the job.
    pub(crate) fn is_of_job(self) -> bool {
        matches!(self, Self::Cut | Self::Quote | Self::Job)
    }
}

/// A paper that is made of steel and money.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum SteelPaper {
    /// The cut list.
    Cut,
    /// The quote's page for the customer.
    Customer,
    /// The figures behind the quote, for the smith.
    Figures,
}

impl SteelPaper {
    /// What it is called.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Cut => "cut list",
            Self::Customer => "quote",
            Self::Figures => "figures",
        }
    }

    /// What has to be known of it.
    pub(crate) fn hint(self) -> &'static str {
        match self {
            Self::Cut => "Nothing on it is at full scale: cut by the figures.",
            Self::Customer => "It is a guide, not a set of accounts. Tax and the law on sales are local: see to them.",
            Self::Figures => "These are for you, not for the customer.",
        }
    }

    /// What is added to the name of its file.
    pub(crate) fn file_word(self) -> &'static str {
        match self {
            Self::Cut => "cut",
            Self::Customer => "quote",
            Self::Figures => "figures",
        }
    }
}

/// Something to be done about steel.
#[derive(Clone, Debug)]
pub(crate) enum SteelAsk {
    /// Put the cheapest first, or what is least work.
    SortBy(By),
    /// Show only some of the options.
    Filter(Filter),
    /// Look at an option more closely.
    Look(Alike),
    /// Make the piece from this.
    TakeBar(Alike),
    /// Change the rack.
    Rack(RackAsk),
    /// Something about the job.
    Job(JobAsk),
    /// Ask for the file of a plan, or of a job, to cut it as well.
    AskPlan,
    /// Cut the plan of a file as well; of a job's file all of its plans.
    AddPlan(PathBuf),
    /// Stop the search: the best so far stays.
    StopSearch,
    /// Take the bars off the rack, and put the offcuts on it.
    Book,
    /// The shop's figures, and whether they are kept: not while they are dragged.
    Shop(Box<Shop>, bool),
    /// The merchant's list.
    Merchant(Box<Merchant>),
    /// Look at a line of the merchant's list.
    Ware(usize),
    /// For how many the quote is made: one of its counts.
    QuoteCount(usize, u32),
    /// Look at the lines of one of its counts.
    QuoteLines(usize),
    /// Ask for the file of a paper.
    AskPaper(SteelPaper),
    /// Write a paper to a file.
    WritePaper(PathBuf, SteelPaper, PaperSize),
}

/// Something to be done to the job.
#[derive(Clone, Debug)]
pub(crate) enum JobAsk {
    /// Another in its place.
    Change(Box<Job>),
    /// Begin a new one.
    New,
    /// Ask which to open.
    AskOpen,
    /// Open a job's file.
    Open(PathBuf),
    /// Save it in its file, or ask for one.
    Save,
    /// Ask in which file to save it.
    AskSaveAs,
    /// Save it in a file; whether whatever is there is replaced.
    SaveTo(PathBuf, bool),
    /// Read its file again, and let go of what was changed here.
    Reload,
    /// What to do with its unsaved changes, and what was wanted then.
    Unsaved(Choice, Then),
    /// Open one of its plans, counted from 0.
    OpenPlan(usize),
    /// Let go of a note of what was made, by its words.
    Forget(String),
}

/// Something to be done to the rack.
#[derive(Clone, Debug)]
pub(crate) enum RackAsk {
    /// Choose a line, or none.
    Choose(Option<usize>),
    /// Put bars on it.
    Put(Box<RackBar>),
    /// Another line in the place of one.
    Change(Box<RackBar>, Box<RackBar>),
    /// Take these off it.
    Take(Box<RackBar>),
    /// Undo a booking.
    Unbook(u32),
}
