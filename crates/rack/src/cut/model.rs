//! The problem as the methods want it: equal pieces merged, numbers divided by what divides all of them.

use super::problem::{Goal, Problem};
use std::cmp::Ordering;
use std::collections::BTreeMap;

/// How a piece comes out of a bar.
#[derive(Clone, Copy, Debug)]
pub(super) struct Take {
    /// Length and kerf, in the model's unit.
    pub(super) width: i64,
    /// Cost beside the bar.
    pub(super) extra: i64,
}

/// Bars of one length.
#[derive(Clone, Debug)]
pub(super) struct Bar {
    /// Place among the problem's supplies.
    pub(super) supply: usize,
    /// Length, in the model's unit.
    pub(super) length: i64,
    /// What the widths of the pieces may add up to.
    pub(super) room: i64,
    /// How many; never more than there are pieces.
    pub(super) count: Option<u64>,
    pub(super) price: i64,
    /// For each item how it is taken from this bar, if it can be.
    pub(super) takes: Vec<Option<Take>>,
}

/// Pieces that are alike.
#[derive(Clone, Debug)]
pub(super) struct Item {
    /// Places among the problem's demands, and how many of each.
    pub(super) demands: Vec<(usize, u64)>,
    pub(super) count: u64,
}

/// Cuts of one bar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Pattern {
    /// Place among the model's bars.
    pub(super) bar: usize,
    /// How many of each item, items without left out.
    pub(super) cuts: Vec<(usize, u64)>,
}

/// A plan: patterns and how often.
pub(super) type Plan = Vec<(Pattern, u64)>;

/// The most goals that are compared, with the tie-breaker.
pub(super) const MOST_GOALS: usize = 6;

/// What a plan comes to, goal by goal; less is better, so the longest offcut counts below 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Sum(pub(super) [i64; MOST_GOALS]);

#[derive(Clone, Debug)]
pub(super) struct Model {
    pub(super) bars: Vec<Bar>,
    pub(super) items: Vec<Item>,
    /// nm in the model's unit.
    pub(super) unit_nm: i64,
    kerf: i64,
    keep_from: Option<i64>,
    /// The goals as asked, and then the longest offcut: of equal plans the one that leaves most in one piece.
    pub(super) goals: Vec<Goal>,
}

impl Model {
    /// Items that fit no bar keep no take; [`Model::hopeless`] names them.
    pub(super) fn new(problem: &Problem) -> Self {
        let unit_nm = common_unit(problem);
        let items = merged(problem);
        let kerf = problem.kerf_nm / unit_nm;
        let pieces: u64 = items.iter().map(|item| item.count).sum();
        let bars = problem.supplies.iter().enumerate().filter(|(_, supply)| supply.count != Some(0));
        let bars = bars.map(|(at, supply)| {
            let room = (supply.length_nm - supply.end_nm + problem.kerf_nm) / unit_nm;
            let takes = items.iter().map(|item| {
                let first = &problem.demands[item.demands.first()?.0];
                let ways = first.ways.iter().filter(|way| way.section == supply.section);
                let takes = ways.map(|way| Take { width: way.length_nm / unit_nm + kerf, extra: way.extra });
                takes.filter(|take| take.width <= room).min_by_key(|take| (take.extra, take.width))
            });
            Bar {
                supply: at,
                length: supply.length_nm / unit_nm,
                room,
                count: supply.count.map(|count| count.min(pieces)),
                price: supply.price,
                takes: takes.collect(),
            }
        });
        let mut goals = problem.goals.clone();
        goals.truncate(MOST_GOALS - 1);
        if goals.last() != Some(&Goal::Longest) {
            goals.push(Goal::Longest);
        }
        let keep_from = problem.keep_from_nm.map(|nm| nm / unit_nm);
        Self { bars: bars.collect(), items, unit_nm, kerf, keep_from, goals }
    }

    /// The items that no bar is long enough for.
    pub(super) fn hopeless(&self) -> Vec<usize> {
        (0..self.items.len()).filter(|&item| self.bars.iter().all(|bar| bar.takes[item].is_none())).collect()
    }

    /// The offcut of a bar of which so much is used, kerfs included.
    pub(super) fn offcut(&self, bar: &Bar, used: i64) -> i64 {
        (bar.length - used).max(0)
    }

