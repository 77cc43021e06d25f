//! What the log is held against: the plan as it was before anything was logged, and the passes of the step. It is worked out anew only when the plan, the tools or the step have changed.

use super::{Document, log_entries};
use fh_core::plan::{Logged, Plan, Work};
use fh_work::{Experience, Passes, Shop, Worked, WorkedStep, passes, work_out};

/// For which plan, which revision of it and which tools something was worked out.
type Stamp = (u64, u64, u64);

/// What was worked out last.
#[derive(Default)]
pub(crate) struct Ledger {
    of: Option<Stamp>,
    planned: Option<Worked>,
    passes_of: Option<(Stamp, usize)>,
    passes: Option<Passes>,
}

impl Ledger {
    /// Works out what the log is held against, where it is not known yet.
    pub(crate) fn refresh(&mut self, stamp: Stamp, document: &Document, shop: &Shop) {
        if self.of == Some(stamp) {
            return;
        }
        self.of = Some(stamp);
        let (plan, balance) = (document.plan(), document.balance());
        self.planned = (!plan.work.log.is_empty()).then(|| {
            let work = Work { log: Vec::new(), ..plan.work.clone() };
            work_out(&Plan { work, ..plan.clone() }, balance, shop)
        });
    }

    /// Works out the passes of a step, where they are not known yet.
    pub(crate) fn refresh_passes(&mut self, stamp: Stamp, document: &Document, worked: &Worked, at: Option<usize>) {
        let now = at.map(|at| (stamp, at));
        if self.passes_of != now {
            self.passes_of = now;
            self.passes = at.and_then(|at| passes(document.plan(), document.balance(), worked, at));
        }
    }

    /// The passes of the chosen step; none where nothing is drawn or spread.
    pub(crate) fn passes(&self) -> Option<&Passes> {
        self.passes.as_ref()
    }

    /// The order as it was planned, before anything was logged.
    pub(crate) fn planned<'a>(&'a self, worked: &'a Worked) -> &'a Worked {
        self.planned.as_ref().unwrap_or(worked)
    }

    /// The step of the order as planned that an entry is about.
    pub(crate) fn planned_step<'a>(&'a self, worked: &'a Worked, entry: &Logged) -> Option<&'a WorkedStep> {
        Some(log_entries::step_of(&self.planned(worked).steps, entry)?.1)
    }
}

/// Each entry of the log with what was reckoned for it; none where its parts are gone.
pub(crate) fn paired<'a>(plan: &'a Plan, worked: &'a Worked) -> Vec<(&'a Logged, Option<&'a Experience>)> {
    let of = |number: usize| worked.experience.iter().find(|one| one.entry == Some(number));
    plan.work.log.iter().enumerate().map(|(number, entry)| (entry, of(number))).collect()
}
