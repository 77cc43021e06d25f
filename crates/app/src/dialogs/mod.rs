//! The dialogs: one stands in front at a time, and asks for what the user chose in it.

mod about;
mod add_plan;
mod add_segment;
mod add_step;
mod compare_plans;
mod export;
mod files;
mod find;
mod frame;
mod handbook;
mod insert_motif;
mod keys;
mod message;
mod motif_scale;
mod new_plan;
mod other_bar;
mod paper;
mod path_entry;
mod preview;
mod printed;
mod propose_again;
mod recovered;
mod save_motif;
mod scale_parts;
mod scale_piece;
mod sheet;
mod system;
mod tour;
mod underlay;
mod unsaved;
mod whole_preview;

pub use system::{Answer, Ask, Dialogs, Native, Scripted};

pub(crate) use add_plan::AddPlan;
pub(crate) use add_segment::AddPart;
pub(crate) use add_step::AddStep;
pub(crate) use compare_plans::ComparePlans;
pub(crate) use export::ExportFile;
pub(crate) use files::{OpenPlan, SavePlan, Sort};
pub(crate) use find::Find;
pub(crate) use handbook::Handbook;
pub(crate) use insert_motif::InsertMotif;
pub(crate) use message::Message;
pub(crate) use new_plan::NewPlan;
pub(crate) use other_bar::OtherBar;
pub(crate) use paper::PaperFile;
pub(crate) use printed::Printed;
pub(crate) use recovered::Recovered;
pub(crate) use save_motif::SaveMotif;
pub(crate) use scale_parts::ScaleParts;
pub(crate) use scale_piece::ScalePiece;
pub(crate) use sheet::SheetFile;
#[cfg(test)]
pub(crate) use tour::COUNT as TOUR_NOTES;
pub(crate) use tour::{Spots, Tour};
pub(crate) use underlay::LayPicture;
pub(crate) use unsaved::ChangedOnDisk;

use crate::state::{Desk, Request, Then};
use egui::Context;

/// The dialog in front.
pub(crate) enum Dialog {
    /// Choose the bar of a new plan.
    NewPlan(NewPlan),
    /// Choose a plan or a job to open.
    Open(OpenPlan),
    /// Choose a file to save in.
    SaveAs(SavePlan),
    /// Choose paper and file of the mark sheet.
    Sheet(SheetFile),
    /// Choose what is written for other programs, and its file.
    Export(ExportFile),
    /// Choose a picture that is laid under the piece.
    LayPicture(LayPicture),
    /// Choose a new part.
    AddSegment(AddPart),
    /// Say how many times as large the selected parts are to be.
    ScaleParts(ScaleParts),
    /// Choose another bar for the piece.
    OtherBar(OtherBar),
    /// Say how large the whole piece is to be.
    ScalePiece(ScalePiece),
    /// The plan beside another one.
    Compare(ComparePlans),
    /// Choose what a new step of the order does.
    AddStep(AddStep),
    /// Choose a plan that is cut as well.
    AddPlan(AddPlan),
    /// Choose paper and file of a cut list or a quote.
    Paper(PaperFile),
    /// What was printed, and how to open it.
    Printed(Printed),
    /// May the smith's own order go?
    ProposeAgain,
    /// Name a motif that is to be kept.
    SaveMotif(SaveMotif),
    /// Choose a motif to put in.
    InsertMotif(InsertMotif),
    /// What becomes of unsaved changes of the plan?
    Unsaved(Then),
    /// What becomes of unsaved changes of the job?
    UnsavedJob(Then),
    /// Someone else changed the file.
    ChangedOnDisk(ChangedOnDisk),
    /// Work was left over by a program that is gone.
    Recovered(Recovered),
    /// Something to be told.
    Message(Message),
    /// Find anything by any word.
    Find(Find),
    /// The handbook.
    Handbook(Handbook),
    /// The list of keys.
    Keys,
    /// About the program.
    About,
}

impl Dialog {
    /// Its field for a path, where it has one.
    pub(crate) fn path_entry(&mut self) -> Option<&mut path_entry::PathEntry> {
        match self {
            Self::Open(dialog) => Some(&mut dialog.entry),
            Self::SaveAs(dialog) => Some(&mut dialog.entry),
            Self::Sheet(dialog) => Some(&mut dialog.entry),
            Self::Export(dialog) => Some(&mut dialog.entry),
            Self::LayPicture(dialog) => Some(&mut dialog.entry),
            Self::AddPlan(dialog) => Some(&mut dialog.entry),
            Self::Compare(dialog) => Some(&mut dialog.entry),
            Self::Paper(dialog) => Some(&mut dialog.entry),
            _ => None,
        }
    }

    /// Shows it, and adds what the user chose.
    pub(crate) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        match self {
            Self::NewPlan(dialog) => dialog.show(ctx, desk, out),
            Self::Open(dialog) => dialog.show(ctx, desk, out),
            Self::SaveAs(dialog) => dialog.show(ctx, desk, out),
            Self::Sheet(dialog) => dialog.show(ctx, desk, out),
            Self::Export(dialog) => dialog.show(ctx, desk, out),
            Self::LayPicture(dialog) => dialog.show(ctx, desk, out),
            Self::AddSegment(dialog) => dialog.show(ctx, desk, out),
            Self::ScaleParts(dialog) => dialog.show(ctx, desk, out),
            Self::OtherBar(dialog) => dialog.show(ctx, desk, out),
            Self::ScalePiece(dialog) => dialog.show(ctx, desk, out),
            Self::Compare(dialog) => dialog.show(ctx, desk, out),
            Self::AddStep(dialog) => dialog.show(ctx, desk, out),
            Self::AddPlan(dialog) => dialog.show(ctx, desk, out),
            Self::Paper(dialog) => dialog.show(ctx, desk, out),
            Self::Printed(dialog) => dialog.show(ctx, desk, out),
            Self::ProposeAgain => propose_again::show(ctx, desk, out),
            Self::SaveMotif(dialog) => dialog.show(ctx, desk, out),
            Self::InsertMotif(dialog) => dialog.show(ctx, desk, out),
            Self::Unsaved(then) => unsaved::show(ctx, desk, then, out),
            Self::UnsavedJob(then) => unsaved::show_job(ctx, desk, then, out),
            Self::ChangedOnDisk(dialog) => dialog.show(ctx, desk, out),
            Self::Recovered(dialog) => dialog.show(ctx, desk, out),
            Self::Message(dialog) => dialog.show(ctx, desk, out),
            Self::Find(dialog) => dialog.show(ctx, desk, out),
            Self::Handbook(dialog) => dialog.show(ctx, desk, out),
            Self::Keys => keys::show(ctx, desk, out),
            Self::About => about::show(ctx, desk, out),
        }
    }
}
