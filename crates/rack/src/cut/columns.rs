//! Column generation: the linear program over all patterns, solved with those that pay, and a bound in whole numbers.

use super::knapsack::{Care, Thing, best};
use super::model::{Model, Pattern, gcd};
use super::simplex::{Column, Simplex};

/// The linear program's answer for so many of each item from so many of each bar.
#[derive(Debug)]
pub(super) struct Relaxed {
    /// Patterns of the pool, and how often.
    pub(super) times: Vec<(usize, f64)>,
    /// No plan has less of the first goal: a theorem, worked out in whole numbers.
    pub(super) bound: i64,
    /// Whether pieces are left that no bar is there for.
    pub(super) short: bool,
}

/// Below this a reduced cost, for a bar that costs 1, is 0.
const PAYS: f64 = 1e-9;
const MOST_ROUNDS: usize = 6_000;
/// The most rounds times the square of the rows, which is what a round takes.
const MOST_WORK: usize = 1_000_000_000;

/// Solves it. Patterns found join `pool`.
///
/// The prices that are tried lie between those of the basis and those of the best bound so far, which takes far fewer patterns
/// (P. Wentges, *Weighted Dantzig-Wolfe decomposition for linear mixed-integer programming*, International Transactions in
/// Operational Research 4, 1997); where such prices find none, those of the basis are taken.
pub(super) fn relax(
    model: &Model,
    wanted: &[u64],
    stock: &[Option<u64>],
    pool: &mut Vec<Pattern>,
    goes_on: &dyn Fn() -> bool,
) -> Relaxed {
    let mut master = Master::new(model, wanted, stock);
    // The first prices go by width, which gives the bound of the length that is cut.
    let by_width = master.by_width();
    let first = master.priced(&by_width, &by_width, Care::Quick);
    let mut bound = first.bound;
    let mut best = Some((first.close, by_width));
    for _ in 0..master.rounds() {
        let duals = master.simplex.duals();
        if let Some(slack) = master.slack(&duals) {
            if master.simplex.enter(slack) {
                continue;
            }
            break;
        }
        if !goes_on() {
            break;
        }
        let between = best.as_ref().map(|(_, best)| mixed(best, &duals));
        let tries = between.iter().map(|prices| (prices, Care::Quick));
        let mut paying = None;
        for (prices, care) in tries.chain([(&duals, Care::Quick), (&duals, Care::Thorough)]) {
            let priced = master.priced(prices, &duals, care);
            bound = bound.max(priced.bound);
            if best.as_ref().is_none_or(|(close, _)| priced.close > *close) {
                best = Some((priced.close, prices.clone()));
            }
            paying = priced.pattern;
            if paying.is_some() || priced.sure {
                break;
            }
        }
        let settled = bound as f64 >= master.simplex.value() - 1e-6;
        let Some(pattern) = paying.filter(|_| !settled) else { break };
        let column = master.column(&pattern, pool.len());
        pool.push(pattern);
        if !master.simplex.enter(column) {
            break;
        }
    }
    master.answer(bound)
}

/// How much of the prices of the best bound is taken.
const OF_THE_BEST: f64 = 0.6;

fn mixed(best: &[f64], now: &[f64]) -> Vec<f64> {
    best.iter().zip(now).map(|(best, now)| OF_THE_BEST * best + (1.0 - OF_THE_BEST) * now).collect()
}

struct Master<'a> {
    model: &'a Model,
    wanted: &'a [u64],
    stock: &'a [Option<u64>],
    /// The row of each item that is wanted, and of each bar that is limited.
    item_rows: Vec<Option<usize>>,
    bar_rows: Vec<Option<usize>>,
    simplex: Simplex,
}

struct Priced {
    pattern: Option<Pattern>,
    bound: i64,
    /// The bound before it is made a whole number.
    close: f64,
    /// Whether the prices are those of the basis, and no pattern can pay at them.
    sure: bool,
}

