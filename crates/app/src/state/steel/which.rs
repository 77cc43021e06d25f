//! Which bar: the options for the open plan's bar. They are worked out beside the window, heats and minutes one after the other.

use super::aside::Aside;
use super::stock::Stocked;
use crate::state::Document;
use egui::Context;
use fh_rack::list::source::sources;
use fh_rack::quote::hours::wait_for_a_heat;
use fh_rack::said::section::Alike;
use fh_rack::which::options::{BarOption, By, Fire, options, sort, work_options};
use fh_work::Shop as Tools;

/// The plan with its revision, the bar, what can be had, and the smith's tools that options were worked out for.
type Stamp = (u64, u64, usize, u64, u64);

enum News {
    /// All options, without heats and minutes.
    All(Vec<BarOption>),
    /// Heats and minutes of one.
    Fire(Alike, Option<Fire>),
}

/// Which options are shown. The plan's own bar always is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Filter {
    /// Only what lies on the rack.
    pub(crate) on_rack: bool,
    /// Only what nothing speaks against.
    pub(crate) is_clean: bool,
    /// Only sections of this kind.
    pub(crate) kind: Option<&'static str>,
}

impl Filter {
    fn shows(self, option: &BarOption) -> bool {
        let is_clean = option.against.is_empty() && option.is_long_enough;
        option.is_own
            || ((!self.on_rack || option.is_on_rack)
                && (!self.is_clean || is_clean)
                && self.kind.is_none_or(|kind| option.alike.kind == kind))
    }
}

/// The options.
pub(crate) struct Which {
    of: Option<Stamp>,
    aside: Aside<News>,
    /// Sorted as they are shown.
    pub(crate) options: Vec<BarOption>,
    /// Of how many heats and minutes are known.
    pub(crate) worked: usize,
    pub(crate) by: By,
    chosen: Option<Alike>,
    /// Which of them are shown.
    pub(crate) filter: Filter,
    /// Why there are none.
    pub(crate) told: Option<String>,
}

impl Default for Which {
    fn default() -> Self {
        let (of, aside, options) = (None, Aside::default(), Vec::new());
        let (by, filter) = (By::Effort, Filter::default());
        Self { of, aside, options, worked: 0, by, chosen: None, filter, told: None }
    }
}

impl Which {
    /// Hears what was found, and begins anew where anything has changed.
    pub(super) fn refresh(
        &mut self,
        ctx: &Context,
        document: &Document,
        bar: usize,
        stock: &Stocked,
        (tools, tools_revision): (&Tools, u64),
    ) {
        let now = (document.serial(), document.revision(), bar, stock.revision, tools_revision);
        if self.of != Some(now) {
            if self.of.is_none_or(|of| (of.0, of.2) != (now.0, now.2)) {
                (self.options, self.chosen) = (Vec::new(), None);
            }
            self.of = Some(now);
            self.begin(ctx, document, bar, stock, tools);
        }
        for news in self.aside.news() {
            self.hear(news);
        }
    }

    fn begin(&mut self, ctx: &Context, document: &Document, bar: usize, stock: &Stocked, tools: &Tools) {
        let had = match sources(&stock.rack.now, &stock.merchant.now) {
            Ok(had) => had,
            Err(why) => {
                (self.options, self.told) = (Vec::new(), Some(why.to_string()));
                return;
            }
        };
        self.told = None;
        let (plan, tools) = (document.plan().clone(), tools.clone());
        let wait = wait_for_a_heat(&stock.shop.now);
        self.aside.begin(ctx, move |goes_on, tell| {
            let mut all = options(&plan, bar, &had);
            tell(News::All(all.clone()));
            for option in all.chunks_mut(1) {
                if !goes_on() {
                    return;
                }
                work_options(&plan, bar, option, (&tools, wait), goes_on, &mut |_| ());
                if let [option] = option {
                    tell(News::Fire(option.alike.clone(), option.fire));
                }
            }
        });
    }

    fn hear(&mut self, news: News) {
        match news {
            News::All(all) => {
                (self.options, self.worked) = (all, 0);
                sort(&mut self.options, self.by);
            }
            News::Fire(of, fire) => {
                if let Some(option) = self.options.iter_mut().find(|option| option.alike == of) {
                    option.fire = fire;
                    self.worked += 1;
                }
                // Minutes and moved metal are not held against each other: what is sorted waits for the last.
                if self.worked == self.options.len() {
                    sort(&mut self.options, self.by);
                }
            }
        }
    }

    /// Whether heats and minutes are still being worked out.
    pub(crate) fn is_working(&self) -> bool {
        self.aside.is_running()
    }

    /// Whether the minutes of all are known.
    pub(crate) fn has_minutes(&self) -> bool {
        self.worked == self.options.len()
    }

    pub(super) fn sort_by(&mut self, by: By) {
        self.by = by;
        sort(&mut self.options, by);
    }

    pub(super) fn look(&mut self, alike: Alike) {
        self.chosen = Some(alike);
    }

    /// The option that is looked at, by its place; the plan's own where none was chosen.
    pub(crate) fn at(&self) -> Option<usize> {
        let chosen = |option: &BarOption| {
            self.chosen.as_ref().is_some_and(|chosen| option.alike == *chosen) && self.filter.shows(option)
        };
        let at = self.options.iter().position(chosen);
        at.or_else(|| self.options.iter().position(|option| option.is_own))
    }

    /// The places of those that are shown.
    pub(crate) fn shown(&self) -> Vec<usize> {
        (0..self.options.len()).filter(|at| self.filter.shows(&self.options[*at])).collect()
    }

    /// The kinds of section that there are.
    pub(crate) fn kinds(&self) -> Vec<&'static str> {
        let mut kinds: Vec<&'static str> = self.options.iter().map(|option| option.alike.kind).collect();
        kinds.sort_unstable();
        kinds.dedup();
        kinds
    }

    /// The option of a bar.
    pub(crate) fn option(&self, alike: &Alike) -> Option<&BarOption> {
        self.options.iter().find(|option| option.alike == *alike)
    }
}
