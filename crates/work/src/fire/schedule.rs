//! The proposal: an order that keeps every rule that can be kept, in the fewest heats found, the bar well held.

use crate::fire::bench::Bench;
use crate::fire::effort::minutes;
use crate::fire::graph::Graph;
use crate::fire::hearth::{Fire, heat_minutes};
use crate::fire::heating::Load;
use crate::fire::search::search;
use crate::fire::units::{apart_where_they_wait, units};
use crate::job::rules::Rule;
use crate::job::site::Site;
use crate::job::task::{Task, as_seen_by};
use fh_core::plan::Operation;

/// Puts the tasks of a bar in order, by rules without a circle: their numbers, step after step.
pub(crate) fn schedule(site: &Site<'_>, fire: Option<&Fire>, tasks: &[Task], rules: &[Rule]) -> Vec<Vec<usize>> {
    let units = apart_where_they_wait(units(site, tasks), tasks.len(), rules);
    let graph = Graph::new(&units, tasks.len(), rules);
    let load = |unit: &Vec<usize>| {
        let own: Vec<Task> = unit.iter().map(|task| tasks[*task]).collect();
        as_seen_by(site, &own, |site| {
            let work = own.iter().map(|task| minutes(site, fire, task)).sum();
            Load::new(site, &own, work, heat_minutes(site, fire, &own))
        })
    };
    let loads: Vec<Load> = units.iter().map(load).collect();
    let bench = Bench { site, tasks, units: &units, loads: &loads, graph: &graph };
    let mut order = search(&bench);
    brush_late(tasks, &units, &graph, &mut order);
    order.into_iter().map(|unit| units[unit].clone()).collect()
}

/// What is brushed is brushed just before it is closed in, not while it still goes into the fire.
fn brush_late(tasks: &[Task], units: &[Vec<usize>], graph: &Graph, order: &mut Vec<usize>) {
    let brushed: Vec<usize> = order
        .iter()
        .copied()
        .filter(|unit| units[*unit].iter().all(|task| tasks[*task].operation == Operation::Brush))
        .collect();
    for unit in brushed {
        order.retain(|other| *other != unit);
        let waiting = |other: &usize| graph.after[unit].contains(other);
        let place = order.iter().position(waiting).unwrap_or(order.len());
        order.insert(place, unit);
    }
}
