//! Copper and what is made with it.
//!
//! The forging heats of these alloys, as the Copper Development Association gives them, are written down from memory.

use super::{Brittle, Forging, Material, Quench, Thermal};
use crate::material::iron::CARBON_STEEL;

const INSTEAD: &str = "Rivet it, braze it or bind it with a collar, or choose mild steel or wrought iron.";

pub(super) const COPPER: Material = Material {
    name: "copper",
    density_kg_m3: 8940.0,
    density_source: "alloy C11000, 0.322-0.323 lb/in³: Copper Development Association, alloy data",
    forging: Some(Forging {
        most_celsius: 870.0,
        usual_celsius: 820.0,
        finish_celsius: 700.0,
        light_celsius: 600.0,
        spoilt_celsius: 1000.0,
    }),
    heats_source: "alloy C11000: Copper Development Association, 760-870, from memory; finish from memory; it can be worked cold as well",
    melts_celsius: 1065.0,
    weld: None,
    instead_of_weld: INSTEAD,
    brittle: &[],
    quench: Quench { may: true, does: "grows soft by it" },
    never: &["Never heat it to 950 °C, a light red to orange: it crumbles, and melts without warning."],
    hot_caution: Some("Take it out at a cherry red, 820 °C: it melts without warning."),
    normalise: None,
    is_plain_steel: false,
    carbon_percent: None,
    emissivity: 0.75,
    expansion_per_celsius: Some(20e-6),
    thermal: Some(Thermal { specific_heat_j_kgk: 430.0, conductivity_w_mk: 350.0 }),
    open_most_celsius: None,
    ..CARBON_STEEL
};

pub(super) const BRASS: Material = Material {
    name: "brass",
    density_kg_m3: 8440.0,
    density_source: "60/40, forging brass C37700, 0.305 lb/in³: Copper Development Association, alloy data; other brasses 8390 to 8530, from memory",
    forging: Some(Forging {
        most_celsius: 815.0,
        usual_celsius: 765.0,
        finish_celsius: 650.0,
        light_celsius: 650.0,
        spoilt_celsius: 850.0,
    }),
    heats_source: "60/40, forging brass C37700: Copper Development Association, 650-815, from memory; spoiling from memory",
    melts_celsius: 883.0,
    brittle: &[Brittle {
        from_celsius: 300.0,
        to_celsius: 600.0,
        why: "leaded and alpha brass breaks when struck here (from memory)",
        is_of_all_steel: false,
        breaks: true,
    }],
    quench: Quench { may: false, does: "may crack" },
    never: &[
        "Never strike it below 650 °C until it is cold: between 300 and 600 °C it breaks.",
        "Never heat it until it fumes: what smokes is zinc.",
    ],
    fume: Some(
        "Its zinc fumes are felt hours later. Free-cutting brass holds lead: keep its dust from food and mouth.",
    ),
    hot_caution: Some("Strike nothing below 650 °C until it is cold: it breaks."),
    emissivity: 0.6,
    expansion_per_celsius: Some(21e-6),
    thermal: Some(Thermal { specific_heat_j_kgk: 420.0, conductivity_w_mk: 130.0 }),
    ..COPPER
};

pub(super) const SILICON_BRONZE: Material = Material {
    name: "silicon bronze",
    // Plans from before bronze was parted in two.
    also: &["bronze"],
    density_kg_m3: 8530.0,
    density_source: "alloy C65500, 0.308 lb/in³: Copper Development Association, alloy data",
    forging: Some(Forging {
        most_celsius: 870.0,
        usual_celsius: 820.0,
        finish_celsius: 700.0,
        light_celsius: 700.0,
        spoilt_celsius: 930.0,
    }),
    heats_source: "alloy C65500: Copper Development Association, 700-870, from memory; spoiling from memory",
    melts_celsius: 970.0,
    brittle: &[Brittle {
        from_celsius: 300.0,
        to_celsius: 650.0,
        why: "many bronzes break when struck here (from memory)",
        is_of_all_steel: false,
        breaks: true,
    }],
    never: &[
        "Never strike it below 700 °C until it is cold: it breaks.",
        "Never heat beryllium copper in its place: its dust and fumes are poisonous.",
    ],
    fume: None,
    hot_caution: Some("Strike nothing below 700 °C until it is cold: it breaks."),
    emissivity: 0.7,
    expansion_per_celsius: Some(19e-6),
    thermal: Some(Thermal { specific_heat_j_kgk: 420.0, conductivity_w_mk: 45.0 }),
    ..BRASS
};

pub(super) const PHOSPHOR_BRONZE: Material = Material {
    name: "phosphor bronze",
    also: &[],
    density_kg_m3: 8860.0,
    density_source: "alloy C51000, 0.320 lb/in³: Copper Development Association, alloy data",
    forging: None,
    heats_source: "alloy C51000: Copper Development Association, alloy data, rates its hot forming poor",
    melts_celsius: 955.0,
    brittle: &[],
    never: &["Never forge it hot: it breaks. It is worked cold, and softened between times."],
    hot_caution: Some("It breaks when it is struck hot: work it cold."),
    ..SILICON_BRONZE
};
