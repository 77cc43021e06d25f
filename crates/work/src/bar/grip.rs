//! Where along a bar jaws grip best: on stout, straight, unforged metal near its end, and never on what is fine.
//!
//! All the figures here are common practice, no source: they rank places, and none is a size.

use crate::bar::lengths::Lengths;
use crate::bar::progress::{Progress, Stage};
use crate::bar::state::shape_now;
use crate::job::site::{Site, extents, in_mm2};
use crate::job::task::Task;
use fh_core::metal::Shape;
use fh_core::plan::{Chain, Form};
use std::borrow::Cow;

/// A bar runs between the reins of tongs for no more than so many mm: beyond it they are set from the side.
pub(crate) const REINS: f64 = 150.0;

/// Jaws are about so long, in mm.
const JAWS: f64 = 30.0;

/// How much worse tongs hold that are set from the side.
const FROM_THE_SIDE: f64 = 0.5;

/// How well tongs hold what is bent or twisted: they slip.
const BENT: f64 = 0.2;

/// Metal with less than this share of the section that is struck gives way before it.
const GIVES_WAY: f64 = 0.5;

/// How well a hold carries through a slit: its rods bend one by one, and twist round each other.
const LOOSE: f64 = 0.2;

/// What is worth less than this is gripped only where nothing better stays cold.
const POOR: f64 = 0.2;

/// A hand keeps so far from the heat, in mm.
const FROM_THE_HEAT: f64 = 300.0;

/// A bar as far as it has come, to be gripped somewhere.
pub(crate) struct Bar<'s, 'a> {
    site: &'s Site<'a>,
    progress: &'s Progress,
    lengths: &'s Lengths,
    /// The shape of each part as far as it has come.
    shapes: Cow<'s, [Option<Shape>]>,
    /// The section that is struck, in mm²; 0 where nothing is.
    struck_mm2: f64,
    /// The parts that fall off in this step as waste.
    waste: Vec<usize>,
}

/// The shape of each part as far as it has come.
pub(crate) fn shapes_now(site: &Site<'_>, progress: &Progress, lengths: &Lengths) -> Vec<Option<Shape>> {
    (0..site.flat.len()).map(|at| shape_now(site, progress, at, &lengths.lengths)).collect()
}

/// A length of the bar that stays cold, from its end to the heat.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Cold {
    /// Where the bar ends, in mm.
    pub(crate) end_mm: f64,
    /// Where it gets too hot, in mm.
    pub(crate) hot_mm: f64,
    /// Whether it is held in the hand.
    pub(crate) by_hand: bool,
}

impl Cold {
    /// How long it is, in mm; less than 0 where the heat goes past the end.
    pub(crate) fn length_mm(&self, at_start: bool) -> f64 {
        if at_start { self.hot_mm - self.end_mm } else { self.end_mm - self.hot_mm }
    }

    /// From where to where it can be gripped, in mm.
    fn within(&self) -> [f64; 2] {
        let room = (self.end_mm - self.hot_mm).abs();
        let off = if self.by_hand { FROM_THE_HEAT.min(room / 2.0) } else { 0.0 };
        let near = self.hot_mm + off.copysign(self.end_mm - self.hot_mm);
        [self.end_mm.min(near), self.end_mm.max(near)]
    }
}

/// A place where jaws could grip.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Grip {
    pub(crate) part: usize,
    /// The middle of the jaws, in mm along the bar.
    pub(crate) at_mm: f64,
    /// From side to side and from top to bottom, in mm.
    pub(crate) jaw_mm: [f64; 2],
    /// How good it is, from 0 to 1.
    pub(crate) worth: f64,
    /// How much of the part stays cold, in mm.
    room_mm: f64,
    /// Whether the bar is too long behind it to run between the reins.
    pub(crate) from_the_side: bool,
    /// Whether it is gripped only for want of anything better.
    pub(crate) is_poor: bool,
}

impl<'s, 'a> Bar<'s, 'a> {
    /// As it is before some tasks.
    pub(crate) fn new(site: &'s Site<'a>, progress: &'s Progress, lengths: &'s Lengths, tasks: &[Task]) -> Self {
        Self::shaped(site, progress, lengths, (Cow::Owned(shapes_now(site, progress, lengths)), tasks))
    }

