//! The cut list: the best plan found, what it comes to, and how good it is known to be.

use super::columns::relax;
use super::dive::{Rounding, dive};
use super::fit::best_fit;
use super::model::{Model, Pattern, Plan};
use super::problem::{Goal, Problem};
use super::states::{Found, MOST_STEPS, exact};

/// Bars that are cut alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BarCut {
    /// Place among the supplies.
    pub supply: usize,
    /// How many bars are cut so.
    pub times: u64,
    /// Places among the demands, and how many of each from one bar.
    pub cuts: Vec<(usize, u64)>,
    /// What comes off at the end, the held end included, in nm.
    pub offcut_nm: i64,
}

/// Pieces that are not cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LeftOver {
    /// Place among the demands.
    pub demand: usize,
    /// How many.
    pub count: u64,
    /// By how much it is longer than the longest bar gives, in nm; none where the bars ran out.
    pub too_long_nm: Option<i64>,
}

/// What a plan comes to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Worth {
    /// Bars started.
    pub bars: i64,
    /// Their length in nm.
    pub length_nm: i64,
    /// Their price, and what the pieces' ways cost beside.
    pub cost: i64,
    /// Length that is neither piece nor kept offcut, in nm.
    pub scrap_nm: i64,
    /// The longest kept offcut in nm; 0 for none.
    pub longest_nm: i64,
}

/// How good the plan is known to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bound {
    /// No plan has less of the first goal (nm for a length); the longest offcut and scrap have none: 0.
    pub first: i64,
    /// How many goals, from the first on, are proven to be the best there is.
    pub proven: usize,
}

/// A cut list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The bars, those of the rack in the problem's order.
    pub bars: Vec<BarCut>,
    /// What is not cut, for want of a bar.
    pub left: Vec<LeftOver>,
    /// What it comes to.
    pub worth: Worth,
    /// How good it is known to be; of what is cut, where something is left.
    pub bound: Bound,
}

/// Dives, each rounding otherwise, until one meets the bound.
const ROUNDINGS: [Rounding; 8] = [
    Rounding { up_from: 0.6, skip: 0 },
    Rounding { up_from: 0.8, skip: 0 },
    Rounding { up_from: 0.5, skip: 0 },
    Rounding { up_from: 0.9, skip: 0 },
    Rounding { up_from: 0.7, skip: 0 },
    Rounding { up_from: 1.0, skip: 0 },
    Rounding { up_from: 1.0, skip: 1 },
    Rounding { up_from: 1.0, skip: 2 },
];

/// Once the first goal is proven, so many dives more look for less of the others, where there are few kinds of pieces.
const MORE_DIVES: usize = 2;
const FEW: usize = 24;

/// With more kinds of pieces than this there is one dive.
const MANY: usize = 400;

/// The plan by best fit alone, at once.
pub fn first_plan(problem: &Problem) -> Answer {
    let model = Model::new(problem);
    let (mut wanted, stock) = (wanted(&model), stock(&model));
    let plan = best_fit(&model, &mut wanted, stock);
    answer(problem, &model, &plan, &wanted, Bound { first: 0, proven: 0 })
}

/// The best plan that is found while `goes_on` says so; each better one on the way goes to `better`.
pub fn cut(problem: &Problem, goes_on: &dyn Fn() -> bool, better: &mut dyn FnMut(&Answer)) -> Answer {
    let model = Model::new(problem);
    let mut search = Search::new(problem, &model);
    better(&search.answer());
    search.run(goes_on, better);
    search.answer()
}

struct Search<'a> {
    problem: &'a Problem,
    model: &'a Model,
    /// What the plan has to cut, and the bars for it.
    wanted: Vec<u64>,
    stock: Vec<Option<u64>>,
    plan: Plan,
    left: Vec<u64>,
    bound: i64,
    exact: bool,
}

