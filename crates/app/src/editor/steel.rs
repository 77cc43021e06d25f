//! Steel: taking another bar, changing the rack, the job, booking its cut list, printing.

use super::Editor;
use crate::dialogs::{AddPlan, Dialog, PaperFile};
use crate::state::steel::job;
use crate::state::{Command, PaperSize, RackAsk, SteelAsk, SteelPaper, SteelTab};
use egui::Context;
use fh_core::edit::Edit;
use fh_core::plan::Plan;
use fh_print::drawing::Drawing;
use fh_print::sheets::{CutHead, QuoteHead, customer_page, cut_sheets, reckoning};
use fh_rack::kept::booking;
use fh_rack::kept::job as job_file;
use fh_rack::kept::rack::{Rack, RackBar};
use fh_rack::list::booked::{put_back, taken};
use fh_rack::said::section::Alike;
use fh_rack::which::instead::instead_of;
use fh_store::document;
use std::path::Path;

impl Editor {
    /// Opens the place for steel, or goes back to the plan.
    pub(crate) fn show_steel(&mut self, open: bool) {
        self.steel.set_open(open, self.services.home.as_ref());
        if open {
            let told = self.steel.stock.as_mut().map(|stock| std::mem::take(&mut stock.told)).unwrap_or_default();
            if !told.is_empty() {
                self.said = format!("■ {}", told.join(" "));
            }
        }
    }

    /// Shows a part of it.
    pub(super) fn run_steel(&mut self, command: Command) {
        self.show_steel_tab(match command {
            Command::Rack => SteelTab::Rack,
            Command::CutList => SteelTab::Cut,
            Command::Quote => SteelTab::Quote,
            _ => SteelTab::Which,
        });
    }

    /// Works out what its place shows, where anything has changed.
    pub(super) fn refresh_steel(&mut self, ctx: &Context) {
        let tools = (self.order.shop(), self.order.shop_revision());
        if self.steel.refresh(ctx, &self.document, self.selection.bar, tools) {
            self.said = "The rack was changed elsewhere, and read again.".to_owned();
        }
    }

    /// Does what was asked for about steel.
    pub(super) fn steel_ask(&mut self, ask: SteelAsk) {
        match ask {
            SteelAsk::SortBy(by) => self.steel.sort_by(by),
            SteelAsk::Look(alike) => self.steel.look(alike),
            SteelAsk::TakeBar(alike) => self.take_bar(&alike),
            SteelAsk::Rack(ask) => self.rack_ask(ask),
            SteelAsk::Count(at, count) => self.steel.set_count(at, count),
            SteelAsk::AskPlan => self.dialog = Some(Dialog::AddPlan(AddPlan::new(&self.folder()))),
            SteelAsk::AddPlan(path) => self.add_plan(&path),
            SteelAsk::DropPlan(at) => self.steel.drop_plan(at),
            SteelAsk::Way(way) => self.steel.set_way(way),
            SteelAsk::StopSearch => self.steel.stop(),
            SteelAsk::Book => self.book(),
            SteelAsk::Shop(shop, keep) => {
                let done = self.steel.stock.as_mut().map(|stock| stock.set_shop(*shop, keep));
                if let Some(Err(why)) = done {
                    self.said = format!("■ Not kept: {why}");
                }
            }
            SteelAsk::QuoteCount(at, count) => self.steel.quote.set_count(at, count),
            SteelAsk::AskPaper(what) => {
                let plan = self.folder().join(self.document.file_stem());
                let paper = self.settings.paper.unwrap_or(PaperSize::usual(self.document.plan().units.length));
                self.dialog = Some(Dialog::Paper(PaperFile::new(&plan, what, paper)));
            }
            SteelAsk::WritePaper(path, what, paper) => self.write_paper(&path, what, paper),
        }
    }

    fn show_steel_tab(&mut self, tab: SteelTab) {
        if !self.steel.is_open() {
            self.show_steel(true);
        }
        self.steel.show(tab);
    }

    /// Makes the piece from another bar.
    fn take_bar(&mut self, alike: &Alike) {
        let Some(section) = self.steel.which.option(alike).map(|option| option.section.clone()) else { return };
        let Some(other) = instead_of(self.document.plan(), self.selection.bar, &section) else { return };
        if self.edit(&Edit::ReplacePlan(Box::new(other))) {
            self.say(format!("Now from {}. Undo takes it back.", section.describe()));
        }
    }

    /// Changes the rack; what is wrong is said, and the rack is then as it was.
    fn change_rack(&mut self, said: String, change: impl FnOnce(&Rack) -> Result<Rack, String>) -> bool {
        let Some(stock) = &mut self.steel.stock else { return false };
        let done = stock.change(change);
        let is_done = done.is_ok();
        self.said = done.map_or_else(|why| format!("■ Not done: {why}"), |()| said);
        is_done
    }

