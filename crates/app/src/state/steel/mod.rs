//! Steel: which bar, the rack, the cut list, the quote. It is worked out while its place is open, and only what is shown there.

mod aside;
mod ask;
mod cut;
mod held;
mod job;
mod paths;
mod plans;
mod quote;
mod stock;
mod which;

pub(crate) use aside::Aside;
pub(crate) use ask::{JobAsk, RackAsk, SteelAsk, SteelPaper, SteelTab};
pub(crate) use cut::CutDesk;
pub(crate) use job::{JobDesk, MOST, lines_of};
pub(crate) use plans::OPEN;
pub(crate) use quote::QuoteDesk;
pub(crate) use stock::Stocked;
pub(crate) use which::{Filter, Which};

use super::Document;
use egui::Context;
use fh_core::plan::SectionSpec;
use fh_rack::said::section::Alike;
use fh_rack::which::options::By;
use fh_store::Home;
use fh_work::Shop as Tools;

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
    /// The plans that are cut and quoted together.
    pub(crate) job: JobDesk,
    /// The chosen line of the merchant's list.
    pub(crate) ware: usize,
    pub(crate) cut: CutDesk,
    pub(crate) quote: QuoteDesk,
    /// What was changed beside the quote, the latest last: the job, or the shop's figures.
    changed: Vec<Changed>,
}

/// What was changed beside the quote.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Changed {
    /// The job.
    Job,
    /// The shop's figures.
    Shop,
}

/// The most sections that a new plan is offered.
const MOST_SECTIONS: usize = 12;
/// The most changes that are remembered.
const MOST_CHANGES: usize = 200;

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

    /// The sections that lie on the rack, each once; the rack is read where it was not yet.
    pub(crate) fn sections_on_rack(&mut self, home: Option<&Home>) -> Vec<SectionSpec> {
        let stock = self.stock.get_or_insert_with(|| Stocked::read(home));
        let mut all: Vec<SectionSpec> = Vec::new();
        for line in stock.rack.now.bars.iter().filter(|line| line.bar.count > 0) {
            if !all.contains(&line.bar.section) && all.len() < MOST_SECTIONS {
                all.push(line.bar.section.clone());
            }
        }
        all
    }

    /// Shows a part of it.
    pub(crate) fn show(&mut self, tab: SteelTab) {
        self.tab = tab;
    }

    /// Works out what is shown, where anything has changed; `tools` with the number of their revision. What somebody else
    /// changed of the smith's files, in words.
    pub(crate) fn refresh(
        &mut self,
        ctx: &Context,
        document: &Document,
        bar: usize,
        tools: (&Tools, u64),
    ) -> Option<&'static str> {
        let stock = self.stock.as_mut().filter(|_| self.open)?;
        let now = ctx.input(|input| input.time);
        let told = stock.look(now);
        self.job.read_plans(document, now);
        match self.tab {
            SteelTab::Which => self.which.refresh(ctx, document, bar, stock, tools),
            SteelTab::Cut => self.cut.refresh(ctx, document, &self.job, stock),
            SteelTab::Quote => self.quote.refresh(ctx, document, &self.job, stock, tools),
            SteelTab::Rack | SteelTab::Job | SteelTab::Merchant | SteelTab::Shop => {}
        }
        let count = stock.rack.now.bars.len();
        self.line = self.line.filter(|_| count > 0).map(|line| line.min(count - 1));
        self.ware = self.ware.min(stock.merchant.now.bars.len().saturating_sub(1));
        told
    }

    /// Remembers what was changed.
    pub(crate) fn remember(&mut self, changed: Changed) {
        if self.changed.len() == MOST_CHANGES {
            self.changed.remove(0);
        }
        self.changed.push(changed);
    }

    /// What was changed last beside the quote, of what can still be taken back.
    pub(crate) fn last_changed(&self) -> Option<Changed> {
        let can_undo_shop = self.stock.as_ref().is_some_and(|stock| stock.shop.can_undo());
        let can_be = |changed: &&Changed| match changed {
            Changed::Job => self.job.can_undo(),
            Changed::Shop => can_undo_shop,
        };
        self.changed.iter().rev().find(can_be).copied()
    }

    /// What was changed last is taken back.
    pub(crate) fn forget_last(&mut self, changed: Changed) {
        if let Some(at) = self.changed.iter().rposition(|one| *one == changed) {
            self.changed.remove(at);
        }
    }

    /// Sorts the options.
    pub(crate) fn sort_by(&mut self, by: By) {
        self.which.sort_by(by);
    }

    /// Looks at an option more closely.
    pub(crate) fn look(&mut self, alike: Alike) {
        self.which.look(alike);
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
