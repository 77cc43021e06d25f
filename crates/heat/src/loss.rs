//! How a hot bar loses its heat: it radiates, the air takes some, and an anvil takes the most.

use super::air::{Air, KELVIN, Thickness};

/// Stefan-Boltzmann constant in W/(m² K⁴) (CODATA 2018).
const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;

/// Emissivity of a scaled bar: tables for oxidised steel give 0.78-0.82 at 125-525 °C and 0.85-0.89 at 500-1200 °C.
pub const SCALED_STEEL: f64 = 0.80;

/// What the air around the bar takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Convection {
    /// Nothing.
    None,
    /// What rises by itself along a horizontal bar, times a figure for the draught: 1 still, 2 draughty.
    Natural {
        /// How many times the loss in still air.
        draught: f64,
    },
    /// A set coefficient.
    Fixed {
        /// The coefficient in W/(m² K).
        w_m2k: f64,
    },
}

/// One end of the bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum End {
    /// It loses heat as the sides do.
    Open,
    /// It loses nothing: the bar goes on beyond it in the same way.
    Closed,
    /// It is held at a temperature.
    Held {
        /// The temperature in °C.
        celsius: f64,
    },
}

/// A face of the bar that lies on the anvil for part of the time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AnvilContact {
    /// Conductance through scale and gap in W/(m² K): 500 to 1500 at rest, poorly known.
    pub conductance_w_m2k: f64,
    /// The share of the time that it lies on the anvil.
    pub duty: f64,
    /// The share of the girth that touches: a quarter for a square.
    pub share_of_girth: f64,
    /// The anvil's temperature in °C.
    pub anvil_celsius: f64,
    /// Where the contact starts along the bar, in mm.
    pub from_mm: f64,
    /// Where it ends, in mm.
    pub to_mm: f64,
}

impl AnvilContact {
    /// One face of four on a cold anvil half of the time, at 800 W/(m² K): our estimate, good to a factor of 2.
    pub fn cold(from_mm: f64, to_mm: f64) -> Self {
        let share_of_girth = 0.25;
        Self { conductance_w_m2k: 800.0, duty: 0.5, share_of_girth, anvil_celsius: 20.0, from_mm, to_mm }
    }

    /// The same on an anvil that was warmed to 150 °C (common practice, no source).
    pub fn warm(from_mm: f64, to_mm: f64) -> Self {
        Self { anvil_celsius: 150.0, ..Self::cold(from_mm, to_mm) }
    }

    fn is_sound(&self) -> bool {
        let shares = [self.duty, self.share_of_girth].iter().all(|share| (0.0..=1.0).contains(share));
        shares
            && (0.0..1e6).contains(&self.conductance_w_m2k)
            && (-100.0..1600.0).contains(&self.anvil_celsius)
            && !self.from_mm.is_nan()
            && !self.to_mm.is_nan()
    }
}

/// How a bar loses its heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loss {
    /// The temperature around it in °C.
    pub ambient_celsius: f64,
    /// The share of a black body's radiation, 0.70 to 0.90 for scaled steel.
    pub emissivity: f64,
    /// What the air takes.
    pub convection: Convection,
    /// Whether the skin is taken as cooler than the mean of a section, as it is.
    pub skin: bool,
    /// Whether the ring of a shoulder loses heat, as it does.
    pub shoulder_rings: bool,
    /// The face on the anvil, while it is worked there.
    pub anvil: Option<AnvilContact>,
    /// The end at the bar's start.
    pub start: End,
    /// The end at the bar's end.
    pub end: End,
}

impl Loss {
    /// A scaled bar in the still air of a smithy at 20 °C.
    pub fn in_still_air() -> Self {
        Self {
            ambient_celsius: 20.0,
            emissivity: SCALED_STEEL,
            convection: Convection::Natural { draught: 1.0 },
            skin: true,
            shoulder_rings: true,
            anvil: None,
            start: End::Open,
            end: End::Open,
        }
    }

    /// The same while it is hammered on a cold anvil between two places in mm.
    pub fn on_the_anvil(from_mm: f64, to_mm: f64) -> Self {
        Self { anvil: Some(AnvilContact::cold(from_mm, to_mm)), ..Self::in_still_air() }
    }

    /// Whether part of it is on the anvil, which is what is known worst.
    pub fn is_hammered(&self) -> bool {
        self.anvil.is_some_and(|contact| contact.conductance_w_m2k * contact.duty * contact.share_of_girth > 0.0)
    }
}

/// The same, ready for many calls: figures checked, the air's table made.
pub(super) struct Surface {
    pub(super) ambient_celsius: f64,
    ambient_fourth: f64,
    radiated: f64,
    convection: Convection,
    air: Option<Air>,
    pub(super) skin: bool,
    anvil: Option<AnvilContact>,
    anvil_celsius: f64,
}

