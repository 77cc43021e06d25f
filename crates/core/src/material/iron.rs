//! Iron and steel.

use super::{Brittle, Forging, Material, Normalise, Quench, Thermal, Weld};

const BLUE: Brittle = Brittle {
    from_celsius: 150.0,
    to_celsius: 400.0,
    why: "blue heat: a bar that looks cold cracks where it is bent or struck (from memory)",
    is_of_all_steel: true,
    breaks: false,
};
const BLACK: Brittle = Brittle {
    from_celsius: 400.0,
    to_celsius: 700.0,
    why: "black to dull red: too cold to forge, and where it is black hot enough to burn a hand (common practice)",
    is_of_all_steel: true,
    breaks: false,
};
const BLACK_HIGH: Brittle = Brittle {
    to_celsius: 750.0,
    why: "black to dull red: high-carbon steel cracks here, at once or when it is hardened (common practice)",
    is_of_all_steel: false,
    ..BLACK
};
const FLUX: &str = "flux it at a bright red";
const SAND: &str = "Clean, dry silver sand, at a somewhat higher heat. Don't breathe its dust.";
const NORMAL: Normalise = Normalise { celsius: 880.0, looks: "a light cherry red" };
const HARDENS: Quench = Quench { may: false, does: "may harden and crack" };

/// A carbon steel, for the others to differ from.
pub(super) const CARBON_STEEL: Material = Material {
    name: "carbon steel",
    also: &[],
    density_kg_m3: 7850.0,
    density_source: "as mild steel: carbon changes it by under 1 %, from memory",
    forging: Some(Forging {
        most_celsius: 1200.0,
        usual_celsius: 1150.0,
        finish_celsius: 850.0,
        light_celsius: 750.0,
        spoilt_celsius: 1250.0,
    }),
    heats_source: "0.4-0.6 % C, from memory",
    melts_celsius: 1430.0,
    weld: Some(Weld {
        from_celsius: 1180.0,
        to_celsius: 1250.0,
        looks: "a yellow heat, its surface wet",
        flux: FLUX,
        other_flux: None,
        hard: None,
    }),
    instead_of_weld: "",
    brittle: &[BLUE, BLACK],
    quench: HARDENS,
    glows: true,
    never: &[],
    fume: None,
    hot_caution: None,
    normalise: Some(NORMAL),
    // What high-carbon steel is heated to.
    open_most_celsius: Some(1070.0),
    is_plain_steel: true,
    carbon_percent: Some(0.45),
    // Tables of makers of thermal cameras: 0.78-0.82 at 125-525 °C, 0.85-0.89 at 500-1200 °C.
    emissivity: 0.80,
    expansion_per_celsius: None,
    thermal: None,
};

pub(super) const MILD_STEEL: Material = Material {
    name: "mild steel",
    density_source: "EN 1993-1-2 §3.2.2 (7850 kg/m³ at every heat), from memory",
    forging: Some(Forging {
        most_celsius: 1250.0,
        usual_celsius: 1200.0,
        finish_celsius: 850.0,
        light_celsius: 750.0,
        spoilt_celsius: 1300.0,
    }),
    heats_source: "up to 0.25 % C, from memory",
    melts_celsius: 1480.0,
    weld: Some(Weld {
        from_celsius: 1260.0,
        to_celsius: 1350.0,
        looks: "a light yellow to white heat, its surface wet",
        flux: FLUX,
        other_flux: Some(SAND),
        hard: None,
    }),
    quench: Quench { may: true, does: "hardens little" },
    normalise: None,
    open_most_celsius: None,
    carbon_percent: Some(0.2),
    ..CARBON_STEEL
};

pub(super) const MEDIUM_CARBON_STEEL: Material = Material {
    name: "medium-carbon steel",
    density_source: "as carbon steel, from memory",
    open_most_celsius: None,
    ..CARBON_STEEL
};

const HARD_NEVER: [&str; 2] = [
    "Never cool it in water between heats, nor lay it hot on wet ground: it hardens and cracks.",
    "Never soak it at forging heat: it loses carbon and its grain grows.",
];

pub(super) const HIGH_CARBON_STEEL: Material = Material {
    name: "high-carbon steel",
    density_source: "as carbon steel, from memory",
    forging: Some(Forging {
        most_celsius: 1120.0,
        usual_celsius: 1070.0,
        finish_celsius: 850.0,
        light_celsius: 800.0,
        spoilt_celsius: 1220.0,
    }),
    heats_source: "0.7-1.0 % C: a light red for 0.7-1.1 % C, W. L. Ilgen, Forge Work, 1912; the figures from memory",
    melts_celsius: 1350.0,
    weld: Some(Weld {
        from_celsius: 1080.0,
        to_celsius: 1150.0,
        looks: "orange to yellow, just when the borax runs, and no hotter",
        flux: "flux it with borax at a red heat",
        other_flux: None,
        hard: Some("It burns just above the heat at which it welds, and only borax runs as early."),
    }),
    brittle: &[BLUE, BLACK_HIGH],
    never: &HARD_NEVER,
    normalise: Some(Normalise { celsius: 850.0, looks: "a cherry red" }),
    open_most_celsius: None,
    carbon_percent: Some(0.9),
    ..CARBON_STEEL
};

