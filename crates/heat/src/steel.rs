//! Carbon steel while it is hot: specific heat, conductivity, enthalpy and elongation of EN 1993-1-2 §3.4.1.
//!
//! The enthalpy is what is carried through a cooling: at 735 °C the specific heat has a peak that a temperature would be
//! stepped over. The standard ends at 1200 °C; beyond it the last piece runs on, which is our choice. Below 20 °C the first
//! piece runs on. High-carbon and alloy steels move and flatten the peak.

use std::sync::OnceLock;

/// Density of the cold steel, in kg/m³: volumes here are always those of the cold bar (EN 1993-1-2 §3.2.2).
pub const DENSITY_KG_M3: f64 = 7850.0;

/// The lowest temperature that the functions tell apart, in °C.
pub const LOWEST_CELSIUS: f64 = -100.0;

/// The highest temperature that the functions tell apart, in °C: well above any melting steel.
pub const HIGHEST_CELSIUS: f64 = 1600.0;

/// Number of places in the table that leads from enthalpy back to temperature.
const TABLE_LENGTH: usize = 4096;

/// Specific heat in J/(kg K) (EN 1993-1-2 §3.4.1.2).
pub fn specific_heat_j_kgk(celsius: f64) -> f64 {
    let t = within(celsius);
    if t < 600.0 {
        425.0 + t * (0.773 + t * (-1.69e-3 + t * 2.22e-6))
    } else if t < 735.0 {
        666.0 + 13_002.0 / (738.0 - t)
    } else if t < 900.0 {
        545.0 + 17_820.0 / (t - 731.0)
    } else {
        650.0
    }
}

/// Conductivity in W/(m K) (EN 1993-1-2 §3.4.1.3, with the slope that meets its last piece at 800 °C, from memory).
pub fn conductivity_w_mk(celsius: f64) -> f64 {
    let t = within(celsius);
    if t < 800.0 { 54.0 - 3.33e-2 * t } else { 27.3 }
}

/// How much longer the steel is than at 20 °C, as a share of its length (EN 1993-1-2 §3.4.1.1); nothing below 20 °C.
pub fn elongation(celsius: f64) -> f64 {
    match within(celsius).max(20.0) {
        below if below < 750.0 => 1.2e-5 * below + 0.4e-8 * below * below - 2.416e-4,
        change if change <= 860.0 => 1.1e-2,
        above => 2e-5 * above - 6.2e-3,
    }
}

/// Enthalpy over that at 20 °C, in J/kg: the specific heat integrated piece by piece (calculus).
pub fn enthalpy_j_kg(celsius: f64) -> f64 {
    let t = within(celsius);
    if t < 600.0 {
        below_600(t)
    } else if t < 735.0 {
        below_600(600.0) + 666.0 * (t - 600.0) - 13_002.0 * ((738.0 - t) / 138.0).ln()
    } else if t < 900.0 {
        at_735() + 545.0 * (t - 735.0) + 17_820.0 * ((t - 731.0) / 4.0).ln()
    } else {
        at_900() + 650.0 * (t - 900.0)
    }
}

/// The temperature in °C of an enthalpy in J/kg over that at 20 °C, from a table of 4096 places.
pub fn celsius_of_enthalpy(j_kg: f64) -> f64 {
    let table = table();
    let last = (TABLE_LENGTH - 1) as f64;
    // `max` takes what is no number as 0.
    let place = ((j_kg - table.lowest) * table.per_step).max(0.0).min(last);
    let index = (place as usize).min(TABLE_LENGTH - 2);
    match table.celsius.get(index..index + 2) {
        Some([low, high]) => low + (high - low) * (place - index as f64),
        _ => HIGHEST_CELSIUS,
    }
}

fn within(celsius: f64) -> f64 {
    if celsius.is_finite() { celsius.clamp(LOWEST_CELSIUS, HIGHEST_CELSIUS) } else { 20.0 }
}

fn below_600(t: f64) -> f64 {
    let integral = |t: f64| t * (425.0 + t * (0.773 / 2.0 + t * (-1.69e-3 / 3.0 + t * 2.22e-6 / 4.0)));
    integral(t) - integral(20.0)
}

fn at_735() -> f64 {
    below_600(600.0) + 666.0 * 135.0 - 13_002.0 * (3.0_f64 / 138.0).ln()
}

fn at_900() -> f64 {
    at_735() + 545.0 * 165.0 + 17_820.0 * (169.0_f64 / 4.0).ln()
}

/// Temperatures at even steps of enthalpy.
struct Table {
    lowest: f64,
    /// Places in one J/kg.
    per_step: f64,
    celsius: Vec<f64>,
}

fn table() -> &'static Table {
    static TABLE: OnceLock<Table> = OnceLock::new();
    TABLE.get_or_init(|| {
        let lowest = enthalpy_j_kg(LOWEST_CELSIUS);
        let step = (enthalpy_j_kg(HIGHEST_CELSIUS) - lowest) / (TABLE_LENGTH - 1) as f64;
        let celsius = (0..TABLE_LENGTH).map(|index| bisected(lowest + step * index as f64)).collect();
        Table { lowest, per_step: 1.0 / step, celsius }
    })
}

/// The temperature of an enthalpy, halved down to it.
fn bisected(j_kg: f64) -> f64 {
    let (mut low, mut high) = (LOWEST_CELSIUS, HIGHEST_CELSIUS);
    for _ in 0..48 {
        let middle = f64::midpoint(low, high);
        if enthalpy_j_kg(middle) < j_kg {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_elongation_runs_on_where_its_parts_meet() {
        assert!(elongation(20.0).abs() < 1e-6);
        assert!((elongation(749.999) - 1.1e-2).abs() < 1e-5 && (elongation(860.001) - 1.1e-2).abs() < 1e-5);
        assert!((elongation(950.0) - 0.0128).abs() < 1e-12);
    }

    #[test]
    fn enthalpy_leads_back_to_its_temperature() {
        for step in 0..1600 {
            let celsius = -50.0 + f64::from(step);
            assert!((celsius_of_enthalpy(enthalpy_j_kg(celsius)) - celsius).abs() < 0.01, "{celsius}");
        }
    }

    #[test]
    fn enthalpy_is_the_specific_heat_summed_up() {
        let mut sum = 0.0;
        for step in 0..118_000 {
            sum += specific_heat_j_kgk(20.005 + f64::from(step) * 0.01) * 0.01;
        }
        assert!((sum / enthalpy_j_kg(1200.0) - 1.0).abs() < 1e-5);
    }

    #[test]
    fn absurd_temperatures_are_taken_as_the_nearest_known() {
        for celsius in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300, -1e300] {
            assert!(specific_heat_j_kgk(celsius).is_finite() && conductivity_w_mk(celsius) > 0.0);
            assert!(celsius_of_enthalpy(celsius).is_finite() && enthalpy_j_kg(celsius).is_finite());
        }
    }
}
