//! The heat of a step in words: its color out of the fire and where it stops, and how long the hammer works.

use crate::step::WorkedStep;
use fh_core::plan::Plan;
use fh_heat::colors::CHAPMAN;

/// Beyond so many seconds people count in minutes: common practice, no source.
const MOST_SECONDS: f64 = 90.0;

impl WorkedStep {
    /// How hot it is worked and for how long, in words; none where it is done cold.
    ///
    /// `Orange, 1050 °C, down to cherry red, 850 °C; about 25 s of work, 20 s a heat.`
    pub fn heat_words(&self, plan: &Plan) -> Option<String> {
        let mut words = self.heat_range(plan)?;
        if self.minutes > 0.0 {
            words += &format!("; about {} of work", seconds_words(self.minutes * 60.0));
        }
        if let Some(heat) = self.heat_minutes.filter(|_| self.needs > 1) {
            words += &format!(", {} a heat", seconds_words(heat * 60.0));
        }
        Some(words)
    }

    /// How hot it is worked, in words: `orange, 1050 °C, down to cherry red, 850 °C`; none where it is done cold.
    pub fn heat_range(&self, plan: &Plan) -> Option<String> {
        let [from, to] = self.heat_celsius?;
        let is_steel = plan.material().expands_as_steel();
        let looks = |celsius: f64| match CHAPMAN.word(celsius).filter(|_| is_steel) {
            Some(word) => format!("{word}, {celsius:.0} °C"),
            None => format!("{celsius:.0} °C"),
        };
        Some(format!("{}, down to {}", looks(from), looks(to)))
    }
}

/// Seconds as people say them: to five of them, and of long times to half a minute.
fn seconds_words(seconds: f64) -> String {
    if seconds < MOST_SECONDS {
        return format!("{:.0} s", (seconds / 5.0).round().max(1.0) * 5.0);
    }
    let halves = (seconds / 30.0).round();
    match halves % 2.0 {
        0.0 => format!("{:.0} min", halves / 2.0),
        _ => format!("{:.0} 1/2 min", (halves / 2.0).floor()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn seconds_are_rounded_as_people_say_them() {
        for (seconds, words) in [(1.0, "5 s"), (12.0, "10 s"), (88.0, "90 s"), (100.0, "1 1/2 min"), (130.0, "2 min")] {
            assert_eq!(seconds_words(seconds), words);
        }
    }
}
