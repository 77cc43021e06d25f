//! Heats by plain rules: what one heated zone covers and one working time holds.

use crate::bar::lengths::Lengths;
use crate::bar::spots::{Spot, reach, spots};
use crate::job::heat_rules;
use crate::job::part::is_thin;
use crate::job::site::Site;
use crate::job::task::{Task, is_hot, least_heats};
use fh_core::plan::{HeatWish, Operation, Plan};

/// What a step asks of a heat.
pub(crate) struct Load {
    /// The parts that are worked; the whole bar where it is empty.
    pub(crate) parts: Vec<usize>,
    /// What of them has to be hot.
    pub(crate) spots: Vec<Spot>,
    /// In no fewer heats than so many it is done, however short they are.
    pub(crate) least: usize,
    /// How long it takes, in minutes.
    pub(crate) minutes: f64,
    /// How long one heat can be worked, in minutes.
    pub(crate) heat_minutes: f64,
    /// Whether it is done hot.
    pub(crate) hot: bool,
    /// Whether the bar cools down while it is done.
    pub(crate) cools: bool,
    /// Whether the heat is kept to its parts alone: what is beside them is cooled.
    pub(crate) alone: bool,
    /// Whether the bar beside its parts has to be hot too.
    pub(crate) beside: bool,
    /// Whether it has a heat of its own: it asks for what other steps keep out of the fire.
    pub(crate) apart: bool,
}

impl Load {
    /// Of some tasks that take so many minutes, in heats of so many.
    pub(crate) fn new(site: &Site<'_>, tasks: &[Task], minutes: f64, heat_minutes: f64) -> Self {
        let hot = tasks.iter().any(|task| is_hot(site, task));
        // What is brushed to be closed in comes hot out of the fire.
        let is_cold = |task: &Task| !is_hot(site, task) && task.operation != Operation::Brush;
        let cools = tasks.iter().any(is_cold);
        let alone = tasks.iter().any(|task| matches!(task.operation, Operation::Upset | Operation::Scarf));
        let beside = tasks.iter().any(|task| needs_beside(task.operation));
        let apart = tasks.iter().any(|task| covers_thin_branches(site, task));
        let mut parts: Vec<usize> = tasks.iter().filter_map(|task| task.part).collect();
        parts.sort_unstable();
        parts.dedup();
        let least = tasks.iter().map(|task| least_heats(site, task)).max().unwrap_or(1);
        Self { parts, spots: spots(site, tasks), least, minutes, heat_minutes, hot, cools, alone, beside, apart }
    }

    /// How many heats it takes by its time alone, not rounded.
    fn share(&self) -> f64 {
        self.minutes / self.heat_minutes.max(1e-6)
    }

    /// How much of the bar has to be hot, in mm.
    fn length_mm(&self, at: &Lengths) -> f64 {
        reach(&self.spots, at).map_or(0.0, |[start, end]| end - start)
    }
}

/// Whether an operation works the bar beside its part too: a neck lies outside of the block, and what is set down or bent moves
/// its neighbors. What is struck on the part alone does not.
fn needs_beside(operation: Operation) -> bool {
    use Operation as O;
    !matches!(operation, O::Upset | O::Spread | O::Flatten | O::Draw | O::Punch | O::Drift | O::Trim | O::Stamp)
}

/// Whether a task works a whole split whose branches are thin by then: while one of them is forged the others stay out of the fire.
fn covers_thin_branches(site: &Site<'_>, task: &Task) -> bool {
    let Some(at) = task.part.filter(|_| task.operation == Operation::Straighten) else { return false };
    let Some(part) = site.part(at).filter(|_| !site.is_closed_slit(at)) else { return false };
    (at + 1..at + part.segment.count()).any(|below| is_thin(site, below))
}

/// How a step falls into heats.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Heated {
    /// Its first heat, counted from 1; that of the step before where it is done cold.
    pub(crate) heat: usize,
    /// How many heats it needs; 0 where it is done cold.
    pub(crate) needs: usize,
    /// What of it lies outside of the zone, in mm, where the smith keeps it in the heat before.
    pub(crate) cold_mm: f64,
    /// By how many minutes the heat is overrun, where the smith keeps it there.
    pub(crate) late: f64,
}

