//! Best fit: the longest piece first, each into the started bar that it fills best, and where none takes it into a new one.

use super::model::{Bar, Model, Pattern, Plan};

struct Started {
    bar: usize,
    room: i64,
    cuts: Vec<(usize, u64)>,
}

/// A plan for so many of each item, from so many of each bar; what found no bar is left in `wanted`.
///
/// What costs least for its length is started first, so the rack before the merchant.
pub(super) fn best_fit(model: &Model, wanted: &mut [u64], mut stock: Vec<Option<u64>>) -> Plan {
    let order = cheapest_first(model);
    let narrowest: Vec<Vec<i64>> = model.bars.iter().map(narrowest).collect();
    // Bars that still take something, and those that take nothing any more.
    let mut started: Vec<Started> = Vec::new();
    let mut full = Vec::new();
    for (item, wanted) in wanted.iter_mut().enumerate() {
        while *wanted > 0 {
            let fitting = started.iter().enumerate().filter_map(|(at, bar)| {
                let take = model.bars[bar.bar].takes[item]?;
                (take.width <= bar.room).then_some((bar.room - take.width, at))
            });
            let at = match fitting.min() {
                Some((_, at)) => at,
                None => {
                    let Some(bar) = start(model, item, &order, &mut stock) else { break };
                    started.push(bar);
                    started.len() - 1
                }
            };
            let bar = &mut started[at];
            let Some(take) = model.bars[bar.bar].takes[item] else { break };
            let fits = u64::try_from(bar.room / take.width.max(1)).unwrap_or(0).min(*wanted).max(1);
            bar.room -= take.width * i64::try_from(fits).unwrap_or(0);
            bar.cuts.push((item, fits));
            *wanted -= fits;
            if bar.room < narrowest[bar.bar][item] {
                full.push(started.swap_remove(at));
            }
        }
    }
    full.extend(started);
    gathered(full)
}

/// For each item the narrowest that the bar takes of it and those after it.
fn narrowest(bar: &Bar) -> Vec<i64> {
    let mut least = i64::MAX;
    let widths = bar.takes.iter().rev().map(|take| {
        least = least.min(take.map_or(i64::MAX, |take| take.width));
        least
    });
    let mut widths: Vec<i64> = widths.collect();
    widths.reverse();
    widths
}

fn start(model: &Model, item: usize, order: &[usize], stock: &mut [Option<u64>]) -> Option<Started> {
    let bar = *order.iter().find(|&&bar| model.bars[bar].takes[item].is_some() && stock[bar] != Some(0))?;
    if let Some(count) = &mut stock[bar] {
        *count -= 1;
    }
    Some(Started { bar, room: model.bars[bar].room, cuts: Vec::new() })
}

/// Bars by their cost for a length of room, then the shortest first.
fn cheapest_first(model: &Model) -> Vec<usize> {
    let mut order: Vec<usize> = (0..model.bars.len()).filter(|&bar| model.bars[bar].room > 0).collect();
    order.sort_by(|&a, &b| {
        let (a, b) = (&model.bars[a], &model.bars[b]);
        let (cost_a, cost_b) = (i128::from(model.first_cost(a)), i128::from(model.first_cost(b)));
        let ratio = (cost_a * i128::from(b.room)).cmp(&(cost_b * i128::from(a.room)));
        ratio.then(a.length.cmp(&b.length))
    });
    order
}

fn gathered(started: Vec<Started>) -> Plan {
    let mut plan: Plan = Vec::new();
    for bar in started {
        let pattern = Pattern { bar: bar.bar, cuts: bar.cuts };
        match plan.iter_mut().find(|(known, _)| *known == pattern) {
            Some((_, times)) => *times += 1,
            None => plan.push((pattern, 1)),
        }
    }
    plan
}
