//! Heats by plain rules: what one heated zone covers and one working time holds.

use crate::bar::lengths::Lengths;
use crate::bar::spots::{Spot, is_twisted_open, reach, spots};
use crate::fire::hands::{Taken, besides_minutes, change_minutes, taken};
use crate::job::heat_rules;
use crate::job::part::is_thin;
use crate::job::site::Site;
use crate::job::task::{Task, is_hot, least_heats};
use fh_core::plan::{HeatWish, Operation, Plan};

/// What a step asks of a heat.
#[derive(Default)]
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
    /// Whether it has a heat of its own: it asks for what other steps keep out of the fire, or for a welding heat.
    pub(crate) apart: bool,
    /// Whether it may be cut where the heat ends, and go on in the next.
    pub(crate) cut: bool,
    /// What is taken up for it, first and last.
    pub(crate) taken: [Option<Taken>; 2],
    /// What changing tools within it and holding the bar down take of a heat, in minutes.
    pub(crate) besides_minutes: f64,
    /// Whether it is the truing of the whole bar, which is done with what is left of the heat before it.
    pub(crate) trues: bool,
}

/// A heat of which no more than this share is left is not begun on: common practice, no source.
const WORTH: f64 = 0.15;

/// At the end of a heat so much of one more is struck, a little colder, before the bar goes back into the fire, as a share of a heat:
/// common practice, no source.
const LAST_BLOWS: f64 = 0.1;

impl Load {
    /// Of some tasks that take so many minutes, in heats of so many, by one who forges alone or not.
    pub(crate) fn new(site: &Site<'_>, tasks: &[Task], [minutes, heat_minutes]: [f64; 2], by_one: bool) -> Self {
        let hot = tasks.iter().any(|task| is_hot(site, task));
        // What is brushed to be closed in comes hot out of the fire.
        let is_cold = |task: &Task| !is_hot(site, task) && task.operation != Operation::Brush;
        let cools = tasks.iter().any(is_cold);
        let done_hot = || tasks.iter().filter(|task| is_hot(site, task)).map(|task| task.operation);
        let taken = [done_hot().next(), done_hot().next_back()].map(|operation| operation.and_then(taken));
        let besides_minutes = besides_minutes(done_hot(), by_one);
        let alone = tasks.iter().any(|task| is_kept_alone(site, task));
        let beside = tasks.iter().any(|task| needs_beside(task.operation));
        let is_apart = |task: &Task| matches!(task.operation, Operation::Weld | Operation::Normalise);
        let apart = tasks.iter().any(|task| is_apart(task) || covers_thin_branches(site, task));
        let cut = !tasks.is_empty() && tasks.iter().all(|task| goes_on(task.operation));
        let is_truing = |task: &Task| task.operation == Operation::Straighten && task.part.is_none();
        let trues = !tasks.is_empty() && tasks.iter().all(is_truing);
        let mut parts: Vec<usize> = tasks.iter().filter_map(|task| task.part).collect();
        parts.sort_unstable();
        parts.dedup();
        let least = tasks.iter().map(|task| least_heats(site, task)).max().unwrap_or(1);
        let spots = spots(site, tasks);
        Self {
            parts,
            spots,
            least,
            minutes,
            heat_minutes,
            hot,
            cools,
            alone,
            beside,
            apart,
            cut,
            taken,
            besides_minutes,
            trues,
        }
    }

    /// How many heats it takes by its time alone, not rounded.
    fn share(&self) -> f64 {
        self.of_a_heat(self.minutes)
    }

    /// What so many minutes are of a heat.
    fn of_a_heat(&self, minutes: f64) -> f64 {
        minutes / self.heat_minutes.max(1e-6)
    }

    /// How many heats it asks for by itself, not rounded: by its time, and by what cannot be done in fewer.
    pub(crate) fn asks(&self) -> f64 {
        match (self.hot && !self.trues, self.least) {
            (false, _) => 0.0,
            (true, least) if least > 1 => self.share().max(least as f64),
            (true, _) => self.share(),
        }
    }

    /// How much of the bar has to be hot, in mm.
    fn length_mm(&self, at: &Lengths) -> f64 {
        reach(&self.spots, at).map_or(0.0, |[start, end]| end - start)
    }
}

/// Whether what lies beside a task's part is kept cool: it would thicken with what is upset, or twist with what is twisted.
fn is_kept_alone(site: &Site<'_>, task: &Task) -> bool {
    match task.operation {
        Operation::Upset | Operation::Scarf | Operation::Twist => true,
        Operation::Open => task.part.is_some_and(|at| is_twisted_open(site, at)),
        _ => false,
    }
}

/// Whether an operation works the bar beside its part too: a neck lies outside of the block, and what is set down or bent moves
/// its neighbors. What is struck on the part alone does not.
fn needs_beside(operation: Operation) -> bool {
    use Operation as O;
    !matches!(
        operation,
        O::Upset | O::Twist | O::Spread | O::Flatten | O::Draw | O::Dress | O::Punch | O::Drift | O::Trim | O::Stamp
    )
}

