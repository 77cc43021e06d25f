//! Sizes as they read on the hot bar, at the heat at which they are checked.

use fh_core::balance::CHECKING_HEAT_CELSIUS;
use fh_core::plan::Plan;
use fh_heat::estimate::Estimate;
use fh_heat::hot_size::{hot_size_by_coefficient_mm, hot_size_mm};

/// The heat at which sizes of a plan are checked, in °C: that of the ladder for steel and iron; for
/// others where forging stops.
pub fn checking_celsius(plan: &Plan) -> Option<f64> {
    let metal = plan.material();
    let forging = metal.forging?;
    let heat = if metal.expands_as_steel() { CHECKING_HEAT_CELSIUS } else { forging.finish_celsius };
    Some(heat.clamp(forging.finish_celsius, forging.most_celsius))
}

/// A cold size in mm as it reads on the hot bar, with its doubt; none for a metal that is not forged hot.
pub fn hot_mm(plan: &Plan, cold_mm: f64) -> Option<Estimate> {
    let celsius = checking_celsius(plan)?;
    Some(match plan.material().expansion_per_celsius {
        None => hot_size_mm(cold_mm, celsius),
        Some(per_celsius) => hot_size_by_coefficient_mm(cold_mm, celsius, per_celsius),
    })
}

/// At which heat the hot sizes of a plan's steps are meant, and how far they can be trusted; none for a metal that is not forged hot.
pub fn hot_note(plan: &Plan) -> Option<String> {
    let celsius = checking_celsius(plan)?;
    let of_100 = hot_mm(plan, 100.0)?;
    Some(format!(
        "Hot sizes are for {celsius:.0} °C: 100 mm of bar measures {:.1} mm more then, {:.1} to {:.1} by published rules.",
        of_100.likely - 100.0,
        of_100.low - 100.0,
        of_100.high - 100.0
    ))
}
