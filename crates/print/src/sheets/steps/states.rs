//! The bars of a job as they are cut, and after each of their steps, all of one bar at one scale.

use super::bar_scale::BarScale;
use super::job::Job;
use super::strip_bar::StripBar;
use fh_work::bar_states;

/// A bar as it is cut, and after each of its steps.
pub(super) struct BarStates {
    pub(super) scale: Option<BarScale>,
    counts: Vec<usize>,
    bars: Vec<StripBar>,
}

impl BarStates {
    /// The bar before and after one of its steps; none where the step is another bar's.
    pub(super) fn around(&self, step: usize) -> Option<[&StripBar; 2]> {
        let at = self.counts.binary_search(&(step + 1)).ok()?;
        Some([self.bars.get(at.checked_sub(1)?)?, self.bars.get(at)?])
    }
}

impl Job<'_> {
    /// The bars after each of their steps: for each bar the number of its step and the bar, and the scale of all of them.
    pub(super) fn states(&self, width: f64) -> Vec<BarStates> {
        let of_bar = |bar: usize| {
            let states = bar_states(self.plan, self.balance, self.worked, bar).into_iter();
            let states = states.map(|(count, state)| (count, StripBar::new(self.plan, bar, state)));
            let (counts, bars): (Vec<usize>, Vec<StripBar>) = states.unzip();
            BarStates { scale: BarScale::fitting(&bars, width), counts, bars }
        };
        (0..self.plan.bars.len()).map(of_bar).collect()
    }
}
