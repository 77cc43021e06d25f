//! Small jobs, exactly: the best way to every state of what is cut already.
//!
//! A state is how many of each item are cut. Bars to be bought come first, each holding the first item that is still to be cut;
//! then every bar of the rack in turn may give one of its patterns or stay. All goals are compared at every state, which is right
//! as long as the one that is no sum, the longest offcut, is the last.

use super::model::{MOST_GOALS, Model, Pattern, Plan, Sum};
use super::problem::Goal;

/// The most states, and the most steps from state to state, that are gone through.
const MOST_STATES: u64 = 400_000;
pub(super) const MOST_STEPS: u64 = 200_000_000;
/// The most states over all bars that are kept in memory at once, some 56 bytes each.
const MOST_CELLS: u64 = 2_000_000;
/// After so many states it is asked whether the search goes on.
const ASKED_EVERY: u64 = 64;

/// The best plan for so many of each item, or none where the job is too big for this, or the search was stopped.
pub(super) fn exact(
    model: &Model,
    wanted: &[u64],
    stock: &[Option<u64>],
    most_steps: u64,
    goes_on: &dyn Fn() -> bool,
) -> Option<Found> {
    let longest_early = model.goals.iter().rev().skip(1).any(|goal| *goal == Goal::Longest);
    let grid = Grid::new(wanted)?;
    let kinds = stock.iter().filter(|count| **count != Some(0)).count() as u64;
    if longest_early || grid.states > most_steps || grid.states.saturating_mul(kinds) > MOST_CELLS {
        return None;
    }
    let all = (0..stock.len()).filter(|&bar| stock[bar] != Some(0)).map(|bar| Patterns::new(model, bar, &grid));
    let all: Vec<Patterns> = all.collect();
    let (bought, rack): (Vec<Patterns>, Vec<Patterns>) = all.into_iter().partition(|bar| stock[bar.bar].is_none());
    let pieces = wanted.iter().sum();
    let copies = |bar: &Patterns| stock[bar.bar].unwrap_or(1).min(pieces);
    let pairs =
        wanted.iter().try_fold(1_u64, |all, count| all.checked_mul((count + 1) * (count + 2) / 2)).unwrap_or(u64::MAX);
    let steps = |bar: &Patterns| bar.many.saturating_mul(grid.states).min(pairs).saturating_mul(copies(bar));
    let steps = bought.iter().chain(&rack).map(steps).fold(0, u64::saturating_add);
    if steps > most_steps {
        return None;
    }
    let mut table = Table::new(model, grid);
    if !table.buy(&bought, goes_on) {
        return None;
    }
    for bar in &rack {
        for _ in 0..copies(bar) {
            if !table.layer(bar, goes_on) {
                return None;
            }
        }
    }
    Some(table.plan())
}

/// What the search ended with.
#[derive(Clone, Debug)]
pub(super) enum Found {
    /// The best plan.
    Plan(Plan),
    /// No plan cuts all that is wanted.
    Nothing,
}

/// States as numbers: a place for each item.
struct Grid {
    steps: Vec<u64>,
    counts: Vec<u64>,
    states: u64,
}

impl Grid {
    fn new(wanted: &[u64]) -> Option<Self> {
        let mut states = 1_u64;
        let mut steps = Vec::new();
        for count in wanted {
            steps.push(states);
            states = states.checked_mul(count + 1).filter(|states| *states <= MOST_STATES)?;
        }
        Some(Self { steps, counts: wanted.to_vec(), states })
    }

    fn digits(&self, state: u64) -> Vec<u64> {
        self.steps.iter().zip(&self.counts).map(|(step, count)| state / step % (count + 1)).collect()
    }
}

/// The cuts of one bar: how many of each item, as a state.
struct Patterns {
    bar: usize,
    /// What a bar cut to a state comes to; none where it does not fit, or nothing is cut.
    worth: Vec<Option<Sum>>,
    many: u64,
}

impl Patterns {
    fn new(model: &Model, bar: usize, grid: &Grid) -> Self {
        let mut patterns = Self { bar, worth: vec![None; grid.states as usize], many: 0 };
        patterns.gather(model, grid, 0, model.bars[bar].room, 0, &mut Vec::new());
        patterns
    }

    fn gather(&mut self, model: &Model, grid: &Grid, item: usize, room: i64, state: u64, cuts: &mut Vec<(usize, u64)>) {
        if item == grid.counts.len() {
            if !cuts.is_empty() {
                let pattern = Pattern { bar: self.bar, cuts: cuts.clone() };
                self.worth[state as usize] = Some(model.worth(&pattern));
                self.many += 1;
            }
            return;
        }
        self.gather(model, grid, item + 1, room, state, cuts);
        let Some(take) = model.bars[self.bar].takes[item] else { return };
        for count in 1..=grid.counts[item] {
            let rest = room - take.width * i64::try_from(count).unwrap_or(i64::MAX);
            if rest < 0 {
                break;
            }
            cuts.push((item, count));
            self.gather(model, grid, item + 1, rest, state + count * grid.steps[item], cuts);
            cuts.pop();
        }
    }
}

struct Table<'a> {
    model: &'a Model,
    grid: Grid,
    sums: Vec<Option<Sum>>,
    /// The last bought bar on the way to each state, and its cuts as a state.
    bought: Vec<Option<(usize, u32)>>,
    /// For each bar of the rack in turn what it is cut to on the way to each state; 0 where it stays.
    layers: Vec<(usize, Vec<u32>)>,
}

