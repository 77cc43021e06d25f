//! A long bar of one section that cools as one: the quick answer for the middle of a heat.

use super::air::Thickness;
use super::loss::{Loss, Patch, Surface, Touch};
use super::section::BarSection;
use super::steel::{HIGHEST_CELSIUS, LOWEST_CELSIUS};
use super::substance::Substance;

/// Steps of temperature in one sum.
const STEPS: usize = 400;

/// Seconds in which a long bar of one section falls from one temperature to another in °C; 0 where it does not fall, infinite
/// where it never gets there.
///
/// `rho (A/P) dH / q(T)` summed, with the skin and the anvil as `loss` has them.
pub fn section_seconds(
    section: BarSection,
    substance: Substance,
    loss: &Loss,
    from_celsius: f64,
    to_celsius: f64,
) -> f64 {
    // Written so that a temperature that is no number does not fall either.
    let falls = from_celsius > to_celsius && from_celsius.is_finite() && to_celsius.is_finite();
    match LongBar::of(section, substance, loss) {
        Some(bar) if falls => bar.seconds(from_celsius, to_celsius, STEPS),
        _ => 0.0,
    }
}

/// A long bar of one section, ready to be asked.
pub(super) struct LongBar {
    substance: Substance,
    surface: Surface,
    patch: Patch,
    /// Mass in kg behind each m² of skin.
    mass: f64,
}

impl LongBar {
    /// None where the section has no sizes.
    pub(super) fn of(section: BarSection, substance: Substance, loss: &Loss) -> Option<Self> {
        let (area, girth) = (section.area_mm2() * 1e-6, section.perimeter_mm() * 1e-3);
        let sound = (1e-12..1e6).contains(&area) && (1e-6..1e3).contains(&girth);
        let surface = Surface::new(loss);
        let touch = loss.anvil.map_or_else(Touch::default, |contact| surface.touch_at(contact.from_mm));
        let depth_m = if loss.skin { section.skin() * area / girth } else { 0.0 };
        let patch = Patch { thickness: Thickness::of(girth / std::f64::consts::PI), depth_m, touch };
        sound.then(|| Self { substance, surface, patch, mass: substance.density_kg_m3() * area / girth })
    }

    /// Seconds from a temperature to a lower one in so many steps.
    pub(super) fn seconds(&self, from_celsius: f64, to_celsius: f64, steps: usize) -> f64 {
        let [from_celsius, to_celsius] = [from_celsius, to_celsius].map(|it| it.clamp(LOWEST_CELSIUS, HIGHEST_CELSIUS));
        let step = (from_celsius - to_celsius) / steps as f64;
        let mut seconds = 0.0;
        for index in 0..steps {
            let high = from_celsius - step * index as f64;
            let middle = high - step / 2.0;
            let (flux, _) = self.surface.at_mean(middle, self.patch, self.substance.conductivity_w_mk(middle));
            if flux <= 0.0 {
                return f64::INFINITY;
            }
            let heat = self.substance.enthalpy_j_kg(high) - self.substance.enthalpy_j_kg(high - step);
            seconds += self.mass * heat / flux;
        }
        seconds
    }
}
