//! The order of work in the editor: which step is chosen, what the bars are after it, what the smith owns.
//!
//! The order is worked out anew only when the plan or the smith's tools have changed.

use super::{Document, Ledger, Reckoned, Shown, Spent, Tab, add_spent};
use fh_core::plan::{Bar, Logged, Step};
use fh_work::{OneHeat, Shop, Worked, WorkedStep};

/// The most parts of a plan whose order is worked out at once for its findings: a few milliseconds.
const FEW_PARTS: usize = 24;
/// How long a plan of more parts has to rest before, in seconds.
const REST: f64 = 0.5;
/// How long a step is shown while the piece grows by itself, in seconds.
const BEAT: f64 = 1.2;

/// Which plan, which revision of it, and which tools an order was worked out for.
type Stamp = (u64, u64, u64);

/// The order of work, and what the hand does with it.
#[derive(Default)]
pub(crate) struct Order {
    worked: Option<(Stamp, Worked)>,
    /// What waits to be worked out, and since when, in seconds of the program's clock.
    waits: Option<(Stamp, f64)>,
    shown: Option<(Stamp, Shown)>,
    one_heat: Reckoned,
    ledger: Ledger,
    /// What the clock at the anvil saw, of the plan with this number.
    timed: (u64, Vec<Logged>),
    at: Option<usize>,
    tab: Tab,
    shop: Shop,
    shop_revision: u64,
    /// When the next step is shown, in seconds of the program's clock; none where nothing plays.
    next_beat: Option<f64>,
    /// Whether the list has to bring the chosen step into sight.
    reveal: bool,
    shots: u64,
}

/// What panels may look at.
#[derive(Clone, Copy)]
pub(crate) struct OrderDesk<'a> {
    /// The order.
    pub(crate) worked: &'a Worked,
    /// The chosen step.
    pub(crate) at: Option<usize>,
    /// The bars after it.
    pub(crate) shown: Option<&'a Shown>,
    /// What one heat does for the chosen step, where the panel shows it.
    pub(crate) one_heat: Option<&'a OneHeat>,
    /// What the log is held against.
    pub(crate) ledger: &'a Ledger,
    /// What the clock at the anvil saw.
    pub(crate) timed: &'a [Logged],
    /// What the panel beside it shows.
    pub(crate) tab: Tab,
    /// What the smith owns.
    pub(crate) shop: &'a Shop,
    /// Whether the steps follow each other by themselves.
    pub(crate) plays: bool,
    /// Whether the list has to bring the chosen step into sight.
    pub(crate) reveal: bool,
}

impl<'a> OrderDesk<'a> {
    /// The chosen step, with everything that follows for it.
    pub(crate) fn chosen(&self) -> Option<&'a WorkedStep> {
        self.worked.steps.get(self.at?)
    }
}

/// Where a step stands among others that came of a change: the one that does the same, nearest to its old place; else what
/// stands at that place now.
fn place_of(steps: &[WorkedStep], chosen: &WorkedStep, at: usize) -> usize {
    let does_the_same = |step: &WorkedStep| step.bar == chosen.bar && step.step.work == chosen.step.work;
    let same = steps.iter().enumerate().filter(|(_, step)| does_the_same(step)).map(|(place, _)| place);
    same.min_by_key(|place| place.abs_diff(at)).unwrap_or(at)
}

impl Order {
    /// With the smith's own tools.
    pub(crate) fn with_shop(shop: Shop) -> Self {
        Self { shop, ..Self::default() }
    }

    fn stamp(&self, document: &Document) -> Stamp {
        (document.serial(), document.revision(), self.shop_revision)
    }

    /// Whether an order of this plan was worked out, be it of an earlier revision.
    pub(crate) fn knows(&self, document: &Document) -> bool {
        self.worked.as_ref().is_some_and(|(of, _)| of.0 == document.serial())
    }

    /// Works the order out for the findings alone, as soon as the plan has rested; in how many seconds it wants to be asked
    /// again.
    pub(crate) fn refresh_at_rest(&mut self, document: &Document, now: f64) -> Option<f64> {
        let stamp = self.stamp(document);
        if self.worked.as_ref().is_some_and(|(of, _)| *of == stamp) {
            return None;
        }
        let since = self.waits.filter(|(of, _)| *of == stamp).map_or(now, |(_, since)| since);
        let parts: usize = document.plan().bars.iter().map(Bar::count_segments).sum();
        let left = if parts > FEW_PARTS { since + REST - now } else { 0.0 };
        if left <= 0.0 {
            self.waits = None;
            self.refresh(document);
            return None;
        }
        self.waits = Some((stamp, since));
        Some(left)
    }

    /// Works the order out where the plan or the tools have changed.
    pub(crate) fn refresh(&mut self, document: &Document) {
        let stamp = self.stamp(document);
        if self.worked.as_ref().is_none_or(|(of, _)| *of != stamp) {
            let is_other = self.worked.as_ref().is_none_or(|(of, _)| of.0 != stamp.0);
            let worked = fh_work::work_out(document.plan(), document.balance(), &self.shop);
            if is_other {
                self.at = self.at.filter(|_| self.worked.is_none()).or(Some(0));
                self.reveal = true;
            } else if let Some((chosen, at)) = self.desk().and_then(|desk| desk.chosen().zip(desk.at)) {
                let place = place_of(&worked.steps, chosen, at);
                self.reveal |= place != at;
                self.at = Some(place);
            }
            self.at =
                self.at.map(|at| at.min(worked.steps.len().saturating_sub(1))).filter(|_| !worked.steps.is_empty());
            self.worked = Some((stamp, worked));
        }
    }

