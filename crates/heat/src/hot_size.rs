//! A size as it reads on the hot bar.

use super::estimate::Estimate;
use super::steel;

/// How far the elongation at forging heat may be off, in shares of the length: published rules scatter so.
const LESS: f64 = 0.003;
const MORE: f64 = 0.001;
/// The elongation from which on the whole doubt is taken: that at 1000 °C; below it, in proportion.
const AT_FORGING_HEAT: f64 = 0.0138;

/// What a cold size of carbon steel measures at a temperature, in mm: EN 1993-1-2, less 0.3 and plus 0.1 percentage points.
///
/// From 750 to 860 °C the elongation stands still: a bar cools there without growing shorter.
pub fn hot_size_mm(cold_mm: f64, celsius: f64) -> Estimate {
    stretched(cold_mm, steel::elongation(celsius))
}

/// The same for a metal with one coefficient of expansion, per °C.
pub fn hot_size_by_coefficient_mm(cold_mm: f64, celsius: f64, per_celsius: f64) -> Estimate {
    let known = per_celsius.is_finite() && celsius.is_finite();
    let elongation = if known { per_celsius.clamp(0.0, 1e-4) * (celsius.clamp(-100.0, 1600.0) - 20.0) } else { 0.0 };
    stretched(cold_mm, elongation)
}

/// Millimetres that carbon steel measures more for each 100 mm cold, at a temperature.
pub fn more_per_100_mm(celsius: f64) -> Estimate {
    let hot = hot_size_mm(100.0, celsius);
    Estimate { low: hot.low - 100.0, likely: 100.0 * steel::elongation(celsius), high: hot.high - 100.0 }
}

fn stretched(cold_mm: f64, elongation: f64) -> Estimate {
    let cold_mm = if cold_mm.is_finite() { cold_mm.clamp(-1e9, 1e9) } else { 0.0 };
    let trust = (elongation.abs() / AT_FORGING_HEAT).min(1.0);
    let at = |elongation: f64| cold_mm * (1.0 + elongation);
    Estimate { low: at(elongation - LESS * trust), likely: at(elongation), high: at(elongation + MORE * trust) }
}