    /// The same, where the shape of each part is known.
    pub(crate) fn shaped(
        site: &'s Site<'a>,
        progress: &'s Progress,
        lengths: &'s Lengths,
        (shapes, tasks): (Cow<'s, [Option<Shape>]>, &[Task]),
    ) -> Self {
        let parts = || tasks.iter().filter_map(|task| task.part);
        let area = |at: usize| Some(in_mm2(shapes.get(at)?.as_ref()?.area_at(0.5)));
        let struck_mm2 = parts().filter_map(area).fold(0.0, f64::max);
        let is_waste = |at: &usize| site.flat.get(*at).is_some_and(|flat| matches!(flat.segment.form, Form::Trim(_)));
        Self { site, progress, lengths, struck_mm2, waste: parts().filter(is_waste).collect(), shapes }
    }

    /// The best place within a cold length; none where nothing is there.
    pub(crate) fn best(&self, cold: Cold) -> Option<Grip> {
        self.best_up_to(cold, f64::INFINITY)
    }

    /// The same, or the first that is worth so much.
    pub(crate) fn best_up_to(&self, cold: Cold, enough: f64) -> Option<Grip> {
        let [low, high] = cold.within();
        // A bar that is held in the hand is held well out, wherever that is: what lies between is the same.
        let near_mm = if cold.end_mm < cold.hot_mm { high } else { low };
        let carries = cold.by_hand.then(|| self.carries(near_mm, f64::INFINITY, cold));
        // Of places alike the one in the longest part is taken, and of those the first.
        let is_better = |next: &Grip, best: &Grip| {
            next.worth > best.worth + 1e-9 || (next.worth > best.worth - 1e-9 && next.room_mm > best.room_mm + 1e-9)
        };
        let mut best: Option<Grip> = None;
        for at in &self.site.chains[0].1 {
            let [start, end] = self.lengths.extent([*at].iter());
            let (from, to) = (start.max(low), end.min(high));
            let places = if to - from > 1e-6 { places(from, to, cold.end_mm) } else { Vec::new() };
            for place in places {
                let least = best.map_or(0.0, |best| best.worth);
                let grip = self.grip(*at, place, [to - from, least], cold, carries);
                best = match (best, grip) {
                    (Some(best), Some(next)) => Some(if is_better(&next, &best) { next } else { best }),
                    (best, next) => best.or(next),
                };
                if best.is_some_and(|best| best.worth >= enough) {
                    return best;
                }
            }
        }
        best
    }

    /// A place in a part of which so much stays cold; none where it is worth less than the best so far.
    fn grip(
        &self,
        at: usize,
        at_mm: f64,
        [room_mm, least_worth]: [f64; 2],
        cold: Cold,
        carries: Option<f64>,
    ) -> Option<Grip> {
        let half = JAWS.min(room_mm) / 2.0;
        let own = self.branch_at(at, at_mm);
        let [wide, thick] = self.section(own, at_mm)?;
        let stock = extents(&self.site.balance.stock);
        let least = |size: [f64; 2]| size[0].min(size[1]);
        let stout = (least([wide, thick]) / least(stock).max(1e-6)).min(1.0);
        let sorted = self.sort(at) * stout;
        let overhang = (at_mm - cold.end_mm).abs();
        let from_the_side = !cold.by_hand && overhang > REINS;
        let reach = if from_the_side { FROM_THE_SIDE * REINS / overhang } else { 1.0 };
        if sorted * reach < least_worth - 1e-9 {
            return None;
        }
        let spread = (stock[0].max(stock[1]) / wide.max(thick).max(1e-6)).min(1.0);
        let ends = [at_mm - half, at_mm + half].map(|place| self.section(own, place).map_or(0.0, least));
        let even = ends[0].min(ends[1]) / ends[0].max(ends[1]).max(1e-6);
        let room = (2.0 * half / JAWS).min(1.0);
        let bent = if self.stage(at).bent { BENT } else { 1.0 };
        let held = if cold.by_hand { 1.0 } else { spread * spread * even * room * bent };
        let is_poor = !cold.by_hand && (sorted * bent < POOR || self.waste.contains(&at));
        let uncarried = sorted * held * reach;
        if uncarried < least_worth - 1e-9 {
            return None;
        }
        let worth = uncarried * carries.unwrap_or_else(|| self.carries(at_mm, wide * thick, cold));
        Some(Grip { part: at, at_mm, jaw_mm: [wide.max(0.1), thick.max(0.1)], worth, room_mm, from_the_side, is_poor })
    }

    fn stage(&self, at: usize) -> Stage {
        self.progress.stages.get(at).copied().unwrap_or_default()
    }

    /// How well a part is gripped for what it is: bar that is still to be forged or was never forged best, what is fine worst.
    fn sort(&self, at: usize) -> f64 {
        let stage = self.stage(at);
        let form = &self.site.flat[at].segment.form;
        let is_raw = !stage.forged && stage.on_the_way().is_none() && !stage.cut && !stage.slit;
        match form {
            _ if self.waste.contains(&at) => 0.05,
            // Bar as it came is all alike, whatever it will be.
            Form::Hold(_) => 1.0,
            Form::Split(_) if stage.opened || stage.aside => 0.05,
            Form::Split(_) if stage.cut => 0.12,
            _ if is_raw => 0.95,
            _ if stage.on_the_way().is_some() => 0.6,
            Form::Flag(_) | Form::Weld(_) | Form::Rivet(_) => 0.12,
            Form::Hole(_) if stage.slit || stage.pierced || !Progress::start_of(self.site, at) => 0.12,
            Form::Tenon(_) | Form::Ball(_) | Form::Cube(_) => 0.12,
            _ if Progress::start_of(self.site, at) => 0.95,
            Form::Peak(_) => 0.4,
            Form::Taper(_) if self.runs_out(at) => 0.35,
            _ => 0.6,
        }
    }

    fn runs_out(&self, at: usize) -> bool {
        let shape = self.site.part(at).and_then(|part| part.balance.shape.as_ref());
        matches!(shape, Some(Shape::Taper { from, to, .. }) if from.is_end() || to.is_end())
    }

    /// How well the metal from a grip to the heat stands the blows: what is much thinner than what is struck gives way.
    fn carries(&self, at_mm: f64, gripped_mm2: f64, cold: Cold) -> f64 {
        if self.struck_mm2 <= 0.0 {
            return 1.0;
        }
        let (low, high) = (at_mm.min(cold.hot_mm), at_mm.max(cold.hot_mm));
        let between = self.site.chains[0].1.iter().filter(|at| {
            let [start, end] = self.lengths.extent([**at].iter());
            end > low && start < high && end - start > 1e-6
        });
        let (mut thin, mut loose) = (gripped_mm2, 1.0);
        for at in between {
            thin = thin.min(self.least_mm2(*at, low, high));
            if self.stage(*at).cut {
                loose = LOOSE;
            }
        }
        (thin / self.struck_mm2 / GIVES_WAY).clamp(0.05, 1.0).powi(2) * loose
    }

    /// The smallest section of a part from one place to another, in mm².
    fn least_mm2(&self, at: usize, low: f64, high: f64) -> f64 {
        let [start, end] = self.lengths.extent([at].iter());
        let (from, to) = (start.max(low), end.min(high));
        let places = [0.0, 0.5, 1.0].map(|share| from + (to - from) * share);
        places.into_iter().filter_map(|place| self.area_mm2(at, place)).fold(f64::INFINITY, f64::min)
    }

    /// The section of a part at a place, in mm²; of a split that is cut that of all its branches together.
    fn area_mm2(&self, at: usize, at_mm: f64) -> Option<f64> {
        if !self.stage(at).cut {
            return self.section(at, at_mm).map(|[wide, thick]| wide * thick);
        }
        let of_it = |chain: &Chain| matches!(chain, Chain::Branch { split, .. } if *split == at);
        let lies = |member: &&usize| {
            let [start, end] = self.lengths.extent([**member].iter());
            (start..=end).contains(&at_mm)
        };
        let branches = self.site.chains.iter().filter(|(chain, _)| of_it(chain));
        let there = branches.filter_map(|(_, members)| members.iter().find(lies));
        there.filter_map(|member| self.area_mm2(*member, at_mm)).reduce(|sum, next| sum + next)
    }

    /// Of a split that is cut the part of its first branch that lies at a place; of other parts the part itself.
    fn branch_at(&self, at: usize, at_mm: f64) -> usize {
        if !self.stage(at).cut {
            return at;
        }
        let of_it = |chain: &Chain| matches!(chain, Chain::Branch { split, .. } if *split == at);
        let lies = |member: &&usize| {
            let [start, end] = self.lengths.extent([**member].iter());
            (start..=end).contains(&at_mm)
        };
        let branches = self.site.chains.iter().filter(|(chain, _)| of_it(chain));
        let there = branches.filter_map(|(_, members)| members.iter().find(lies)).next();
        there.map_or(at, |member| self.branch_at(*member, at_mm))
    }

    /// How wide and how thick a part is at a place along the bar, in mm.
    fn section(&self, at: usize, at_mm: f64) -> Option<[f64; 2]> {
        let shape = self.shapes.get(at)?.as_ref()?;
        let [start, end] = self.lengths.extent([at].iter());
        let share = ((at_mm - start) / (end - start).max(1e-6)).clamp(0.0, 1.0);
        let own = if self.site.part(at)?.balance.reversed { 1.0 - share } else { share };
        Some(shape.extents_at_mm(own, &self.site.raw_section(at)))
    }
}

/// Places for the middle of the jaws from one place to another, and where the reins begin.
fn places(from: f64, to: f64, end_mm: f64) -> Vec<f64> {
    let half = JAWS.min(to - from) / 2.0;
    let (first, last) = (from + half, to - half);
    let reins = if end_mm <= from { end_mm + REINS } else { end_mm - REINS };
    let shares = [0.5, 0.25, 0.75, 0.0, 1.0].map(|share| first + (last - first) * share);
    shares.into_iter().chain(Some(reins).filter(|place| (first..=last).contains(place))).collect()
}
