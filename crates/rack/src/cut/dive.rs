//! From the linear program to a plan: whole bars first, then those that are nearly whole, and what is left priced again.

use super::columns::{Relaxed, relax};
use super::fit::best_fit;
use super::model::{Model, Pattern, Plan};
use super::states::{Found, exact};

/// How the fractions are rounded.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rounding {
    /// From this share of a bar on it is taken whole.
    pub(super) up_from: f64,
    /// Of those below it the largest is taken, or the one after so many.
    pub(super) skip: usize,
}

/// Steps that the exact search of the last pieces may take.
const LAST_STEPS: u64 = 1_000_000;

/// A plan for so many of each item, from the linear program for them; what is left in `wanted` found no bar.
pub(super) fn dive(
    model: &Model,
    wanted: &mut [u64],
    mut stock: Vec<Option<u64>>,
    pool: &mut Vec<Pattern>,
    start: &Relaxed,
    rounding: Rounding,
    goes_on: &dyn Fn() -> bool,
) -> Plan {
    let mut plan: Plan = Vec::new();
    let mut times = start.times.clone();
    loop {
        if round(&mut times, pool, rounding, wanted, &mut stock, &mut plan) == 0 {
            plan.extend(best_fit(model, wanted, stock));
            return plan;
        }
        if wanted.iter().all(|count| *count == 0) {
            return plan;
        }
        if let Some(Found::Plan(rest)) = exact(model, wanted, &stock, LAST_STEPS, goes_on) {
            wanted.fill(0);
            plan.extend(rest);
            return plan;
        }
        times = relax(model, wanted, &stock, pool, goes_on).times;
    }
}

/// Takes whole bars, then those that are nearly whole, but one at least; how many it were.
fn round(
    times: &mut [(usize, f64)],
    pool: &[Pattern],
    rounding: Rounding,
    wanted: &mut [u64],
    stock: &mut [Option<u64>],
    plan: &mut Plan,
) -> u64 {
    times.sort_by(|a, b| b.1.fract().total_cmp(&a.1.fract()));
    let mut taken = 0;
    for &(at, often) in &*times {
        taken += take(&pool[at], often.floor() as u64, wanted, stock, plan);
    }
    let mut skip = if taken == 0 { rounding.skip } else { 0 };
    for &(at, often) in &*times {
        if often.fract() < rounding.up_from && taken > 0 {
            break;
        }
        if skip > 0 {
            skip -= 1;
            continue;
        }
        taken += take(&pool[at], 1, wanted, stock, plan);
    }
    taken
}

/// Cuts so many bars, as far as the pieces are wanted and the bars are there; how many it were.
fn take(pattern: &Pattern, times: u64, wanted: &mut [u64], stock: &mut [Option<u64>], plan: &mut Plan) -> u64 {
    let most = pattern.cuts.iter().map(|&(item, count)| wanted[item] / count.max(1)).min().unwrap_or(0);
    let times = times.min(most).min(stock[pattern.bar].unwrap_or(u64::MAX));
    if times == 0 {
        return 0;
    }
    for &(item, count) in &pattern.cuts {
        wanted[item] -= count * times;
    }
    if let Some(count) = &mut stock[pattern.bar] {
        *count -= times;
    }
    plan.push((pattern.clone(), times));
    times
}
