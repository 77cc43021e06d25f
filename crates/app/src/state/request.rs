//! What panels and dialogs ask for. It is done after the frame, one after the other.

use super::{Choice, Command, Gesture, OrderAsk, PaperSize, SheetKind, SteelAsk, Then};
use crate::theme::Look;
use fh_core::edit::{Edit, WholeChange};
use fh_core::motif::Motif;
use fh_core::new_segment::Whole;
use fh_core::plan::{AskedSize, FormKind, Joint, Plan, Segment, UnderlayView};
use fh_piece::files::FileKind;
use std::path::PathBuf;

/// Something to be done after the frame.
#[derive(Clone, Debug)]
pub(crate) enum Request {
    /// A command of the menus.
    Run(Command),
    /// A change of the plan.
    Edit(Edit),
    /// A part of a gesture.
    Gesture(Gesture),
    /// One line over the strips.
    Say(String),
    /// A segment of the shown bar was clicked in a drawing, or none: select it, or the step that works on it.
    Pick(Option<usize>),
    /// Select a segment of the shown bar, and give the keyboard to its first size.
    TypeSize(usize),
    /// Give the keyboard to the field of a size by its name.
    TypeField(&'static str),
    /// Select the whole plan.
    SelectPlan,
    /// Ask the finished piece for one more size, and open it on the plan's page.
    AskSize(Box<AskedSize>),
    /// Select a bar, or a segment of it.
    Select(usize, Option<usize>),
    /// Select one more part of the shown bar, or one less; or all from the selected one to it.
    Extend {
        /// The part.
        to: usize,
        /// Whether all up to it.
        run: bool,
    },
    /// Make the selected parts so many times as large.
    ScaleParts(f64),
    /// Something about the whole piece.
    Whole(WholeAsk),
    /// Select a branch of a split.
    SelectBranch {
        /// The bar.
        bar: usize,
        /// The split, counted through the bar.
        split: usize,
        /// Which of its branches.
        branch: usize,
    },
    /// Move the selected segment to the place of another one of its chain.
    MoveTo(usize),
    /// The cursor moved along the plot: mm on the starting bar.
    Cursor(Option<f64>),
    /// Add a segment of a form.
    AddSegment(FormKind, Side),
    /// Add a ready-made whole.
    AddWhole(Whole, Side),
    /// Keep a motif; whether it takes the place of another of its name.
    SaveMotif(Box<Motif>, bool),
    /// Put the segments of a motif beside the selected one.
    InsertMotif(Vec<Segment>, Side),
    /// Take a motif's file away.
    RemoveMotif(PathBuf),
    /// Begin this plan.
    Begin(Box<Plan>),
    /// Open a plan's file.
    Open(PathBuf),
    /// Open a demo plan.
    OpenDemo(usize),
    /// Open recovered work, or let it go.
    Recovered(usize, bool),
    /// Write recovered work that cannot be opened to a file of its own.
    CopyRecovered(usize),
    /// Save the plan in a file; whether whatever is there is replaced.
    SaveTo(PathBuf, bool),
    /// Write the mark sheet to a file.
    WriteSheet(PathBuf, SheetKind, PaperSize),
    /// Open a file or a folder in the program that the system has for it.
    ShowOutside(PathBuf),
    /// Write the piece or its flat outlines to a file.
    WriteExport(PathBuf, FileKind),
    /// Lay the picture of a file under the piece, in a view.
    LayPicture(PathBuf, UnderlayView),
    /// Ask the system's file dialog for the file of the dialog in front.
    Browse,
    /// Read the plan's file again, and let go of what was changed here.
    Reload,
    /// What to do with unsaved changes.
    Unsaved(Choice, Then),
    /// Close the dialog in front.
    CloseDialog,
    /// The look.
    Look(Look),
    /// The size of text.
    TextSize(f32),
    /// Open or close the list of findings.
    ShowFindings(bool),
    /// Open or close the plot.
    ShowPlot(bool),
    /// Open or close the view of the piece.
    ShowPiece(bool),
    /// Something about the order of work.
    Order(OrderAsk),
    /// Something about steel.
    Steel(SteelAsk),
    /// Open the order of work at a step.
    ShowStep(Option<usize>),
    /// Open the handbook at a page.
    ShowPage(usize),
    /// Whether the last plan is opened at the start.
    ReopenLast(bool),
    /// The tour was ended.
    EndTour,
}

/// What is asked for about the whole piece.
#[derive(Clone, Debug)]
pub(crate) enum WholeAsk {
    /// Change it.
    Change(WholeChange),
    /// Hold the plan against another one.
    Compare(Against),
    /// Join two of its parts, and open the joint on the plan's page.
    Join(Box<Joint>),
}

/// What the plan is held against.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Against {
    /// Itself, as it was saved.
    Saved,
    /// The plan in a file.
    File(PathBuf),
    /// A demo plan.
    Demo(usize),
}

/// On which side of the selected segment a new one is put.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Side {
    /// Before it, toward the datum end.
    Before,
    /// After it.
    After,
}