impl<'a> Master<'a> {
    fn new(model: &'a Model, wanted: &'a [u64], stock: &'a [Option<u64>]) -> Self {
        let mut rows = 0;
        let mut row = |there: bool| {
            rows += usize::from(there);
            there.then(|| rows - 1)
        };
        let item_rows: Vec<Option<usize>> = wanted.iter().map(|count| row(*count > 0)).collect();
        let bar_rows: Vec<Option<usize>> = stock.iter().map(|count| row(count.is_some())).collect();
        let mut basis = vec![Column { cost: 0.0, entries: Vec::new(), pattern: None, stand_in: false }; rows];
        let mut right = vec![0.0; rows];
        let stand_in = stand_in_cost(model);
        for (item, row) in item_rows.iter().enumerate() {
            if let Some(row) = *row {
                right[row] = wanted[item] as f64;
                basis[row] = Column { cost: stand_in, entries: vec![(row, 1.0)], pattern: None, stand_in: true };
            }
        }
        for (row, count) in bar_rows.iter().zip(stock) {
            if let (Some(row), Some(count)) = (*row, *count) {
                right[row] = count as f64;
                basis[row].entries = vec![(row, 1.0)];
            }
        }
        let simplex = Simplex::new(basis, right);
        Self { model, wanted, stock, item_rows, bar_rows, simplex }
    }

    fn rounds(&self) -> usize {
        let rows = self.item_rows.iter().chain(&self.bar_rows).flatten().count();
        MOST_ROUNDS.min(MOST_WORK / (rows * rows).max(1))
    }

    /// Prices by the least that the width of a piece costs in any bar.
    fn by_width(&self) -> Vec<f64> {
        let rows = self.item_rows.iter().chain(&self.bar_rows).flatten().count();
        let mut prices = vec![0.0; rows];
        for (item, row) in self.item_rows.iter().enumerate() {
            let costs = self.model.bars.iter().filter_map(|bar| {
                let take = bar.takes[item]?;
                Some(self.model.first_cost(bar) as f64 * take.width as f64 / bar.room.max(1) as f64)
            });
            if let Some(row) = *row {
                prices[row] = costs.fold(f64::INFINITY, f64::min);
            }
        }
        prices.iter().map(|price| if price.is_finite() { *price } else { 0.0 }).collect()
    }

    fn column(&self, pattern: &Pattern, at: usize) -> Column {
        let bar = &self.model.bars[pattern.bar];
        let rows = pattern.cuts.iter().filter_map(|&(item, count)| Some((self.item_rows[item]?, count as f64)));
        let entries = rows.chain(self.bar_rows[pattern.bar].map(|row| (row, 1.0))).collect();
        let extra = |&(item, count): &(usize, u64)| {
            bar.takes[item].map_or(0.0, |take| self.model.first_extra(&take) as f64 * count as f64)
        };
        let cost = self.model.first_cost(bar) as f64 + pattern.cuts.iter().map(extra).sum::<f64>();
        Column { cost, entries, pattern: Some(at), stand_in: false }
    }

    /// The slack that pays most: more pieces than wanted, or a bar less.
    fn slack(&self, duals: &[f64]) -> Option<Column> {
        let slack =
            |row: usize, sign: f64| Column { cost: 0.0, entries: vec![(row, sign)], pattern: None, stand_in: false };
        let items = self.item_rows.iter().flatten().map(|&row| (duals[row], row, -1.0));
        let bars = self.bar_rows.iter().flatten().map(|&row| (-duals[row], row, 1.0));
        let (least, row, sign) = items.chain(bars).min_by(|a, b| a.0.total_cmp(&b.0))?;
        (least < -1e-7).then(|| slack(row, sign))
    }

    /// The pattern that pays most, and the bound that these prices prove.
    fn priced(&self, prices: &[f64], duals: &[f64], care: Care) -> Priced {
        let dearest = self.model.bars.iter().map(|bar| self.model.first_cost(bar)).max().unwrap_or(1).max(1);
        let scale = (2_f64.powi(50) / (dearest as f64 * 8.0)).max(1.0).floor();
        let whole = |row: &Option<usize>| row.map_or(0, |row| (prices[row] * scale).floor().max(0.0) as i64);
        let whole_prices: Vec<i64> = self.item_rows.iter().map(whole).collect();
        let mut sure = prices == duals;
        let mut pays: Option<(f64, Pattern)> = None;
        let mut bests = Vec::new();
        for (at, bar) in self.model.bars.iter().enumerate().filter(|(at, _)| self.stock[*at] != Some(0)) {
            let found = best(self.things(at, &whole_prices, scale), bar.room, care);
            bests.push((at, found.at_most));
            sure &= found.at_most == found.value;
            let mut pattern = Pattern { bar: at, cuts: found.cuts };
            pattern.cuts.sort_unstable();
            let reduced = self.reduced(&pattern, duals);
            if reduced < -PAYS && pays.as_ref().is_none_or(|(least, _)| reduced < *least) {
                pays = Some((reduced, pattern));
            }
        }
        let (bound, close) = self.bound(&whole_prices, &bests, scale as i64);
        Priced { pattern: pays.map(|(_, pattern)| pattern), bound, close, sure }
    }

