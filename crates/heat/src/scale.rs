//! What the fire and the air eat: steel lost to scale over a history of temperature.

use super::air::KELVIN;
use super::estimate::Estimate;
use super::steel::DENSITY_KG_M3;

/// Iron per oxygen in the scale, by mass: scale taken as wüstite, 23 % oxygen, from memory.
const IRON_PER_OXYGEN: f64 = 77.0 / 23.0;
/// Density of the scale in kg/m³, for the law that is given in thickness, from memory.
const SCALE_DENSITY: f64 = 5700.0;
/// How fast still air brings oxygen, in kg/(m² s): derived from natural convection; it caps the first minute above 1050 °C.
const SUPPLY: f64 = 2.6e-3;
/// Gas constant in J/(mol K) (CODATA 2018).
const GAS_CONSTANT: f64 = 8.314_462_618;
/// How many times more or less it may be.
const DOUBT: f64 = 2.0;

/// A published law of how scale grows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScaleLaw {
    /// Pure iron in air at 500 to 900 °C: Stanley, von Hoene and Huntoon 1950. The lower one above 1000 °C.
    Stanley,
    /// Iron and steel at 700 to 1250 °C: Markworth, from memory. An upper bound above 1100 °C.
    Markworth,
}

/// A moment in the life of a surface.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exposure {
    /// For how many seconds.
    pub seconds: f64,
    /// At how many °C.
    pub celsius: f64,
    /// How much oxygen reaches it, as a share of free air: 1 in air, 0.2 to 0.5 deep in a good fire.
    pub air: f64,
}

/// The parabolic constant of a law, in kg² of oxygen per m⁴ and s.
pub fn parabolic_kg2_m4s(law: ScaleLaw, celsius: f64) -> f64 {
    let kelvin = if celsius.is_finite() { celsius.clamp(0.0, 1500.0) + KELVIN } else { 20.0 + KELVIN };
    match law {
        ScaleLaw::Stanley => 37.0 * (-33_000.0 / (1.987 * kelvin)).exp(),
        ScaleLaw::Markworth => {
            let oxygen = SCALE_DENSITY * 0.23;
            6.1e-4 * (-169_452.0 / (GAS_CONSTANT * kelvin)).exp() * oxygen * oxygen
        }
    }
}

/// Steel lost from one surface in µm by one law over exposures, the scale left where it is; `supply_limited` caps the start.
///
/// `dw/dt = 1 / (1/kl + 2w/kp)`, which has a closed form at one temperature.
pub fn loss_um(law: ScaleLaw, exposures: &[Exposure], supply_limited: bool) -> f64 {
    let oxygen = exposures.iter().fold(0.0, |oxygen, exposure| {
        let air = if exposure.air.is_finite() { exposure.air.clamp(0.0, 2.0) } else { 1.0 };
        let seconds = if exposure.seconds.is_finite() { exposure.seconds.clamp(0.0, 1e6) } else { 0.0 };
        let parabolic = parabolic_kg2_m4s(law, exposure.celsius);
        let slowness = if supply_limited { 1.0 / SUPPLY } else { 0.0 };
        let reached = oxygen * oxygen / parabolic + oxygen * slowness + seconds * air;
        // The root of w²/kp + w/kl = reached, in the form that does not cancel.
        let root = (slowness * slowness + 4.0 * reached / parabolic).sqrt();
        if reached > 0.0 { (2.0 * reached / (slowness + root)).max(oxygen) } else { oxygen }
    });
    oxygen * IRON_PER_OXYGEN / DENSITY_KG_M3 * 1e6
}

/// Steel lost from one surface in one heat, in µm: Markworth's law with the supply of still air, `x/: 2`.
///
/// Begin a new list for each heat: working knocks the scale off and the clock starts again.
pub fn heat_loss_um(exposures: &[Exposure]) -> Estimate {
    Estimate::times_or_over(loss_um(ScaleLaw::Markworth, exposures, true), DOUBT)
}

/// The exposures of a heat: a soak in the fire at some share of free air, then a cooling of seconds and °C in air.
pub fn heat_exposures(soak_seconds: f64, soak_celsius: f64, fire_air: f64, cooling: &[(f64, f64)]) -> Vec<Exposure> {
    let soak = Exposure { seconds: soak_seconds, celsius: soak_celsius, air: fire_air };
    let steps = cooling.windows(2).filter_map(|pair| match pair {
        [(t0, v0), (t1, v1)] => Some(Exposure { seconds: t1 - t0, celsius: f64::midpoint(*v0, *v1), air: 1.0 }),
        _ => None,
    });
    std::iter::once(soak).chain(steps).collect()
}

/// The share of a section that is lost with so many µm from its skin; a thin part loses the larger share.
pub fn lost_share(loss_um: Estimate, area_mm2: f64, perimeter_mm: f64) -> Estimate {
    let per_um = if area_mm2 > 0.0 && perimeter_mm >= 0.0 { perimeter_mm / area_mm2 / 1e3 } else { 0.0 };
    let share = loss_um.times(per_um);
    Estimate { low: share.low.min(1.0), likely: share.likely.min(1.0), high: share.high.min(1.0) }
}

/// The share lost over several heats that each take a share: what each leaves is multiplied.
pub fn over_heats(share_per_heat: Estimate, heats: u32) -> Estimate {
    let over = |share: f64| 1.0 - (1.0 - share.clamp(0.0, 1.0)).powf(f64::from(heats));
    Estimate { low: over(share_per_heat.low), likely: over(share_per_heat.likely), high: over(share_per_heat.high) }
}
