//! The sizes that tools come in: nobody grinds a fuller of 9.7 mm. Common practice, no source.

use crate::says::words::length_words;
use fh_core::plan::{Plan, PlanUnit};

/// Which way a size goes that no tool has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Fit {
    /// It has to go in: the next smaller one.
    Down,
    /// Something has to go into it: the next larger one.
    Up,
    /// The nearest one.
    Near,
}

/// Fullers, in mm and in sixteenths of an inch.
const FULLERS: [&[f64]; 2] =
    [&[4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0], &[3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 16.0]];
/// Swages, by the bar that they are for.
const SWAGES: [&[f64]; 2] = [
    &[6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 22.0, 25.0, 28.0, 30.0, 35.0, 40.0],
    &[4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 20.0, 24.0],
];
/// A sixteenth of an inch.
const SIXTEENTH_MM: f64 = 25.4 / 16.0;
/// What is off by no more than such a share is the same tool: a fuller or a swage is worn by more.
const SAME: f64 = 0.05;

/// The next fuller of a shop for a groove so wide, in mm.
pub(crate) fn fuller_mm(plan: &Plan, mm: f64, fit: Fit) -> f64 {
    in_series(FULLERS, plan, mm, fit)
}

/// The next swage of a shop for a bar so thick, in mm.
pub(crate) fn swage_mm(plan: &Plan, mm: f64) -> f64 {
    in_series(SWAGES, plan, mm, Fit::Up)
}

/// A whole size, in mm: in millimetres or in sixteenths of an inch.
pub(crate) fn whole_mm(plan: &Plan, mm: f64, fit: Fit) -> f64 {
    let step = step_mm(plan);
    let steps = mm / step;
    let whole = match fit {
        Fit::Down => (steps + 0.02).floor(),
        Fit::Up => (steps - 0.02).ceil(),
        Fit::Near => steps.round(),
    };
    whole.max(1.0) * step
}

/// A size of a tool in words, a whole one without a point.
pub(crate) fn words(plan: &Plan, mm: f64) -> String {
    length_words(plan, mm).replace(".0 mm", " mm")
}

fn step_mm(plan: &Plan) -> f64 {
    match plan.units.length {
        PlanUnit::Millimeter => 1.0,
        PlanUnit::Inch => SIXTEENTH_MM,
    }
}

/// The size of a series that fits; beyond its ends a whole size.
fn in_series(series: [&[f64]; 2], plan: &Plan, mm: f64, fit: Fit) -> f64 {
    let own = series[usize::from(plan.units.length == PlanUnit::Inch)];
    let sizes = || own.iter().map(|steps| steps * step_mm(plan));
    let found = match fit {
        Fit::Down => sizes().rfind(|size| *size <= mm * (1.0 + SAME)),
        Fit::Up => sizes().find(|size| *size >= mm * (1.0 - SAME)),
        Fit::Near => sizes().min_by(|one, other| (one - mm).abs().total_cmp(&(other - mm).abs())),
    };
    match (found, sizes().next_back()) {
        (Some(size), Some(largest)) if fit == Fit::Up || mm <= largest * 1.5 => size,
        _ => whole_mm(plan, mm, fit),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    fn plan(name: &str) -> Plan {
        let path = format!("{}/../../demo-plans/{name}.plan.json", env!("CARGO_MANIFEST_DIR"));
        fh_core::file::read(&std::fs::read(path).unwrap()).unwrap()
    }

    #[test]
    fn a_tool_has_a_size_that_a_shop_has() {
        let metric = plan("herb-bracket");
        assert_eq!([fuller_mm(&metric, 9.7, Fit::Down), fuller_mm(&metric, 9.4, Fit::Down)], [10.0, 8.0]);
        assert_eq!([swage_mm(&metric, 8.0), swage_mm(&metric, 13.0), swage_mm(&metric, 9.0)], [8.0, 14.0, 10.0]);
        assert_eq!([whole_mm(&metric, 13.8, Fit::Up), whole_mm(&metric, 27.2, Fit::Down)], [14.0, 27.0]);
        let inches = plan("gate-hook");
        assert_eq!(words(&inches, swage_mm(&inches, 0.375 * 25.4)), "3/8 in");
        assert_eq!(words(&inches, whole_mm(&inches, 0.61 * 25.4, Fit::Up)), "5/8 in");
        assert_eq!(words(&metric, 14.0), "14 mm");
    }

    #[test]
    fn a_size_beyond_the_series_is_whole() {
        let metric = plan("herb-bracket");
        assert_eq!([swage_mm(&metric, 61.3), fuller_mm(&metric, 2.6, Fit::Down)], [62.0, 2.0]);
    }
}
