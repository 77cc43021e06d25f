//! Random edits of a plan: refused they change nothing, taken they can be taken back, and what is reached reads back.

use crate::corpus::Corpus;
use crate::plans::{balances, reads_back};
use crate::random::Random;
use crate::run::Run;
use crate::wishes::Wishes;
use crate::{Fault, Round};
use fh_core::balance::balance;
use fh_core::edit::{BoundaryMove, BoundaryTarget, Edit, History};
use fh_core::file;
use fh_core::plan::{Chain, Plan};
use fh_measure::WrittenLength;
use std::sync::Arc;
use uom::si::length::millimeter;

/// The most edits in a round.
const MOST: usize = 24;
/// Larger plans end a round: they take long and show nothing new.
const LARGE: usize = 150;

/// One round of edits.
pub(crate) fn round(corpus: &Corpus, number: u64) -> Round {
    let mut wishes = Wishes { corpus, random: Random::new(number) };
    let Some(start) = wishes.random.of(&corpus.plans).cloned() else { return Round::default() };
    let mut walk = Walk {
        history: History::new(start.clone()),
        steps: vec![Arc::new(start)],
        at: 0,
        run: Run { faults: Vec::new(), tried: 0 },
    };
    for _ in 0..=wishes.random.below(MOST) {
        if wishes.random.one_in(5) {
            walk.back_or_forth(wishes.random.one_in(2));
        } else if let Some(edit) = wishes.edit(walk.history.plan()) {
            walk.edit(&edit, wishes.random.one_in(4));
        }
        let large = walk.history.plan().bars.iter().map(|bar| bar.flat().len()).sum::<usize>() > LARGE;
        if large || !walk.run.faults.is_empty() {
            break;
        }
    }
    walk.all_the_way_back();
    Round { faults: walk.run.faults, input: Vec::new(), tried: walk.run.tried }
}

/// A history, and what it should hold.
struct Walk {
    history: History,
    steps: Vec<Arc<Plan>>,
    at: usize,
    run: Run,
}

impl Walk {
    fn edit(&mut self, edit: &Edit, is_gesture: bool) {
        let before = self.history.snapshot();
        let words = || format!("{edit:?}\non {}", file::write(&before));
        if is_gesture {
            self.history.begin();
        }
        let history = &mut self.history;
        let Some(done) = self.run.stage("an edit", || history.apply(edit)) else {
            self.run.faults.iter_mut().for_each(|fault| fault.words.push_str(&words()));
            return;
        };
        match done {
            Err(refusal) => {
                self.run.tame("a refusal", &refusal.to_string());
                if *self.history.plan() != *before {
                    self.run.wrong("a refused edit changed the plan", words());
                }
            }
            Ok(_) => {
                let reached = self.history.snapshot();
                reads_back(&mut self.run, &reached);
                if let Some(balance) = self.run.stage("the balance", || balance(&reached)) {
                    balances(&mut self.run, &reached, &balance);
                }
                if let Edit::MoveBoundary(wish) = edit {
                    self.has_come(wish, words());
                }
            }
        }
        if is_gesture {
            self.history.commit();
        }
        if *self.history.plan() != *before {
            self.steps.truncate(self.at + 1);
            self.steps.push(self.history.snapshot());
            self.at += 1;
        }
    }

    /// A boundary that was moved has come to where it was wished.
    fn has_come(&mut self, wish: &BoundaryMove, words: String) {
        let plan = self.history.snapshot();
        let Some(balance) = self.run.stage("the balance", || balance(&plan)) else { return };
        let Some(segment) = balance.bars.get(wish.bar).and_then(|bar| bar.segments.get(wish.segment)) else { return };
        let fixed = plan.segment(wish.bar, wish.segment).and_then(|part| part.ends_at.as_ref());
        let (to, come) = match wish.to {
            // What its block is short of lies over a mark that is fixed.
            BoundaryTarget::Mark(to) => (to, fixed.map_or(segment.mark_end, WrittenLength::length)),
            // The end of a branch hangs where its split puts it.
            BoundaryTarget::Forged(_) if segment.chain != Chain::Bar => return,
            BoundaryTarget::Forged(to) => (to, segment.forged_start + segment.forged_length),
        };
        let stretch = (segment.forged_length / segment.stock_length).value;
        let stretch = if stretch.is_finite() { stretch.max(1.0) } else { 1.0 };
        let [to, come] = [to, come].map(|length| length.get::<millimeter>());
        if (to - come).abs() > 0.02 * stretch + 1e-8 * to.abs() {
            let what = "a boundary came elsewhere than it was wished";
            self.run.faults.push(Fault::new(what, format!("wished {to}, came to {come}\n{words}")));
        }
    }

    fn back_or_forth(&mut self, back: bool) {
        self.run.tried += 1;
        let (did, can) = if back {
            (self.history.undo(), self.at > 0)
        } else {
            (self.history.redo(), self.at + 1 < self.steps.len())
        };
        if did != can {
            self.run.wrong("undo or redo answers wrongly", format!("{did} at {} of {}", self.at, self.steps.len()));
        }
        if did {
            self.at = if back { self.at.saturating_sub(1) } else { self.at + 1 };
        }
        self.is_where_it_should_be();
    }

    fn is_where_it_should_be(&mut self) {
        let should = self.steps.get(self.at);
        if should.is_none_or(|should| **should != *self.history.plan()) {
            self.run.wrong("undo or redo does not come to the plan that was", file::write(self.history.plan()));
        }
    }

    fn all_the_way_back(&mut self) {
        while self.history.undo() {}
        self.at = 0;
        self.is_where_it_should_be();
        while self.history.redo() {}
        self.at = self.steps.len().saturating_sub(1);
        self.is_where_it_should_be();
    }
}