/// The search for the best last bar on the way to a state.
struct Last<'a> {
    table: &'a Table<'a>,
    patterns: &'a Patterns,
    state: u64,
    digits: &'a [u64],
    sum: Option<Sum>,
    /// What that bar is cut to, as a state; 0 while none is better than none.
    cuts: u64,
}

impl<'a> Last<'a> {
    fn new(table: &'a Table<'a>, patterns: &'a Patterns, state: u64, digits: &'a [u64]) -> Self {
        Self { table, patterns, state, digits, sum: table.sums[state as usize], cuts: 0 }
    }

    /// Tries every pattern that has the cuts so far and any of the items from `item` on, as far as the state has them.
    fn try_all(&mut self, item: usize, room: i64, cuts: u64) {
        if item == self.digits.len() {
            self.try_one(cuts);
            return;
        }
        let (mut rest, mut cuts) = (room, cuts);
        let take = self.table.model.bars[self.patterns.bar].takes[item];
        for count in 0..=self.digits[item] {
            if count > 0 {
                let Some(take) = take else { return };
                rest -= take.width;
                cuts += self.table.grid.steps[item];
            }
            if rest < 0 {
                return;
            }
            self.try_all(item + 1, rest, cuts);
        }
    }

    /// The same with one of the item `first` at least.
    fn try_with(&mut self, first: usize) {
        let bar = &self.table.model.bars[self.patterns.bar];
        let Some(take) = bar.takes[first] else { return };
        let mut rest = bar.room;
        for count in 1..=self.digits[first] {
            rest -= take.width;
            if rest < 0 {
                return;
            }
            self.try_all(first + 1, rest, count * self.table.grid.steps[first]);
        }
    }

    fn try_one(&mut self, cuts: u64) {
        let before = self.table.sums[(self.state - cuts) as usize];
        let (Some(worth), Some(before)) = (self.patterns.worth[cuts as usize], before) else { return };
        let sum = self.table.model.add(before, worth, 1);
        if self.sum.is_none_or(|known| sum.better_than(&known)) {
            (self.sum, self.cuts) = (Some(sum), cuts);
        }
    }
}

impl<'a> Table<'a> {
    fn new(model: &'a Model, grid: Grid) -> Self {
        let states = usize::try_from(grid.states).unwrap_or(0);
        let mut sums = vec![None; states];
        if let Some(first) = sums.first_mut() {
            *first = Some(Sum([0; MOST_GOALS]));
        }
        Self { model, grid, sums, bought: vec![None; states], layers: Vec::new() }
    }

    /// Every state that bought bars alone lead to; each of them holds the first item that is still wanted. Whether it was not
    /// stopped.
    fn buy(&mut self, bars: &[Patterns], goes_on: &dyn Fn() -> bool) -> bool {
        for state in 1..self.grid.states {
            if state % ASKED_EVERY == 0 && !goes_on() {
                return false;
            }
            let digits = self.grid.digits(state);
            let first = digits.iter().position(|digit| *digit > 0).unwrap_or(0);
            for patterns in bars {
                let mut last = Last::new(self, patterns, state, &digits);
                last.try_with(first);
                let (sum, cuts) = (last.sum, last.cuts);
                if cuts > 0 {
                    self.sums[state as usize] = sum;
                    self.bought[state as usize] = Some((patterns.bar, cuts as u32));
                }
            }
        }
        true
    }

    /// One bar of the rack more. Whether it was not stopped.
    fn layer(&mut self, patterns: &Patterns, goes_on: &dyn Fn() -> bool) -> bool {
        let mut from = vec![0; self.sums.len()];
        for state in (1..self.grid.states).rev() {
            if state % ASKED_EVERY == 0 && !goes_on() {
                return false;
            }
            let digits = self.grid.digits(state);
            let mut last = Last::new(self, patterns, state, &digits);
            last.try_all(0, self.model.bars[patterns.bar].room, 0);
            let (sum, cuts) = (last.sum, last.cuts);
            self.sums[state as usize] = sum;
            from[state as usize] = cuts as u32;
        }
        self.layers.push((patterns.bar, from));
        true
    }

    fn plan(&self) -> Found {
        let mut state = self.grid.states - 1;
        if self.sums[state as usize].is_none() {
            return Found::Nothing;
        }
        let mut plan: Plan = Vec::new();
        let mut push = |bar: usize, cuts: u64| {
            let digits = self.grid.digits(cuts).into_iter().enumerate();
            let pattern = Pattern { bar, cuts: digits.filter(|(_, count)| *count > 0).collect() };
            match plan.iter_mut().find(|(known, _)| *known == pattern) {
                Some((_, times)) => *times += 1,
                None => plan.push((pattern, 1)),
            }
        };
        for (bar, from) in self.layers.iter().rev() {
            let cuts = u64::from(from[state as usize]);
            if cuts > 0 {
                push(*bar, cuts);
                state -= cuts;
            }
        }
        while let Some((bar, cuts)) = self.bought[state as usize] {
            push(bar, u64::from(cuts));
            state -= u64::from(cuts);
        }
        Found::Plan(plan)
    }
}
