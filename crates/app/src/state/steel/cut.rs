//! The cut list of the job: best fit at once, the search beside the window.

use super::aside::Aside;
use super::job::JobDesk;
use super::stock::Stocked;
use crate::state::Document;
use egui::Context;
use fh_rack::kept::rack::Rack;
use fh_rack::list::make::{CutList, Progress, Stock, make};
use fh_rack::list::wanted::{ListError, Ordered};

/// The open plan with its revision, the job, and what can be had that a list was made for.
type Stamp = (u64, u64, u64, u64);

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

/// The cut list.
#[derive(Default)]
pub(crate) struct CutDesk {
    of: Option<Stamp>,
    aside: Aside<News>,
    /// The rack that is searched on.
    searched_on: Option<Rack>,
    /// The rack that the list was made on: another one may be held by now.
    pub(crate) made_on: Option<Rack>,
    /// The list.
    pub(crate) list: Option<CutList>,
    /// The pass of the window in which it came: what is clicked in that pass was aimed at the list before.
    came: u64,
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

    /// Whether the list can be booked: it finds every piece a bar, the search is over, and it has been seen.
    pub(crate) fn can_be_booked(&self, ctx: &Context) -> bool {
        let is_whole = self.list.as_ref().is_some_and(CutList::is_whole);
        is_whole && !self.is_searching() && ctx.cumulative_pass_nr() > self.came
    }

    /// Hears what was found, and begins anew where anything has changed.
    pub(super) fn refresh(&mut self, ctx: &Context, document: &Document, job: &JobDesk, stock: &Stocked) {
        let now = (document.serial(), document.revision(), job.revision(), stock.revision);
        let is_for_now = self.of.is_some_and(|of| match self.booked {
            Some(_) => (of.0, of.1, of.2) == (now.0, now.1, now.2),
            None => of == now,
        });
        if !is_for_now {
            (self.of, self.booked, self.was_stopped, self.progress) = (Some(now), None, false, None);
            self.begin(ctx, job.order(document), stock);
        }
        for news in self.aside.news() {
            match news {
                News::First(list) | News::Best(list) => {
                    (self.list, self.told) = (Some(*list), None);
                    self.made_on.clone_from(&self.searched_on);
                    self.came = ctx.cumulative_pass_nr();
                    ctx.request_repaint();
                }
                News::Progress(progress) => self.progress = Some(progress),
                News::No(why) => (self.list, self.told) = (None, Some(why)),
            }
        }
    }

    fn begin(&mut self, ctx: &Context, order: Result<Vec<Ordered>, String>, stock: &Stocked) {
        let (rack, merchant, shop) = (stock.rack.now.clone(), stock.merchant.now.clone(), stock.shop.now.clone());
        self.searched_on = Some(rack.clone());
        self.aside.begin(ctx, move |goes_on, tell| {
            let order = match order {
                Ok(order) => order,
                Err(why) => return tell(News::No(why)),
            };
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
