//! Steel: taking another bar, changing the rack, the job, booking its cut list, printing.

use super::Editor;
use crate::dialogs::{AddPlan, Dialog, PaperFile, Printed};
use crate::state::steel::{Changed, Stocked, lines_of};
use crate::state::{Command, PaperSize, RackAsk, SteelAsk, SteelPaper, SteelTab};
use egui::Context;
use fh_core::edit::{Edit, WholeChange};
use fh_measure::counted;
use fh_print::drawing::Drawing;
use fh_print::sheets::{CutHead, QuoteHead, customer_page, cut_sheets, reckoning};
use fh_rack::kept::booking;
use fh_rack::kept::job::Made;
use fh_rack::kept::rack::{Rack, RackBar};
use fh_rack::list::booked::{put_back, taken};
use fh_rack::list::make::CutList;
use fh_rack::said::section::Alike;
use std::path::Path;
use std::sync::Arc;

impl Editor {
    /// Opens the place for steel, or goes back to the plan.
    pub(crate) fn show_steel(&mut self, open: bool) {
        self.steel.set_open(open, self.services.home.as_ref());
        if open {
            let told = self.steel.stock.as_ref().map(Stocked::told).unwrap_or_default();
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
            Command::Job => SteelTab::Job,
            Command::Merchant => SteelTab::Merchant,
            Command::ShopFigures => SteelTab::Shop,
            _ => SteelTab::Which,
        });
    }

    /// Works out what its place shows, where anything has changed.
    pub(super) fn refresh_steel(&mut self, ctx: &Context) {
        let tools = (self.order.shop(), self.order.shop_revision());
        if let Some(told) = self.steel.refresh(ctx, &self.document, self.selection.bar, tools) {
            self.said = told.to_owned();
        }
    }

    /// Does what was asked for about steel.
    pub(super) fn steel_ask(&mut self, ask: SteelAsk, ctx: &Context) {
        match ask {
            SteelAsk::SortBy(by) => self.steel.sort_by(by),
            SteelAsk::Filter(filter) => self.steel.which.filter = filter,
            SteelAsk::QuoteLines(at) => self.steel.quote.lines_of = at,
            SteelAsk::Look(alike) => self.steel.look(alike),
            SteelAsk::TakeBar(alike) => self.take_bar(&alike),
            SteelAsk::Rack(ask) => self.rack_ask(ask),
            SteelAsk::Job(ask) => self.job_ask(ask, ctx),
            SteelAsk::AskPlan => self.dialog = Some(Dialog::AddPlan(AddPlan::new(&self.folder()))),
            SteelAsk::AddPlan(path) => self.add_plan(&path),
            SteelAsk::StopSearch => self.steel.stop(),
            SteelAsk::Book => self.book(),
            SteelAsk::Shop(shop, keep) => {
                let done = self.steel.stock.as_mut().map(|stock| stock.set_shop(&shop, keep));
                if keep && matches!(done, Some(Ok(()))) {
                    self.steel.remember(Changed::Shop);
                }
                self.say_not_kept(done);
            }
            SteelAsk::Merchant(merchant) => {
                let done = self.steel.stock.as_mut().map(|stock| stock.set_merchant(&merchant));
                self.say_not_kept(done);
            }
            SteelAsk::Ware(line) => self.steel.ware = line,
            SteelAsk::QuoteCount(at, count) => self.steel.quote.set_count(at, count),
            SteelAsk::AskPaper(what) => {
                let plan = self.folder().join(self.document.file_stem());
                let paper = self.settings.paper.unwrap_or(PaperSize::usual(self.document.plan().units.length));
                self.dialog = Some(Dialog::Paper(PaperFile::new(&plan, what, paper)));
            }
            SteelAsk::WritePaper(path, what, paper) => self.write_paper(&path, what, paper),
        }
    }

    /// What was changed elsewhere is as good as broken off: it is said, and what was read again is shown.
    fn say_not_kept(&mut self, done: Option<Result<(), String>>) {
        if let Some(Err(why)) = done {
            self.said = format!("■ Not kept: {why}");
        }
    }

    /// Takes back the last change of what is in front: of the rack, the merchant's list, the shop's figures, or the job.
    pub(super) fn undo_steel(&mut self) {
        let last = self.steel.last_changed();
        let of_shop =
            self.steel.tab == SteelTab::Shop || (self.steel.tab == SteelTab::Quote && last == Some(Changed::Shop));
        let tab = if of_shop { SteelTab::Shop } else { self.steel.tab };
        if of_shop || tab.is_of_job() {
            self.steel.forget_last(if of_shop { Changed::Shop } else { Changed::Job });
        }
        let Some(stock) = &mut self.steel.stock else { return };
        let (what, done) = match tab {
            SteelTab::Rack => ("rack", stock.rack.undo()),
            SteelTab::Merchant => ("merchant's list", stock.merchant.undo()),
            SteelTab::Shop => ("shop's figures", stock.shop.undo()),
            _ => {
                self.steel.job.undo();
                return;
            }
        };
        stock.revision += 1;
        self.said = match done {
            Err(why) => format!("■ Not undone: {why}"),
            Ok(()) => format!("The last change to the {what} is undone."),
        };
    }

    pub(super) fn show_steel_tab(&mut self, tab: SteelTab) {
        if !self.steel.is_open() {
            self.show_steel(true);
        }
        self.steel.show(tab);
    }

    /// Makes the piece from another bar.
    fn take_bar(&mut self, alike: &Alike) {
        let Some(section) = self.steel.which.option(alike).map(|option| option.section.clone()) else { return };
        let words = section.describe();
        let change = WholeChange::OtherBar { bar: self.selection.bar, section: Box::new(section) };
        if self.edit(&Edit::Whole(change)) {
            self.say(format!("Now from {words}. Undo takes it back."));
        }
    }

    /// Changes the rack; what is wrong is said, and the rack is then as it was.
    fn change_rack(&mut self, said: String, change: impl FnOnce(&Rack) -> Result<Rack, String>) -> bool {
        let Some(stock) = &mut self.steel.stock else { return false };
        let done = stock.change_rack(change);
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
                    self.steel.line = self.steel.stock.as_ref().and_then(|stock| line(&stock.rack.now));
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
            RackAsk::Unbook(number) => {
                let said = format!("Booking {number} is undone: its bars are back, its offcuts off the rack.");
                let undo = |rack: &Rack| booking::undo(rack, Some(number)).map(|(next, _)| next);
                if self.change_rack(said, |rack| undo(rack).map_err(|error| error.to_string())) {
                    self.steel.keep_booked(None);
                    self.steel.job.forget(&booked_as(number));
                }
            }
        }
    }

    /// Adds a plan to the job, or all plans of another job.
    fn add_plan(&mut self, path: &Path) {
        let mut next = self.steel.job.job().clone();
        match lines_of(path).and_then(|lines| {
            next.plans.extend(lines);
            self.steel.job.change(next)
        }) {
            Ok(()) => {
                self.dialog = None;
                self.steel.remember(Changed::Job);
            }
            Err(why) => match &mut self.dialog {
                Some(Dialog::AddPlan(dialog)) => dialog.entry.say(why),
                _ => self.say(format!("■ Not added: {why}")),
            },
        }
    }

    /// Books the cut list as it is shown.
    fn book(&mut self) {
        let Some(list) = self.steel.cut.list.clone().filter(CutList::is_whole) else { return };
        let Some(made_on) = self.steel.cut.made_on.clone() else { return };
        let job = self.steel.job.titled(&self.document);
        let (what, on) = (job.title.clone(), job.date.clone());
        let book = |held: &Rack| {
            if *held != made_on {
                return Err("the rack was changed elsewhere: look at the new list first".to_owned());
            }
            let (took, back) = (taken(&list, held), put_back(&list));
            booking::book(held, &what, on.as_deref(), &took, &back).map_err(|error| error.to_string())
        };
        if self.change_rack(String::new(), book) {
            let stock = self.steel.stock.as_ref();
            let number = stock.and_then(|stock| stock.rack.now.booked.last()).map(|booking| booking.number);
            self.steel.keep_booked(number);
            let figure = Some(counted(used(&list), "bar"));
            self.steel.job.note(&Made { what: booked_as(number.unwrap_or(0)), on: job.date, file: None, figure });
            self.say(format!(
                "Booked as number {}: its bars are off the rack, the offcuts that are kept on it.",
                number.unwrap_or(0)
            ));
        }
    }

    /// The paper of what is in front: of a cut list or a quote its own, else those of the plan.
    pub(super) fn paper_in_front(&self) -> Option<SteelPaper> {
        match self.steel.tab {
            _ if !self.steel.is_open() => None,
            SteelTab::Cut => self.steel.cut.list.is_some().then_some(SteelPaper::Cut),
            SteelTab::Quote => matches!(self.steel.quote.quote, Some(Ok(_))).then_some(SteelPaper::Customer),
            _ => None,
        }
    }

    fn write_paper(&mut self, path: &Path, what: SteelPaper, size: PaperSize) {
        let drawn = match &self.dialog {
            Some(Dialog::Paper(dialog)) => dialog.preview.drawing(&size).cloned(),
            _ => None,
        };
        let Some(drawing) = drawn.or_else(|| Some(Arc::new(self.paper(what, size)?()))) else { return };
        let bytes = fh_print::pdf(&drawing).map_err(|error| error.to_string());
        match bytes.and_then(|bytes| fh_store::replace_same_kind(path, &bytes).map_err(|error| error.to_string())) {
            Ok(()) => {
                self.keep_paper(size);
                self.keep_settings();
                self.note_paper(path, what);
                let pages = counted(drawing.pages.len(), "page");
                let words = format!("The {} is in {}, {pages}.", what.name(), path.display());
                self.say(words.clone());
                self.dialog = Some(Dialog::Printed(Printed::new(words, what.hint(), path)));
            }
            Err(why) => {
                if let Some(Dialog::Paper(dialog)) = &mut self.dialog {
                    dialog.entry.say(why);
                }
            }
        }
    }

    /// Notes in the job which paper was made of it, and the figure that counts.
    fn note_paper(&mut self, path: &Path, what: SteelPaper) {
        let quoted = || {
            let quote = self.steel.quote.quote.as_ref()?.as_ref().ok()?;
            Some(quote.money.words(quote.counts.first()?.asked.total))
        };
        let figure = match what {
            SteelPaper::Cut => self.steel.cut.list.as_ref().map(|list| counted(used(list), "bar")),
            SteelPaper::Customer | SteelPaper::Figures => quoted(),
        };
        let on = self.steel.job.job().date.clone();
        let file = path.to_str().map(str::to_owned);
        self.steel.job.note(&Made { what: what.name().to_owned(), on, file, figure });
    }

    /// How a paper is drawn, from what is in front now; none where there is no list or no quote.
    pub(super) fn paper(&self, what: SteelPaper, size: PaperSize) -> Option<Box<dyn FnOnce() -> Drawing + Send>> {
        let order = self.steel.job.order(&self.document).ok()?;
        let job = self.steel.job.titled(&self.document);
        if what == SteelPaper::Cut {
            let list = self.steel.cut.list.clone()?;
            return Some(Box::new(move || {
                let customer = job.customer.as_deref().unwrap_or_default();
                let date = job.date.as_deref().unwrap_or_default();
                cut_sheets(&list, CutHead { title: &job.title, customer, date }, size.paper())
            }));
        }
        let quote = self.steel.quote.quote.as_ref()?.as_ref().ok()?.clone();
        let shop = self.steel.stock.as_ref()?.shop.now.clone();
        Some(Box::new(move || {
            let date = job.date.clone().unwrap_or_default();
            let head = QuoteHead { job: &job, order: &order, shop: &shop, date: &date };
            match what {
                SteelPaper::Customer => customer_page(&quote, head, size.paper()),
                _ => reckoning(&quote, head, size.paper()),
            }
        }))
    }
}

/// The rack with another line in the place of one; refused where that is no longer there.
fn changed(rack: &Rack, old: &RackBar, new: RackBar) -> Result<Rack, String> {
    let mut next = rack.clone();
    let line = next.bars.iter_mut().find(|line| *line == old);
    *line.ok_or("this line was changed elsewhere: look at the rack again")? = new;
    Ok(next)
}

/// What a booking is called among what was made of a job.
fn booked_as(number: u32) -> String {
    format!("booking {number}")
}

/// How many bars a list uses.
fn used(list: &CutList) -> u64 {
    list.groups.iter().flat_map(|group| &group.bars).map(|bar| bar.times).sum()
}