    fn rack_ask(&mut self, ask: RackAsk) {
        match ask {
            RackAsk::Choose(line) => self.steel.line = line,
            RackAsk::Put(bar) => {
                let said = format!("Put on the rack: {}.", bar.words());
                let is_done = self.change_rack(said, |rack| Ok(booking::put(rack, std::slice::from_ref(bar.as_ref()))));
                let line = |rack: &Rack| rack.bars.iter().position(|line| line.is_like(&bar));
                if is_done {
                    self.steel.line = self.steel.stock.as_ref().and_then(|stock| line(&stock.rack));
                }
            }
            RackAsk::Change(old, new) => {
                self.change_rack(String::new(), |rack| changed(rack, &old, *new));
            }
            RackAsk::Take(bar) => {
                let said = format!("Taken off the rack: {}.", bar.words());
                let take = |rack: &Rack| booking::take(rack, &[*bar]).map_err(|error| error.to_string());
                self.change_rack(said, take);
            }
            RackAsk::Undo => {
                let done = self.steel.stock.as_mut().map(crate::state::steel::Stocked::undo);
                self.said = match done {
                    Some(Err(why)) => format!("■ Not taken back: {why}"),
                    _ => "The last change of the rack is taken back.".to_owned(),
                };
            }
            RackAsk::Unbook(number) => {
                let said = format!("Booking {number} is undone: its bars are back, its offcuts off the rack.");
                let undo = |rack: &Rack| booking::undo(rack, Some(number)).map(|(next, _)| next);
                if self.change_rack(said, |rack| undo(rack).map_err(|error| error.to_string())) {
                    self.steel.keep_booked(None);
                }
            }
        }
    }

    /// Adds a plan to the job, or all plans of another job.
    fn add_plan(&mut self, path: &Path) {
        match plans_of(path) {
            Ok(all) => {
                self.dialog = None;
                for (path, plan, count) in all {
                    self.steel.add_plan(&path, plan);
                    self.steel.set_count(self.steel.cut.others.len(), count);
                }
            }
            Err(why) => match &mut self.dialog {
                Some(Dialog::AddPlan(dialog)) => dialog.entry.say(why),
                _ => self.say(format!("■ Not added: {why}")),
            },
        }
    }

    /// Books the cut list as it is shown.
    fn book(&mut self) {
        let Some(list) = self.steel.cut.list.clone().filter(fh_rack::list::make::CutList::is_whole) else { return };
        let Some(made_on) = self.steel.stock.as_ref().map(|stock| stock.rack.clone()) else { return };
        let what = job(&self.steel.cut.order(&self.document)).title;
        let book = |held: &Rack| {
            if *held != made_on {
                return Err("the rack was changed elsewhere: look at the new list first".to_owned());
            }
            let (took, back) = (taken(&list, held), put_back(&list));
            booking::book(held, &what, None, &took, &back).map_err(|error| error.to_string())
        };
        if self.change_rack(String::new(), book) {
            let stock = self.steel.stock.as_ref();
            let number = stock.and_then(|stock| stock.rack.booked.last()).map(|booking| booking.number);
            self.steel.keep_booked(number);
            self.say(format!(
                "Booked as number {}: its bars are off the rack, the offcuts that are kept on it.",
                number.unwrap_or(0)
            ));
        }
    }

    fn write_paper(&mut self, path: &Path, what: SteelPaper, size: PaperSize) {
        let Some(drawing) = self.paper(what, size) else { return };
        let bytes = fh_print::pdf(&drawing).map_err(|error| error.to_string());
        match bytes.and_then(|bytes| fh_store::replace_same_kind(path, &bytes).map_err(|error| error.to_string())) {
            Ok(()) => {
                self.dialog = None;
                self.say(format!("The {} is in {}.", what.name(), path.display()));
            }
            Err(why) => {
                if let Some(Dialog::Paper(dialog)) = &mut self.dialog {
                    dialog.entry.say(why);
                }
            }
        }
    }

    fn paper(&self, what: SteelPaper, size: PaperSize) -> Option<Drawing> {
        let order = self.steel.cut.order(&self.document);
        let job = job(&order);
        if what == SteelPaper::Cut {
            let head = CutHead { title: &job.title, customer: "", date: "" };
            return Some(cut_sheets(self.steel.cut.list.as_ref()?, head, size.paper()));
        }
        let quote = self.steel.quote.quote.as_ref()?.as_ref().ok()?;
        let head = QuoteHead { job: &job, order: &order, shop: &self.steel.stock.as_ref()?.shop, date: "" };
        Some(match what {
            SteelPaper::Customer => customer_page(quote, head, size.paper()),
            _ => reckoning(quote, head, size.paper()),
        })
    }
}

/// The rack with another line in the place of one; refused where that is no longer there.
fn changed(rack: &Rack, old: &RackBar, new: RackBar) -> Result<Rack, String> {
    let mut next = rack.clone();
    let line = next.bars.iter_mut().find(|line| *line == old);
    *line.ok_or("this line was changed elsewhere: look at the rack again")? = new;
    Ok(next)
}

/// The plan of a file, or all of a job's file, each with its path and its count.
fn plans_of(path: &Path) -> Result<Vec<(std::path::PathBuf, Plan, u32)>, String> {
    let bytes = document::load(path, |bytes| Ok(bytes.to_vec())).map_err(|error| error.to_string())?.value;
    if !job_file::is_job(&bytes) {
        let loaded = fh_store::load(path).map_err(|error| error.to_string())?;
        return Ok(vec![(path.to_owned(), loaded.plan, 1)]);
    }
    let job = document::load(path, job_file::read).map_err(|error| error.to_string())?.value;
    let folder = path.parent().unwrap_or(Path::new(""));
    let plan = |line: &job_file::JobPlan| {
        let file = folder.join(&line.plan);
        let loaded = fh_store::load(&file).map_err(|error| error.to_string())?;
        Ok((file, loaded.plan, line.pieces()))
    };
    job.plans.iter().map(plan).collect()
}
