//! Aluminium and titanium.

use super::{Brittle, Forging, Material, Quench, Thermal};
use crate::material::iron::CARBON_STEEL;

pub(super) const ALUMINIUM: Material = Material {
    name: "aluminium",
    density_kg_m3: 2700.0,
    density_source: "alloy 6061, 0.0975 lb/in³, from memory",
    forging: Some(Forging {
        most_celsius: 480.0,
        usual_celsius: 430.0,
        finish_celsius: 350.0,
        light_celsius: 250.0,
        spoilt_celsius: 550.0,
    }),
    heats_source: "alloy 6061, from memory; 300-480 for all alloys, J. R. Davis (ed.), Aluminum and Aluminum Alloys, ASM International 1993, p. 248, as quoted in the Wikipedia article Forging temperature",
    melts_celsius: 580.0,
    weld: None,
    instead_of_weld: "Rivet it, have it welded with the arc, or choose mild steel or wrought iron.",
    brittle: &[Brittle {
        from_celsius: 550.0,
        to_celsius: 650.0,
        why: "hot short: it crumbles just before it melts (from memory)",
        is_of_all_steel: false,
        breaks: true,
    }],
    quench: Quench { may: true, does: "grows soft by it, and hardens again in days" },
    glows: false,
    never: &["Never wait for a colour: it melts black. Go by the char of a pine stick, a crayon or a thermometer."],
    hot_caution: Some("No colour shows its heat: it melts black, and looks cold when it burns."),
    normalise: None,
    is_plain_steel: false,
    carbon_percent: None,
    emissivity: 0.2,
    expansion_per_celsius: Some(26e-6),
    thermal: Some(Thermal { specific_heat_j_kgk: 1050.0, conductivity_w_mk: 180.0 }),
    open_most_celsius: None,
    ..CARBON_STEEL
};

pub(super) const TITANIUM: Material = Material {
    name: "titanium",
    density_kg_m3: 4500.0,
    density_source: "commercially pure, from memory",
    forging: Some(Forging {
        most_celsius: 955.0,
        usual_celsius: 905.0,
        finish_celsius: 800.0,
        light_celsius: 700.0,
        spoilt_celsius: 1010.0,
    }),
    heats_source: "from memory",
    melts_celsius: 1660.0,
    weld: None,
    instead_of_weld: "Rivet it or bind it with a collar, have it welded under argon, or choose mild steel.",
    brittle: &[],
    quench: Quench { may: false, does: "gains nothing by it" },
    never: &[
        "Keep its heats short: above about 600 °C its skin takes up oxygen and turns brittle. Grind it off.",
        "Never throw water on burning swarf.",
    ],
    hot_caution: Some("A short heat: above about 600 °C its skin turns brittle."),
    normalise: None,
    is_plain_steel: false,
    carbon_percent: None,
    emissivity: 0.6,
    expansion_per_celsius: Some(10e-6),
    thermal: Some(Thermal { specific_heat_j_kgk: 650.0, conductivity_w_mk: 20.0 }),
    open_most_celsius: None,
    ..CARBON_STEEL
};
