//! The job and its cut list: best fit at once, the search beside the window.

use super::aside::Aside;
use super::stock::Stocked;
use crate::state::Document;
use egui::Context;
use fh_core::plan::Plan;
use fh_rack::list::make::{CutList, Progress, Stock, make};
use fh_rack::list::wanted::{ListError, Ordered};

/// The most of one plan in a job.
pub(crate) const MOST: u32 = fh_rack::kept::job::MOST_PIECES;

/// The open plan with its revision, the job, and what can be had that a list was made for.
type Stamp = (u64, u64, u64, u64);

/// A plan that is cut beside the open one.
pub(crate) struct OtherPlan {
    /// What it is called.
    pub(crate) name: String,
    plan: Plan,
    /// How many.
    pub(crate) count: u32,
}

enum News {
    /// The list by best fit.
    First(Box<CutList>),
    /// How far the search has come.
    Progress(Progress),
    /// The best that was found.
    Best(Box<CutList>),
    /// Why there is none.
    No(String),
}

/// The job and its cut list.
#[derive(Default)]
pub(crate) struct CutDesk {
    /// How many of the open plan beyond one.
    more: u32,
    /// The other plans of the job.
    pub(crate) others: Vec<OtherPlan>,
    /// The way of cutting, by its name; the shop's first where none was chosen.
    pub(crate) way: Option<String>,
    revision: u64,
    of: Option<Stamp>,
    aside: Aside<News>,
    /// The list.
    pub(crate) list: Option<CutList>,
    /// How far the search has come.
    pub(crate) progress: Option<Progress>,
    /// Whether the search was stopped by hand.
    pub(crate) was_stopped: bool,
    /// Why there is no list.
    pub(crate) told: Option<String>,
    /// The booking that was made of the list: it stays as it is until the job is changed.
    pub(crate) booked: Option<u32>,
}

impl CutDesk {
    /// How many of the open plan.
    pub(crate) fn count(&self) -> u32 {
        self.more.saturating_add(1)
    }

    /// What is ordered: the open plan first.
    pub(crate) fn order(&self, document: &Document) -> Vec<Ordered> {
        let of = |plan: &Plan, count: u32| Ordered { cut: self.way.clone(), ..Ordered::new(plan.clone(), count) };
        let own = of(document.plan(), self.count());
        std::iter::once(own).chain(self.others.iter().map(|other| of(&other.plan, other.count))).collect()
    }

    /// A number that changes with the job, but not with the open plan.
    pub(crate) fn revision(&self) -> u64 {
        self.revision
    }

    pub(super) fn set_count(&mut self, at: usize, count: u32) {
        let count = count.clamp(1, MOST);
        match at.checked_sub(1).and_then(|other| self.others.get_mut(other)) {
            Some(other) => other.count = count,
            None => self.more = count - 1,
        }
        self.revision += 1;
    }

    pub(super) fn add(&mut self, name: String, plan: Plan) {
        self.others.push(OtherPlan { name, plan, count: 1 });
        self.revision += 1;
    }

    pub(super) fn drop_plan(&mut self, at: usize) {
        if let Some(other) = at.checked_sub(1).filter(|other| *other < self.others.len()) {
            self.others.remove(other);
            self.revision += 1;
        }
    }

    pub(super) fn set_way(&mut self, way: Option<String>) {
        self.way = way;
        self.revision += 1;
    }

    /// Stops the search; the best so far stays.
    pub(super) fn stop(&mut self) {
        self.was_stopped = self.aside.is_running();
        self.aside.halt();
    }

    /// The list was booked: it stays though the rack is another one now.
    pub(super) fn keep_booked(&mut self, number: Option<u32>) {
        self.booked = number;
        if number.is_none() {
            self.of = None;
        }
    }

    /// Whether the search goes on.
    pub(crate) fn is_searching(&self) -> bool {
        self.aside.is_running()
    }

    /// Hears what was found, and begins anew where anything has changed.
    pub(super) fn refresh(&mut self, ctx: &Context, document: &Document, stock: &Stocked) {
        let now = (document.serial(), document.revision(), self.revision, stock.revision);
        let is_for_now = self.of.is_some_and(|of| match self.booked {
            Some(_) => (of.0, of.1, of.2) == (now.0, now.1, now.2),
            None => of == now,
        });
        if !is_for_now {
            (self.of, self.booked, self.was_stopped, self.progress) = (Some(now), None, false, None);
            self.begin(ctx, document, stock);
        }
        for news in self.aside.news() {
            match news {
                News::First(list) | News::Best(list) => (self.list, self.told) = (Some(*list), None),
                News::Progress(progress) => self.progress = Some(progress),
                News::No(why) => (self.list, self.told) = (None, Some(why)),
            }
        }
    }

    fn begin(&mut self, ctx: &Context, document: &Document, stock: &Stocked) {
        let order = self.order(document);
        let (rack, merchant, shop) = (stock.rack.clone(), stock.merchant.clone(), stock.shop.clone());
        self.aside.begin(ctx, move |goes_on, tell| {
            let stock = Stock { rack: &rack, merchant: &merchant, shop: &shop, kerf_nm: None, keep_from_nm: None };
            let say = |list: Result<CutList, ListError>, news: fn(Box<CutList>) -> News| match list {
                Ok(list) => tell(news(Box::new(list))),
                Err(why) => tell(News::No(why.to_string())),
            };
            say(make(&order, stock, &|| false, &mut |_| ()), News::First);
            let list = make(&order, stock, goes_on, &mut |progress| tell(News::Progress(progress)));
            say(list, News::Best);
        });
    }
}