/// Whether an operation goes on in the next heat where it was left in the last: what is struck little by little does; a bend, a hole
/// or a cut is made in one go.
fn goes_on(operation: Operation) -> bool {
    use Operation as O;
    matches!(
        operation,
        O::Draw
            | O::Taper
            | O::Spread
            | O::Flatten
            | O::Isolate
            | O::SetDown
            | O::Split
            | O::Corner
            | O::Dress
            | O::DressEdges
    )
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
    /// Its first heat, counted from 1, which it may share with the steps before it; that of the step before where it is done cold.
    pub(crate) heat: usize,
    /// How many heats it needs; 0 where it is done cold.
    pub(crate) needs: usize,
    /// What of it lies outside of the zone, in mm, where the smith keeps it in the heat before.
    pub(crate) cold_mm: f64,
    /// By how many minutes the heat is overrun, where the smith keeps it there.
    pub(crate) late: f64,
}

/// A bar in the fire and on the anvil.
///
/// Heats are filled: a step begins in what is left of the heat under way, is cut where that ends and goes on in the next.
#[derive(Clone)]
pub(crate) struct Heating {
    zone_mm: f64,
    /// What has to stay cold to hold the bar by.
    hold_mm: f64,
    /// Heats taken so far.
    pub(crate) heats: usize,
    /// How many times longer than reckoned all work takes.
    slower: f64,
    /// What is hot: its parts.
    parts: Vec<usize>,
    /// What of them is hot.
    spots: Vec<Spot>,
    /// What else was hot when the last step began, in the heat before.
    begun_beside: Vec<Spot>,
    /// What is left of the heat that is under way, as a share of it; a little below 0 where its last blows are struck.
    left: f64,
    /// Whether the heat under way is kept to its parts alone.
    alone: bool,
    /// What is in the hand.
    taken: Option<Taken>,
}

impl Heating {
    pub(crate) fn new(plan: &Plan, heats: usize) -> Self {
        Self {
            zone_mm: heat_rules::zone_mm(plan),
            hold_mm: heat_rules::hold_mm(plan),
            heats,
            slower: 1.0,
            parts: Vec::new(),
            spots: Vec::new(),
            begun_beside: Vec::new(),
            left: 0.0,
            alone: false,
            taken: None,
        }
    }

    /// The same where all work takes so many times longer.
    pub(crate) fn slower(self, slower: f64) -> Self {
        Self { slower, ..self }
    }

    /// Another bar goes into the fire.
    pub(crate) fn next_bar(&mut self) {
        self.cool();
        self.alone = false;
        self.begun_beside.clear();
    }

    fn cool(&mut self) {
        self.left = 0.0;
        self.parts.clear();
        self.spots.clear();
        self.taken = None;
    }

    /// Whether a step can be done in the heat that is under way, or begun in it.
    pub(crate) fn fits(&self, load: &Load, at: &Lengths) -> bool {
        if load.trues {
            return self.is_hot();
        }
        !load.apart && self.cold_mm(load, at) <= 1e-6 && (self.holds(load) || self.begins(load))
    }

    /// Whether something is hot.
    pub(crate) fn is_hot(&self) -> bool {
        !self.parts.is_empty()
    }

    /// Whether all of a step can be done in what is left of the heat.
    fn holds(&self, load: &Load) -> bool {
        load.least < 2 && self.share(load) <= self.left + LAST_BLOWS + 1e-9
    }

    /// Whether a step can be begun in what is left of the heat, and go on in the next.
    fn begins(&self, load: &Load) -> bool {
        let first = self.share(load) / load.least.max(1) as f64;
        let is_begun = if load.least > 1 { first <= self.left + 1e-9 } else { load.cut || first > 1.0 };
        is_begun && self.left > WORTH && !self.alone && !load.alone
    }

    /// How many heats a step takes by its time alone, not rounded, where it follows in the heat under way: its tool is taken up first.
    fn share(&self, load: &Load) -> f64 {
        self.fresh(load) + load.of_a_heat(change_minutes(self.taken, load.taken[0]))
    }

    /// How many it takes where it begins a heat, its tool ready.
    fn fresh(&self, load: &Load) -> f64 {
        load.share() * self.slower + load.of_a_heat(load.besides_minutes)
    }

    /// What is hot from the heat under way.
    pub(crate) fn spots(&self) -> &[Spot] {
        &self.spots
    }

