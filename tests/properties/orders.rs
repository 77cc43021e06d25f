//! The order of work of any plan: the proposal does everything once, keeps the metal at every step, ends in the finished
//! piece and breaks no rule; any other order is told exactly what it breaks.

mod did;
mod duties;
mod ends;
mod graph;
mod metal;
mod shuffles;

use crate::properties::cases;
use crate::properties::plans::plan;
use crate::properties::sizes::{Sizes, Written};
use did::{Did, deeds};
use fh_core::balance::{Balance, balance};
use fh_core::metal::{Bent, Shape};
use fh_core::plan::{Chain, Form, JointKind, Limits, Operation, Plan};
use fh_store::demos::DEMOS;
use fh_work::{OrderFinding, Shop, Task, Why, Worked, after, proposal, work_out};
use graph::{Broken, Graph};
use proptest::prelude::*;
use serde_json::{Value, json};
use shuffles::{Change, changed, changes};
use std::collections::BTreeSet;
use tests::{mm, mm3};

/// A demo plan by its place in the list, without an order of its own.
fn demo(at: usize) -> Plan {
    let mut plan = fh_core::file::read(DEMOS[at].text.as_bytes()).unwrap();
    plan.work.steps = None;
    plan
}

/// The plan with rows of marks on some of its segments: where a bit is set.
fn with_marks(plan: &Written, bits: u32) -> Plan {
    let mut plan = plan.0.clone();
    let bars = plan["bars"].as_array_mut().unwrap();
    let mut count = 0;
    for bar in bars {
        mark(&mut bar["segments"], bits, &mut count);
    }
    tests::read(&plan)
}

fn mark(segments: &mut Value, bits: u32, count: &mut u32) {
    for segment in segments.as_array_mut().unwrap() {
        if segment["form"].get("collar").is_some() {
            // A collar is wrapped; a further bend on it means nothing.
            segment.as_object_mut().unwrap().remove("bend");
        }
        if bits >> (*count % 32) & 1 == 1 {
            segment["repeats"] = json!([{ "what": "dot", "count": 3 }]);
        }
        *count += 1;
        let split = segment["form"].get_mut("split");
        let branches = split.and_then(|split| split["branches"].as_array_mut());
        for branch in branches.into_iter().flatten() {
            mark(&mut branch["segments"], bits, count);
        }
    }
}

/// The proposal does everything once, and nothing that is not asked for.
fn does_everything_once(plan: &Plan, balance: &Balance, steps: &[Vec<Did>]) -> Result<(), TestCaseError> {
    let done: Vec<Did> = steps.iter().flatten().copied().collect();
    for (index, (bar, of)) in plan.bars.iter().zip(&balance.bars).enumerate() {
        duties::check(bar, of, (index, welds_in_the_fire(plan)), &done)?;
    }
    let mut of_piece: Vec<Did> = done.iter().copied().filter(|did| did.is_of_piece()).collect();
    let mut wanted = Vec::new();
    if done.len() > of_piece.len() {
        let fit = |(at, joint): (usize, &fh_core::plan::Joint)| {
            let operation = if joint.kind == JointKind::Weld { Operation::Weld } else { Operation::Fit };
            Did { bar: 0, operation, part: None, joint: Some(at), to: None }
        };
        let joints = plan.joints.iter().enumerate();
        wanted.extend(joints.filter(|(_, joint)| welds_in_the_fire(plan) || joint.kind != JointKind::Weld).map(fit));
        let whole = |operation| Did { bar: 0, operation, part: None, joint: None, to: None };
        wanted.extend([whole(Operation::Brush), whole(Operation::Wax)]);
    }
    of_piece.sort_unstable();
    wanted.sort_unstable();
    prop_assert_eq!(of_piece, wanted);
    Ok(())
}

/// Whether the metal of a plan is iron or a steel with nothing but carbon, or little else, in it.
fn welds_in_the_fire(plan: &Plan) -> bool {
    let iron =
        ["mild steel", "carbon steel", "medium-carbon steel", "high-carbon steel", "spring steel", "wrought iron"];
    iron.contains(&plan.material_name())
}