    /// What a pattern uses of its bar, kerfs included.
    pub(super) fn used(&self, pattern: &Pattern) -> i64 {
        let width = |&(item, count): &(usize, u64)| {
            self.bars[pattern.bar].takes[item].map_or(0, |take| take.width * i64::try_from(count).unwrap_or(0))
        };
        pattern.cuts.iter().map(width).sum()
    }

    /// What one bar cut so comes to.
    pub(super) fn worth(&self, pattern: &Pattern) -> Sum {
        let bar = &self.bars[pattern.bar];
        let offcut = self.offcut(bar, self.used(pattern));
        let pieces = pattern.cuts.iter().map(|&(item, count)| {
            let count = i64::try_from(count).unwrap_or(0);
            bar.takes[item].map_or((0, 0), |take| ((take.width - self.kerf) * count, take.extra * count))
        });
        let (length, extra) = pieces.fold((0, 0), |sum, piece| (sum.0 + piece.0, sum.1 + piece.1));
        let mut sum = [0; MOST_GOALS];
        for (value, goal) in sum.iter_mut().zip(&self.goals) {
            *value = match goal {
                Goal::Bars => 1,
                Goal::Length => bar.length,
                Goal::Cost => bar.price + extra,
                Goal::Scrap => {
                    bar.length - length - if self.keep_from.is_some_and(|from| offcut >= from) { offcut } else { 0 }
                }
                Goal::Longest => -if self.keep_from.is_none_or(|from| offcut >= from) { offcut } else { 0 },
            };
        }
        Sum(sum)
    }

    /// Two plans together, or one `times` over.
    pub(super) fn add(&self, mut one: Sum, other: Sum, times: i64) -> Sum {
        for (at, goal) in self.goals.iter().enumerate() {
            one.0[at] = match goal {
                Goal::Longest => one.0[at].min(other.0[at]),
                _ => one.0[at] + other.0[at] * times,
            };
        }
        one
    }

    /// What a plan comes to.
    pub(super) fn total(&self, plan: &Plan) -> Sum {
        let each = plan.iter().filter(|(_, times)| *times > 0);
        each.fold(Sum([0; MOST_GOALS]), |sum, (pattern, times)| {
            self.add(sum, self.worth(pattern), i64::try_from(*times).unwrap_or(i64::MAX))
        })
    }

    /// The first goal of one bar and of one piece from it, as column generation counts them.
    pub(super) fn first_cost(&self, bar: &Bar) -> i64 {
        match self.goals.first() {
            Some(Goal::Length | Goal::Scrap) => bar.length,
            Some(Goal::Cost) => bar.price,
            _ => 1,
        }
    }

    /// What an item costs beside the bar, by the first goal.
    pub(super) fn first_extra(&self, take: &Take) -> i64 {
        if self.goals.first() == Some(&Goal::Cost) { take.extra } else { 0 }
    }
}

impl Sum {
    pub(super) fn better_than(&self, other: &Self) -> bool {
        self.0.cmp(&other.0) == Ordering::Less
    }
}

fn common_unit(problem: &Problem) -> i64 {
    let lengths = problem.supplies.iter().flat_map(|supply| [supply.length_nm, supply.end_nm]);
    let pieces = problem.demands.iter().flat_map(|demand| demand.ways.iter().map(|way| way.length_nm));
    let rest = std::iter::once(problem.kerf_nm).chain(problem.keep_from_nm);
    lengths.chain(pieces).chain(rest).fold(0, gcd).max(1)
}

/// The greatest number that divides both; of 0 and `b` that is `b`.
pub(super) fn gcd(a: i64, b: i64) -> i64 {
    let (mut a, mut b) = (a, b);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a.abs()
}

/// Equal demands as one item, the widest first.
fn merged(problem: &Problem) -> Vec<Item> {
    let mut by_ways = BTreeMap::new();
    for (at, demand) in problem.demands.iter().enumerate().filter(|(_, demand)| demand.count > 0) {
        let mut ways = demand.ways.clone();
        ways.sort();
        by_ways.entry(ways).or_insert_with(Vec::new).push((at, demand.count));
    }
    let widest = |ways: &[super::problem::Way]| ways.iter().map(|way| way.length_nm).max().unwrap_or(0);
    let mut items: Vec<_> = by_ways.into_iter().collect();
    items.sort_by_key(|(ways, _)| std::cmp::Reverse(widest(ways)));
    let item = |demands: Vec<(usize, u64)>| Item { count: demands.iter().map(|(_, count)| count).sum(), demands };
    items.into_iter().map(|(_, demands)| item(demands)).collect()
}
