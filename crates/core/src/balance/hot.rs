//! A length on the hot bar: steel at forging heat stands about an eightieth longer than cold.

use crate::plan::Plan;
use uom::si::f64::Length;

/// The heat at which a length is checked on the bar, in °C: between a light cherry red and orange (Chapman);
/// common practice, no source.
pub const CHECKING_HEAT_CELSIUS: f64 = 950.0;

/// A cold length as it stands on the bar at the heat at which it is checked; none where the plan's material does not
/// grow in the heat as carbon steel does.
pub fn hot_length(plan: &Plan, cold: Length) -> Option<Length> {
    plan.material().expands_as_steel().then(|| cold * (1.0 + steel_elongation(CHECKING_HEAT_CELSIUS)))
}

/// How much longer carbon steel is at so many °C than at 20 °C, as a share of its length (EN 1993-1-2 §3.4.1.1).
pub fn steel_elongation(celsius: f64) -> f64 {
    match celsius {
        below if below < 750.0 => 1.2e-5 * below + 0.4e-8 * below * below - 2.416e-4,
        change if change <= 860.0 => 1.1e-2,
        above => 2e-5 * above - 6.2e-3,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_elongation_runs_on_where_its_parts_meet() {
        assert!(steel_elongation(20.0).abs() < 1e-6);
        assert!((steel_elongation(749.999) - 1.1e-2).abs() < 1e-5 && (steel_elongation(860.001) - 1.1e-2).abs() < 1e-5);
        assert!((steel_elongation(950.0) - 0.0128).abs() < 1e-12);
    }
}
