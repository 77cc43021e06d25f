//! The shades that temperatures are drawn in: even steps from dark to light as iron goes, dark where it is cold, then red,
//! orange and, where it is hottest, pale yellow, as a bar in the dusk. They are a scale of their own all the same, not the colors that a hot bar shows at each heat.

use crate::theme::Theme;
use egui::Color32;

/// The steps of the scale in °C, for metals that are forged above and below [`MILD_FIRE`].
const STEP: f64 = 100.0;
const FINE_STEP: f64 = 50.0;
const MILD_FIRE: f64 = 600.0;

/// A scale of shades.
pub(super) struct Shades {
    /// The shades at even shares of the scale.
    stops: [Color32; 4],
    /// From one shade to the next, in °C.
    pub(super) step: f64,
    /// The end of the scale, in °C; it begins at 0.
    pub(super) high: f64,
}

impl Shades {
    /// For a bar that comes out of the fire at so many °C.
    pub(super) fn new(theme: &Theme, start_celsius: f64) -> Self {
        let step = if start_celsius < MILD_FIRE { FINE_STEP } else { STEP };
        Self {
            stops: [theme.heat_cold, theme.heat_red, theme.hot, theme.heat_pale],
            step,
            high: (start_celsius / step).ceil().max(1.0) * step,
        }
    }

    /// Which step a temperature is on.
    pub(super) fn step_of(&self, celsius: f64) -> usize {
        (celsius.clamp(0.0, self.high) / self.step) as usize
    }

    /// The shade of a step.
    pub(super) fn shade(&self, step: usize) -> Color32 {
        let share = (step as f64 / self.count().saturating_sub(1).max(1) as f64).clamp(0.0, 1.0) as f32;
        let place = share * (self.stops.len() - 1) as f32;
        let below = (place as usize).min(self.stops.len() - 2);
        self.stops[below].lerp_to_gamma(self.stops[below + 1], place - below as f32)
    }

    /// The color of a line across what is so hot in °C: pale on what is dark, dark on what is light.
    pub(super) fn line_on(&self, celsius: f64) -> Color32 {
        let share = self.step_of(celsius) as f64 / self.count().saturating_sub(1).max(1) as f64;
        if share < 0.5 { self.stops[self.stops.len() - 1] } else { self.stops[0] }
    }

    /// How many steps there are.
    pub(super) fn count(&self) -> usize {
        (self.high / self.step).round() as usize
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theme::Look;

    /// How light a color is, 0 to 1, roughly.
    fn light(color: Color32) -> f64 {
        let parts = [(color.r(), 0.299), (color.g(), 0.587), (color.b(), 0.114)];
        parts.iter().map(|(part, weight)| f64::from(*part) / 255.0 * weight).sum()
    }

    /// A smith reads the light place as the hot one, whatever the look.
    #[test]
    fn the_hotter_the_lighter_in_every_look() {
        for look in Look::ALL {
            let theme = Theme::new(look, 1.0);
            for start in [430.0, 1200.0] {
                let shades = Shades::new(&theme, start);
                let all: Vec<f64> = (0..shades.count()).map(|step| light(shades.shade(step))).collect();
                assert!(all.windows(2).all(|pair| pair[1] > pair[0] + 0.01), "{look:?}: {all:?}");
                assert!(all[0] < 0.2 && all[all.len() - 1] > 0.85, "{look:?}: {all:?}");
            }
        }
    }

    #[test]
    fn it_goes_by_red_and_orange_as_iron_does() {
        for look in Look::ALL {
            let shades = Shades::new(&Theme::new(look, 1.0), 1200.0);
            let all: Vec<Color32> = (0..shades.count()).map(|step| shades.shade(step)).collect();
            let is_red = |color: &Color32| color.r() > 2 * color.g() && color.r() > 100;
            let is_orange = |color: &Color32| color.r() > 150 && color.g() > color.r() / 2 && color.b() < color.g() / 2;
            let (red, orange) = (all.iter().position(is_red), all.iter().position(is_orange));
            assert!(red.is_some() && red < orange, "{look:?}: {all:?}");
        }
    }

    #[test]
    fn a_line_is_seen_on_every_shade() {
        for look in Look::ALL {
            let shades = Shades::new(&Theme::new(look, 1.0), 1200.0);
            for step in 0..shades.count() {
                let apart = light(shades.shade(step)) - light(shades.line_on(step as f64 * shades.step));
                assert!(apart.abs() > 0.3, "{look:?}, step {step}: {apart}");
            }
        }
    }

    #[test]
    fn whatever_it_is_asked_is_on_the_scale() {
        let shades = Shades::new(&Theme::new(Look::Light, 1.0), 1200.0);
        assert_eq!((shades.step_of(-50.0), shades.step_of(f64::NAN), shades.step_of(850.0)), (0, 0, 8));
        assert_eq!(shades.count(), 12);
    }
}
