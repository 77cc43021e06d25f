//! Opening, saving and leaving plans.

use super::Editor;
use crate::dialogs::{Ask, ChangedOnDisk, Dialog, Message, NewPlan, OpenPlan, SavePlan, Sort};
use crate::state::{Choice, PlanFile, SteelTab, Then};
use egui::{Context, ViewportCommand};
use fh_core::plan::Plan;
use fh_rack::kept::job::is_job;
use fh_store::demos::DEMOS;
use fh_store::{Leftover, StoreError};
use std::path::{Path, PathBuf};

impl Editor {
    /// Does what was wanted once nothing stands in its way.
    pub(super) fn go(&mut self, then: Then, ctx: &Context) {
        match then {
            Then::New => {
                let rack = self.steel.sections_on_rack(self.services.home.as_ref());
                self.dialog = Some(Dialog::NewPlan(NewPlan::new(self.document.plan().units.length, rack)));
            }
            Then::AskOpen => {
                self.dialog = Some(Dialog::Open(OpenPlan::new(Sort::Plan, self.settings.folder.as_deref())))
            }
            Then::Open(path) => self.open_file(&path),
            Then::OpenDemo(index) => self.open_demo(index),
            Then::Recover(index) => self.recover(index),
            Then::Reload => {
                if let Some(path) = self.document.file().map(|file| file.path.clone()) {
                    self.open_file(&path);
                }
            }
            Then::NewJob => self.begin_job(),
            Then::AskOpenJob => {
                self.dialog = Some(Dialog::Open(OpenPlan::new(Sort::Job, self.settings.folder.as_deref())));
            }
            Then::OpenJob(path) => self.open_job(&path),
            Then::Close => {
                self.may_close = true;
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
        }
    }

    /// What becomes of unsaved changes was chosen.
    pub(super) fn on_unsaved(&mut self, choice: Choice, then: Then, ctx: &Context) {
        self.dialog = None;
        match choice {
            Choice::Save => {
                self.after_save = Some(then);
                self.save(ctx);
            }
            Choice::Discard => {
                // Discarded work is not offered back.
                let _ = self.keeper.clear();
                self.leave_job_then(then, ctx);
            }
        }
    }

    /// Begins a plan.
    pub(super) fn begin(&mut self, plan: Plan) {
        self.take(plan, None, false);
        self.begin_tour_once();
    }

    /// Opens a plan's file; where it cannot be read, a dialog says why and the open plan stays.
    pub(super) fn open_file(&mut self, path: &Path) {
        match fh_store::load(path) {
            Ok(loaded) => {
                let file = PlanFile { path: path.to_owned(), stamp: loaded.stamp };
                self.take(loaded.plan, Some(file), false);
                self.remember(path);
            }
            Err(error) => {
                self.dialog = Some(Dialog::Message(Message::new("The plan cannot be opened", &error)));
                self.recent.remove(path);
            }
        }
    }

    fn open_demo(&mut self, index: usize) {
        let Some(demo) = DEMOS.get(index) else { return };
        match fh_core::file::read(demo.text.as_bytes()) {
            Ok(plan) => self.take(plan, None, false),
            Err(error) => self.dialog = Some(Dialog::Message(Message::new("The demo cannot be opened", error))),
        }
    }

    /// Saves the plan in its file, or asks for one.
    pub(crate) fn save(&mut self, ctx: &Context) {
        match self.document.file().map(|file| file.path.clone()) {
            Some(path) => self.save_to(&path, false, ctx),
            None => self.ask_save_as(),
        }
    }

    /// Asks in which file to save.
    pub(crate) fn ask_save_as(&mut self) {
        let path = match self.document.file() {
            Some(file) => file.path.clone(),
            None => self.folder().join(format!("{}.plan.json", self.document.file_stem())),
        };
        self.dialog = Some(Dialog::SaveAs(SavePlan::new(Sort::Plan, &path)));
    }

    /// Saves the plan in a file.
    pub(super) fn save_to(&mut self, path: &Path, overwrite: bool, ctx: &Context) {
        match self.document.save(path, overwrite) {
            Ok(()) => {
                self.dialog = None;
                self.remember(path);
                self.say(format!("Saved in {}.", path.display()));
                if let Err(error) = self.keeper.clear() {
                    self.say(format!("Saved, but the safety copy of your unsaved work could not be cleared: {error}"));
                }
                if let Some(then) = self.after_save.take() {
                    self.leave_job_then(then, ctx);
                }
            }
            Err(StoreError::ChangedOnDisk { path }) => {
                self.dialog = Some(Dialog::ChangedOnDisk(ChangedOnDisk { path, sort: Sort::Plan }));
            }
            Err(error) => self.not_saved(Sort::Plan, path, error),
        }
    }

    /// Says why a plan or a job was not saved in a file, and where it can be helped asks for another.
    pub(super) fn not_saved(&mut self, sort: Sort, path: &Path, error: StoreError) {
        match error {
            StoreError::AlreadyThere { path } => match &mut self.dialog {
                Some(Dialog::SaveAs(dialog)) => dialog.found(path),
                _ => {
                    let mut dialog = SavePlan::new(sort, &path);
                    dialog.found(path);
                    self.dialog = Some(Dialog::SaveAs(dialog));
                }
            },
            error => match &mut self.dialog {
                Some(Dialog::SaveAs(dialog)) => dialog.entry.say(error.to_string()),
                // Another name can be given at once.
                _ if matches!(error, StoreError::Protected { .. }) => {
                    let mut dialog = SavePlan::new(sort, path);
                    dialog.entry.say(format!("Not saved: {error}. Choose another name."));
                    self.dialog = Some(Dialog::SaveAs(dialog));
                }
                _ => self.dialog = Some(Dialog::Message(Message::new(sort.not_saved(), &error))),
            },
        }
    }

    /// Asks the system's dialog for the file of the dialog in front.
    pub(super) fn browse(&mut self, ctx: &Context) {
        let plan = ("Plans".to_owned(), "json".to_owned());
        let folder = Some(self.folder()).filter(|folder| folder.is_dir());
        let stem = self.document.file_stem();
        let ask = match &self.dialog {
            Some(Dialog::Open(dialog)) => Ask { title: dialog.title().to_owned(), folder, new_name: None, kind: plan },
            Some(Dialog::SaveAs(dialog)) => {
                Ask { title: dialog.title().to_owned(), folder, new_name: dialog.file_name(), kind: plan }
            }
            Some(Dialog::Sheet(dialog)) => {
                let kind = dialog.kind();
                let name = Some(format!("{stem}-marks.{}", kind.ending()));
                let kind = (kind.name().to_owned(), kind.ending().to_owned());
                Ask { title: "Print the sheets".to_owned(), folder, new_name: name, kind }
            }
            Some(Dialog::Export(dialog)) => {
                let kind = dialog.kind();
                let name = Some(format!("{stem}.{}", kind.ending()));
                let kind = (kind.name().to_owned(), kind.ending().to_owned());
                Ask { title: "Export".to_owned(), folder, new_name: name, kind }
            }
            Some(Dialog::AddPlan(_)) => {
                Ask { title: "Add a plan or a job".to_owned(), folder, new_name: None, kind: plan }
            }
            Some(Dialog::Paper(dialog)) => {
                let name = Some(format!("{stem}-{}.pdf", dialog.what().file_word()));
                Ask { title: "Print".to_owned(), folder, new_name: name, kind: ("PDF".to_owned(), "pdf".to_owned()) }
            }
            Some(Dialog::LayPicture(_)) => Ask {
                title: "Add a picture to trace".to_owned(),
                folder,
                new_name: None,
                kind: ("Pictures".to_owned(), "png,jpg,jpeg".to_owned()),
            },
            _ => return,
        };
        self.services.dialogs.ask(ask, ctx);
    }

    /// The folder to begin in.
    pub(super) fn folder(&self) -> PathBuf {
        let own = self.document.file().and_then(|file| file.path.parent()).map(Path::to_owned);
        let own = own.filter(|folder| !folder.as_os_str().is_empty());
        own.or_else(|| self.settings.folder.clone()).or_else(|| std::env::current_dir().ok()).unwrap_or_default()
    }

    /// A file is no longer offered: it cannot be opened.
    pub(super) fn forget_recent(&mut self, path: &Path) {
        self.recent.remove(path);
    }

    pub(super) fn remember(&mut self, path: &Path) {
        self.recent.add(path);
        let folder = std::path::absolute(path).ok().and_then(|path| path.parent().map(Path::to_owned));
        self.settings.folder = folder.or_else(|| self.settings.folder.take());
        self.keep_settings();
        if let Some(home) = &self.services.home
            && let Err(error) = self.recent.save(home)
        {
            self.said = format!("The list of recent plans was not kept: {error}");
        }
    }

    /// Recovered work was opened or let go.
    pub(super) fn on_recovered(&mut self, index: usize, open: bool, ctx: &Context) {
        if open {
            self.go(Then::Recover(index), ctx);
            return;
        }
        let Some(Dialog::Recovered(dialog)) = &mut self.dialog else { return };
        let Some(work) = dialog.take(index) else { return };
        if dialog.is_empty() {
            self.dialog = None;
        }
        if let Err(error) = work.discard() {
            self.say(format!("The work was not discarded: {error}"));
        }
    }

    /// Writes recovered work that cannot be opened to a file of its own.
    pub(super) fn copy_recovered(&mut self, index: usize) {
        let folder = self.folder();
        if let Some(Dialog::Recovered(dialog)) = &mut self.dialog {
            dialog.copy(index, &folder);
        }
    }

    /// Opens recovered work: it is written into the own journal before it is taken from the one that was left over.
    fn recover(&mut self, index: usize) {
        let Some(Dialog::Recovered(mut dialog)) = self.dialog.take() else { return };
        let Some(work) = dialog.take(index) else { return };
        let is_job = is_job(work.text().as_bytes());
        let done = if is_job { self.recover_job(&work) } else { self.recover_plan(&work) };
        match done {
            Ok(kept) => {
                let kept = kept.and_then(|()| work.discard());
                self.say(kept.map_or_else(|error| error.to_string(), |()| "Recovered; not saved yet.".to_owned()));
                // A plan and a job can both be in hand.
                self.dialog = dialog.has_other_sort(is_job).then_some(Dialog::Recovered(dialog));
            }
            Err(why) => self.dialog = Some(Dialog::Message(Message::new("The work cannot be read", why))),
        }
    }

    /// Whether it could be written into the own journal, once it is open.
    fn recover_plan(&mut self, work: &Leftover) -> Result<Result<(), StoreError>, String> {
        let plan = work.plan().map_err(|error| error.to_string())?;
        let file = work.document().zip(work.stamp());
        let file = file.map(|(path, stamp)| PlanFile { path: path.to_owned(), stamp: stamp.clone() });
        self.take(plan, file, true);
        let (keeper, document) = (&mut self.keeper, &self.document);
        let text = || fh_core::file::write(document.plan());
        let home = self.services.home.as_ref();
        Ok(home.map_or(Ok(()), |home| keeper.write(home, &document.unsaved(&text))))
    }

    fn recover_job(&mut self, work: &Leftover) -> Result<Result<(), StoreError>, String> {
        self.steel.job.recover(work.text(), work.document().zip(work.stamp()))?;
        self.show_steel_tab(SteelTab::Job);
        let (keeper, document, job) = (&mut self.job_keeper, &self.document, &self.steel.job);
        let text = || job.text(document);
        let home = self.services.home.as_ref();
        Ok(home.map_or(Ok(()), |home| keeper.write(home, &job.unsaved(&text))))
    }
}
