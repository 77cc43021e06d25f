//! The dialogs that stand between the user and lost work.

use super::frame::{Frame, main_button, other_button};
use crate::state::{Choice, Command, Desk, Request, Then};
use egui::Context;
use std::path::PathBuf;

/// Asks what becomes of unsaved changes.
pub(super) fn show(ctx: &Context, desk: &Desk<'_>, then: &Then, out: &mut Vec<Request>) {
    Frame { title: "Save the changes?", width: 440.0 }.show(
        ctx,
        desk,
        out,
        |ui, _| {
            ui.label(format!("“{}” has changes that are not saved.", desk.document.name()));
        },
        |ui, out, ()| {
            if main_button(ui, desk.theme, "Save", true) {
                out.push(Request::Unsaved(Choice::Save, then.clone()));
            }
            if other_button(ui, "Don't save") {
                out.push(Request::Unsaved(Choice::Discard, then.clone()));
            }
            if other_button(ui, "Cancel") {
                out.push(Request::CloseDialog);
            }
        },
    );
}

/// Someone else changed the file since it was read.
pub(crate) struct ChangedOnDisk {
    /// The file.
    pub(crate) path: PathBuf,
}

impl ChangedOnDisk {
    pub(super) fn show(&self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        Frame { title: "The file was changed elsewhere", width: 520.0 }.show(
            ctx,
            desk,
            out,
            |ui, _| {
                ui.label("Since this plan was opened, its file has been changed by someone else. Nothing has been saved yet.");
                ui.label(self.path.display().to_string());
            },
            |ui, out, ()| {
                if main_button(ui, desk.theme, "Save as…", true) {
                    out.push(Request::CloseDialog);
                    out.push(Request::Run(Command::SaveAs));
                }
                if other_button(ui, "Overwrite it") {
                    out.push(Request::SaveTo(self.path.clone(), true));
                }
                if other_button(ui, "Reload it") {
                    out.push(Request::Reload);
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}
