//! Still air around a hot bar: natural convection from a horizontal cylinder.

/// Standard gravity in m/s².
const GRAVITY: f64 = 9.80665;
/// Prandtl number of hot air, from memory.
const PRANDTL: f64 = 0.70;
/// Zero Celsius in kelvin.
pub(super) const KELVIN: f64 = 273.15;
/// Steps of temperature in a table of air.
const STEP_CELSIUS: f64 = 10.0;
const STEPS: usize = 180;

/// Nusselt number of a horizontal cylinder by its Rayleigh and Prandtl numbers (Churchill and Chu 1975).
pub(super) fn nusselt(rayleigh: f64, prandtl: f64) -> f64 {
    (0.60 + share_of_sixth_root(prandtl) * rayleigh.powf(1.0 / 6.0)).powi(2)
}

fn share_of_sixth_root(prandtl: f64) -> f64 {
    0.387 / (1.0 + (0.559 / prandtl).powf(9.0 / 16.0)).powf(8.0 / 27.0)
}

/// Viscosity of air in Pa s (Sutherland's law with the constants of the standard atmosphere, from memory).
fn viscosity(kelvin: f64) -> f64 {
    1.458e-6 * kelvin.powf(1.5) / (kelvin + 110.4)
}

/// Conductivity of air in W/(m K) (standard atmosphere, from memory).
fn conductivity(kelvin: f64) -> f64 {
    2.64638e-3 * kelvin.powf(1.5) / (kelvin + 245.4 * 10_f64.powf(-12.0 / kelvin))
}

/// Rayleigh number for a cylinder of 1 m; it grows with the cube of the diameter.
fn rayleigh_of_one_meter(surface_celsius: f64, ambient_celsius: f64) -> f64 {
    let film = f64::midpoint(surface_celsius, ambient_celsius) + KELVIN;
    let density = 101_325.0 / (287.05 * film);
    let kinematic = viscosity(film) / density;
    GRAVITY / film * (surface_celsius - ambient_celsius).abs() * PRANDTL / (kinematic * kinematic)
}

/// The thickness of a cylinder, as often as it is needed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Thickness {
    /// The root of its diameter in m.
    root: f64,
    /// One over its diameter, in 1/m; 0 where there is none, so that nothing is lost there.
    per_meter: f64,
}

impl Thickness {
    pub(super) fn of(diameter_m: f64) -> Self {
        let per_meter = if diameter_m > 1e-9 { 1.0 / diameter_m } else { 0.0 };
        Self { root: diameter_m.max(0.0).sqrt(), per_meter }
    }
}

/// What the air takes, by the temperature of a surface, for one temperature of the air.
///
/// The Rayleigh number is that of one meter times D³, so its sixth root is a root of D times a figure of the temperature
/// alone: one table serves every thickness.
pub(super) struct Air {
    ambient_celsius: f64,
    /// Conductivity of the film and the sixth-root term for one meter.
    rows: Vec<(f64, f64)>,
}

impl Air {
    pub(super) fn at(ambient_celsius: f64) -> Self {
        let row = |index: usize| {
            let surface = ambient_celsius + STEP_CELSIUS * index as f64;
            let film = f64::midpoint(surface, ambient_celsius) + KELVIN;
            let root = rayleigh_of_one_meter(surface, ambient_celsius).powf(1.0 / 6.0);
            (conductivity(film), share_of_sixth_root(PRANDTL) * root)
        };
        Self { ambient_celsius, rows: (0..STEPS).map(row).collect() }
    }

    /// The film coefficient in W/(m² K) for a bar as thick as a cylinder of this size.
    pub(super) fn coefficient(&self, surface_celsius: f64, size: Thickness) -> f64 {
        const STEPS_IN_A_DEGREE: f64 = 1.0 / STEP_CELSIUS;
        let place = ((surface_celsius - self.ambient_celsius).abs() * STEPS_IN_A_DEGREE).min((STEPS - 2) as f64);
        let index = (place as usize).min(STEPS - 2);
        let Some([low, high]) = self.rows.get(index..index + 2) else { return 0.0 };
        let share = place - index as f64;
        let conductivity = low.0 + (high.0 - low.0) * share;
        let root = low.1 + (high.1 - low.1) * share;
        let term = 0.60 + root * size.root;
        conductivity * size.per_meter * term * term
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nusselt_number_is_that_of_the_published_example() {
        assert!((nusselt(0.69 * 2.63e9, 0.69) / 139.134_937 - 1.0).abs() < 1e-6);
    }

    #[test]
    fn the_table_is_the_formula() {
        for diameter in [0.003_f64, 0.006, 0.02, 0.08] {
            for surface in [150.0, 333.0, 777.0, 1210.0] {
                let film = f64::midpoint(surface, 20.0) + KELVIN;
                let rayleigh = rayleigh_of_one_meter(surface, 20.0) * diameter.powi(3);
                let exact = conductivity(film) / diameter * nusselt(rayleigh, PRANDTL);
                let found = Air::at(20.0).coefficient(surface, Thickness::of(diameter));
                assert!((found / exact - 1.0).abs() < 1e-3, "{diameter} {surface} {found} {exact}");
            }
        }
    }
}
