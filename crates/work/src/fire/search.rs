//! The search for an order: of all the sets of steps that are done alike far, a few of the best are gone on from.
//!
//! Each set of done steps is kept once, as it was reached best, as in dynamic programming; there are too many sets to keep them
//! all, so a beam of the best is. What follows one of them is what each of the four ways of choosing would take next. The order is
//! found, not proven: none in fewer heats than the minutes alone ask for can be.

use crate::bar::grip::shapes_now;
use crate::bar::held::clumsy;
use crate::bar::lengths::Lengths;
use crate::bar::progress::Progress;
use crate::fire::bench::Bench;
use crate::fire::choice::{CHOICES, Choice, Cost, Key};
use crate::fire::heating::Heating;
use fh_core::metal::Shape;
use std::cell::OnceCell;
use std::collections::HashMap;

/// A hold that is no hold costs as much as a heat: common practice, no source.
const CLUMSY: f64 = 1.0;

/// To leave a part half done, and come back to it, costs so much of a heat: common practice, no source.
const HALF_DONE: f64 = 0.6;

/// To forge what lies farther in while what lies farther out toward the same end still waits costs so much of a heat: thick metal
/// farther in holds the bar, and what is finished out there is in nobody's way; common practice, no source.
const OUT_OF_TURN: f64 = 0.5;

/// To go so many mm to and fro along the bar costs as much as a heat: common practice, no source.
const TRAVEL_MM: f64 = 5000.0;

/// From so many steps on only the first way of choosing is tried, and no other.
const MANY: usize = 400;

/// How many sets are gone on from, by the number of steps: what a drag can wait for.
fn width(units: usize) -> usize {
    match units {
        0..=40 => 10,
        41..=80 => 6,
        81..=150 => 2,
        _ => 1,
    }
}

/// The shape of each part, once it was asked for.
type Shapes = OnceCell<Vec<Option<Shape>>>;

/// Some steps done, and what that took.
#[derive(Clone)]
struct Done {
    waits: Vec<usize>,
    ready: Vec<usize>,
    /// The steps, one after the other.
    order: Vec<usize>,
    progress: Progress,
    heating: Heating,
    hot: Option<f64>,
    /// The heats that the steps ask for by themselves.
    asked: f64,
    /// What of heats was spent on poor holds and on moving to and fro.
    spent: f64,
}

/// One step more.
struct Next {
    from: usize,
    unit: usize,
    heating: Heating,
    hot: Option<f64>,
    asked: f64,
    spent: f64,
}

impl Next {
    /// What was spent beyond what the steps ask for, in heats.
    fn waste(&self) -> f64 {
        self.heating.used() - self.asked + self.spent
    }
}

/// The best order found: units, one after the other.
pub(crate) fn search(bench: &Bench<'_, '_>) -> Vec<usize> {
    let units = bench.units.len();
    let (width, choices) = (width(units), if units > MANY { &CHOICES[..1] } else { &CHOICES[..] });
    let mut beam = vec![bench.start()];
    loop {
        let nexts = beam.iter().enumerate().flat_map(|(from, done)| bench.nexts(from, done, choices));
        let best = best_of_each_set(&beam, nexts.collect(), width);
        if best.is_empty() {
            break;
        }
        beam = best.into_iter().map(|next| bench.taken(&beam[next.from], next)).collect();
    }
    let Some(best) = beam.into_iter().next() else { return Vec::new() };
    // What waits for itself, because two cuts are one step, is done all the same.
    let left = (0..units).filter(|unit| best.waits[*unit] > 0);
    best.order.iter().copied().chain(left).collect()
}

impl Bench<'_, '_> {
    fn start(&self) -> Done {
        let waits = self.graph.waits.clone();
        Done {
            ready: (0..self.units.len()).filter(|unit| waits[*unit] == 0).collect(),
            waits,
            order: Vec::new(),
            progress: Progress::start(self.site),
            heating: Heating::new(self.site.plan, 0),
            hot: None,
            asked: 0.0,
            spent: 0.0,
        }
    }

    /// What each way of choosing takes next.
    fn nexts(&self, from: usize, done: &Done, choices: &[Choice]) -> Vec<Next> {
        let lengths = Lengths::new(self.site, &done.progress);
        let last = done.order.last().copied();
        let ready = done.ready.iter().copied();
        let costs: Vec<(usize, Cost, bool)> = ready
            .map(|unit| (unit, self.cost(unit, &done.heating, &lengths), self.is_late(unit, &done.progress)))
            .collect();
        let mut units: Vec<usize> = Vec::new();
        for choice in choices {
            let keys = costs.iter().map(|unit| self.key(*unit, (*choice, last), &lengths, done.hot));
            let next = keys.min_by(Key::order).map(|key| key.unit);
            units.extend(next.filter(|next| !units.contains(next) && (units.is_empty() || !self.bends(*next))));
        }
        let shapes = OnceCell::new();
        units.into_iter().map(|unit| self.next((from, done), unit, (&lengths, &shapes))).collect()
    }