    /// What a bar cut so costs more than its pieces are worth, for each unit of its cost.
    fn reduced(&self, pattern: &Pattern, duals: &[f64]) -> f64 {
        let column = self.column(pattern, 0);
        let worth: f64 = column.entries.iter().map(|&(row, value)| duals[row] * value).sum();
        (column.cost - worth) / (1.0 + self.model.first_cost(&self.model.bars[pattern.bar]) as f64)
    }

    fn things(&self, at: usize, prices: &[i64], scale: f64) -> Vec<Thing> {
        let takes = self.model.bars[at].takes.iter().enumerate();
        let things = takes.filter_map(|(item, take)| {
            let take = (*take)?;
            let value = prices[item] - (self.model.first_extra(&take) as f64 * scale) as i64;
            (value > 0 && self.wanted[item] > 0).then(|| Thing {
                item,
                width: take.width,
                value,
                most: self.wanted[item],
            })
        });
        things.collect()
    }

    /// What no plan is below, by prices `Y` of the pieces and the most `Z` that one bar of each length can be worth at them.
    ///
    /// Every plan has `Σ Y d ≤ Σ (worth of its bars)`, so with a scale `S` not below `Z / c` of any bar that can be bought its cost
    /// is at least `(Σ Y d − Σ n max(0, Z − c S)) / S`, the second sum over the limited bars: all in whole numbers.
    fn bound(&self, prices: &[i64], bests: &[(usize, i64)], scale: i64) -> (i64, f64) {
        let mut scale = i128::from(scale);
        for &(at, most) in bests.iter().filter(|(at, _)| self.stock[*at].is_none()) {
            let cost = i128::from(self.model.first_cost(&self.model.bars[at]));
            if cost == 0 {
                return (0, 0.0);
            }
            scale = scale.max((i128::from(most) + cost - 1) / cost);
        }
        let worth = prices.iter().zip(self.wanted).map(|(price, count)| i128::from(*price) * i128::from(*count));
        let free = bests.iter().filter_map(|&(at, most)| {
            let cost = i128::from(self.model.first_cost(&self.model.bars[at]));
            Some(i128::from(self.stock[at]?) * (i128::from(most) - cost * scale).max(0))
        });
        let left = worth.sum::<i128>() - free.sum::<i128>();
        let step = i128::from(self.cost_step());
        let least = (left.max(0) + scale - 1) / scale;
        (i64::try_from((least + step - 1) / step * step).unwrap_or(i64::MAX), left as f64 / scale as f64)
    }

    /// What every cost of a plan is a multiple of.
    fn cost_step(&self) -> i64 {
        let extras = self.model.bars.iter().flat_map(|bar| bar.takes.iter().flatten());
        let extras = extras.map(|take| self.model.first_extra(take));
        self.model.bars.iter().map(|bar| self.model.first_cost(bar)).chain(extras).fold(0, gcd).max(1)
    }

    fn answer(&self, bound: i64) -> Relaxed {
        let used = self.simplex.solution().filter(|(_, times)| *times > 1e-9);
        let short = self.simplex.solution().any(|(column, times)| column.stand_in && times > 1e-6);
        let times = used.filter_map(|(column, times)| Some((column.pattern?, times))).collect();
        Relaxed { times, bound, short }
    }
}

/// Dearer than any way to cut one piece.
fn stand_in_cost(model: &Model) -> f64 {
    let extras = model.bars.iter().flat_map(|bar| bar.takes.iter().flatten()).map(|take| model.first_extra(take));
    let dearest = model.bars.iter().map(|bar| model.first_cost(bar)).max().unwrap_or(1);
    2.0 * (dearest + extras.max().unwrap_or(0)) as f64 + 1.0
}
