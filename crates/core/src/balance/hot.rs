//! A length on the hot bar: steel at forging heat stands about an eightieth longer than cold.

use crate::plan::Plan;
use fh_heat::steel::elongation;
use uom::si::f64::Length;

/// The heat at which a length is checked on the bar, in °C: between a light cherry red and orange (Chapman);
/// common practice, no source.
pub const CHECKING_HEAT_CELSIUS: f64 = 950.0;

/// A cold length as it stands on the bar at the heat at which it is checked; none where the plan's material does not
/// grow in the heat as carbon steel does.
pub fn hot_length(plan: &Plan, cold: Length) -> Option<Length> {
    plan.material().expands_as_steel().then(|| cold * (1.0 + elongation(CHECKING_HEAT_CELSIUS)))
}