    /// Whether a unit bends the bar: of bends the one that the first way of choosing takes is made, for a leg that is bent out of turn is
    /// in the way of another.
    fn bends(&self, unit: usize) -> bool {
        self.units[unit].iter().any(|task| self.tasks[*task].operation.is_bending())
    }

    /// A step more; `shapes` are those of the parts by then, once they are asked for.
    fn next(&self, (from, done): (usize, &Done), unit: usize, (lengths, shapes): (&Lengths, &Shapes)) -> Next {
        let load = &self.loads[unit];
        let mut heating = done.heating.clone();
        heating.take(load, lengths, None);
        let (mut hot, mut spent) = (done.hot, done.spent + self.half_done(done, unit) + self.out_of_turn(done, unit));
        if load.hot {
            let place = self.middle(unit, lengths);
            spent += hot.map_or(0.0, |hot| (place - hot).abs() / TRAVEL_MM);
            hot = Some(place);
        }
        // Within a heat the tongs stay where they are.
        let grips = heating.heats > done.heating.heats && !load.parts.is_empty();
        if grips && self.loads.len() <= MANY {
            let shapes = shapes.get_or_init(|| shapes_now(self.site, &done.progress, lengths));
            let tasks: Vec<_> = self.units[unit].iter().map(|task| self.tasks[*task]).collect();
            let spots: Vec<_> = heating.all_spots().collect();
            spent += CLUMSY * clumsy(self.site, &done.progress, lengths, (shapes, &spots, &tasks));
        }
        Next { from, unit, heating, hot, asked: done.asked + load.asks(), spent }
    }

    /// What it costs to leave a part of which more could be done at once.
    fn half_done(&self, done: &Done, unit: usize) -> f64 {
        // A slit is done once its branches are.
        let whole =
            |at: usize| std::iter::successors(Some(at), |at| self.site.split_of(*at).map(|(split, _)| split)).last();
        let part = |unit: usize| self.units[unit].first().and_then(|task| self.tasks[*task].part).and_then(whole);
        // What was drilled cold waits without a loss.
        let last = done.order.last().copied().filter(|last| self.loads[*last].hot);
        let Some(last) = last.and_then(part) else { return 0.0 };
        let more = |other: &usize| self.loads[*other].hot && part(*other) == Some(last);
        if part(unit) != Some(last) && done.ready.iter().any(more) { HALF_DONE } else { 0.0 }
    }

    /// What it costs to go farther in while something farther out could be done.
    fn out_of_turn(&self, done: &Done, unit: usize) -> f64 {
        let Some(own) = &self.inward[unit] else { return 0.0 };
        let waits = |other: &usize| {
            self.loads[*other].hot && self.inward[*other].as_ref().is_some_and(|other| own.waits_for(other))
        };
        if self.loads[unit].hot && done.ready.iter().any(waits) { OUT_OF_TURN } else { 0.0 }
    }

    /// The steps done with one more.
    fn taken(&self, done: &Done, next: Next) -> Done {
        let Next { unit, heating, hot, asked, spent, .. } = next;
        let mut now = Done { heating, hot, asked, spent, ..done.clone() };
        now.ready.retain(|ready| *ready != unit);
        now.order.push(unit);
        for task in &self.units[unit] {
            now.progress.apply(self.site, &self.tasks[*task]);
        }
        for after in &self.graph.after[unit] {
            now.waits[*after] -= 1;
            if now.waits[*after] == 0 {
                now.ready.push(*after);
            }
        }
        now
    }
}

/// Of each set of done steps that which was reached best; of these the best, the best first.
fn best_of_each_set(beam: &[Done], nexts: Vec<Next>, width: usize) -> Vec<Next> {
    let set = |next: &Next| {
        let mut set: Vec<usize> = beam[next.from].order.iter().copied().chain([next.unit]).collect();
        set.sort_unstable();
        set
    };
    let mut best: HashMap<Vec<usize>, usize> = HashMap::new();
    let mut kept: Vec<Next> = Vec::new();
    for next in nexts {
        match best.get(&set(&next)) {
            Some(at) if kept[*at].waste() <= next.waste() => {}
            Some(at) => kept[*at] = next,
            None => {
                best.insert(set(&next), kept.len());
                kept.push(next);
            }
        }
    }
    // Stable: of those alike the first stays first.
    kept.sort_by(|one, other| one.waste().total_cmp(&other.waste()));
    kept.truncate(width);
    kept
}
