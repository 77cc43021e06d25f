//! The clock of a heat: it starts when a step of another heat is shown.

/// The clock.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Clock {
    heat: Option<usize>,
    since: Option<f64>,
}

impl Clock {
    /// Follows the step that is shown; its heat, where it is done hot. Times are in seconds.
    pub(super) fn follow(&mut self, heat: Option<usize>, now: f64) {
        if heat != self.heat {
            self.heat = heat;
            self.since = heat.map(|_| now);
        }
    }

    /// Starts anew.
    pub(super) fn restart(&mut self, now: f64) {
        self.since = self.heat.map(|_| now);
    }

    /// Whether it runs.
    pub(super) fn runs(&self) -> bool {
        self.since.is_some()
    }

    fn seconds(&self, now: f64) -> Option<f64> {
        Some((now - self.since?).max(0.0))
    }

    /// What it shows: `1:05`; none where nothing is hot.
    pub(super) fn words(&self, now: f64) -> Option<String> {
        let seconds = self.seconds(now)?.floor() as u64;
        Some(format!("{}:{:02}", seconds / 60, seconds % 60))
    }

    /// How long it is until it shows something else, in seconds.
    pub(super) fn until_next_second(&self, now: f64) -> f64 {
        let seconds = self.seconds(now).unwrap_or(0.0);
        (1.0 - seconds.fract()).clamp(0.02, 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_new_heat_starts_it_and_the_same_does_not() {
        let mut clock = Clock::default();
        assert_eq!(clock.words(5.0), None);
        clock.follow(Some(1), 10.0);
        clock.follow(Some(1), 40.0);
        assert_eq!(clock.words(75.4).as_deref(), Some("1:05"));
        clock.follow(Some(2), 80.0);
        assert_eq!(clock.words(81.0).as_deref(), Some("0:01"));
        clock.restart(100.0);
        assert_eq!(clock.words(103.0).as_deref(), Some("0:03"));
        clock.follow(None, 104.0);
        assert!(!clock.runs());
    }
}
