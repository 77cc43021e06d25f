//! The quote of the job for some counts. What the plans take is worked out once; what is asked follows from the shop's figures.

use super::aside::Aside;
use super::job::JobDesk;
use super::stock::Stocked;
use crate::state::Document;
use egui::Context;
use fh_rack::list::make::Stock;
use fh_rack::quote::error::MOST;
use fh_rack::quote::hours::{PlanWork, work_of};
use fh_rack::quote::quoted::{Quote, quote_of};
use fh_work::Shop as Tools;

/// The open plan with its revision, the job, what can be had, the tools, and the counts.
type Stamp = (u64, u64, u64, u64, u64, [u32; 3]);
/// What the plans take hangs on the plans, the job and the tools alone.
type WorkStamp = (u64, u64, u64, u64);

enum News {
    Works(WorkStamp, Vec<PlanWork>),
    Quote(Box<Result<Quote, String>>),
}

/// The quote.
pub(crate) struct QuoteDesk {
    /// For how many of the job.
    pub(crate) counts: [u32; 3],
    /// Of which of them the lines are shown.
    pub(crate) lines_of: usize,
    of: Option<Stamp>,
    works: Option<(WorkStamp, Vec<PlanWork>)>,
    aside: Aside<News>,
    /// What it comes to, or why there is none.
    pub(crate) quote: Option<Result<Quote, String>>,
}

impl Default for QuoteDesk {
    fn default() -> Self {
        Self { counts: [1, 10, 40], lines_of: 0, of: None, works: None, aside: Aside::default(), quote: None }
    }
}

impl QuoteDesk {
    /// For how many of the job one of the quotes is.
    pub(crate) fn set_count(&mut self, at: usize, count: u32) {
        if let Some(of) = self.counts.get_mut(at) {
            *of = count.clamp(1, MOST);
        }
    }

    /// Whether it is being worked out.
    pub(crate) fn is_working(&self) -> bool {
        self.aside.is_running()
    }

    /// Hears what was found, and begins anew where anything has changed.
    pub(super) fn refresh(
        &mut self,
        ctx: &Context,
        document: &Document,
        job: &JobDesk,
        stock: &Stocked,
        (tools, tools_revision): (&Tools, u64),
    ) {
        for news in self.aside.news() {
            match news {
                News::Works(of, works) => self.works = Some((of, works)),
                News::Quote(quote) => self.quote = Some(*quote),
            }
        }
        let of_plan = (document.serial(), document.revision(), job.revision(), tools_revision);
        let now = (of_plan.0, of_plan.1, of_plan.2, of_plan.3, stock.revision, self.counts);
        if self.of == Some(now) {
            return;
        }
        self.of = Some(now);
        let (job, order) = (job.titled(document), job.order(document));
        let known = self.works.as_ref().filter(|(of, _)| *of == of_plan).map(|(_, works)| works.clone());
        let (rack, merchant, shop) = (stock.rack.now.clone(), stock.merchant.now.clone(), stock.shop.now.clone());
        let (tools, counts) = (tools.clone(), self.counts);
        self.aside.begin(ctx, move |goes_on, tell| {
            let order = match order {
                Ok(order) => order,
                Err(why) => return tell(News::Quote(Box::new(Err(why)))),
            };
            let works = known.unwrap_or_else(|| {
                let works: Vec<PlanWork> = order.iter().map(|ordered| work_of(&ordered.plan, &tools)).collect();
                tell(News::Works(of_plan, works.clone()));
                works
            });
            let stock = Stock { rack: &rack, merchant: &merchant, shop: &shop, kerf_nm: None, keep_from_nm: None };
            let quote = |goes_on: &dyn Fn() -> bool| {
                let quote = quote_of(&job, &order, works.clone(), stock, &counts, goes_on, &mut |_| ());
                tell(News::Quote(Box::new(quote.map_err(|why| why.to_string()))));
            };
            quote(&|| false);
            if goes_on() {
                quote(goes_on);
            }
        });
    }
}
