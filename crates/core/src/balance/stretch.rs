//! The parts of one block, settled from where the walk stands before them.

use super::block::Fill;
use super::walk::{Give, Pass, Stand};
use super::{Draft, Settled, Trouble, Walk};
use crate::forms::Surroundings;
use crate::plan::{Chain, Flat, Form, Gives, Segment};
use std::ops::Range;

/// A segment that gives, and its sizes as they are written.
pub(super) struct Giver {
    /// The segment, counted through the bar.
    pub(super) at: usize,
    pub(super) gives: Gives,
    pub(super) draft: Draft,
    /// Whether it lies on the bar itself, not in a branch.
    pub(super) is_of_bar: bool,
}

/// The parts of one block, and where the walk stands before them.
pub(super) struct Stretch<'w, 'a> {
    pub(super) walk: &'w Walk<'a>,
    /// Every segment, counted through the bar.
    pub(super) flat: &'w [Flat<'a>],
    pub(super) places: Range<usize>,
    pub(super) segments: &'a [Segment],
    /// The number of its first segment, counted through the bar.
    pub(super) first: usize,
    pub(super) stand: Stand,
    /// A size of one of its segments that is multiplied as it is written.
    pub(super) give: Option<Give>,
}

/// A place of a block as it is written.
pub(super) struct Step {
    /// The place, counted along the bar itself.
    place: usize,
    /// Its segments, counted through the bar.
    own: Range<usize>,
    before: Stand,
    after: Stand,
    /// The bar that it takes, in mm.
    long: f64,
}

/// A block settled.
pub(super) struct Done {
    pub(super) settled: Vec<Settled>,
    pub(super) drafts: Vec<Draft>,
    pub(super) stand: Stand,
    pub(super) fill: Fill,
}

impl Stretch<'_, '_> {
    /// The block with these sizes multiplied, besides the one that is multiplied as it is written; with the numbers of the
    /// wanted ones.
    pub(super) fn settle(&self, give: &[Give], wanted: &[usize]) -> Done {
        let all = self.with_own(give);
        let mut pass = Pass::new(self.first, &all, wanted);
        let stand = self.walk.walk_chain(&self.walk.bar.segments, self.places.clone(), self.stand, &mut pass);
        Done { settled: pass.all, drafts: pass.drafts, stand, fill: Fill::default() }
    }

    /// The size that is multiplied as it is written comes before the others of its segment.
    fn with_own(&self, give: &[Give]) -> Vec<Give> {
        let mut all = give.to_vec();
        if let Some(own) = self.give {
            all.insert(all.partition_point(|other| other.0 < own.0), own);
        }
        all
    }

    /// Its places one after the other, as they are written.
    pub(super) fn steps(&self, written: &Done) -> Vec<Step> {
        let (mut stand, mut at) = (self.stand, 0);
        let step = |(place, segment): (usize, &Segment)| {
            let settled = written.settled.get(at)?;
            let (before, own) = (stand, self.first + at..self.first + at + segment.count());
            stand = stand.after(segment, settled);
            at += segment.count();
            Some(Step { place, own, before, after: stand, long: self.walk.stock_length(segment, settled) })
        };
        self.places.clone().zip(self.segments).map_while(step).collect()
    }

    /// The bar that it takes in mm with these sizes multiplied: only what gives, and what finds another section before it than as
    /// it is written, is settled again.
    pub(super) fn needs(&self, steps: &[Step], give: &[Give]) -> f64 {
        let all = self.with_own(give);
        let (mut stand, mut sum) = (self.stand, 0.0);
        for step in steps {
            let is_given = give.iter().any(|give| step.own.contains(&give.0));
            if !is_given && stand.around.before == step.before.around.before {
                (stand, sum) = (step.after, sum + step.long);
                continue;
            }
            let mut pass = Pass::new(step.own.start, &all, &[]);
            stand = self.walk.walk_chain(&self.walk.bar.segments, step.place..step.place + 1, stand, &mut pass);
            let segment = self.walk.bar.segments.get(step.place).zip(pass.all.first());
            sum += segment.map_or(0.0, |(segment, settled)| self.walk.stock_length(segment, settled));
        }
        sum
    }

    /// What one of its segments finds, after all before it.
    pub(super) fn surroundings(&self, index: usize, fill: &Fill) -> Option<Surroundings> {
        let giving = |at: usize| self.flat.get(at).map_or(Gives::Nothing, |it| it.segment.giving());
        let by = fill.factor.or(fill.limit);
        let give: Vec<Give> = by.iter().flat_map(|by| fill.gives.iter().map(|at| (*at, giving(*at), *by))).collect();
        let all = self.with_own(&give);
        let mut pass = Pass::seeking(self.first, &all, index);
        self.walk.walk_chain(&self.walk.bar.segments, self.places.clone(), self.stand, &mut pass);
        pass.found()
    }

    /// The segments that no length is written for, and that may get longer.
    pub(super) fn without_length(&self, written: &Done) -> Vec<usize> {
        let lacks = |settled: &Settled| settled.trouble == Some(Trouble::NoLength);
        let may = |at: usize| self.flat.get(at).is_some_and(|it| it.segment.giving() == Gives::Length);
        let all = written.settled.iter().enumerate().map(|(place, settled)| (self.first + place, settled));
        all.filter(|(at, settled)| lacks(settled) && may(*at)).map(|(at, _)| at).collect()
    }

    /// The block with the length of its slit as the other parts leave it; none where no slit with a written cut gives in it, or there
    /// is no room for one.
    pub(super) fn filled_by_slit(&self, target: f64) -> Option<Done> {
        let own = self.first..self.first + self.segments.iter().map(Segment::count).sum::<usize>();
        let gives = |at: &usize| {
            self.flat.get(*at).is_some_and(|it| {
                let is_cut = matches!(&it.segment.form, Form::Split(split) if split.cut.is_some());
                it.chain == Chain::Bar && is_cut && it.segment.giving() == Gives::Length
            })
        };
        let at = own.into_iter().find(gives)?;
        let with = |slit: f64| {
            let done = self.settle(&[(at, Gives::Length, slit)], &[]);
            (self.walk.total_of(self.segments, &done.settled), done)
        };
        // All but the slit stays as it is, so that one trial tells how much.
        let slit = target - (with(target).0 - target);
        let (takes, mut done) = (slit > 0.0).then(|| with(slit))?;
        if (takes - target).abs() > 1e-9 * target {
            return None;
        }
        done.fill = Fill { gives: vec![at], factor: Some(slit), limit: None };
        Some(done)
    }

    /// Those that are asked and can give.
    pub(super) fn givers(&self, asked: &[usize], written: &mut Done, cannot: &mut Vec<usize>) -> Vec<Giver> {
        let mut givers = Vec::with_capacity(asked.len());
        for (at, draft) in asked.iter().zip(std::mem::take(&mut written.drafts)) {
            let Some(flat) = self.flat.get(*at) else { continue };
            let draft = match self.give {
                Some((own, gives, by)) if own == *at => draft.scaled(gives, by).unwrap_or(draft),
                _ => draft,
            };
            let gives = flat.segment.giving();
            match draft.scaled(gives, 1.0).map(|draft| draft.settle().trouble) {
                Ok(None) => givers.push(Giver { at: *at, gives, draft, is_of_bar: flat.chain == Chain::Bar }),
                // What is not settled by itself says so elsewhere.
                Ok(Some(_)) => {}
                Err(_) => cannot.push(*at),
            }
        }
        givers
    }
}
