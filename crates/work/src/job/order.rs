//! The order of a plan: the smith's own steps, or the proposal, each with the tasks that it does.

use crate::job::circles::without_cycles;
use crate::job::loose::loose_first;
use crate::job::rules::{Rule, bar_rules};
use crate::job::site::Site;
use crate::job::task::{Task, bar_tasks, on_the_way, operations, piece_tasks};
use crate::job::why::Why;
use fh_core::joints::Lookup;
use fh_core::plan::{Deed, Operation, Plan, Step};
use std::collections::HashMap;

/// Everything that has to be done, and what must come before what.
pub(crate) struct Job {
    /// All tasks: bar after bar, then those of the whole piece.
    pub(crate) tasks: Vec<Task>,
    /// The rules between them, by their numbers.
    pub(crate) rules: Vec<Rule>,
    /// Where the tasks of each bar begin; the last is where those of the piece begin.
    pub(crate) starts: Vec<usize>,
}

impl Job {
    pub(crate) fn new(plan: &Plan, sites: &[Site<'_>]) -> Self {
        let (mut tasks, mut rules, mut starts) = (Vec::new(), Vec::new(), Vec::new());
        for site in sites {
            let own = bar_tasks(site);
            let first = tasks.len();
            starts.push(first);
            let lift = |rule: Rule| Rule { before: rule.before + first, after: rule.after + first, ..rule };
            rules.extend(bar_rules(site, &own).into_iter().map(lift));
            tasks.extend(own);
        }
        starts.push(tasks.len());
        if !tasks.is_empty() {
            let first = tasks.len();
            tasks.extend(piece_tasks(plan));
            piece_rules(plan, sites, &tasks, first, &mut rules);
        }
        Self { tasks, rules, starts }
    }

    /// The rules that can be kept together, and those that have to give way.
    pub(crate) fn ruled(&self) -> Ruled {
        let (mut kept, mut dropped) = (Vec::new(), Vec::new());
        for bar in self.starts.windows(2) {
            let (first, end) = (bar[0], bar[1]);
            let own = |rule: &&Rule| (first..end).contains(&rule.before) && (first..end).contains(&rule.after);
            let lower = |rule: &Rule| Rule { before: rule.before - first, after: rule.after - first, ..*rule };
            let lift = |rule: Rule| Rule { before: rule.before + first, after: rule.after + first, ..rule };
            let rules: Vec<Rule> = self.rules.iter().filter(own).map(lower).collect();
            let (of_bar, given_way) = without_cycles(end - first, &rules);
            kept.push(of_bar);
            dropped.extend(given_way.into_iter().map(lift));
        }
        Ruled { kept, dropped }
    }

    /// The number of each task.
    pub(crate) fn numbers(&self) -> HashMap<Task, usize> {
        self.tasks.iter().enumerate().map(|(number, task)| (*task, number)).collect()
    }
}

/// The rules of a job without the circles in them.
pub(crate) struct Ruled {
    /// The rules of each bar, by the numbers of its own tasks.
    pub(crate) kept: Vec<Vec<Rule>>,
    /// Those that had to give way, by the numbers of all tasks.
    pub(crate) dropped: Vec<Rule>,
}

/// Joints after the bars that they hold, and brush and wax after all.
fn piece_rules(plan: &Plan, sites: &[Site<'_>], tasks: &[Task], first: usize, rules: &mut Vec<Rule>) {
    let lookup = Lookup::new(plan);
    let last_of = |bar: usize| {
        let of = |task: &Task| task.bar == bar && task.operation == Operation::Check;
        tasks[..first].iter().position(of)
    };
    let brush = tasks.iter().rposition(|task| task.operation == Operation::Brush);
    let wax = tasks.iter().rposition(|task| task.operation == Operation::Wax);
    for (number, task) in tasks.iter().enumerate().skip(first) {
        if let Some(joint) = task.joint.and_then(|joint| plan.joints.get(joint)) {
            let members = joint.members().filter_map(|member| lookup.bar(&member.bar));
            for check in members.filter_map(last_of) {
                rules.push(Rule { before: check, after: number, why: Why::JoinLast });
            }
        }
        if task.operation == Operation::Weld {
            let fits = tasks.iter().enumerate().skip(first).filter(|(_, other)| other.operation == Operation::Fit);
            rules.extend(fits.map(|(fit, _)| Rule { before: number, after: fit, why: Why::WeldBeforeFit }));
        }
        let Some(brush) = brush.filter(|brush| *brush > number) else { continue };
        rules.push(Rule { before: number, after: brush, why: Why::FinishLast });
    }
    let fits =
        |wanted: usize| tasks.iter().skip(first).position(|task| task.joint == Some(wanted)).map(|at| first + at);
    for (loose, closed) in loose_first(plan) {
        if let (Some(before), Some(after)) = (fits(loose), fits(closed)) {
            rules.push(Rule { before, after, why: Why::LooseFirst });
        }
    }
    let (Some(brush), Some(wax)) = (brush, wax) else { return };
    for check in sites.iter().filter_map(|site| last_of(site.index)) {
        rules.push(Rule { before: check, after: brush, why: Why::FinishLast });
    }
    rules.push(Rule { before: brush, after: wax, why: Why::FinishLast });
}

/// A step with what it does, found in the plan.
#[derive(Clone, Debug)]
pub(crate) struct Ordered {
    pub(crate) step: Step,
    pub(crate) bar: usize,
    pub(crate) tasks: Vec<Task>,
    /// The parts and joints it names that are not there.
    pub(crate) strangers: Vec<String>,
}

/// Finds what steps name in the plan.
pub(crate) fn resolve(plan: &Plan, sites: &[Site<'_>], steps: Vec<Step>) -> Vec<Ordered> {
    steps.into_iter().map(|step| resolve_one(plan, sites, step)).collect()
}

fn resolve_one(plan: &Plan, sites: &[Site<'_>], step: Step) -> Ordered {
    let bar = step.bar_index();
    let (mut tasks, mut strangers) = (Vec::new(), Vec::new());
    let site = sites.get(bar);
    if site.is_none() {
        strangers.push(format!("bar {}", bar + 1));
    }
    for deed in &step.work {
        let task = Task::whole(bar, deed.operation);
        if let Some(joint) = deed.joint {
            let index = joint.saturating_sub(1) as usize;
            if index < plan.joints.len() {
                tasks.push(Task { bar: 0, joint: Some(index), ..task });
            } else {
                strangers.push(format!("joint {joint}"));
            }
            continue;
        }
        if deed.parts.is_empty() && site.is_some() {
            tasks.push(task);
        }
        for part in &deed.parts {
            let Some(site) = site else { continue };
            let Some(at) = site.bar.find_path(part) else {
                strangers.push(format!("part {part}"));
                continue;
            };
            match shape_made(site, at, deed) {
                Ok(to) => tasks.push(Task { part: Some(at), to, ..task }),
                Err(shape) => strangers.push(format!("shape {shape} of part {part}")),
            }
        }
    }
    Ordered { step, bar, tasks, strangers }
}

/// Which shape on the way a deed makes of a part, counted from 0; none where that is the finished one. An error is one that is not
/// there.
fn shape_made(site: &Site<'_>, at: usize, deed: &Deed) -> Result<Option<usize>, u32> {
    let Some(part) = site.part(at) else { return Ok(None) };
    match deed.to {
        Some(to) if (to as usize) <= part.segment.via.len() && to > 0 => Ok(Some(to as usize - 1)),
        Some(to) => Err(to),
        // What only one shape on the way asks for is done for that.
        None if !operations(site, part).contains(&deed.operation) => {
            Ok(on_the_way(site, part).iter().position(|of| of.contains(&deed.operation)))
        }
        None => Ok(None),
    }
}
