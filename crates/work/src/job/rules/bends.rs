//! The bends of a chain among each other, and what has to be done before them.

use super::{Ruling, bends_or_twists, forges};
use crate::job::legs;
use crate::job::part::is_closing;
use crate::job::why::Why;
use fh_core::balance::opens_again;
use fh_core::metal::{Bent, FreeEnd};
use fh_core::plan::{Operation, SocketAxis};

impl Ruling<'_, '_> {
    /// The bends of a part that stay; not those that help, and are opened again.
    pub(super) fn bending(&self, at: usize) -> Vec<usize> {
        let mut all = self.those(at, Operation::is_bending);
        all.retain(|task| !self.helps(*task));
        all
    }

    /// Whether a task bends a part for a while, to be opened again.
    pub(super) fn helps(&self, task: usize) -> bool {
        let task = &self.tasks[task];
        let part = task.part.and_then(|at| self.site.part(at));
        task.operation.is_bending() && part.zip(task.to).is_some_and(|(part, to)| opens_again(part.balance, to))
    }

    /// Whether a task opens the bend that a part has on the way.
    pub(super) fn opens(&self, task: usize) -> bool {
        let task = &self.tasks[task];
        task.operation == Operation::Straighten && task.part.is_some_and(|at| self.site.passes_through(at))
    }

    /// A bend that helps before what is forged beside it, and opened after that.
    pub(super) fn out_of_the_way(&mut self, at: usize) {
        let bends: Vec<usize> = self.of[at].iter().copied().filter(|task| self.helps(*task)).collect();
        if bends.is_empty() {
            return;
        }
        let opens: Vec<usize> = self.of[at].iter().copied().filter(|task| self.opens(*task)).collect();
        let beside: Vec<usize> = self.site.beside(at).into_iter().flatten().collect();
        let forging: Vec<usize> = beside.into_iter().flat_map(|beside| self.those(beside, forges)).collect();
        self.each(&bends, &forging, Why::OutOfTheWay);
        self.each(&forging, &opens, Why::OutOfTheWay);
    }

    /// The bends of one chain among each other, and what has to be done before them.
    pub(super) fn bends(&mut self, chain: usize) {
        let members = self.site.chains[chain].1.clone();
        let bends: Vec<(usize, usize)> =
            members.iter().flat_map(|at| self.bending(*at).into_iter().map(|task| (*at, task))).collect();
        let twists: Vec<usize> =
            members.iter().flat_map(|at| self.those(*at, |operation| operation == Operation::Twist)).collect();
        let all: Vec<usize> = bends.iter().map(|(_, task)| *task).collect();
        self.each(&twists, &all, Why::TwistFirst);
        self.holes_before_bends(&members);
        for (at, task) in &bends {
            if self.is_socket(*at, *task) {
                let others: Vec<usize> =
                    bends.iter().filter(|(at, task)| !self.is_socket(*at, *task)).map(|(_, task)| *task).collect();
                self.each(&[*task], &others, Why::RollFirst);
                continue;
            }
            if !self.closes(*at, *task) {
                continue;
            }
            let open: Vec<usize> =
                bends.iter().filter(|(other, task)| !self.closes(*other, *task)).map(|(_, task)| *task).collect();
            self.each(&open, &[*task], Why::CloseLast);
            // The weld that closes a ring lies beside it.
            for beside in self.site.beside(*at).into_iter().flatten() {
                let scarf = self.those(beside, |operation| operation == Operation::Scarf);
                self.each(&scarf, &[*task], Why::ScarfFirst);
            }
        }
        let welds: Vec<usize> =
            members.iter().flat_map(|at| self.those(*at, |operation| operation == Operation::Weld)).collect();
        self.each(&all, &welds, Why::CloseThenWeld);
        if chain == 0 {
            let pairs = [legs::middle_first(self.site, &bends), legs::round_the_horn(self.site, &bends)].concat();
            for (first, then) in pairs {
                self.rule(first, then, Why::MiddleFirst);
            }
        } else {
            self.root_first(chain, &all);
        }
    }

    /// On a branch the bends at its root before those farther out: the other way round it is bent into its neighbor.
    fn root_first(&mut self, chain: usize, bends: &[usize]) {
        let free = self.site.chains[chain].1.first().and_then(|at| self.site.branch_free(*at));
        for pair in bends.windows(2) {
            match free {
                Some(FreeEnd::Far) => self.rule(pair[0], pair[1], Why::MiddleFirst),
                Some(FreeEnd::Datum) => self.rule(pair[1], pair[0], Why::MiddleFirst),
                Some(FreeEnd::Neither) | None => {}
            }
        }
    }

    /// Holes before the bends beside them and one part farther on.
    fn holes_before_bends(&mut self, members: &[usize]) {
        for (place, at) in members.iter().enumerate() {
            let holes = self
                .those(*at, |operation| matches!(operation, Operation::Punch | Operation::Drift | Operation::Drill));
            if holes.is_empty() || !self.site.flat[*at].segment.form.branches().is_empty() {
                continue;
            }
            for near in members.iter().take(place + 3).skip(place.saturating_sub(2)).filter(|near| *near != at) {
                let bends = self.those(*near, bends_or_twists);
                self.each(&holes, &bends, Why::HoleBeforeBend);
            }
        }
    }

    /// Whether a task rolls all of a socket along its bar.
    fn is_socket(&self, at: usize, task: usize) -> bool {
        let bent = self.site.part(at).and_then(|part| part.balance.bent);
        let is_along = matches!(bent, Some(Bent::Socket { axis: SocketAxis::Along, .. }));
        is_along && self.tasks[task].to.is_none() && !self.site.passes_through(at)
    }

    /// Whether a bend of a part closes on itself; begun on the way it is open yet.
    fn closes(&self, at: usize, task: usize) -> bool {
        let Some(part) = self.site.part(at) else { return false };
        let bent = match self.tasks[task].to {
            Some(to) => part.balance.via.get(to).and_then(|via| via.bent),
            None => part.balance.bent,
        };
        bent.is_some_and(is_closing)
    }
}
