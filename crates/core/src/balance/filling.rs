//! The factor at which the giving parts of a block fill it; where they cannot, as far as they can give.

use super::gave::note_what_gave;
use super::solve::{solve, solve_between};
use super::stretch::{Done, Giver, Step, Stretch};
use super::walk::Give;
use super::{GaveFor, Settled, scaled};
use crate::metal::{Outline, Shape};
use crate::plan::Gives;

/// So small a factor leaves nothing.
const NOTHING: f64 = 1e-12;
/// A larger factor is not tried.
const MOST: f64 = 1e9;
/// How often the range of a factor is halved to find where a size can give no further.
const HALVINGS: usize = 80;
/// How close a block is filled, as a share of it.
const FILLED: f64 = 1e-9;

/// A block with parts that give, to be filled.
pub(super) struct Filling<'f, 'w, 'a> {
    block: &'f Stretch<'w, 'a>,
    givers: &'f [Giver],
    target: f64,
    /// The bar that those take which do not give, in mm; none where a section gives, which others may have from it.
    others: Option<f64>,
    /// Its places as they are written, where a section gives.
    steps: Vec<Step>,
}

impl<'f, 'w, 'a> Filling<'f, 'w, 'a> {
    /// A block that is to take `target` mm of bar; `written` is it as its parts are written.
    pub(super) fn new(block: &'f Stretch<'w, 'a>, givers: &'f [Giver], written: &Done, target: f64) -> Self {
        // A length that gives leaves every section as it is, so the other segments keep their lengths of bar.
        let others = givers.iter().all(|giver| giver.gives == Gives::Length).then(|| {
            let own = |giver: &Giver| {
                let settled = written.settled.get(giver.at - block.first);
                settled.map_or(0.0, |settled| block.walk.stock_length(block.flat[giver.at].segment, settled))
            };
            block.walk.total_of(block.segments, &written.settled) - givers.iter().map(own).sum::<f64>()
        });
        let steps = if others.is_none() { block.steps(written) } else { Vec::new() };
        Self { block, givers, target, others, steps }
    }

    /// The block filled, or as near to it as its parts give.
    pub(super) fn done(&self, written: Done) -> Done {
        let found = self.factor();
        if let Some(factor) = found.filter(|factor| self.is_sound(*factor)) {
            let mut done = self.at(factor, written);
            self.note(&mut done, GaveFor::Block);
            done.fill.factor = Some(factor);
            return done;
        }
        let Some(limit) = self.limit(found) else { return written };
        let mut done = self.at(limit, written);
        done.fill.limit = Some(limit);
        self.note(&mut done, GaveFor::BlockInPart);
        for giver in self.givers.iter().filter(|_| limit <= 0.0) {
            // Nothing is left of it: that is told of the block.
            done.settled[giver.at - self.block.first].trouble = None;
        }
        done
    }

    fn note(&self, done: &mut Done, reason: GaveFor) {
        for giver in self.givers {
            note_what_gave(&mut done.settled[giver.at - self.block.first], giver.gives, reason);
        }
    }

    /// The factor at which the block is filled, whatever becomes of its parts.
    fn factor(&self) -> Option<f64> {
        match self.others {
            Some(others) if self.target > others => {
                let rest = self.target - others;
                let guess = rest / self.own(1.0);
                solve(|factor| self.own(factor), rest, if guess.is_finite() && guess > 0.0 { guess } else { 1.0 })
            }
            Some(_) => None,
            None => solve(|factor| self.needs(factor), self.target, 1.0),
        }
        .filter(|factor| (self.needs(*factor) - self.target).abs() <= FILLED * self.target)
        .or_else(|| self.within_limits())
    }

    /// The factor where one was missed because a size could not be had on the way to it.
    fn within_limits(&self) -> Option<f64> {
        let limit = self.limit(None).filter(|limit| *limit > 0.0 && *limit < MOST)?;
        let range = if limit < 1.0 { (limit, 1.0) } else { (1.0, limit) };
        solve_between(|factor| self.needs(factor), self.target, range)
    }

    /// How far the parts can give toward filling the block: a factor, 0 where nothing need be left of them; none where they
    /// cannot give at all.
    fn limit(&self, found: Option<f64>) -> Option<f64> {
        if !self.is_sound(1.0) {
            return None;
        }
        let is_too_much = self.needs(1.0) > self.target;
        let mut beyond = found.unwrap_or(if is_too_much { NOTHING } else { MOST });
        if self.is_sound(beyond) {
            return is_too_much.then_some(0.0);
        }
        let mut sound: f64 = 1.0;
        for _ in 0..HALVINGS {
            let middle = (sound * beyond).sqrt();
            if self.is_sound(middle) {
                sound = middle;
            } else {
                beyond = middle;
            }
        }
        Some(sound)
    }

    /// Whether every giving part can be had at a factor.
    fn is_sound(&self, factor: f64) -> bool {
        self.givers.iter().all(|giver| {
            let settled = scaled(&giver.draft, giver.gives, factor);
            settled.trouble.is_none() && settled.shape.as_ref().is_some_and(|shape| !is_wider_than_long(shape))
        })
    }

    /// The bar that the giving parts take at a factor, in mm, where only lengths give.
    fn own(&self, factor: f64) -> f64 {
        self.givers.iter().map(|giver| self.stock_length(giver, &scaled(&giver.draft, giver.gives, factor))).sum()
    }

    fn stock_length(&self, giver: &Giver, settled: &Settled) -> f64 {
        self.block.walk.stock_length(self.block.flat[giver.at].segment, settled)
    }

    /// The bar that the whole block takes at a factor, in mm.
    fn needs(&self, factor: f64) -> f64 {
        match self.others {
            Some(others) => others + self.own(factor),
            None => self.block.needs(&self.steps, &self.give(factor)),
        }
    }

    fn give(&self, factor: f64) -> Vec<Give> {
        self.givers.iter().map(|giver| (giver.at, giver.gives, factor)).collect()
    }

    /// Whether more follows for a part than its sizes: what it grows to, what it is on the way.
    fn has_more(&self, giver: &Giver) -> bool {
        let segment = self.block.flat[giver.at].segment;
        !segment.via.is_empty() || segment.form.grown().is_some()
    }

    /// The block with its giving parts at a factor.
    fn at(&self, factor: f64, written: Done) -> Done {
        let fill = written.fill.clone();
        let is_more = |giver: &Giver| !giver.is_of_bar || self.has_more(giver);
        if self.others.is_none() || self.givers.iter().any(is_more) {
            return Done { fill, ..self.block.settle(&self.give(factor), &[]) };
        }
        let mut done = written;
        for giver in self.givers {
            let place = &mut done.settled[giver.at - self.block.first];
            *place = Settled { reversed: place.reversed, ..scaled(&giver.draft, giver.gives, factor) };
        }
        done
    }
}

/// A leaf has to be as long as it is wide: shorter, its arcs are more than half circles.
fn is_wider_than_long(shape: &Shape) -> bool {
    let gives = matches!(shape, Shape::Flag { .. }).then(|| shape.giving_outline().map(Outline::bare)).flatten();
    matches!(gives, Some(Outline::Leaf { length, width }) if width > length)
}
