//! The job in hand: the plans that are cut and quoted together, its file, and what can be taken back.

use super::paths::{between, resolved};
use super::plans::{JobPlans, OPEN, is_open};
use crate::state::{Document, Unsaved};
use fh_rack::kept::job::{self, Job, JobPlan, Made};
use fh_rack::list::wanted::{Ordered, title};
use fh_store::{Stamp, StoreError, document};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// The most changes that can be taken back.
const MOST_STEPS: usize = 100;
/// The most of one plan in a job.
pub(crate) const MOST: u32 = job::MOST_PIECES;

/// The file of a job.
#[derive(Clone, Debug)]
pub(crate) struct JobFile {
    pub(crate) path: PathBuf,
    stamp: Stamp,
}

/// The job. Its plans are named by their whole paths here, and from the folder of the job on in its file.
pub(crate) struct JobDesk {
    now: Job,
    before: Vec<Job>,
    after: Vec<Job>,
    /// The job as it is in its file, or as it was begun; none where it must not be lost.
    saved: Option<Job>,
    file: Option<JobFile>,
    /// How its file names a plan, by the plan's whole path.
    written: BTreeMap<String, String>,
    plans: JobPlans,
    revision: u64,
    /// How often something was noted.
    noted: u64,
    /// A number that no other job in hand has.
    serial: u64,
}

impl Default for JobDesk {
    fn default() -> Self {
        Self::of(fresh(), 0)
    }
}

/// A job of the open plan alone.
fn fresh() -> Job {
    Job::of("", vec![JobPlan::one(OPEN)])
}

impl JobDesk {
    fn of(now: Job, serial: u64) -> Self {
        Self {
            saved: Some(now.clone()),
            now,
            before: Vec::new(),
            after: Vec::new(),
            file: None,
            written: BTreeMap::new(),
            plans: JobPlans::default(),
            revision: serial + 1,
            noted: 0,
            serial,
        }
    }

    /// The job.
    pub(crate) fn job(&self) -> &Job {
        &self.now
    }

    /// Its file, where it has one.
    pub(crate) fn file(&self) -> Option<&JobFile> {
        self.file.as_ref()
    }

    /// A number that changes with the job and with the files of its plans, but not with the open plan.
    pub(crate) fn revision(&self) -> u64 {
        self.revision
    }

    /// The work that may have to be kept, given how it is put in words.
    pub(crate) fn unsaved<'a>(&'a self, text: &'a dyn Fn() -> String) -> Unsaved<'a> {
        let file = self.file.as_ref().map(|file| (file.path.as_path(), &file.stamp));
        Unsaved { is_changed: self.is_changed(), place: (self.serial, self.revision + self.noted), file, text }
    }

    /// Whether it is nothing but some of the open plan.
    fn is_plain(&self) -> bool {
        let rest = |job: &Job| Job { plans: Vec::new(), made: Vec::new(), ..job.clone() };
        self.now.plans.len() == 1 && self.now.plans[0].plan == OPEN && rest(&self.now) == rest(&fresh())
    }

    /// Whether anything would be lost if it were closed now.
    pub(crate) fn is_changed(&self) -> bool {
        match &self.saved {
            None => true,
            Some(saved) => *saved != self.now && !(self.file.is_none() && self.is_plain()),
        }
    }

    /// What it is called: its title, or else its file's name, or else its plans.
    pub(crate) fn name(&self, document: &Document) -> String {
        let file = || Some(self.file.as_ref()?.path.file_name()?.to_string_lossy().into_owned());
        let titled = Some(self.now.title.trim().to_owned()).filter(|title| !title.is_empty());
        titled.or_else(file).unwrap_or_else(|| self.titles(document).join(", "))
    }

    /// What each of its plans is called.
    pub(crate) fn titles(&self, document: &Document) -> Vec<String> {
        self.now.plans.iter().map(|line| self.title(line, document)).collect()
    }

    fn title(&self, line: &JobPlan, document: &Document) -> String {
        if is_open(line, document) {
            return document.name();
        }
        let file = || Path::new(&line.plan).file_name().unwrap_or_default().to_string_lossy().into_owned();
        match self.plans.plan(&line.plan) {
            Ok(plan) if !plan.title.trim().is_empty() => title(plan),
            _ => file(),
        }
    }

