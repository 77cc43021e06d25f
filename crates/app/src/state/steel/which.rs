//! Which bar: the options for the open plan's bar. They are worked out beside the window, heats and minutes one after the other.

use super::aside::Aside;
use super::stock::Stocked;
use crate::state::Document;
use egui::Context;
use fh_rack::list::source::sources;
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
    /// Why there are none.
    pub(crate) told: Option<String>,
}

impl Default for Which {
    fn default() -> Self {
        let (of, aside, options) = (None, Aside::default(), Vec::new());
        Self { of, aside, options, worked: 0, by: By::Effort, chosen: None, told: None }
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
        let had = match sources(&stock.rack, &stock.merchant) {
            Ok(had) => had,
            Err(why) => {
                (self.options, self.told) = (Vec::new(), Some(why.to_string()));
                return;
            }
        };
        self.told = None;
        let (plan, tools) = (document.plan().clone(), tools.clone());
        self.aside.begin(ctx, move |goes_on, tell| {
            let mut all = options(&plan, bar, &had);
            tell(News::All(all.clone()));
            for option in all.chunks_mut(1) {
                if !goes_on() {
                    return;
                }
                work_options(&plan, bar, option, &tools, goes_on, &mut |_| ());
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
        let chosen = |option: &BarOption| self.chosen.as_ref().is_some_and(|chosen| option.alike == *chosen);
        let at = self.options.iter().position(chosen);
        at.or_else(|| self.options.iter().position(|option| option.is_own))
    }

    /// The option of a bar.
    pub(crate) fn option(&self, alike: &Alike) -> Option<&BarOption> {
        self.options.iter().find(|option| option.alike == *alike)
    }
}