/// Whether a rim of less than 1.5 mm is trimmed off a flag: no hot chisel takes that, so it is filed, cold.
fn is_filed(plan: &Plan, balance: &Balance, task: &Task) -> bool {
    let Some(at) = task.part.filter(|_| task.operation == Operation::Trim) else { return false };
    let own = &balance.bars[task.bar].segments[at];
    let flat = plan.bars[task.bar].flat();
    let is_bar = !matches!(flat[at].segment.form, Form::Flag(_) | Form::Trim(_) | Form::Hold(_));
    if is_bar && matches!(own.bent, Some(Bent::Ring { .. })) {
        // The end of a ring is filed to its neck.
        return true;
    }
    let Some(shape @ Shape::Flag { outline, .. }) = &own.shape else { return false };
    // What its holes lose is no rim, and what they are wide is within its outline.
    let within = mm3(own.finished_volume) + mm3(shape.holes_volume());
    let rim = mm3(own.trimmed_volume) - mm3(shape.lost_to_holes());
    let larger = ((within + rim) / within).sqrt();
    mm(outline.width()) * (larger - 1.0) < 2.0 * 1.5
}

/// Whether waste of less than 4 mm, or of less than half the bar's thickness, is cut off that does not fall with the rest of the
/// bar: a saw's cut is no narrower, a hot cut finds no hold on a sliver, and what is sawn is cold.
fn is_sawn(plan: &Plan, balance: &Balance, task: &Task) -> bool {
    let Some(at) = task.part.filter(|_| task.operation == Operation::Trim) else { return false };
    let flat = plan.bars[task.bar].flat();
    let is = |place: usize, wanted: fn(&Form) -> bool| wanted(&flat[place].segment.form);
    let beside = |place: &usize| flat[*place].chain == flat[at].chain;
    let before = (0..at).rev().find(beside);
    let after = (at + 1..flat.len()).find(beside);
    let falls_with_it = before.into_iter().chain(after).any(|place| is(place, |form| matches!(form, Form::Hold(_))));
    let Some(Shape::Prism { section, .. }) = &balance.bars[task.bar].segments[at].shape else { return false };
    let outline = section.section();
    let thick = mm(outline.width()).min(mm(outline.thickness()));
    is(at, |form| matches!(form, Form::Trim(_)))
        && mm(balance.bars[task.bar].segments[at].stock_length) < (thick / 2.0).max(4.0)
        && !falls_with_it
}

/// No rule is broken but what is told as a contradiction; what is hot is in a heat.
fn breaks_no_rule(plan: &Plan, balance: &Balance, worked: &Worked) -> Result<(), TestCaseError> {
    prop_assert!(worked.proposed);
    for found in &worked.findings {
        prop_assert!(found.why.is_none() || found.finding.id == "rules-contradict", "{}", found.finding.message);
        prop_assert!(found.finding.id != "not-in-the-order", "{}", found.finding.message);
        prop_assert!(found.finding.id != "part-unknown", "{}", found.finding.message);
    }
    for step in &worked.steps {
        let hot = step
            .tasks
            .iter()
            .any(|task| task.operation.is_hot() && !is_filed(plan, balance, task) && !is_sawn(plan, balance, task));
        // Whether a joint is made hot, and a hole punched or drilled, is a matter of their sizes.
        let is_fitted = step.tasks.iter().any(|task| matches!(task.operation, Operation::Fit | Operation::Punch));
        // A branch is thinner than the bar that its sizes are written with.
        let on_branch =
            |task: &Task| task.part.is_some_and(|at| balance.bars[task.bar].segments[at].chain != Chain::Bar);
        let is_fitted = is_fitted || step.tasks.iter().any(|task| task.operation == Operation::Trim && on_branch(task));
        prop_assert!(hot == step.is_hot() || is_fitted, "{}", step.title);
        let hot = step.is_hot();
        prop_assert!(!hot || (step.heat >= 1 && step.heat + step.needs - 1 <= worked.heats), "{}", step.title);
        prop_assert!(step.minutes.is_finite() && step.minutes >= 0.0);
    }
    Ok(())
}

fn check(plan: &Plan) -> Result<(), TestCaseError> {
    let balance = balance(plan);
    let worked = work_out(plan, &balance, &Shop::default());
    let steps = deeds(plan, &proposal(plan, &balance));
    does_everything_once(plan, &balance, &steps)?;
    breaks_no_rule(plan, &balance, &worked)?;
    metal::check(plan, &balance, &worked, &steps)
}

/// What the findings say about rules: those that the order breaks, or those that gave way to others.
fn told(worked: &Worked, contradictions: bool) -> BTreeSet<Broken> {
    let is_meant = |found: &&OrderFinding| (found.finding.id == "rules-contradict") == contradictions;
    let contradiction = |found: &OrderFinding| Some((found.why?, *found.steps.first()?, *found.steps.last()?));
    let broken = |found: &OrderFinding| -> Vec<Broken> {
        if contradictions { contradiction(found).into_iter().collect() } else { found.broken.clone() }
    };
    let all = worked.findings.iter().filter(is_meant).flat_map(broken);
    all.filter(|(why, ..)| *why != Why::MiddleFirst).collect()
}