impl<'a> Search<'a> {
    fn new(problem: &'a Problem, model: &'a Model) -> Self {
        let mut left = wanted(model);
        let plan = best_fit(model, &mut left, stock(model));
        let mut all = wanted(model);
        for item in model.hopeless() {
            all[item] = 0;
        }
        Self { problem, model, wanted: all, stock: stock(model), plan, left, bound: 0, exact: false }
    }

    fn run(&mut self, goes_on: &dyn Fn() -> bool, better: &mut dyn FnMut(&Answer)) {
        if self.wanted.iter().all(|count| *count == 0) {
            self.exact = true;
            return;
        }
        if self.problem.goals.len() > 1 && self.settled(goes_on, better) {
            return;
        }
        let mut pool: Vec<Pattern> = self.plan.iter().map(|(pattern, _)| pattern.clone()).collect();
        let relaxed = relax(self.model, &self.wanted, &self.stock, &mut pool, goes_on);
        if !relaxed.short {
            self.bound = relaxed.bound;
        }
        let dives = if self.wanted.len() > MANY { 1 } else { ROUNDINGS.len() };
        let mut more = if self.problem.goals.len() > 1 && self.wanted.len() <= FEW { MORE_DIVES } else { 0 };
        for rounding in ROUNDINGS.into_iter().take(dives) {
            if self.first_is_proven() {
                if more == 0 {
                    break;
                }
                more -= 1;
            }
            if !goes_on() {
                break;
            }
            let mut rest = self.wanted.clone();
            let plan = dive(self.model, &mut rest, self.stock.clone(), &mut pool, &relaxed, rounding, goes_on);
            self.offer(plan, &rest, better);
        }
        if !self.first_is_proven() && goes_on() {
            self.settled(goes_on, better);
        }
    }

    /// Goes through every state, where the job is small enough for it.
    fn settled(&mut self, goes_on: &dyn Fn() -> bool, better: &mut dyn FnMut(&Answer)) -> bool {
        let Some(Found::Plan(plan)) = exact(self.model, &self.wanted, &self.stock, MOST_STEPS, goes_on) else {
            return false;
        };
        self.exact = true;
        self.offer(plan, &vec![0; self.wanted.len()], better);
        self.bound = self.model.total(&self.plan).0[0];
        true
    }

    /// Takes a plan that leaves fewer pieces, or comes to less.
    fn offer(&mut self, plan: Plan, rest: &[u64], better: &mut dyn FnMut(&Answer)) {
        let mut left = wanted(self.model);
        for ((left, wanted), rest) in left.iter_mut().zip(&self.wanted).zip(rest) {
            *left -= wanted - rest;
        }
        let (now, known) = (left.iter().sum::<u64>(), self.left.iter().sum::<u64>());
        if now < known || (now == known && self.model.total(&plan).better_than(&self.model.total(&self.plan))) {
            self.plan = plan;
            self.left = left;
            better(&self.answer());
        }
    }

    fn first_is_proven(&self) -> bool {
        let sum = self.model.total(&self.plan);
        let least = !matches!(self.model.goals.first(), Some(Goal::Scrap | Goal::Longest));
        least && self.complete() && sum.0[0] <= self.bound
    }

    /// Whether all that can be cut is.
    fn complete(&self) -> bool {
        let able: u64 = self.wanted.iter().sum();
        self.left.iter().sum::<u64>() + able == wanted(self.model).iter().sum::<u64>()
    }

    fn answer(&self) -> Answer {
        let asked = self.problem.goals.len();
        let proven = if self.exact { asked } else { usize::from(self.first_is_proven()).min(asked) };
        let unit = match self.model.goals.first() {
            Some(Goal::Length) => self.model.unit_nm,
            _ => 1,
        };
        let first = match self.model.goals.first() {
            Some(Goal::Scrap | Goal::Longest) => 0,
            _ => self.bound * unit,
        };
        answer(self.problem, self.model, &self.plan, &self.left, Bound { first, proven })
    }
}

fn wanted(model: &Model) -> Vec<u64> {
    model.items.iter().map(|item| item.count).collect()
}

fn stock(model: &Model) -> Vec<Option<u64>> {
    model.bars.iter().map(|bar| bar.count).collect()
}

