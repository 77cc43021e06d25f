//! The dialogs that ask which file to open, and in which to save.

use super::frame::{Frame, main_button, other_button};
use super::path_entry::PathEntry;
use crate::state::{Desk, JobAsk, Request, SteelAsk};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use crate::widgets::plan_tile;
use egui::{Button, Context, RichText, Ui};
use fh_core::balance::{Balance, BarBalance, balance};
use fh_core::plan::Plan;
use fh_rack::kept::job::ENDING;
use fh_store::demos::{DEMOS, Demo};
use std::path::{Path, PathBuf};

/// The least width of a tile, in points at normal text size.
const TILE: f32 = 190.0;
/// How many recent plans are offered.
const MOST_RECENT: usize = 8;

/// What is opened or saved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Sort {
    /// A plan.
    Plan,
    /// A job.
    Job,
}

impl Sort {
    /// What its files end with.
    fn ending(self) -> &'static str {
        match self {
            Self::Plan => ".plan.json",
            Self::Job => ENDING,
        }
    }

    /// What is said where it was not saved.
    pub(crate) fn not_saved(self) -> &'static str {
        match self {
            Self::Plan => "The plan was not saved",
            Self::Job => "The job was not saved",
        }
    }
}

/// Which plan or job to open: a path, or one of the recent ones, or a demo plan.
pub(crate) struct OpenPlan {
    pub(crate) entry: PathEntry,
    sort: Sort,
    /// The pictures of recent plans by their files, and those of the demo plans; made when they are first shown.
    recent: Vec<(PathBuf, Option<Balance>, String)>,
    demos: Vec<Option<Balance>>,
}

impl OpenPlan {
    /// Begins in a folder.
    pub(crate) fn new(sort: Sort, folder: Option<&Path>) -> Self {
        let start = folder.map_or_else(PathBuf::new, |folder| folder.join(""));
        Self { entry: PathEntry::new(&start), sort, recent: Vec::new(), demos: Vec::new() }
    }

    /// What is asked.
    pub(crate) fn title(&self) -> &'static str {
        match self.sort {
            Sort::Plan => "Open a plan",
            Sort::Job => "Open a job",
        }
    }

    /// A file was chosen: what is to be opened.
    pub(crate) fn open(&self, path: PathBuf) -> Request {
        opened(self.sort, path)
    }

    /// Works out what the plans look like.
    fn draw(&mut self, desk: &Desk<'_>) {
        let read = |plan: Option<Plan>| plan.map(|plan| (balance(&plan), plan.title));
        let of_file = |path: PathBuf| {
            let (balance, title) = read(fh_store::load(&path).ok().map(|loaded| loaded.plan)).unzip();
            (path, balance, title.unwrap_or_else(|| "cannot be read".to_owned()))
        };
        self.recent = recent_of(desk, Sort::Plan).into_iter().map(of_file).collect();
        let demo = |demo: &Demo| read(fh_core::file::read(demo.text.as_bytes()).ok()).map(|(balance, _)| balance);
        self.demos = DEMOS.iter().map(demo).collect();
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: self.title(), width: if self.sort == Sort::Plan { 860.0 } else { 560.0 } };
        if self.sort == Sort::Plan && self.demos.is_empty() {
            self.draw(desk);
        }
        let Self { entry, sort, recent, demos } = self;
        let sort = *sort;
        frame.show(
            ctx,
            desk,
            out,
            |ui, out| {
                entry.show(ui, desk, out);
                if sort == Sort::Plan {
                    tiles(ui, desk, recent, demos, out);
                } else {
                    recent_jobs(ui, desk, out);
                }
                entry.path().filter(|path| !path.is_dir())
            },
            |ui, out, chosen| {
                if main_button(ui, desk.theme, "Open", chosen.is_some())
                    && let Some(path) = chosen
                {
                    out.push(opened(sort, path));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}

fn head(ui: &mut Ui, desk: &Desk<'_>, words: &str) {
    ui.add_space(space::GROUP);
    ui.label(RichText::new(words).text_style(Text::Heading.style()).color(desk.theme.ink));
}

fn opened(sort: Sort, path: PathBuf) -> Request {
    match sort {
        Sort::Plan => Request::Open(path),
        Sort::Job => Request::Steel(SteelAsk::Job(JobAsk::Open(path))),
    }
}

fn recent_jobs(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let paths = recent_of(desk, Sort::Job);
    if paths.is_empty() {
        return;
    }
    head(ui, desk, "Recent jobs");
    for path in paths {
        let (name, folder) = named(&path);
        let button = Button::new(name).right_text(RichText::new(folder).color(desk.theme.ink_quiet)).truncate();
        if ui.add_sized([ui.available_width(), desk.theme.scaled(space::TARGET)], button).clicked() {
            out.push(opened(Sort::Job, path));
        }
    }
}

/// The recent files of a sort that are still there.
fn recent_of(desk: &Desk<'_>, sort: Sort) -> Vec<PathBuf> {
    let is_of = |path: &&PathBuf| path.to_string_lossy().ends_with(ENDING) == (sort == Sort::Job);
    desk.recent.paths().iter().filter(is_of).take(MOST_RECENT).cloned().collect()
}

/// The name of a file, and its folder.
fn named(path: &Path) -> (String, String) {
    let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    (name, path.parent().map(|folder| folder.display().to_string()).unwrap_or_default())
}

/// The bar of a plan with the most parts, by which it is known; none where it cannot be read.
fn known_by(balance: Option<&Balance>) -> Option<&BarBalance> {
    balance.and_then(|balance| balance.bars.iter().rev().max_by_key(|bar| bar.segments.len()))
}

/// Recent plans and demo plans, each with the picture of a bar of it.
fn tiles(
    ui: &mut Ui,
    desk: &Desk<'_>,
    recent: &[(PathBuf, Option<Balance>, String)],
    demos: &[Option<Balance>],
    out: &mut Vec<Request>,
) {
    let count = ((ui.available_width() / desk.theme.scaled(TILE)) as usize).max(1);
    let wide = (ui.available_width() - space::GAP * (count - 1) as f32) / count as f32;
    if !recent.is_empty() {
        head(ui, desk, "Recent plans");
    }
    for row in recent.chunks(count) {
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = space::GAP;
            for (path, balance, title) in row {
                let (name, folder) = named(path);
                let tile = plan_tile::show(
                    ui,
                    desk.theme,
                    wide.floor(),
                    (name.as_str(), title.as_str()),
                    known_by(balance.as_ref()),
                );
                if tile.on_hover_text(folder).clicked() {
                    out.push(opened(Sort::Plan, path.clone()));
                }
            }
        });
    }
    head(ui, desk, "Demo plans");
    let all: Vec<_> = DEMOS.iter().enumerate().zip(demos).collect();
    for row in all.chunks(count) {
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = space::GAP;
            for ((index, demo), balance) in row {
                let words = (demo.title, "demo");
                if plan_tile::show(ui, desk.theme, wide.floor(), words, known_by(Option::as_ref(balance))).clicked() {
                    out.push(Request::OpenDemo(*index));
                }
            }
        });
    }
}

