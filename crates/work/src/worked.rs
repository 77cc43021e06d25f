//! The whole order of work of a plan, worked out.

use crate::answers::scale_loss::ScaleLoss;
use crate::fire::learnt::{Experience, Learnt};
use crate::fire::smith::Smith;
use crate::says::because;
use crate::says::gauges::Gauge;
use crate::says::wanted::Tool;
use crate::says::words;
use crate::seen::OrderFinding;
use crate::step::WorkedStep;
use fh_core::findings::Finding;

/// The order of work of a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Worked {
    /// Whether it is the program's proposal; the smith's own order where not.
    pub proposed: bool,
    /// The steps, one after the other.
    pub steps: Vec<WorkedStep>,
    /// How many heats all steps take, for one of each bar.
    pub heats: usize,
    /// At least and at most, by how long a heat may last.
    pub heats_between: [usize; 2],
    /// How many heats all bars take that are to be made of each.
    pub heats_of_all: usize,
    /// Of those at least and at most.
    pub heats_of_all_between: [usize; 2],
    /// The tools that they ask for.
    pub tools: Vec<Tool>,
    /// The gauges to make.
    pub gauges: Vec<Gauge>,
    /// What the order is held against, the weightiest first.
    pub findings: Vec<OrderFinding>,
    /// What the fire takes of each bar over all heats; bars that are not heated are left out.
    pub scale: Vec<ScaleLoss>,
    /// The parts whose marks allow for less scale than that.
    pub scale_short: Vec<Finding>,
    /// Where a bar runs into itself in the finished piece.
    pub into_itself: Vec<Finding>,
    /// What the plan's log says against what was reckoned, entry by entry; entries on parts that are gone are left out.
    pub experience: Vec<Experience>,
    /// Who forges, by whom heats are reckoned.
    pub smith: Smith,
    /// What was learnt from it and from the smith's other pieces.
    pub learnt: Learnt,
}

impl Worked {
    /// The findings of the order that the smith has not accepted.
    pub fn open_findings(&self) -> impl Iterator<Item = &OrderFinding> {
        self.findings.iter().filter(|found| found.accepted.is_none())
    }

    /// The findings of the smith's own steps that were not accepted. What is found of a proposal is told at its steps, and of the plan only once the
    /// steps are its own.
    pub fn own_findings(&self) -> impl Iterator<Item = &OrderFinding> {
        self.open_findings().filter(|_| !self.proposed)
    }

    /// Why the steps come in this order: each reason once, with the steps that it holds for.
    ///
    /// `2 before 8, 3 before 7: Once one side of a mark is drawn, …`
    pub fn reasons(&self) -> Vec<String> {
        because::reasons(&self.steps)
    }

    /// How many heats it takes, in words: `6 to 8 heats`; `6 to 8 heats, 12 to 16 for all pieces` where a bar is made more than once.
    pub fn heats_words(&self) -> String {
        let one = self.heats_of_one_words();
        self.heats_of_all_words().map_or(one.clone(), |all| format!("{one}, {all}"))
    }

    /// How many heats one of each bar takes, in words: `6 to 8 heats`.
    pub fn heats_of_one_words(&self) -> String {
        words::heats_between_words(self.heats_between)
    }

    /// How many heats all pieces take, in words: `12 to 16 for all pieces`; none where no bar is made more than once.
    pub fn heats_of_all_words(&self) -> Option<String> {
        let all = words::heats_between_words(self.heats_of_all_between);
        let is_more = self.heats_of_all > self.heats && all != self.heats_of_one_words();
        is_more.then(|| format!("{} for all pieces", all.trim_end_matches(" heats")))
    }
}
