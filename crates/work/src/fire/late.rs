//! What waits, in an order that was found: brushing until it is closed in, drilling until the bar is cold anyway.

use crate::fire::bench::Bench;
use fh_core::plan::Operation;

/// What is brushed is brushed just before it is closed in, not while it still goes into the fire.
pub(crate) fn brush_late(bench: &Bench<'_, '_>, order: &mut Vec<usize>) {
    let brushed: Vec<usize> = order
        .iter()
        .copied()
        .filter(|unit| bench.units[*unit].iter().all(|task| bench.tasks[*task].operation == Operation::Brush))
        .collect();
    for unit in brushed {
        order.retain(|other| *other != unit);
        let place = order.iter().position(|other| waits(bench, unit, *other)).unwrap_or(order.len());
        order.insert(place, unit);
    }
}

/// Holes are drilled in one sitting: the last time that the bar is cold anyway before something waits for them.
pub(crate) fn drill_late(bench: &Bench<'_, '_>, order: &mut Vec<usize>) {
    let drilled: Vec<usize> = order.iter().copied().filter(|unit| is_drilled(bench, *unit)).collect();
    for unit in drilled {
        let Some(from) = order.iter().position(|other| *other == unit) else { continue };
        order.remove(from);
        // A bent bar does not lie flat under the drill.
        let waits = |other: &usize| waits(bench, unit, *other) || bends(bench, *other);
        let until = order.iter().position(waits).unwrap_or(order.len()).max(from);
        let place = (from..=until).rev().find(|place| is_cold(bench, order, *place)).unwrap_or(from);
        order.insert(place, unit);
    }
}

fn waits(bench: &Bench<'_, '_>, unit: usize, other: usize) -> bool {
    bench.graph.after[unit].contains(&other)
}

fn bends(bench: &Bench<'_, '_>, unit: usize) -> bool {
    bench.units[unit].iter().any(|task| bench.tasks[*task].operation.is_bending())
}

fn is_drilled(bench: &Bench<'_, '_>, unit: usize) -> bool {
    let drills = |task: &usize| bench.tasks[*task].operation == Operation::Drill;
    !bench.loads[unit].hot && bench.units[unit].iter().all(drills)
}

/// Whether the bar is cold at a place of an order, whatever is drilled there.
fn is_cold(bench: &Bench<'_, '_>, order: &[usize], place: usize) -> bool {
    let hot = |unit: &usize| bench.loads[*unit].hot;
    let before = order[..place].last().map(|unit| &bench.loads[*unit]);
    let is_done_with = || !order[place..].iter().any(hot);
    before.is_none_or(|load| load.trues || load.cools) || is_done_with()
}
