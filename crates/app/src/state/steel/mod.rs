//! Steel: which bar, the rack, the cut list, the quote. It is worked out while its place is open, and only what is shown there.

mod aside;
mod ask;
mod cut;
mod quote;
mod stock;
mod which;

pub(crate) use ask::{RackAsk, SteelAsk, SteelPaper, SteelTab};
pub(crate) use cut::{CutDesk, MOST};
pub(crate) use quote::{QuoteDesk, job};
pub(crate) use stock::Stocked;
pub(crate) use which::Which;

use super::Document;
use egui::Context;
use fh_core::plan::Plan;
use fh_rack::list::wanted::title;
use fh_rack::said::section::Alike;
use fh_rack::which::options::By;
use fh_store::Home;
use fh_work::Shop as Tools;
use std::path::Path;

/// Steel, and what the hand does with it.
#[derive(Default)]
pub(crate) struct Steel {
    open: bool,
    pub(crate) tab: SteelTab,
    /// The smith's files; read when the place is first opened.
    pub(crate) stock: Option<Stocked>,
    pub(crate) which: Which,
    /// The chosen line of the rack.
    pub(crate) line: Option<usize>,
    pub(crate) cut: CutDesk,
    pub(crate) quote: QuoteDesk,
}

impl Steel {
    /// Whether it stands in place of the plan.
    pub(crate) fn is_open(&self) -> bool {
        self.open
    }

    /// Opens its place, or closes it. Whether the rack was read for the first time.
    pub(crate) fn set_open(&mut self, open: bool, home: Option<&Home>) {
        self.open = open;
        if open && self.stock.is_none() {
            self.stock = Some(Stocked::read(home));
        }
    }

    /// Shows a part of it.
    pub(crate) fn show(&mut self, tab: SteelTab) {
        self.tab = tab;
    }

    /// Works out what is shown, where anything has changed; `tools` with the number of their revision. Whether somebody else
    /// changed the rack.
    pub(crate) fn refresh(&mut self, ctx: &Context, document: &Document, bar: usize, tools: (&Tools, u64)) -> bool {
        let Some(stock) = self.stock.as_mut().filter(|_| self.open) else { return false };
        let is_changed = stock.look(ctx.input(|input| input.time));
        match self.tab {
            SteelTab::Which => self.which.refresh(ctx, document, bar, stock, tools),
            SteelTab::Cut => self.cut.refresh(ctx, document, stock),
            SteelTab::Quote => self.quote.refresh(ctx, document, &self.cut, stock, tools),
            SteelTab::Rack => {}
        }
        let count = stock.rack.bars.len();
        self.line = self.line.filter(|_| count > 0).map(|line| line.min(count - 1));
        is_changed
    }

    /// Sorts the options.
    pub(crate) fn sort_by(&mut self, by: By) {
        self.which.sort_by(by);
    }

    /// Looks at an option more closely.
    pub(crate) fn look(&mut self, alike: Alike) {
        self.which.look(alike);
    }

    /// So many of a plan of the job.
    pub(crate) fn set_count(&mut self, at: usize, count: u32) {
        self.cut.set_count(at, count);
    }

    /// Cuts another plan as well.
    pub(crate) fn add_plan(&mut self, path: &Path, plan: Plan) {
        let file = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        let name = if plan.title.trim().is_empty() { file } else { title(&plan) };
        self.cut.add(name, plan);
    }

    /// Leaves a plan out of the job.
    pub(crate) fn drop_plan(&mut self, at: usize) {
        self.cut.drop_plan(at);
    }

    /// Chooses the way of cutting.
    pub(crate) fn set_way(&mut self, way: Option<String>) {
        self.cut.set_way(way);
    }

    /// Stops the search.
    pub(crate) fn stop(&mut self) {
        self.cut.stop();
    }

    /// The list was booked under a number, or the booking was undone.
    pub(crate) fn keep_booked(&mut self, number: Option<u32>) {
        self.cut.keep_booked(number);
    }
}
