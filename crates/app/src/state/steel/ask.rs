//! What is asked for about steel. It is done after the frame.

use crate::state::PaperSize;
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
    /// Look at an option more closely.
    Look(Alike),
    /// Make the piece from this.
    TakeBar(Alike),
    /// Change the rack.
    Rack(RackAsk),
    /// So many of a plan of the job, counted from 0; the open plan is the first.
    Count(usize, u32),
    /// Ask for the file of a plan, or of a job, to cut it as well.
    AskPlan,
    /// Cut the plan of a file as well; of a job's file all of its plans.
    AddPlan(PathBuf),
    /// Leave a plan out, counted from 0.
    DropPlan(usize),
    /// The way of cutting, by its name.
    Way(Option<String>),
    /// Stop the search: the best so far stays.
    StopSearch,
    /// Take the bars off the rack, and put the offcuts on it.
    Book,
    /// The shop's figures, and whether they are kept: not while they are dragged.
    Shop(Box<Shop>, bool),
    /// For how many the quote is made: one of its counts.
    QuoteCount(usize, u32),
    /// Ask for the file of a paper.
    AskPaper(SteelPaper),
    /// Write a paper to a file.
    WritePaper(PathBuf, SteelPaper, PaperSize),
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
    /// Take the last change back.
    Undo,
    /// Undo a booking.
    Unbook(u32),
}