fn answer(problem: &Problem, model: &Model, plan: &Plan, left: &[u64], bound: Bound) -> Answer {
    let mut queues: Vec<Vec<(usize, u64)>> =
        model.items.iter().map(|item| item.demands.iter().rev().copied().collect()).collect();
    let mut bars: Vec<BarCut> = Vec::new();
    for (pattern, times) in plan {
        for _ in 0..*times {
            let cuts = named(pattern, &mut queues);
            let bar = &model.bars[pattern.bar];
            let offcut_nm = model.offcut(bar, model.used(pattern)) * model.unit_nm;
            match bars.iter_mut().rev().take(8).find(|known| known.supply == bar.supply && known.cuts == cuts) {
                Some(known) => known.times += 1,
                None => bars.push(BarCut { supply: bar.supply, times: 1, cuts, offcut_nm }),
            }
        }
    }
    bars.sort_by_key(|bar| bar.supply);
    Answer { worth: worth(problem, &bars), bars, left: left_over(problem, model, left, &queues), bound }
}

/// The cuts of a pattern as demands, taken from what each item still has.
fn named(pattern: &Pattern, queues: &mut [Vec<(usize, u64)>]) -> Vec<(usize, u64)> {
    let mut cuts = Vec::new();
    for &(item, count) in &pattern.cuts {
        let mut count = count;
        while count > 0 {
            let Some(last) = queues[item].last_mut() else { break };
            let taken = count.min(last.1);
            cuts.push((last.0, taken));
            last.1 -= taken;
            count -= taken;
            if last.1 == 0 {
                queues[item].pop();
            }
        }
    }
    cuts
}

fn left_over(problem: &Problem, model: &Model, left: &[u64], queues: &[Vec<(usize, u64)>]) -> Vec<LeftOver> {
    let hopeless = model.hopeless();
    let mut all = Vec::new();
    for (item, queue) in queues.iter().enumerate().filter(|(item, _)| left[*item] > 0) {
        let over = hopeless.contains(&item).then(|| too_long(problem, model.items[item].demands[0].0));
        all.extend(queue.iter().map(|&(demand, count)| LeftOver { demand, count, too_long_nm: over.flatten() }));
    }
    all.sort_by_key(|left| left.demand);
    all
}

/// By how much a piece is longer than what the longest bar gives; none where there is no bar of its section.
fn too_long(problem: &Problem, demand: usize) -> Option<i64> {
    let ways = problem.demands[demand].ways.iter().flat_map(|way| {
        let bars = problem.supplies.iter().filter(move |bar| bar.section == way.section && bar.count != Some(0));
        bars.map(move |bar| way.length_nm - (bar.length_nm - bar.end_nm))
    });
    ways.min()
}

/// What the bars come to, worked out from the problem and not from the model.
fn worth(problem: &Problem, bars: &[BarCut]) -> Worth {
    let mut worth = Worth::default();
    for bar in bars {
        let (times, supply) = (i64::try_from(bar.times).unwrap_or(i64::MAX), &problem.supplies[bar.supply]);
        let pieces = bar.cuts.iter().filter_map(|&(demand, count)| {
            let ways = problem.demands[demand].ways.iter().filter(|way| way.section == supply.section);
            let way = ways.min_by_key(|way| (way.extra, way.length_nm))?;
            let count = i64::try_from(count).unwrap_or(i64::MAX);
            Some((way.length_nm * count, way.extra * count))
        });
        let (length, extra) = pieces.fold((0, 0), |sum, piece| (sum.0 + piece.0, sum.1 + piece.1));
        let kept = if problem.keep_from_nm.is_some_and(|from| bar.offcut_nm >= from) { bar.offcut_nm } else { 0 };
        worth.bars += times;
        worth.length_nm += supply.length_nm * times;
        worth.cost += (supply.price + extra) * times;
        worth.scrap_nm += (supply.length_nm - length - kept) * times;
        worth.longest_nm = worth.longest_nm.max(kept);
    }
    worth
}
