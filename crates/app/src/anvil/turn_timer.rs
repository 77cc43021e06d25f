//! How long a step is on the page at the anvil, and how often the clock of its heat was begun meanwhile.

use crate::state::Spent;

/// The timer.
#[derive(Default)]
pub(super) struct TurnTimer {
    step: Option<usize>,
    since: f64,
    heats: u32,
}

impl TurnTimer {
    /// Follows the step that is shown; none where it is done cold. Times are in seconds.
    pub(super) fn follow(&mut self, step: Option<usize>, now: f64) {
        if step != self.step {
            *self = Self { step, since: now, heats: 1 };
        }
    }

    /// The bar is out of the fire again.
    pub(super) fn begin_heat(&mut self) {
        self.heats = self.heats.saturating_add(1);
    }

    /// What the step took, once.
    pub(super) fn take(&mut self, now: f64) -> Option<Spent> {
        self.step?;
        let spent = Spent { heats: self.heats, minutes: (now - self.since).max(0.0) / 60.0 };
        *self = Self { step: self.step, since: now, heats: 1 };
        Some(spent)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_counts_heats_and_minutes_of_a_hot_step() {
        let mut timer = TurnTimer::default();
        timer.follow(None, 0.0);
        assert_eq!(timer.take(9.0), None);
        timer.follow(Some(1), 10.0);
        timer.begin_heat();
        timer.follow(Some(1), 60.0);
        assert_eq!(timer.take(100.0), Some(Spent { heats: 2, minutes: 1.5 }));
        assert_eq!(timer.take(100.0), Some(Spent { heats: 1, minutes: 0.0 }), "it is told once");
    }
}
