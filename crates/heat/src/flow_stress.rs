//! How hard hot carbon steel resists: flow stress by carbon, heat, strain and speed.

use super::air::KELVIN;
use super::estimate::Estimate;

/// A kilogram-force on a square millimeter in N/mm² (definition).
const KGF_MM2: f64 = 9.80665;
/// Strain of one pass and its rate per second, for a hand or power hammer.
const PASS_STRAIN: f64 = 0.3;
const HAMMER_RATE: f64 = 100.0;
/// How far the value at one heat can be trusted: the published formulas agree so far from 900 to 1200 °C.
const DOUBT: f64 = 0.15;

/// What one pass of hot deformation is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Deformation {
    /// Carbon in percent of mass, up to 1.2.
    pub carbon_percent: f64,
    /// The heat in °C; the formulas are good from 750 to 1200.
    pub celsius: f64,
    /// The logarithmic strain of the pass, up to 0.5.
    pub strain: f64,
    /// The strain rate in 1/s.
    pub rate_per_second: f64,
}

impl Deformation {
    /// One pass under a hammer.
    pub fn hammered(carbon_percent: f64, celsius: f64) -> Self {
        Self { carbon_percent, celsius, strain: PASS_STRAIN, rate_per_second: HAMMER_RATE }
    }

    /// Carbon in percent, kelvin, strain, rate: within what the formulas can be asked.
    fn bounded(&self) -> (f64, f64, f64, f64) {
        let within = |value: f64, low: f64, high: f64, usual: f64| {
            if value.is_finite() { value.clamp(low, high) } else { usual }
        };
        (
            within(self.carbon_percent, 0.0, 1.2, 0.2),
            within(self.celsius, 600.0, 1300.0, 1050.0) + KELVIN,
            within(self.strain, 1e-3, 0.7, PASS_STRAIN),
            within(self.rate_per_second, 0.1, 1e3, HAMMER_RATE),
        )
    }
}

/// Mean resistance over a pass in N/mm² (Misaka and Yoshimoto 1967, coefficients from memory, held to check values).
///
/// It is a mean already: times the strain it is the work, and must not be integrated again.
pub fn misaka_mpa(of: Deformation) -> f64 {
    let (carbon, kelvin, strain, rate) = of.bounded();
    let heat = (2851.0 + 2968.0 * carbon - 1120.0 * carbon * carbon) / kelvin;
    let exponent = 0.126 - 1.75 * carbon + 0.594 * carbon * carbon + heat;
    KGF_MM2 * exponent.exp() * strain.powf(0.21) * rate.powf(0.13)
}

/// Resistance at the end of a pass in N/mm² (Shida 1969, coefficients from memory, held to check values).
pub fn shida_mpa(of: Deformation) -> f64 {
    let (carbon, _, strain, _) = of.bounded();
    let hardening = hardening_exponent(carbon);
    let relative = strain / 0.2;
    shida_at_fifth(of) * (1.3 * relative.powf(hardening) - 0.3 * relative)
}

/// Shida's resistance averaged over a pass from nothing to its strain, in N/mm² (calculus).
pub fn shida_mean_mpa(of: Deformation) -> f64 {
    let (carbon, _, strain, _) = of.bounded();
    let hardening = hardening_exponent(carbon);
    let relative = strain / 0.2;
    shida_at_fifth(of) * (1.3 / (hardening + 1.0) * relative.powf(hardening) - 0.15 * relative)
}

/// What is used for a hammer: the mean of Misaka's and of Shida's averaged, in N/mm², ±15 %.
///
/// Full recovery between passes is assumed; below 900 °C the real resistance is higher.
pub fn hammered_mpa(carbon_percent: f64, celsius: f64) -> Estimate {
    let pass = Deformation::hammered(carbon_percent, celsius);
    Estimate::within_share(f64::midpoint(misaka_mpa(pass), shida_mean_mpa(pass)), DOUBT)
}

fn hardening_exponent(carbon: f64) -> f64 {
    0.41 - 0.07 * carbon
}

/// Shida's resistance at a strain of 0.2, with the hump of the transformation below its own temperature.
fn shida_at_fifth(of: Deformation) -> f64 {
    let (carbon, kelvin, _, rate) = of.bounded();
    let heat = kelvin / 1e3;
    let change = 0.95 * (carbon + 0.41) / (carbon + 0.32);
    let (stress, exponent) = if heat >= change {
        let stress = (5.0 / heat - 0.01 / (carbon + 0.05)).exp();
        (stress, (-0.019 * carbon + 0.126) * heat + 0.075 * carbon - 0.05)
    } else {
        let off = heat - 0.95 * (carbon + 0.49) / (carbon + 0.42);
        let hump = 30.0 * (carbon + 0.9) * off * off + (carbon + 0.06) / (carbon + 0.09);
        let stress = hump * ((carbon + 0.32) / (0.19 * (carbon + 0.41)) - 0.01 / (carbon + 0.05)).exp();
        (stress, (0.081 * carbon - 0.154) * heat - 0.019 * carbon + 0.207 + 0.027 / (carbon + 0.32))
    };
    KGF_MM2 * 0.28 * stress * (rate / 10.0).powf(exponent)
}
