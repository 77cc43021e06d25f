//! The order of work against the books: published sequences, the demo plans, a bad order beside a good one, and legs in the
//! way worked by hand.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod at_the_anvil;
mod at_the_mark;
mod bad_order;
mod books;
mod cards;
mod demos;
mod dies;
mod driven_up;
mod hard_cases;
mod hardware;
mod heats;
mod held;
mod hot;
mod joined;
mod leaving;
mod left;
mod legs;
mod on_the_way;
mod paper;
mod papers;
mod pieces;
mod places;
mod plate_holes;
mod read_by_a_smith;
mod said;
mod stubs;
mod sure;
mod wholes;
mod words;

use fh_core::balance::balance;
use fh_core::file;
use fh_core::plan::{Operation, Plan, Step};
use fh_store::demos::DEMOS;
use fh_work::{OrderFinding, Shop, Worked, WorkedStep, proposal, work_out};
use serde_json::Value;

/// What is done, and the name of the part it is done to; empty where the whole bar is meant.
type Done = (Operation, String);

/// The demo of this file name.
fn demo(file_name: &str) -> Plan {
    let demo = DEMOS.iter().find(|demo| demo.file_name == file_name).unwrap();
    file::read(demo.text.as_bytes()).unwrap()
}

/// Everything that the steps of a plan do, one after the other.
fn done(plan: &Plan, steps: &[Step]) -> Vec<Done> {
    let mut all = Vec::new();
    for step in steps {
        let bar = &plan.bars[step.bar_index()];
        for deed in &step.work {
            let name = |path: &String| bar.segment(bar.find_path(path).unwrap()).unwrap().name.clone();
            let names: Vec<String> = deed.parts.iter().map(name).collect();
            if names.is_empty() {
                all.push((deed.operation, String::new()));
            }
            all.extend(names.into_iter().map(|name| (deed.operation, name)));
        }
    }
    all
}

/// What the proposal of a plan does, one after the other.
fn proposed(plan: &Plan) -> Vec<Done> {
    done(plan, &proposal(plan, &balance(plan)))
}

/// The place of something in an order.
fn place(order: &[Done], operation: Operation, part: &str) -> usize {
    let found = order.iter().position(|(own, name)| *own == operation && name == part);
    found.unwrap_or_else(|| panic!("{} “{part}” is not in {order:?}", operation.name()))
}

/// The plan worked out with these steps as the smith's own.
fn with_steps(plan: &Plan, steps: Vec<Step>) -> Worked {
    let mut plan = plan.clone();
    plan.work.steps = Some(steps);
    work_out(&plan, &balance(&plan), &Shop::default())
}

/// The ids of findings with their steps, counted from 1 as the smith counts them.
fn ids(findings: &[OrderFinding]) -> Vec<(&'static str, Vec<usize>)> {
    findings.iter().map(|found| (found.finding.id, found.steps.iter().map(|step| step + 1).collect())).collect()
}

/// The program's own order of a plan, or the plan's.
fn worked(plan: &Plan) -> Worked {
    work_out(plan, &balance(plan), &Shop::default())
}

/// The order of one bar with these parts.
fn on(stock: Value, segments: &[Value]) -> Worked {
    worked(&tests::read(&tests::one_bar(&stock, segments)))
}

/// The first step that does this.
fn doing(worked: &Worked, operation: Operation) -> &WorkedStep {
    let does = |step: &&WorkedStep| step.tasks.iter().any(|task| task.operation == operation);
    worked.steps.iter().find(does).unwrap_or_else(|| panic!("nothing does {}", operation.name()))
}

/// How the bar is laid there.
fn lay(step: &WorkedStep) -> &str {
    step.lay.as_deref().unwrap_or_else(|| panic!("“{}” is not laid", step.title))
}
