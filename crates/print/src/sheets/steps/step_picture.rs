//! What a step leaves, as a picture: the bar beside what it was before, bent or put together where it is.

use super::bent::Now;
use super::job::Job;
use super::states::BarStates;
use super::strip::{self, Strip};
use crate::sheets::flow::Block;
use fh_core::balance::Balance;
use fh_core::joints::{MemberPlace, joined};
use fh_core::plan::{Operation, Plan};
use fh_piece::Line;
use fh_work::{WorkedStep, after, joined_after};
use std::collections::BTreeSet;

impl Job<'_> {
    /// The picture of step `number`, counted from 0.
    pub(super) fn strip(&self, states: &[BarStates], number: usize, step: &WorkedStep, width: f64) -> Block {
        // Brush and wax change nothing that is seen.
        let is_seen = step.tasks.iter().any(|task| !matches!(task.operation, Operation::Brush | Operation::Wax));
        let bent = if is_seen { self.bent(states, number, step, width) } else { Block::default() };
        let shown_bent = bent.height > 0.0;
        let drawn = || {
            let states = states.get(step.bar?)?;
            let [before, after] = states.around(number)?;
            Some(Strip { before, after, step, scale: states.scale?, plan: self.plan, shown_bent }.block(width))
        };
        drawn().unwrap_or_default().over(bent)
    }

    /// The bar as it is after a step; what is put together so far where the step is on the whole piece. Nothing where nothing is bent.
    pub(super) fn bent(&self, states: &[BarStates], number: usize, step: &WorkedStep, width: f64) -> Block {
        let Some(bar) = step.bar else {
            let of_piece = after(self.plan, self.balance, self.worked, number + 1);
            return self.put_together(number, step, &of_piece, width);
        };
        let now = states.get(bar).and_then(|states| states.around(number));
        let (Some(own), Some([_, state])) = (self.plan.bars.get(bar), now) else { return Block::default() };
        let mut own = own.clone();
        own.count = None;
        let plan = Plan { bars: vec![own], joints: Vec::new(), underlay: None, ..self.plan.clone() };
        let balance = Balance::of_bars(vec![state.bar.clone()]);
        let now = Now::new(&plan, &balance);
        let parts = step.parts();
        let is_worked = |line: &Line| parts.contains(&line.segment);
        if now.is_bent() { now.block(&is_worked, strip::NAMES_MM, width) } else { Block::default() }
    }

    /// What a step on the whole piece leaves put together: what hangs together with the joint that it makes; of other steps all.
    fn put_together(&self, number: usize, step: &WorkedStep, balance: &Balance, width: f64) -> Block {
        let plan = joined_after(self.plan, self.worked, number + 1);
        let Some(joint) = step.tasks.iter().find_map(|task| task.joint) else {
            // Bars that nothing joins have no place beside each other.
            let now = Now::new(&plan, balance);
            let is_apart = plan.bars.len() > 1 && plan.joints.is_empty();
            let shown = !is_apart && now.is_bent();
            return if shown { now.block(&|_| false, strip::NAMES_MM, width) } else { Block::default() };
        };
        let members = joined(self.plan).into_iter().find(|joined| joined.joint == joint).map(|joined| joined.members);
        let members = members.unwrap_or_default();
        let is_worked = |line: &Line| {
            members
                .iter()
                .any(|member| (member.bar, member.copy, member.segment) == (line.bar, line.copy, line.segment))
        };
        Now::new(&plan, balance).only(&together(&plan, &members)).block(&is_worked, strip::NAMES_MM, width)
    }
}

/// The copies of bars that hang together with the members of a joint: each by its bar and its number among the copies.
fn together(plan: &Plan, members: &[MemberPlace]) -> BTreeSet<(usize, u32)> {
    let copies = |members: &[MemberPlace]| members.iter().map(|one| (one.bar, one.copy)).collect::<BTreeSet<_>>();
    let joints: Vec<BTreeSet<(usize, u32)>> = joined(plan).iter().map(|joined| copies(&joined.members)).collect();
    let mut group = copies(members);
    loop {
        let met = joints.iter().filter(|joint| !joint.is_disjoint(&group));
        let more: BTreeSet<(usize, u32)> = met.flatten().copied().chain(group.iter().copied()).collect();
        if more.len() == group.len() {
            return group;
        }
        group = more;
    }
}
