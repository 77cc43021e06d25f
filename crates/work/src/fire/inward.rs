//! From the end inward: of what is forged toward one end of a bar, what lies farther out is done first.

use crate::job::ends::{tang_shoulder, waits_for_the_cut};
use crate::job::heat_rules::hold_mm;
use crate::job::legs::Held;
use crate::job::site::{Site, in_mm};
use crate::job::task::Task;
use fh_core::plan::{Form, Operation};

/// Where along the bar as it came a step works, seen from the end that it belongs to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Inward {
    /// The end that it belongs to: the nearer one, or that which is not held.
    pub(crate) end: Held,
    /// From where to where it reaches, in mm from that end.
    pub(crate) reach_mm: [f64; 2],
    /// Whether it is forged in turn: what is upset or scarfed has its own time, and so have cuts, twists and bends.
    in_turn: bool,
    /// Whether the bar farther in is long enough to hold by.
    is_held_behind: bool,
}

impl Inward {
    /// Where some tasks work; none of those on the whole bar.
    pub(crate) fn of(site: &Site<'_>, tasks: &[Task]) -> Option<Self> {
        let parts: Vec<usize> = tasks.iter().filter_map(|task| task.part).map(|at| on_the_bar(site, at)).collect();
        let marks = |at: &usize| site.part(*at).map(|part| [part.balance.mark_start, part.balance.mark_end].map(in_mm));
        let hull = |all: [f64; 2], next: [f64; 2]| [all[0].min(next[0]), all[1].max(next[1])];
        let [from, to] = parts.iter().filter_map(marks).reduce(hull)?;
        let [first, last] = site.chains[0].1.iter().filter(|at| is_piece(site, **at)).filter_map(marks).reduce(hull)?;
        let is_nearer_the_datum = (from - first) <= (last - to);
        let end = match held_end(site) {
            Some(held) if parts.iter().any(|at| is_freed(site, *at)) => held,
            Some(Held::Datum) => Held::Far,
            Some(Held::Far) => Held::Datum,
            None if is_nearer_the_datum => Held::Datum,
            None => Held::Far,
        };
        let reach_mm = if end == Held::Datum { [from - first, to - first] } else { [last - to, last - from] };
        let bar = site.chains[0].1.iter().filter_map(marks).reduce(hull)?;
        let behind_mm = if end == Held::Datum { bar[1] - to } else { from - bar[0] };
        let in_turn = tasks.iter().all(|task| is_in_turn(task.operation));
        Some(Self { end, reach_mm, in_turn, is_held_behind: behind_mm >= hold_mm(site.plan) })
    }

    /// Whether another step is forged before this one where nothing stands against it: it lies farther out toward the same end, and is not
    /// the only thing to hold by.
    pub(crate) fn waits_for(&self, other: &Self) -> bool {
        /// Marks so near to each other are one, in mm.
        const ONE: f64 = 0.01;
        let is_farther_out = other.reach_mm[1] <= self.reach_mm[0] + ONE;
        self.is_held_behind && self.in_turn && other.in_turn && self.end == other.end && is_farther_out
    }
}

/// The part of the bar itself that a part lies in.
fn on_the_bar(site: &Site<'_>, at: usize) -> usize {
    std::iter::successors(Some(at), |at| site.split_of(*at).map(|(split, _)| split)).last().unwrap_or(at)
}

fn is_piece(site: &Site<'_>, at: usize) -> bool {
    site.flat[at].segment.form.is_finished()
}

/// The end at which the rest of the bar is kept to hold by; none where there is none, or one at both.
fn held_end(site: &Site<'_>) -> Option<Held> {
    let is_hold = |at: &usize| matches!(site.flat[*at].segment.form, Form::Hold(_));
    let members = &site.chains[0].1;
    match [members.first(), members.last()].map(|at| at.is_some_and(is_hold)) {
        [true, false] => Some(Held::Datum),
        [false, true] => Some(Held::Far),
        _ => None,
    }
}

/// Whether a part is forged once the rest of the bar is off.
fn is_freed(site: &Site<'_>, at: usize) -> bool {
    waits_for_the_cut(site, at) || tang_shoulder(site, at).is_some()
}

fn is_in_turn(operation: Operation) -> bool {
    use Operation as O;
    matches!(operation, O::Isolate | O::SetDown | O::Split | O::BendAside | O::Punch | O::Drift)
        || (operation.is_shaping() && !matches!(operation, O::Upset | O::Scarf))
}
