//! The job's file: opening, saving and leaving jobs.

use super::Editor;
use crate::dialogs::{ChangedOnDisk, Dialog, Message, SavePlan, Sort};
use crate::state::steel::Changed;
use crate::state::{Choice, JobAsk, SteelTab, Then};
use egui::Context;
use fh_rack::kept::job::{self, ENDING};
use fh_store::StoreError;
use std::fs::File;
use std::io::Read;
use std::path::Path;

/// Of a file so much is looked at to tell a job from a plan, in bytes.
const HEAD: u64 = 4096;

/// Whether a file is a job rather than a plan.
pub(super) fn is_job_file(path: &Path) -> bool {
    let mut head = Vec::new();
    let read = File::open(path).and_then(|file| file.take(HEAD).read_to_end(&mut head));
    read.is_ok() && job::is_job(&head)
}

impl Editor {
    /// Does what was asked for about the job.
    pub(super) fn job_ask(&mut self, ask: JobAsk, ctx: &Context) {
        match ask {
            JobAsk::Change(next) => match self.steel.job.change(*next) {
                Ok(()) => self.steel.remember(Changed::Job),
                Err(why) => self.said = format!("■ Not done: {why}"),
            },
            JobAsk::New => self.leave_then(Then::NewJob, ctx),
            JobAsk::AskOpen => self.leave_then(Then::AskOpenJob, ctx),
            JobAsk::Open(path) => self.leave_then(Then::OpenJob(path), ctx),
            JobAsk::Save => self.save_job(ctx),
            JobAsk::AskSaveAs => self.ask_save_job_as(),
            JobAsk::SaveTo(path, overwrite) => self.save_job_to(&path, overwrite, ctx),
            JobAsk::Reload => {
                if let Some(path) = self.steel.job.file().map(|file| file.path.clone()) {
                    self.dialog = None;
                    self.open_job(&path);
                }
            }
            JobAsk::Unsaved(choice, then) => self.on_unsaved_job(choice, then, ctx),
            JobAsk::OpenPlan(at) => {
                if let Some(line) = self.steel.job.job().plans.get(at) {
                    self.leave_then(Then::Open(line.plan.clone().into()), ctx);
                }
            }
            JobAsk::Forget(what) => self.steel.job.forget(&what),
        }
    }

    /// What becomes of the unsaved changes of the job was chosen.
    fn on_unsaved_job(&mut self, choice: Choice, then: Then, ctx: &Context) {
        self.dialog = None;
        match choice {
            Choice::Save => {
                self.after_job_save = Some(then);
                self.save_job(ctx);
            }
            Choice::Discard => {
                // Discarded work is not offered back.
                let _ = self.job_keeper.clear();
                self.go(then, ctx);
            }
        }
    }

    /// Begins a job of the open plan.
    pub(super) fn begin_job(&mut self) {
        self.steel.job.begin();
        self.say("A new job, of the open plan.");
    }

    /// Opens a job's file and shows it; where it cannot be read, a dialog says why and the job in hand stays.
    pub(super) fn open_job(&mut self, path: &Path) {
        match self.steel.job.open(path) {
            Ok(()) => {
                self.dialog = None;
                self.remember(path);
                self.show_steel_tab(if self.steel.tab.is_of_job() { self.steel.tab } else { SteelTab::Job });
            }
            Err(error) => {
                self.dialog = Some(Dialog::Message(Message::new("The job cannot be opened", &error)));
                self.forget_recent(path);
            }
        }
    }

    /// Opens the job of a file, and with it the first of its plans: at the start, when no other plan is open.
    pub(super) fn open_job_with_plan(&mut self, path: &Path) {
        self.open_job(path);
        let first = self.steel.job.job().plans.first().map(|line| line.plan.clone());
        if let Some(plan) = first.filter(|_| self.steel.job.file().is_some()) {
            self.open_file(Path::new(&plan));
        }
    }

    /// Saves the job in its file, or asks for one.
    pub(crate) fn save_job(&mut self, ctx: &Context) {
        match self.steel.job.file().map(|file| file.path.clone()) {
            Some(path) => self.save_job_to(&path, false, ctx),
            None => self.ask_save_job_as(),
        }
    }

    /// Asks in which file to save the job.
    pub(crate) fn ask_save_job_as(&mut self) {
        if self.steel.job.wants_plan_saved(&self.document) {
            let words = "A job names its plans by their files, and the open plan has none yet. Go back to the plan, save it, then save the job.";
            self.after_job_save = None;
            self.dialog = Some(Dialog::Message(Message::new("Save the plan first", words)));
            return;
        }
        let path = match self.steel.job.file() {
            Some(file) => file.path.clone(),
            None => self.folder().join(format!("{}{ENDING}", stem(&self.steel.job.name(&self.document)))),
        };
        self.dialog = Some(Dialog::SaveAs(SavePlan::new(Sort::Job, &path)));
    }

    /// Saves the job in a file.
    fn save_job_to(&mut self, path: &Path, overwrite: bool, ctx: &Context) {
        match self.steel.job.save(path, overwrite, &self.document) {
            Ok(()) => {
                self.dialog = None;
                self.remember(path);
                self.say_job_saved(path);
                if let Some(then) = self.after_job_save.take() {
                    self.go(then, ctx);
                }
            }
            Err(StoreError::ChangedOnDisk { path }) => {
                self.dialog = Some(Dialog::ChangedOnDisk(ChangedOnDisk { path, sort: Sort::Job }));
            }
            Err(error) => self.not_saved(Sort::Job, path, error),
        }
    }

    fn say_job_saved(&mut self, path: &Path) {
        let cleared = self.job_keeper.clear();
        let open = self.steel.job.has_open(&self.document) && self.document.is_changed();
        self.say(match cleared {
            Err(error) => format!("Saved, but the safety copy of your unsaved work could not be cleared: {error}"),
            Ok(()) if open => {
                format!("Saved in {}. The open plan has changes of its own that are not saved.", path.display())
            }
            Ok(()) => format!("Saved in {}.", path.display()),
        });
    }
}

/// A name for a new file, without its ending.
fn stem(words: &str) -> String {
    let words = words.to_lowercase();
    let words: Vec<_> = words.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).take(8).collect();
    if words.is_empty() { "job".to_owned() } else { words.join("-") }
}
