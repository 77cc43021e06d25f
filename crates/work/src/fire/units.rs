//! Which tasks are one step: what is drawn to one section, and what falls in one cut.

use crate::job::circles::circle;
use crate::job::kind::is_slit;
use crate::job::neck::are_one_plate;
use crate::job::rules::Rule;
use crate::job::site::Site;
use crate::job::task::Task;
use fh_core::metal::Shape;
use fh_core::plan::{Form, Operation};

/// Tasks that are one step: parts that lie on end and are drawn to one and the same section.
pub(crate) fn units(site: &Site<'_>, tasks: &[Task]) -> Vec<Vec<usize>> {
    let mut units: Vec<Vec<usize>> = Vec::new();
    let mut last_draw: Option<(usize, usize)> = None;
    let mut last_plate: Option<(Task, usize)> = None;
    for (number, task) in tasks.iter().enumerate() {
        if is_flattened(site, task) {
            let joined = last_plate.filter(|(before, _)| are_one(site, before, task));
            let unit = joined.map_or(units.len(), |(_, unit)| unit);
            match units.get_mut(unit) {
                Some(members) => members.push(number),
                None => units.push(vec![number]),
            }
            last_plate = Some((*task, unit));
            continue;
        }
        let is_drawn = |at: &usize| task.operation == Operation::Draw && !site.passes_through(*at);
        let Some(at) = task.part.filter(is_drawn) else {
            match one_cut(site, tasks, number, &units) {
                Some(unit) => units[unit].push(number),
                None => units.push(vec![number]),
            }
            continue;
        };
        let joined = last_draw
            .filter(|(before, _)| site.beside(*before)[1] == Some(at) || are_rods_of_one_slit(site, *before, at))
            .filter(|(before, _)| drawn_alike(site, *before, at));
        let unit = joined.map_or(units.len(), |(_, unit)| unit);
        if joined.is_some() {
            units[unit].push(number);
        } else {
            units.push(vec![number]);
        }
        last_draw = Some((at, unit));
    }
    units
}

/// Whether a task makes a plate of its part in one go.
fn is_flattened(site: &Site<'_>, task: &Task) -> bool {
    let flattens = matches!(task.operation, Operation::Flatten | Operation::Spread);
    flattens && !is_slit(site, task) && task.part.is_some_and(|at| !site.passes_through(at))
}

/// Whether two zones of one plate are forged alike, as one.
fn are_one(site: &Site<'_>, one: &Task, other: &Task) -> bool {
    let parts = |task: &Task| task.part.and_then(|at| site.part(at));
    let beside = one.part.is_some_and(|at| site.beside(at)[1] == other.part);
    beside && parts(one).zip(parts(other)).is_some_and(|(one, other)| are_one_plate(site, one, other))
}

/// The units without those that would wait for each other in a circle: of these each task is a step of its own.
pub(crate) fn apart_where_they_wait(mut units: Vec<Vec<usize>>, tasks: usize, rules: &[Rule]) -> Vec<Vec<usize>> {
    loop {
        let mut unit_of = vec![0; tasks];
        for (unit, members) in units.iter().enumerate() {
            members.iter().for_each(|task| unit_of[*task] = unit);
        }
        let between = |rule: &Rule| Rule { before: unit_of[rule.before], after: unit_of[rule.after], ..*rule };
        let lifted: Vec<Rule> = rules.iter().map(between).filter(|rule| rule.before != rule.after).collect();
        let Some(circle) = circle(units.len(), &lifted) else { return units };
        let joined = circle.into_iter().map(|rule| lifted[rule].before).find(|unit| units[*unit].len() > 1);
        // Single tasks were freed of circles before.
        let Some(joined) = joined else { return units };
        let members = std::mem::take(&mut units[joined]);
        let mut members = members.into_iter();
        units[joined].extend(members.next());
        units.extend(members.map(|task| vec![task]));
    }
}

/// The unit that a cut belongs to: what is trimmed beside the rest of the bar falls with it, in one and the same cut.
fn one_cut(site: &Site<'_>, tasks: &[Task], number: usize, units: &[Vec<usize>]) -> Option<usize> {
    let is_cut = |task: &Task| {
        let form = task.part.map(|at| &site.flat[at].segment.form);
        matches!(
            (task.operation, form),
            (Operation::PartOff, Some(Form::Hold(_))) | (Operation::Trim, Some(Form::Trim(_)))
        )
    };
    let own = tasks[number];
    let beside = site.beside(own.part.filter(|_| is_cut(&own))?);
    let is_other = |task: &Task| is_cut(task) && beside.contains(&task.part) && task.operation != own.operation;
    units.iter().position(|unit| unit.iter().any(|task| is_other(&tasks[*task])))
}

/// Whether two parts are branches of one slit that is closed at both ends: only together do they grow longer.
fn are_rods_of_one_slit(site: &Site<'_>, one: usize, other: usize) -> bool {
    let split = |at: usize| site.split_of(at).map(|(split, _)| split);
    split(one).is_some_and(|at| split(other) == Some(at) && site.is_closed_slit(at))
}

/// Whether two parts have one section all along, and the same.
fn drawn_alike(site: &Site<'_>, one: usize, other: usize) -> bool {
    let section = |at: usize| match site.part(at)?.balance.shape {
        Some(Shape::Prism { section, .. }) => Some(section),
        _ => None,
    };
    section(one).is_some_and(|own| section(other) == Some(own))
}