    /// What is hot at any time of the last step: in its last heat, and in that in which it began.
    pub(crate) fn all_spots(&self) -> impl Iterator<Item = Spot> + '_ {
        self.spots.iter().chain(&self.begun_beside).copied()
    }

    /// Whether the heat under way is kept to its parts alone.
    pub(crate) fn is_alone(&self) -> bool {
        self.alone
    }

    /// How many heats were used, less what is left of the one under way.
    pub(crate) fn used(&self) -> f64 {
        self.heats as f64 - self.left.max(0.0)
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
        let hulls = [reach(&self.spots, at), reach(&load.spots, at)].into_iter().flatten();
        let Some([start, end]) = hulls.reduce(|one, other| [one[0].min(other[0]), one[1].max(other[1])]) else {
            return 0.0;
        };
        let over = (end - start - self.zone_mm).max(0.0);
        // What would leave nothing cold to hold does not share a heat; a step that leaves no more by itself may.
        let own = reach(&load.spots, at).map_or(0.0, |own| handle_mm(own, at));
        let short = own.min(self.hold_mm) - handle_mm([start, end], at);
        over.max(short)
    }

    /// Takes a step: in the heat that is under way, in new ones, or begun in the one and cut into the next.
    pub(crate) fn take(&mut self, load: &Load, at: &Lengths, wish: Option<HeatWish>) -> Heated {
        self.begun_beside.clear();
        if !load.hot {
            if load.cools {
                self.cool();
            }
            return Heated { heat: self.heats.max(1), needs: 0, cold_mm: 0.0, late: 0.0 };
        }
        let kept = wish == Some(HeatWish::Same) && self.heats > 0;
        let fits = wish != Some(HeatWish::New) && self.fits(load, at);
        if fits && load.trues {
            return self.true_up();
        }
        let heated = match fits {
            _ if kept || (fits && self.holds(load)) => self.keep(load, at),
            true => self.cut(load),
            false => self.begin(load, at),
        };
        self.taken = load.taken[1].or(self.taken);
        heated
    }

    /// Trues the bar with what is left of the heat; it is measured cold then.
    fn true_up(&mut self) -> Heated {
        self.begun_beside = std::mem::take(&mut self.spots);
        self.cool();
        Heated { heat: self.heats.max(1), needs: 1, cold_mm: 0.0, late: 0.0 }
    }

    /// A step in the heat that is under way.
    fn keep(&mut self, load: &Load, at: &Lengths) -> Heated {
        let (cold, share, left) = (self.cold_mm(load, at), self.share(load), self.left.max(0.0));
        let over = share - left - LAST_BLOWS;
        let late = if over > 1e-9 { (share - left) * load.heat_minutes } else { 0.0 };
        self.left = (self.left - share).max(-LAST_BLOWS);
        self.parts.extend(&load.parts);
        self.spots.extend(&load.spots);
        self.alone |= load.alone;
        let cold_mm = match cold {
            cold if !cold.is_finite() => load.length_mm(at),
            cold if cold > 1e-6 => cold,
            _ => 0.0,
        };
        Heated { heat: self.heats.max(1), needs: 1, cold_mm, late }
    }

    /// A step that is begun in the heat under way and goes on in the next ones.
    fn cut(&mut self, load: &Load) -> Heated {
        let (heat, share) = (self.heats, self.share(load));
        let rest = if load.least > 1 { share * (1.0 - 1.0 / load.least as f64) } else { share - self.left };
        let more = in_heats(rest).max(load.least.saturating_sub(1));
        self.begun_beside = std::mem::take(&mut self.spots);
        self.heats += more;
        self.left = after(rest, more, load.least);
        self.parts.clone_from(&load.parts);
        self.spots.clone_from(&load.spots);
        Heated { heat, needs: more + 1, cold_mm: 0.0, late: 0.0 }
    }

    /// A step that begins a heat.
    fn begin(&mut self, load: &Load, at: &Lengths) -> Heated {
        let share = self.fresh(load);
        let by_zone = (load.length_mm(at) / self.zone_mm - 1e-9).ceil().clamp(1.0, MOST) as usize;
        let needs = in_heats(share).max(by_zone).max(load.least);
        let heat = self.heats + 1;
        self.heats += needs;
        self.left = if load.apart { 0.0 } else { after(share, needs, load.least) };
        self.parts.clone_from(&load.parts);
        self.spots.clone_from(&load.spots);
        self.alone = load.alone;
        Heated { heat, needs, cold_mm: 0.0, late: 0.0 }
    }
}

/// How much of the bar stays cold at the better of its ends, in mm.
fn handle_mm([from, to]: [f64; 2], at: &Lengths) -> f64 {
    let [start, end] = at.ends();
    (from - start).max(end - to)
}

/// Beyond this, nobody counts.
const MOST: f64 = 1e6;

/// How many whole heats a share takes, its last blows struck a little colder.
fn in_heats(share: f64) -> usize {
    (share - LAST_BLOWS - 1e-9).ceil().clamp(1.0, MOST) as usize
}

/// What is left of the last of some heats that hold a share; what is done in no fewer than so many is done in even ones.
fn after(share: f64, heats: usize, least: usize) -> f64 {
    let last = if least > 1 { share / heats as f64 } else { share - (heats - 1) as f64 };
    (1.0 - last).clamp(-LAST_BLOWS, 1.0)
}
