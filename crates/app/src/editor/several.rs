//! What happens to several parts at once: each is one step that can be undone.

use super::Editor;
use crate::dialogs::{Dialog, ScaleParts};
use crate::state::{Focus, Side};
use fh_core::edit::Edit;
use fh_core::plan::{Plan, Segment};
use fh_measure::{MeasureError, counted};

impl Editor {
    /// The selected parts by their numbers, in their order.
    pub(super) fn chosen(&self) -> Vec<usize> {
        let mut all: Vec<usize> = self.selection.segment().into_iter().chain(self.also.iter().copied()).collect();
        all.sort_unstable();
        all.dedup();
        all
    }

    /// Whether more than one part is selected.
    pub(super) fn has_several(&self) -> bool {
        self.selection.segment().is_some() && !self.also.is_empty()
    }

    /// Selects one more part of the shown bar, or one less; with `run` all from the selected one to it. Parts of one chain are
    /// selected together.
    pub(super) fn extend(&mut self, to: usize, run: bool) {
        let bar = self.document.plan().bars.get(self.selection.bar);
        let Some(focus) = self.selection.segment() else { return self.select_segment(to) };
        let Some((bar, (chain, from))) = bar.and_then(|bar| Some((bar, bar.place_of(focus)?))) else { return };
        let Some((_, place)) = bar.place_of(to).filter(|(other, _)| *other == chain) else {
            return self.say("Parts of the bar, or of one branch, are selected together.");
        };
        if run {
            let places = from.min(place)..=from.max(place);
            self.also = places.filter_map(|place| bar.number_of(chain, place)).filter(|at| *at != focus).collect();
        } else if to == focus {
            let Some(other) = self.also.pop() else { return };
            self.selection.focus = Focus::Segment(other);
        } else if let Some(at) = self.also.iter().position(|also| *also == to) {
            self.also.remove(at);
        } else {
            self.also.push(to);
        }
        let count = self.chosen().len();
        if count > 1 {
            self.say(format!("{count} parts are selected: move, copy, keep, scale or remove them together."));
        }
    }

    /// Keeps only parts that are there, of the chain of the selected one.
    pub(super) fn settle_also(&mut self) {
        let bar = self.document.plan().bars.get(self.selection.bar);
        let chain_of = |at: usize| Some(bar?.place_of(at)?.0);
        let focus = self.selection.segment();
        let chain = focus.and_then(chain_of);
        self.also.retain(|at| chain.is_some() && Some(*at) != focus && chain_of(*at) == chain);
    }

    /// The selected parts as they are written.
    pub(super) fn chosen_segments(&self) -> Vec<Segment> {
        let plan = self.document.plan();
        self.chosen().into_iter().filter_map(|at| plan.segment(self.selection.bar, at)).cloned().collect()
    }

    /// Takes the selected parts out.
    pub(super) fn remove_several(&mut self) {
        let (bar, chosen) = (self.selection.bar, self.chosen());
        let removed = chosen.iter().rev().map(|at| Edit::RemoveSegment { bar, at: *at }).collect();
        self.also.clear();
        if self.edit(&Edit::Several(removed)) {
            self.select_segment(chosen.first().copied().unwrap_or_default());
            self.say(format!("{} removed. Undo brings them back.", counted(chosen.len(), "part")));
        }
    }

    /// Puts copies of the selected parts after the last of them.
    pub(super) fn duplicate_several(&mut self) {
        let (segments, chosen) = (self.chosen_segments(), self.chosen());
        self.also.clear();
        if let Some(last) = chosen.last() {
            self.selection.focus = Focus::Segment(*last);
            self.insert_motif(segments, Side::After);
        }
    }

    /// Moves the selected parts one place towards the datum end, or away from it; they stay selected.
    pub(super) fn move_several(&mut self, up: bool) {
        let bar = self.selection.bar;
        let (mut plan, mut chosen) = (self.document.plan().clone(), self.chosen());
        if !up {
            chosen.reverse();
        }
        let (mut edits, mut moved) = (Vec::new(), Vec::new());
        for at in &chosen {
            let Some((edit, to)) = moved_by_one(&plan, bar, *at, up) else { return };
            let Ok((next, _)) = edit.applied(&plan) else { return };
            plan = next;
            moved.push(to);
            edits.push(edit);
        }
        let focus = self.selection.segment().and_then(|focus| chosen.iter().position(|at| *at == focus));
        if self.edit(&Edit::Several(edits))
            && let Some(focus) = focus.and_then(|place| moved.get(place).copied())
        {
            self.selection.focus = Focus::Segment(focus);
            self.also = moved.into_iter().filter(|at| *at != focus).collect();
        }
    }

    /// Asks how many times as large the selected parts are to be.
    pub(super) fn ask_scale(&mut self) {
        self.dialog = Some(Dialog::ScaleParts(ScaleParts::new(self.chosen().len())));
    }

    /// Makes the selected parts so many times as large: every length that is written in them.
    pub(super) fn scale_parts(&mut self, factor: f64) {
        let (bar, plan) = (self.selection.bar, self.document.plan());
        let scaled: Result<Vec<Edit>, MeasureError> = self
            .chosen()
            .into_iter()
            .filter_map(|at| Some((at, plan.segment(bar, at)?)))
            .map(|(at, segment)| Ok(Edit::ReplaceSegment { bar, at, segment: Box::new(segment.scaled(factor)?) }))
            .collect();
        self.dialog = None;
        match scaled {
            Ok(edits) => {
                self.edit(&Edit::Several(edits));
            }
            Err(error) => self.say(format!("■ Not done: {error}")),
        }
    }
}

/// The edit that moves a part by one place of its chain, and its number then; none where it is at the end.
fn moved_by_one(plan: &Plan, bar: usize, at: usize, up: bool) -> Option<(Edit, usize)> {
    let of = plan.bars.get(bar)?;
    let (chain, place) = of.place_of(at)?;
    let other = if up { place.checked_sub(1)? } else { place + 1 };
    let to = of.number_of(chain, other).filter(|_| other < of.chain(chain).map_or(0, Vec::len))?;
    let edit = Edit::MoveSegment { bar, from: at, to };
    let (next, _) = edit.applied(plan).ok()?;
    let number = next.bars.get(bar)?.number_of(chain, other)?;
    Some((edit, number))
}