/// Another order is told exactly what it breaks, and every state of its bars is of sound numbers.
fn check_changed(mut plan: Plan, changes: &[Change]) -> Result<(), TestCaseError> {
    let balance = balance(&plan);
    let proposed = proposal(&plan, &balance);
    let all: BTreeSet<Did> = deeds(&plan, &proposed).into_iter().flatten().collect();
    let all: Vec<Did> = all.into_iter().collect();
    plan.work.steps = Some(changed(proposed, changes));
    let steps = deeds(&plan, plan.work.steps.as_ref().unwrap());
    let worked = work_out(&plan, &balance, &Shop::default());
    prop_assert!(!worked.proposed && worked.steps.len() == steps.len());
    for n in 0..=steps.len() {
        let state = after(&plan, &balance, &worked, n);
        state.bars.iter().try_for_each(metal::sound)?;
    }
    let graph = Graph::of(&plan, &balance);
    let mut wanted = graph.broken(&steps);
    // Where the bar has a handle all the same, it may be parted off.
    let least =
        plan.limits.hold.as_ref().map_or(Limits::HOLD.in_unit(plan.units.length), fh_measure::WrittenLength::mm);
    let is_held = |late: usize| {
        let hold = worked.steps[late].hold.filter(|_| worked.steps[late].bar.is_some());
        hold.is_some_and(|hold| !hold.is_poor && hold.length_mm > least - 0.05)
    };
    wanted.retain(|(why, _, late)| !matches!(why, Why::PartLate | Why::HandleLast) || !is_held(*late));
    let found = told(&worked, false);
    let too_many: Vec<&Broken> = found.difference(&wanted).collect();
    prop_assert!(too_many.is_empty(), "told without a rule: {too_many:?} for {}", listed(&steps));
    // Of rules that run in a circle one gives way, and is told as that. Legs in the way close circles too.
    let gave_way = told(&worked, true);
    let missed = wanted.difference(&found).filter(|(why, early, late)| {
        let in_order = (*why, (*early).min(*late), (*early).max(*late));
        !gave_way.contains(&in_order) && *why != Why::ThinLast
    });
    let missed: Vec<&Broken> = missed.collect();
    prop_assert!(missed.is_empty(), "not told: {missed:?} for {}", listed(&steps));
    if !graph.runs_in_a_circle() && gave_way.is_empty() && !has_legs(&all) {
        prop_assert_eq!(found, wanted);
    }
    let forgotten = all.iter().filter(|did| !steps.iter().flatten().any(|other| other == *did));
    let is_minor = |did: &&Did| {
        did.part.is_none()
            && matches!(did.operation, Operation::Brush | Operation::Wax | Operation::Check | Operation::Mark)
    };
    let count = worked.findings.iter().filter(|found| found.finding.id == "not-in-the-order").count();
    prop_assert_eq!(count, forgotten.filter(|did| !is_minor(did)).count());
    Ok(())
}

/// The steps of an order, one on a line.
fn listed(steps: &[Vec<Did>]) -> String {
    let of = |did: &Did| format!("{} {:?} on bar {}", did.operation.name(), did.part.or(did.joint), did.bar);
    let line =
        |(at, step): (usize, &Vec<Did>)| format!("\n{at}: {}", step.iter().map(of).collect::<Vec<_>>().join(", "));
    steps.iter().enumerate().map(line).collect()
}

/// Whether there are two bends on a bar, so that one may put a leg in the way of the other.
fn has_legs(all: &[Did]) -> bool {
    let bends = all.iter().filter(|did| did.operation.is_bending());
    let bars: Vec<usize> = bends.map(|did| did.bar).collect();
    bars.iter().enumerate().any(|(at, bar)| bars[..at].contains(bar))
}

#[test]
fn every_demo_is_done_once_and_ends_in_its_piece() {
    for (at, own) in DEMOS.iter().enumerate() {
        check(&demo(at)).unwrap_or_else(|fault| panic!("{}: {fault}", own.file_name));
    }
}

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn every_proposal_does_everything_once_and_ends_in_the_piece(plan in plan(Sizes::Usual), bits: u32) {
        check(&with_marks(&plan, bits))?;
    }

    #[test]
    fn any_order_is_told_exactly_what_it_breaks(plan in plan(Sizes::Usual), bits: u32, changes in changes()) {
        check_changed(with_marks(&plan, bits), &changes)?;
    }

    #[test]
    fn a_demo_in_any_order_is_told_exactly_what_it_breaks(at in 0..DEMOS.len(), changes in changes()) {
        check_changed(demo(at), &changes)?;
    }
}
