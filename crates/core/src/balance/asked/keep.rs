//! The parts of a bar that keep its asked sizes.

use super::SizeMissed;
use super::newton::{solve_several, without_effect};
use super::one::{Found, solve_one};
use super::trial::{Keeper, Trial};
use super::wanted::Wanted;
use crate::balance::bar::settle_to_fit;
use crate::balance::walk::Give;
use crate::balance::{Draft, Settled, Walk};
use crate::metal::{in_mm, mm};
use crate::plan::Gives;

/// What was found for one asked size that a part is to keep.
pub(crate) struct Kept {
    /// The size, by its place in the plan.
    pub(super) size: usize,
    /// The part that keeps it, and by what factor on which of its sizes.
    pub(super) give: Option<Give>,
    /// The same factor.
    pub(super) factor: Option<f64>,
    /// Why it is not kept.
    pub(super) missed: Option<SizeMissed>,
}

/// What is asked of a part.
struct Asked {
    size: usize,
    wanted: Wanted,
    keeper: Keeper,
}

/// What the parts of a bar give so that its asked sizes are kept. Nothing is worked out where none is asked to.
pub(crate) fn keep(walk: &Walk<'_>, index: usize) -> Vec<Kept> {
    if walk.plan.sizes.iter().all(|size| size.kept_by.is_none()) {
        return Vec::new();
    }
    let (asked, mut kept) = asked(walk, index);
    if asked.is_empty() {
        return kept;
    }
    let (keepers, wanted): (Vec<Keeper>, Vec<&Wanted>) = asked.iter().map(|it| (it.keeper, &it.wanted)).unzip();
    let all = Trial { walk, keepers: &keepers, wanted: &wanted };
    let idle = if asked.len() > 1 { without_effect(&all) } else { vec![false] };
    let (idle, asked): (Vec<_>, Vec<_>) = asked.into_iter().zip(idle).partition(|(_, idle)| *idle);
    kept.extend(idle.iter().map(|(asked, _)| Kept::missed(asked.size, SizeMissed::NoEffect)));
    let asked: Vec<Asked> = asked.into_iter().map(|(asked, _)| asked).collect();
    let (keepers, wanted): (Vec<Keeper>, Vec<&Wanted>) = asked.iter().map(|it| (it.keeper, &it.wanted)).unzip();
    let trial = Trial { walk, keepers: &keepers, wanted: &wanted };
    match asked.as_slice() {
        [] => {}
        [only] => kept.push(only.one(&trial)),
        several => match solve_several(&trial) {
            Ok(sizes) => kept.extend(several.iter().zip(sizes).map(|(asked, size)| asked.at(size))),
            Err(nearest) => kept.extend(several.iter().enumerate().map(|(index, asked)| {
                let nearest = nearest.get(index).map(|nearest| SizeMissed::OutOfReach { nearest: mm(*nearest) });
                Kept::missed(asked.size, nearest.unwrap_or(SizeMissed::NotSettled))
            })),
        },
    }
    kept
}

/// The sizes that give, in the order of their segments.
pub(crate) fn gives(kept: &[Kept]) -> Vec<Give> {
    let mut gives: Vec<Give> = kept.iter().filter_map(|kept| kept.give).collect();
    gives.sort_unstable_by_key(|give| give.0);
    gives
}

impl Kept {
    fn missed(size: usize, missed: SizeMissed) -> Self {
        Self { size, give: None, factor: None, missed: Some(missed) }
    }
}

impl Asked {
    fn at(&self, size: f64) -> Kept {
        let factor = size / self.keeper.written;
        let give = (self.keeper.part, self.keeper.gives, factor);
        Kept { size: self.size, give: Some(give), factor: Some(factor), missed: None }
    }

    fn one(&self, trial: &Trial<'_, '_>) -> Kept {
        match solve_one(trial, self.wanted.goal) {
            Found::At(size) => self.at(size),
            Found::Nearest(nearest) => Kept::missed(self.size, SizeMissed::OutOfReach { nearest: mm(nearest) }),
            Found::NoEffect => Kept::missed(self.size, SizeMissed::NoEffect),
            Found::Nothing => Kept::missed(self.size, SizeMissed::NotSettled),
        }
    }
}

/// The sizes of a bar that a part of it is to keep, and those that no part can.
fn asked(walk: &Walk<'_>, index: usize) -> (Vec<Asked>, Vec<Kept>) {
    let (settled, fills) = settle_to_fit(walk, index, &mut Vec::new());
    let (mut asked, mut kept): (Vec<Asked>, Vec<Kept>) = (Vec::new(), Vec::new());
    for (size, of) in walk.plan.sizes.iter().enumerate().filter(|(_, size)| size.kept_by.is_some()) {
        let Ok(wanted) = Wanted::new(walk.plan, of) else { continue };
        let Some(part) = wanted.keeper.filter(|_| wanted.bar == index) else { continue };
        let missed = if asked.iter().any(|other| other.keeper.part == part) {
            Some(SizeMissed::KeepsAnother)
        } else if fills.iter().any(|fill| fill.gives.contains(&part)) {
            Some(SizeMissed::FillsBlock)
        } else {
            None
        };
        match (missed, keeper(walk, part, settled.get(part))) {
            (Some(missed), _) => kept.push(Kept::missed(size, missed)),
            (None, None) => kept.push(Kept::missed(size, SizeMissed::Holds)),
            (None, Some(keeper)) => asked.push(Asked { size, wanted, keeper }),
        }
    }
    (asked, kept)
}

/// A part that can give; none where it holds.
fn keeper(walk: &Walk<'_>, part: usize, settled: Option<&Settled>) -> Option<Keeper> {
    let segment = walk.bar.segment(part)?;
    let gives = segment.giving();
    Draft::new(segment, walk.surroundings(part)).scaled(gives, 1.0).ok()?;
    let long = settled?.shape.as_ref().map(|shape| in_mm(shape.length())).filter(|long| *long > 0.0);
    let (now, written) = match (gives, long) {
        (Gives::Nothing, _) => return None,
        (Gives::Length, Some(long)) => (long, long),
        // Where no length is written the factor counts millimetres.
        (Gives::Length, None) => (walk.plan.sizes.iter().map(|size| size.size.mm()).fold(1.0, f64::max), 1.0),
        _ => (1.0, 1.0),
    };
    Some(Keeper { part, gives, now, written })
}