/// A bar in the fire and on the anvil.
#[derive(Clone)]
pub(crate) struct Heating {
    zone_mm: f64,
    /// Heats taken so far.
    pub(crate) heats: usize,
    /// What is hot: its parts.
    parts: Vec<usize>,
    /// What of them is hot.
    spots: Vec<Spot>,
    /// What is left of the heat that is under way, as a share of it.
    left: f64,
    /// Whether the heat under way is kept to its parts alone.
    alone: bool,
}

impl Heating {
    pub(crate) fn new(plan: &Plan, heats: usize) -> Self {
        Self {
            zone_mm: heat_rules::zone_mm(plan),
            heats,
            parts: Vec::new(),
            spots: Vec::new(),
            left: 0.0,
            alone: false,
        }
    }

    /// Whether a step can still be done in the heat that is under way.
    pub(crate) fn fits(&self, load: &Load, at: &Lengths) -> bool {
        load.least < 2 && !load.apart && load.share() <= self.left + 1e-9 && self.cold_mm(load, at) <= 1e-6
    }

    /// What is hot from the heat under way.
    pub(crate) fn spots(&self) -> &[Spot] {
        &self.spots
    }

    /// Whether the heat under way is kept to its parts alone.
    pub(crate) fn is_alone(&self) -> bool {
        self.alone
    }

    /// Whether a step is on what is hot alone, and needs nothing hot beside it.
    fn is_on_hot(&self, load: &Load) -> bool {
        !(self.alone && load.beside) && load.parts.iter().all(|part| self.parts.contains(part))
    }

    /// By how much a step and what is hot already are longer together than the zone.
    fn cold_mm(&self, load: &Load, at: &Lengths) -> f64 {
        // A step on the whole bar takes its own heats, and what was upset was cooled on both sides: only the part itself is hot.
        if self.parts.is_empty() || load.parts.is_empty() || ((load.alone || self.alone) && !self.is_on_hot(load)) {
            return f64::INFINITY;
        }
        let all: Vec<Spot> = self.spots.iter().chain(&load.spots).copied().collect();
        reach(&all, at).map_or(0.0, |[start, end]| (end - start - self.zone_mm).max(0.0))
    }

    /// Takes a step: in the heat that is under way, or in new ones.
    pub(crate) fn take(&mut self, load: &Load, at: &Lengths, wish: Option<HeatWish>) -> Heated {
        if !load.hot {
            if load.cools {
                self.left = 0.0;
                self.parts.clear();
                self.spots.clear();
            }
            return Heated { heat: self.heats.max(1), needs: 0, cold_mm: 0.0, late: 0.0 };
        }
        let kept = wish == Some(HeatWish::Same) && self.heats > 0;
        if kept || (wish != Some(HeatWish::New) && self.fits(load, at)) {
            let cold = self.cold_mm(load, at);
            let late = (load.share() - self.left).max(0.0) * load.heat_minutes;
            self.left = (self.left - load.share()).max(0.0);
            self.parts.extend(&load.parts);
            self.spots.extend(&load.spots);
            self.alone |= load.alone;
            let is_cold = cold.is_finite() && cold > 1e-6;
            let cold_mm = if is_cold {
                cold
            } else if cold.is_finite() {
                0.0
            } else {
                load.length_mm(at)
            };
            return Heated { heat: self.heats.max(1), needs: 1, cold_mm, late: if late > 1e-9 { late } else { 0.0 } };
        }
        let by_time = (load.share() - 1e-9).ceil().max(1.0);
        let by_zone = (load.length_mm(at) / self.zone_mm - 1e-9).ceil().max(1.0);
        // Beyond this, nobody counts.
        let needs = by_time.max(by_zone).min(1e6).max(load.least as f64) as usize;
        let heat = self.heats + 1;
        self.heats += needs;
        // What is done in stages is done in even ones.
        let last = if load.least > 1 { load.share() / needs as f64 } else { load.share() - (needs - 1) as f64 };
        self.left = if load.apart { 0.0 } else { (1.0 - last).clamp(0.0, 1.0) };
        self.parts.clone_from(&load.parts);
        self.spots.clone_from(&load.spots);
        self.alone = load.alone;
        Heated { heat, needs, cold_mm: 0.0, late: 0.0 }
    }
}
