//! The order of work: choosing and changing its steps, and the smith's tools.

use super::Editor;
use crate::dialogs::{AddStep, Dialog};
use crate::state::{OrderAsk, Tab};
use egui::Context;
use fh_core::edit::{Edit, StepChange};
use fh_core::plan::{Step, Work};
use fh_work::Shop;
use std::time::Duration;

impl Editor {
    /// Works the order out where something shows it and it is not known yet.
    pub(super) fn refresh_order(&mut self) {
        if self.wants_order() {
            // While a size is being dragged the order waits: a long one takes more than a frame.
            if !self.is_dragging() || !self.order.knows(&self.document) {
                self.order.refresh(&self.document);
            }
            if self.settings.order_open || self.anvil.is_some() {
                self.order.refresh_shown(&self.document);
                self.order.refresh_one_heat(&self.document);
                self.order.refresh_ledger(&self.document);
                self.follow_step();
            }
        }
    }

    /// Works out what is found in how the plan is forged, where nothing shows the order; not while anything is dragged.
    pub(super) fn refresh_findings(&mut self, ctx: &Context) {
        if self.wants_order() || self.is_dragging() {
            return;
        }
        let now = ctx.input(|input| input.time);
        if let Some(seconds) = self.order.refresh_at_rest(&self.document, now) {
            ctx.request_repaint_after(Duration::from_secs_f64(seconds));
        }
    }

    fn is_dragging(&self) -> bool {
        self.canvas.is_holding() || self.piece_view.is_holding()
    }

    /// Whether anything shows the order: its list, the view at the anvil, or the findings of the smith's own steps.
    pub(super) fn wants_order(&self) -> bool {
        self.settings.order_open || self.anvil.is_some() || self.document.plan().work.steps.is_some()
    }

    /// The strips show the bar that the chosen step works on.
    fn follow_step(&mut self) {
        let bar = self.order.at().and_then(|at| self.order.worked()?.steps.get(at)?.bar);
        if let Some(bar) = bar.filter(|bar| *bar != self.selection.bar) {
            self.select(bar, None);
        }
    }

    /// Goes on by itself where the steps play.
    pub(super) fn play_on(&mut self, ctx: &Context) {
        let now = ctx.input(|input| input.time);
        if let Some(seconds) = self.order.beat(now) {
            ctx.request_repaint_after(Duration::from_secs_f64(seconds));
        }
    }

    /// Opens the order of work in place of the list of parts, or closes it.
    pub(crate) fn show_order(&mut self, open: bool) {
        if self.steel.is_open() {
            self.show_steel(false);
        }
        self.settings.order_open = open;
        self.keep_settings();
        if !open {
            self.order.play(false, 0.0);
        }
        self.refresh_order();
    }

    /// Opens the order of work at a step.
    pub(super) fn show_step(&mut self, at: Option<usize>) {
        if !self.settings.order_open {
            self.show_order(true);
        }
        if at.is_some() {
            self.order.choose(at);
            self.order.show_tab(Tab::Step);
        }
    }

    /// Chooses the step that stands so many further on.
    pub(crate) fn step_by(&mut self, steps: isize) {
        self.order.play(false, 0.0);
        self.order.choose_by(steps);
    }

    /// Lets the steps play, or stops them.
    pub(crate) fn play_steps(&mut self, now: f64) {
        let plays = self.order.desk().is_some_and(|order| order.plays);
        self.order.play(!plays, now);
    }