    /// Why a plan of it cannot be read.
    pub(crate) fn trouble(&self, at: usize, document: &Document) -> Option<&str> {
        let line = self.now.plans.get(at).filter(|line| !is_open(line, document))?;
        self.plans.plan(&line.plan).err()
    }

    /// Reads the plans of it that are not open, and again what of them somebody changed.
    pub(crate) fn read_plans(&mut self, document: &Document, now: f64) {
        if self.plans.read(&self.now.plans, document, now) {
            self.revision += 1;
        }
    }

    /// What is ordered, in its order; or which plan cannot be read.
    pub(crate) fn order(&self, document: &Document) -> Result<Vec<Ordered>, String> {
        let ordered = |line: &JobPlan| {
            let plan = if is_open(line, document) { Ok(document.plan()) } else { self.plans.plan(&line.plan) };
            let plan = plan.map_err(|why| format!("A plan of the job is not read: {why}"))?.clone();
            let also_from = line.also_from.iter().map(|said| said.section.clone()).collect();
            Ok(Ordered { plan, count: line.pieces(), cut: line.cut.clone(), also_from })
        };
        self.now.plans.iter().map(ordered).collect()
    }

    /// The job as its papers name it.
    pub(crate) fn titled(&self, document: &Document) -> Job {
        Job { title: self.name(document), ..self.now.clone() }
    }

    /// Takes another in its place; that can be taken back.
    ///
    /// # Errors
    /// Where it makes no sense.
    pub(crate) fn change(&mut self, next: Job) -> Result<(), String> {
        let next = job::read(job::write(&next).as_bytes()).map_err(|error| error.to_string())?;
        if next == self.now {
            return Ok(());
        }
        if self.before.len() == MOST_STEPS {
            self.before.remove(0);
        }
        self.before.push(std::mem::replace(&mut self.now, next));
        self.after.clear();
        self.revision += 1;
        Ok(())
    }

    /// Notes what was made of it. No step of its own: what was made is not unmade by taking back a word.
    pub(crate) fn note(&mut self, made: &Made) {
        self.each(|job| {
            job.made.retain(|old| (&old.what, &old.file) != (&made.what, &made.file));
            job.made.push(made.clone());
        });
    }

    /// Lets go of a note, by what it says was made.
    pub(crate) fn forget(&mut self, what: &str) {
        self.each(|job| job.made.retain(|made| made.what != what));
    }

    /// Changes the job in all its states, so that it is no step of its own.
    fn each(&mut self, change: impl Fn(&mut Job)) {
        self.before.iter_mut().chain(&mut self.after).for_each(&change);
        change(&mut self.now);
        self.noted += 1;
    }

    pub(crate) fn can_undo(&self) -> bool {
        !self.before.is_empty()
    }

    pub(crate) fn can_redo(&self) -> bool {
        !self.after.is_empty()
    }

    /// Takes the last change back.
    pub(crate) fn undo(&mut self) {
        if let Some(before) = self.before.pop() {
            self.after.push(std::mem::replace(&mut self.now, before));
            self.revision += 1;
        }
    }

    /// Does it again.
    pub(crate) fn redo(&mut self) {
        if let Some(after) = self.after.pop() {
            self.before.push(std::mem::replace(&mut self.now, after));
            self.revision += 1;
        }
    }

    /// Begins a job of the open plan.
    pub(crate) fn begin(&mut self) {
        *self = Self::of(fresh(), self.revision + 1);
    }

    /// Opens a job's file; the job in hand stays where it cannot be read.
    pub(crate) fn open(&mut self, path: &Path) -> Result<(), StoreError> {
        let read = document::load(path, job::read)?;
        let folder = folder_of(path);
        let mut next = read.value;
        let mut written = BTreeMap::new();
        for line in &mut next.plans {
            let whole = resolved(&folder, &line.plan);
            written.insert(whole.clone(), std::mem::replace(&mut line.plan, whole));
        }
        let file = read.stamp.map(|stamp| JobFile { path: path.to_owned(), stamp });
        *self = Self { file, written, ..Self::of(next, self.revision + 1) };
        Ok(())
    }