/// In which file to save.
pub(crate) struct SavePlan {
    pub(crate) entry: PathEntry,
    /// Whether a file of this name was found and may be replaced.
    found: Option<PathBuf>,
    sort: Sort,
}

impl SavePlan {
    /// Begins with a path.
    pub(crate) fn new(sort: Sort, path: &Path) -> Self {
        Self { entry: PathEntry::new(path), found: None, sort }
    }

    /// What is asked.
    pub(crate) fn title(&self) -> &'static str {
        match self.sort {
            Sort::Plan => "Save the plan",
            Sort::Job => "Save the job",
        }
    }

    /// The name of the file that is asked for.
    pub(crate) fn file_name(&self) -> Option<String> {
        Some(self.entry.path()?.file_name()?.to_string_lossy().into_owned())
    }

    /// A file was chosen: what is to be saved.
    pub(crate) fn save(&self, path: PathBuf, replace: bool) -> Request {
        saved(self.sort, path, replace)
    }

    /// There is a file of this name already.
    pub(crate) fn found(&mut self, path: PathBuf) {
        self.entry.say("There is a file of this name already. Replace it, or choose another name.");
        self.found = Some(path);
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: self.title(), width: dialog::FORM };
        let Self { entry, found, sort } = self;
        let sort = *sort;
        frame.show(
            ctx,
            desk,
            out,
            |ui, out| {
                entry.show(ui, desk, out);
                let hint = match sort {
                    Sort::Plan => "Plans are files that end in .plan.json.",
                    Sort::Job => "Jobs are files that end in .job.json. Its plans stay in their own files.",
                };
                ui.label(RichText::new(hint).text_style(Text::Small.style()).color(desk.theme.ink_quiet));
                entry.path().filter(|path| !path.is_dir()).map(|path| with_ending(path, sort.ending()))
            },
            |ui, out, chosen| {
                let replace = chosen.is_some() && chosen == *found;
                let words = if replace { "Replace it" } else { "Save" };
                if main_button(ui, desk.theme, words, chosen.is_some())
                    && let Some(path) = chosen
                {
                    out.push(saved(sort, path, replace));
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
    }
}

fn saved(sort: Sort, path: PathBuf, replace: bool) -> Request {
    match sort {
        Sort::Plan => Request::SaveTo(path, replace),
        Sort::Job => Request::Steel(SteelAsk::Job(JobAsk::SaveTo(path, replace))),
    }
}

/// The path with the ending of its sort, where it has none.
fn with_ending(path: PathBuf, ending: &str) -> PathBuf {
    if path.extension().is_some_and(|ending| ending == "json") {
        return path;
    }
    // Behind whatever the smith wrote: hook-v1.2 has no ending of its own.
    let mut whole = path.into_os_string();
    whole.push(ending);
    whole.into()
}