pub(super) const SPRING_STEEL: Material = Material {
    name: "spring steel",
    density_source: "as carbon steel: its alloys change it by under 1 %, from memory",
    forging: Some(Forging {
        most_celsius: 1150.0,
        usual_celsius: 1100.0,
        finish_celsius: 900.0,
        light_celsius: 800.0,
        spoilt_celsius: 1220.0,
    }),
    heats_source: "0.5-0.65 % C with silicon, chromium or manganese, from memory",
    melts_celsius: 1410.0,
    weld: Some(Weld {
        from_celsius: 1100.0,
        to_celsius: 1180.0,
        looks: "a yellow heat, just when the borax runs, and no hotter",
        flux: "flux it with borax at a red heat",
        other_flux: None,
        hard: Some("Its alloys keep the seam dirty, and it burns just above the heat at which it welds."),
    }),
    brittle: &[BLUE, BLACK_HIGH],
    never: &HARD_NEVER,
    open_most_celsius: None,
    carbon_percent: Some(0.6),
    ..CARBON_STEEL
};

pub(super) const WROUGHT_IRON: Material = Material {
    name: "wrought iron",
    density_kg_m3: 7689.0,
    density_source: "480 lb/ft³: Shop Practice, vol. 2 (American technical cyclopedia, c. 1906-1913), weight of forging",
    forging: Some(Forging {
        most_celsius: 1150.0,
        usual_celsius: 1100.0,
        finish_celsius: 950.0,
        light_celsius: 950.0,
        spoilt_celsius: 1420.0,
    }),
    heats_source: "from memory; it takes a white welding heat",
    melts_celsius: 1510.0,
    weld: Some(Weld {
        from_celsius: 1300.0,
        to_celsius: 1400.0,
        looks: "a white heat, when the first sparks fly and its surface is wet",
        flux: FLUX,
        other_flux: Some(SAND),
        hard: None,
    }),
    brittle: &[
        BLUE,
        Brittle {
            from_celsius: 400.0,
            to_celsius: 900.0,
            why: "too cold to work: it splits along its fibre (from memory)",
            is_of_all_steel: false,
            breaks: false,
        },
    ],
    quench: Quench { may: true, does: "has no carbon to harden" },
    never: &[
        "Never work it below 950 °C, a light red to orange, least of all across the fibre: it splits.",
        "At a welding heat the first sparks are right; never leave it until it showers them.",
    ],
    hot_caution: Some("Strike nothing below 950 °C, a light red to orange: it splits."),
    normalise: None,
    open_most_celsius: None,
    is_plain_steel: false,
    carbon_percent: Some(0.05),
    ..CARBON_STEEL
};

pub(super) const STAINLESS_STEEL: Material = Material {
    name: "stainless steel",
    density_kg_m3: 8000.0,
    density_source: "grade 304, from memory",
    forging: Some(Forging {
        most_celsius: 1150.0,
        usual_celsius: 1100.0,
        finish_celsius: 925.0,
        light_celsius: 925.0,
        spoilt_celsius: 1260.0,
    }),
    heats_source: "austenitic, grade 304 and its like, from memory",
    melts_celsius: 1400.0,
    weld: None,
    instead_of_weld: "Rivet it or bind it with a collar, have it welded with the arc, or choose mild steel.",
    brittle: &[Brittle {
        from_celsius: 425.0,
        to_celsius: 870.0,
        why: "too stiff to forge, and carbides fall out at its grain edges (from memory)",
        is_of_all_steel: false,
        breaks: false,
    }],
    quench: Quench { may: false, does: "may harden and crack in some grades" },
    never: &[
        "Never go by its colour alone: it holds its shape at a heat where mild steel gives.",
        "Never grind or pickle it among rusty iron.",
    ],
    fume: Some(
        "Its chromium is poisonous as fumes and as dust: draw it off, or wear a mask for it, when it is welded or ground.",
    ),
    hot_caution: Some("Stop at 925 °C, a light cherry red: below it is stiff, and takes harm."),
    normalise: None,
    open_most_celsius: None,
    is_plain_steel: false,
    carbon_percent: None,
    expansion_per_celsius: Some(19e-6),
    thermal: Some(Thermal { specific_heat_j_kgk: 600.0, conductivity_w_mk: 27.0 }),
    ..CARBON_STEEL
};