    /// Works out the bars after the chosen step, where another one is chosen or the plan has changed.
    pub(crate) fn refresh_shown(&mut self, document: &Document) {
        let (Some((stamp, worked)), Some(at)) = (&self.worked, self.at) else {
            self.shown = None;
            return;
        };
        if self.shown.as_ref().is_none_or(|(of, shown)| of != stamp || shown.after != at + 1) {
            self.shots += 1;
            let shown = Shown::new(document.plan(), document.balance(), worked, at, self.shots);
            self.shown = Some((*stamp, shown));
        }
    }

    /// Works out what one heat does for the chosen step, where the panel shows it.
    pub(crate) fn refresh_one_heat(&mut self, document: &Document) {
        if let Some((stamp, worked)) = self.worked.as_ref().filter(|_| self.tab == Tab::OneHeat) {
            self.one_heat.refresh(*stamp, document, worked, self.at);
        }
    }

    /// Works out what the log is held against, and the passes of the chosen step, where the panel shows them.
    pub(crate) fn refresh_ledger(&mut self, document: &Document) {
        let Some((stamp, worked)) = &self.worked else { return };
        match self.tab {
            Tab::Log => self.ledger.refresh(*stamp, document, &self.shop),
            Tab::OneHeat => self.ledger.refresh_passes(*stamp, document, worked, self.at),
            _ => {}
        }
        if self.timed.0 != document.serial() {
            self.timed = (document.serial(), Vec::new());
        }
    }

    /// Remembers what the chosen step took at the anvil.
    pub(crate) fn spend(&mut self, document: &Document, spent: Spent) {
        if self.timed.0 != document.serial() {
            self.timed = (document.serial(), Vec::new());
        }
        let Some((_, worked)) = &self.worked else { return };
        if let Some(step) = self.at.and_then(|at| worked.steps.get(at)) {
            add_spent(&mut self.timed.1, step, spent);
        }
    }

    /// What panels may look at; none where nothing was worked out.
    pub(crate) fn desk(&self) -> Option<OrderDesk<'_>> {
        Some(OrderDesk {
            worked: self.worked()?,
            at: self.at,
            shown: self.shown.as_ref().map(|(_, shown)| shown),
            one_heat: self.one_heat.one(),
            ledger: &self.ledger,
            timed: &self.timed.1,
            tab: self.tab,
            shop: &self.shop,
            plays: self.next_beat.is_some(),
            reveal: self.reveal,
        })
    }

    /// The order, where it was worked out.
    pub(crate) fn worked(&self) -> Option<&Worked> {
        self.worked.as_ref().map(|(_, worked)| worked)
    }

    /// Its steps as they would stand in the plan.
    pub(crate) fn steps(&self) -> Option<Vec<Step>> {
        Some(self.worked()?.steps.iter().map(|step| step.step.clone()).collect())
    }

    /// The chosen step.
    pub(crate) fn at(&self) -> Option<usize> {
        self.at
    }

    /// Chooses a step, or none: the finished bars are shown then.
    pub(crate) fn choose(&mut self, at: Option<usize>) {
        let count = self.worked().map_or(usize::MAX, |worked| worked.steps.len());
        self.at = at.map(|at| at.min(count.saturating_sub(1))).filter(|_| count > 0);
        self.reveal = true;
        self.next_beat = self.next_beat.filter(|_| self.at.is_some());
    }

    /// Chooses the step that stands so many further on; from none the first or the last.
    pub(crate) fn choose_by(&mut self, steps: isize) {
        let Some(last) = self.worked().and_then(|worked| worked.steps.len().checked_sub(1)) else { return };
        let at = self.at.map_or(if steps < 0 { last } else { 0 }, |at| at.saturating_add_signed(steps).min(last));
        self.choose(Some(at));
    }

    /// The list has brought the chosen step into sight.
    pub(crate) fn revealed(&mut self) {
        self.reveal = false;
    }

    /// Chooses what the panel shows.
    pub(crate) fn show_tab(&mut self, tab: Tab) {
        self.tab = tab;
    }

    /// What the smith owns.
    pub(crate) fn shop(&self) -> &Shop {
        &self.shop
    }

    /// A number that changes with what the smith owns.
    pub(crate) fn shop_revision(&self) -> u64 {
        self.shop_revision
    }

    /// Takes what the smith owns.
    pub(crate) fn own(&mut self, shop: Shop) {
        self.shop = shop;
        self.shop_revision += 1;
    }

    /// Lets the piece grow by itself from the chosen step on, or from the first where the last is shown; or stops it.
    pub(crate) fn play(&mut self, on: bool, now: f64) {
        self.next_beat = on.then_some(now + BEAT);
        let last = self.worked().map_or(0, |worked| worked.steps.len()).saturating_sub(1);
        if on && self.at.is_none_or(|at| at >= last) {
            self.choose(Some(0));
        }
    }

    /// Goes on by itself where it plays: in how many seconds it wants to be asked again.
    pub(crate) fn beat(&mut self, now: f64) -> Option<f64> {
        let due = self.next_beat?;
        if now >= due {
            let before = self.at;
            self.choose_by(1);
            self.next_beat = (self.at != before).then_some(now + BEAT);
        }
        self.next_beat.map(|due| (due - now).max(0.01))
    }
}