/// A patch of the bar's surface: how thick the bar is there, how far its mean heat lies below the skin, what of it touches.
#[derive(Clone, Copy, Debug)]
pub(super) struct Patch {
    /// That of the round of the same girth.
    pub(super) thickness: Thickness,
    /// How far below the skin the mean lies, in m.
    pub(super) depth_m: f64,
    /// What of it lies on the anvil.
    pub(super) touch: Touch,
}

/// How much of a patch lies on the anvil, over time and girth.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Touch {
    /// Its share, which the air does not see.
    covered: f64,
    /// The conductance through it, spread over the whole girth, in W/(m² K).
    w_m2k: f64,
}

impl Surface {
    pub(super) fn new(loss: &Loss) -> Self {
        let ambient_celsius =
            if (-100.0..=1500.0).contains(&loss.ambient_celsius) { loss.ambient_celsius } else { 20.0 };
        let emissivity = if (0.0..=1.0).contains(&loss.emissivity) { loss.emissivity } else { SCALED_STEEL };
        let sound = match loss.convection {
            Convection::Natural { draught } => (0.0..=1e3).contains(&draught),
            Convection::Fixed { w_m2k } => (0.0..=1e5).contains(&w_m2k),
            Convection::None => true,
        };
        let convection = if sound { loss.convection } else { Convection::Natural { draught: 1.0 } };
        let anvil = loss.anvil.filter(AnvilContact::is_sound);
        let air = matches!(convection, Convection::Natural { .. }).then(|| Air::at(ambient_celsius));
        Self {
            ambient_celsius,
            ambient_fourth: (ambient_celsius + KELVIN).powi(4),
            radiated: emissivity * STEFAN_BOLTZMANN,
            convection,
            air,
            skin: loss.skin,
            anvil,
            anvil_celsius: anvil.map_or(ambient_celsius, |contact| contact.anvil_celsius),
        }
    }

    /// What of the anvil's contact falls on a place.
    pub(super) fn touch_at(&self, x_mm: f64) -> Touch {
        match self.anvil {
            Some(it) if (it.from_mm..=it.to_mm).contains(&x_mm) => {
                let covered = it.duty * it.share_of_girth;
                Touch { covered, w_m2k: it.conductance_w_m2k * covered }
            }
            _ => Touch::default(),
        }
    }

    /// The film coefficient of the air in W/(m² K).
    pub(super) fn film(&self, surface_celsius: f64, thickness: Thickness) -> f64 {
        match (self.convection, &self.air) {
            (Convection::Fixed { w_m2k }, _) => w_m2k,
            (Convection::Natural { draught }, Some(air)) => draught * air.coefficient(surface_celsius, thickness),
            _ => 0.0,
        }
    }

    /// Loss in W/m² of a surface at a temperature, and how it grows with that temperature; `film` in W/(m² K).
    fn at_skin(&self, celsius: f64, film: f64, touch: Touch) -> (f64, f64) {
        let kelvin = celsius + KELVIN;
        let cube = kelvin * kelvin * kelvin;
        let open = 1.0 - touch.covered;
        let air = self.radiated * (cube * kelvin - self.ambient_fourth) + film * (celsius - self.ambient_celsius);
        let flux = open * air + touch.w_m2k * (celsius - self.anvil_celsius);
        (flux, open * (4.0 * self.radiated * cube + film) + touch.w_m2k)
    }

    /// Loss in W/m² by the mean temperature behind a patch, and how it grows with that temperature; `conductivity` in W/(m K).
    ///
    /// The skin is at `T - q depth / k`. Two steps of Newton's find it to a millionth of a degree; the film's coefficient is that at
    /// the mean, which is the same to half a percent of a tenth.
    pub(super) fn at_mean(&self, celsius: f64, patch: Patch, conductivity: f64) -> (f64, f64) {
        let film = self.film(celsius, patch.thickness);
        let (flux, slope) = self.at_skin(celsius, film, patch.touch);
        let resistance = patch.depth_m / conductivity;
        if resistance <= 0.0 {
            return (flux, slope);
        }
        let skin = celsius - resistance * flux / (1.0 + resistance * slope);
        let (flux, slope) = self.at_skin(skin, film, patch.touch);
        let step = (celsius - skin - resistance * flux) / (1.0 + resistance * slope);
        (flux + slope * step, slope / (1.0 + resistance * slope))
    }
}

/// The film coefficient of natural convection in W/(m² K), for a cylinder of so many mm in air of `ambient_celsius`.
pub fn natural_convection_w_m2k(diameter_mm: f64, surface_celsius: f64, ambient_celsius: f64) -> f64 {
    let loss = Loss { ambient_celsius, ..Loss::in_still_air() };
    Surface::new(&loss).film(surface_celsius, Thickness::of((diameter_mm / 1e3).clamp(1e-5, 10.0)))
}

/// Nusselt number of a horizontal cylinder by its Rayleigh and Prandtl numbers (Churchill and Chu 1975), 1e-5 < Ra < 1e12.
pub fn nusselt(rayleigh: f64, prandtl: f64) -> f64 {
    super::air::nusselt(rayleigh, prandtl)
}
