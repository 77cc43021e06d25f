//! The dialogs that stand between the user and lost work.

use super::files::Sort;
use super::frame::{Frame, main_button, other_button};
use crate::state::{Choice, Command, Desk, JobAsk, Request, SteelAsk, Then};
use crate::theme::space::dialog;
use egui::Context;
use fh_core::describe::short_name;
use std::path::PathBuf;

/// Asks what becomes of unsaved changes of the plan.
pub(super) fn show(ctx: &Context, desk: &Desk<'_>, then: &Then, out: &mut Vec<Request>) {
    let ask = |choice| Request::Unsaved(choice, then.clone());
    ask_for("Save the changes?", &desk.document.name(), ctx, desk, &ask, out);
}

/// Asks what becomes of unsaved changes of the job.
pub(super) fn show_job(ctx: &Context, desk: &Desk<'_>, then: &Then, out: &mut Vec<Request>) {
    let ask = |choice| Request::Steel(SteelAsk::Job(JobAsk::Unsaved(choice, then.clone())));
    let name = short_name(&desk.steel.job.name(desk.document));
    ask_for("Save the job?", &name, ctx, desk, &ask, out);
}

fn ask_for(
    title: &str,
    name: &str,
    ctx: &Context,
    desk: &Desk<'_>,
    ask: &dyn Fn(Choice) -> Request,
    out: &mut Vec<Request>,
) {
    Frame { title, width: dialog::QUESTION }.show(
        ctx,
        desk,
        out,
        |ui, _| {
            ui.label(format!("“{name}” has changes that are not saved."));
        },
        |ui, out, ()| {
            if main_button(ui, desk.theme, "Save", true) {
                out.push(ask(Choice::Save));
            }
            if other_button(ui, "Don't save") {
                out.push(ask(Choice::Discard));
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
    /// What it is.
    pub(crate) sort: Sort,
}

impl ChangedOnDisk {
    pub(super) fn show(&self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let is_job = self.sort == Sort::Job;
        let of_job = |ask| Request::Steel(SteelAsk::Job(ask));
        Frame { title: "The file was changed elsewhere", width: dialog::FORM }.show(
            ctx,
            desk,
            out,
            |ui, _| {
                let what = if is_job { "job" } else { "plan" };
                ui.label(format!("Since this {what} was opened, its file has been changed by someone else. Nothing has been saved yet."));
                ui.label(self.path.display().to_string());
            },
            |ui, out, ()| {
                if main_button(ui, desk.theme, "Save as…", true) {
                    out.push(Request::CloseDialog);
                    out.push(if is_job { of_job(JobAsk::AskSaveAs) } else { Request::Run(Command::SaveAs) });
                }
                if other_button(ui, "Overwrite it") {
                    let path = self.path.clone();
                    out.push(if is_job { of_job(JobAsk::SaveTo(path, true)) } else { Request::SaveTo(path, true) });
                }
                if other_button(ui, "Reload it") {
                    out.push(if is_job { of_job(JobAsk::Reload) } else { Request::Reload });
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}