    /// Does what was asked for about the order.
    pub(super) fn order_ask(&mut self, ask: OrderAsk) {
        match ask {
            OrderAsk::Choose(at) => self.order.choose(at),
            OrderAsk::ChooseOn(bar, segment) => self.choose_step_on(bar, segment),
            OrderAsk::Change(change) => self.change_steps(change),
            OrderAsk::Add(step) => self.add_step(*step),
            OrderAsk::Propose => {
                self.dialog = None;
                let work = Work { steps: None, ..self.document.plan().work.clone() };
                self.edit(&Edit::SetWork(Box::new(work)));
            }
            OrderAsk::Rules(heats) => {
                let work = Work { heats: *heats, ..self.document.plan().work.clone() };
                self.edit(&Edit::SetWork(Box::new(work)));
            }
            OrderAsk::Log(log) => {
                let work = Work { log, ..self.document.plan().work.clone() };
                self.edit(&Edit::SetWork(Box::new(work)));
            }
            OrderAsk::Own(shop) => self.own(shop),
            OrderAsk::Show(tab) => self.order.show_tab(tab),
        }
    }

    /// Changes the steps. The first change makes the proposal the smith's own order.
    fn change_steps(&mut self, change: StepChange) {
        self.refresh_order();
        let Some(proposed) = self.order.steps() else { return };
        let leads_to = change.leads_to();
        if self.edit(&Edit::ChangeSteps { change, proposed }) {
            self.refresh_order();
            self.order.choose(Some(leads_to));
        }
    }

    /// Changes the chosen step.
    fn change_chosen(&mut self, change: impl FnOnce(usize) -> StepChange) {
        if let Some(at) = self.order.at() {
            self.change_steps(change(at));
        }
    }

    fn add_step(&mut self, step: Step) {
        self.dialog = None;
        let count = self.order.worked().map_or(0, |worked| worked.steps.len());
        let at = self.order.at().map_or(count, |at| at + 1);
        self.change_steps(StepChange::Insert { at, step: Box::new(step) });
    }

    /// Puts a copy of the chosen step after it.
    pub(crate) fn duplicate_step(&mut self) {
        self.change_chosen(StepChange::Duplicate);
    }

    /// Takes the chosen step out; the one after it is chosen then.
    pub(crate) fn remove_step(&mut self) {
        self.change_chosen(StepChange::Remove);
    }

    /// Does the next step in the chosen one.
    pub(crate) fn join_steps(&mut self) {
        self.change_chosen(StepChange::Join);
    }

    /// Makes a step of each thing that the chosen one does.
    pub(crate) fn take_step_apart(&mut self) {
        self.change_chosen(StepChange::TakeApart);
    }

    /// Carries the chosen step so many places on.
    pub(crate) fn carry_step(&mut self, by: isize) {
        self.change_chosen(|from| StepChange::Move { from, to: from.saturating_add_signed(by) });
    }

    /// The next step after the chosen one that works on a segment; from the last one round to the first.
    fn choose_step_on(&mut self, bar: usize, segment: usize) {
        let Some(worked) = self.order.worked() else { return };
        let works = |at: &usize| {
            worked.steps.get(*at).is_some_and(|step| step.bar == Some(bar) && step.parts().contains(&segment))
        };
        let count = worked.steps.len();
        let next = self.order.at().map_or(0, |at| at + 1);
        let found = (next..count).chain(0..next.min(count)).find(works);
        match found {
            Some(at) => self.order.choose(Some(at)),
            None => self.say("No step works on this part alone."),
        }
    }

    /// Asks what a new step does.
    pub(crate) fn ask_step(&mut self) {
        self.refresh_order();
        let chosen = self.order.desk().and_then(|order| order.chosen());
        let (bar, parts) = match chosen {
            Some(step) => (step.bar.unwrap_or(0), step.parts()),
            None => (self.selection.bar, self.selection.segment().into_iter().collect()),
        };
        self.dialog = Some(Dialog::AddStep(AddStep::new(bar, parts)));
    }

    /// Asks whether the smith's own order may go.
    pub(crate) fn ask_proposal(&mut self) {
        self.dialog = Some(Dialog::ProposeAgain);
    }

    fn own(&mut self, mut shop: Shop) {
        if let Err(error) = self.kept.keep_tools(&mut shop) {
            self.said = format!("■ Your tools were not kept: {error}");
        }
        self.order.own(shop);
    }
}