    /// Takes work that was recovered; it counts as changed until it is saved.
    pub(crate) fn recover(&mut self, text: &str, file: Option<(&Path, &Stamp)>) -> Result<(), String> {
        let next = job::read(text.as_bytes()).map_err(|error| error.to_string())?;
        let file = file.map(|(path, stamp)| JobFile { path: path.to_owned(), stamp: stamp.clone() });
        *self = Self { saved: None, file, ..Self::of(next, self.revision + 1) };
        Ok(())
    }

    /// The job in the words of its file, its plans by their whole paths: for the journal.
    pub(crate) fn text(&self, document: &Document) -> String {
        let mut whole = self.now.clone();
        if let Some(path) = own_path(document) {
            name_open(&mut whole, &path);
        }
        job::write(&whole)
    }

    /// Another plan is about to be opened: from now on the open one stands in the job by its file, where it stands with others.
    pub(crate) fn settle_open(&mut self, document: &Document) {
        if let Some(path) = own_path(document).filter(|_| !self.is_plain()) {
            self.name_open(&path);
            self.revision += 1;
        }
    }

    /// Saves the job. Without `overwrite` a file that is there unexpectedly or was changed by someone else is kept.
    pub(crate) fn save(&mut self, path: &Path, overwrite: bool, document: &Document) -> Result<(), StoreError> {
        if let Some(path) = own_path(document) {
            self.name_open(&path);
        }
        let folder = folder_of(path);
        let is_at_home = self.file.as_ref().is_some_and(|file| folder_of(&file.path) == folder);
        let mut next = self.now.clone();
        for line in &mut next.plans {
            let own = self.written.get(&line.plan).filter(|_| is_at_home).cloned();
            line.plan = own.unwrap_or_else(|| between(&folder, Path::new(&line.plan)));
        }
        let own = self.file.as_ref().filter(|file| file.path == path);
        let stamp = document::save_text(path, &job::write(&next), own.map(|file| &file.stamp), overwrite)?;
        self.written = self
            .now
            .plans
            .iter()
            .zip(&next.plans)
            .map(|(whole, short)| (whole.plan.clone(), short.plan.clone()))
            .collect();
        self.file = Some(JobFile { path: path.to_owned(), stamp });
        self.saved = Some(self.now.clone());
        Ok(())
    }

    /// Names the open plan by its file.
    fn name_open(&mut self, path: &str) {
        self.each(|job| name_open(job, path));
    }

    /// Whether the open plan stands in it without a file: it has to be saved before the job is.
    pub(crate) fn wants_plan_saved(&self, document: &Document) -> bool {
        own_path(document).is_none() && self.now.plans.iter().any(|line| line.plan == OPEN)
    }

    /// Whether the open plan stands in it.
    pub(crate) fn has_open(&self, document: &Document) -> bool {
        self.now.plans.iter().any(|line| is_open(line, document))
    }
}

/// The plan of a file as a line of a job, or all of a job's file, by their whole paths. Each can be read.
///
/// # Errors
/// Where one cannot be read.
pub(crate) fn lines_of(path: &Path) -> Result<Vec<JobPlan>, String> {
    let told = |error: StoreError| error.to_string();
    let bytes = document::load(path, |bytes| Ok(bytes.to_vec())).map_err(told)?.value;
    let folder = folder_of(path);
    let mut lines = if job::is_job(&bytes) {
        document::load(path, job::read).map_err(told)?.value.plans
    } else {
        let name = path.file_name().and_then(|name| name.to_str());
        vec![JobPlan::one(name.ok_or("this name cannot be in a job: give the file another")?)]
    };
    for line in &mut lines {
        line.plan = resolved(&folder, &line.plan);
        fh_store::load(Path::new(&line.plan)).map_err(told)?;
    }
    Ok(lines)
}

fn name_open(job: &mut Job, path: &str) {
    job.plans.iter_mut().filter(|line| line.plan == OPEN).for_each(|line| path.clone_into(&mut line.plan));
}

fn folder_of(path: &Path) -> PathBuf {
    let whole = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    whole.parent().map(Path::to_owned).unwrap_or_default()
}

/// The whole path of the open plan's file, where it has one that can stand in a job.
fn own_path(document: &Document) -> Option<String> {
    let path = &document.file()?.path;
    path.to_str().map(|text| resolved(&std::env::current_dir().unwrap_or_default(), text))
}
