//! What an order is made from.

use crate::bar::lengths::Lengths;
use crate::fire::graph::Graph;
use crate::fire::heating::Load;
use crate::fire::inward::Inward;
use crate::job::site::Site;
use crate::job::task::Task;

/// What an order is made from.
pub(crate) struct Bench<'b, 's> {
    pub(crate) site: &'b Site<'s>,
    pub(crate) tasks: &'b [Task],
    /// The tasks of each step.
    pub(crate) units: &'b [Vec<usize>],
    /// What each step asks of a heat.
    pub(crate) loads: &'b [Load],
    pub(crate) graph: &'b Graph,
    /// Where each step works, seen from its end of the bar.
    pub(crate) inward: &'b [Option<Inward>],
}

impl Bench<'_, '_> {
    /// The middle of the parts of a unit, in mm along the bar.
    pub(crate) fn middle(&self, unit: usize, lengths: &Lengths) -> f64 {
        let [start, end] = lengths.extent(self.loads[unit].parts.iter());
        (start + end) / 2.0
    }
}
