//! The proposal: an order that keeps every rule that can be kept, in the fewest heats found, the bar well held.

use crate::fire::bench::Bench;
use crate::fire::effort::minutes;
use crate::fire::graph::Graph;
use crate::fire::hands::is_alone;
use crate::fire::hearth::{Fire, heat_minutes};
use crate::fire::heating::Load;
use crate::fire::inward::Inward;
use crate::fire::late::{brush_late, drill_late};
use crate::fire::search::search;
use crate::fire::units::{apart_where_they_wait, units};
use crate::job::rules::Rule;
use crate::job::site::Site;
use crate::job::task::{Task, as_seen_by};

/// Puts the tasks of a bar in order, by rules without a circle: their numbers, step after step.
pub(crate) fn schedule(site: &Site<'_>, fire: Option<&Fire>, tasks: &[Task], rules: &[Rule]) -> Vec<Vec<usize>> {
    let units = apart_where_they_wait(units(site, tasks), tasks.len(), rules);
    let graph = Graph::new(&units, tasks.len(), rules);
    let of_unit = |unit: &Vec<usize>| -> Vec<Task> { unit.iter().map(|task| tasks[*task]).collect() };
    let load = |unit: &Vec<usize>| {
        let own = of_unit(unit);
        as_seen_by(site, &own, |site| {
            let work = own.iter().map(|task| minutes(site, fire, task)).sum();
            Load::new(site, &own, [work, heat_minutes(site, fire, &own)], is_alone(fire))
        })
    };
    let loads: Vec<Load> = units.iter().map(load).collect();
    let inward: Vec<Option<Inward>> = units.iter().map(|unit| Inward::of(site, &of_unit(unit))).collect();
    let bench = Bench { site, tasks, units: &units, loads: &loads, graph: &graph, inward: &inward };
    let mut order = search(&bench);
    brush_late(&bench, &mut order);
    drill_late(&bench, &mut order);
    order.into_iter().map(|unit| units[unit].clone()).collect()
}
