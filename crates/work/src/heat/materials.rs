//! What each metal can be forged at, where it is brittle, and what never to do with it.
//!
//! Industrial figures mean a quick press; a smith whose heats are slow stays 50 to 100 °C below them, as these rows do.

use super::substance::Substance;

/// A range of temperature in which a metal must not be strained.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Brittle {
    /// From how many °C.
    pub from_celsius: f64,
    /// To how many °C.
    pub to_celsius: f64,
    /// What it is called and what comes of it.
    pub why: &'static str,
}

/// One metal as a smith heats it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Forging {
    /// Its name; those of [`fh_core::material::ALL`] are all here.
    pub name: &'static str,
    /// The most heat to forge from, in °C.
    pub start_celsius: f64,
    /// Where forging stops, in °C.
    pub finish_celsius: f64,
    /// Where it is spoilt, in °C: it burns, grows coarse or crumbles.
    pub spoilt_celsius: f64,
    /// Carbon in percent where the flow stress of carbon steel holds for it.
    pub carbon_percent: Option<f64>,
    /// Whether its heat shows as a color.
    pub glows: bool,
    /// Where it is brittle.
    pub brittle: &'static [Brittle],
    /// What never to do.
    pub never: &'static [&'static str],
    /// Where the range is from, or `from memory`.
    pub source: &'static str,
    /// Share of a black body's radiation when scaled, from memory but for steel.
    pub emissivity: f64,
    /// Expansion per °C, from memory; none where EN 1993-1-2 is used.
    pub expansion_per_celsius: Option<f64>,
    /// Density in kg/m³, specific heat in J/(kg K) and conductivity in W/(m K) near its forging heat, from memory; none where
    /// EN 1993-1-2 is used.
    thermal: Option<(f64, f64, f64)>,
}

impl Forging {
    /// The metal as heat sees it.
    pub fn substance(&self) -> Substance {
        self.thermal.map_or(Substance::Steel, |(density, specific, conductivity)| {
            Substance::constant(density, specific, conductivity)
        })
    }

    /// The brittle range that a temperature in °C lies in.
    pub fn brittle_at(&self, celsius: f64) -> Option<&'static Brittle> {
        self.brittle.iter().find(|range| (range.from_celsius..range.to_celsius).contains(&celsius))
    }
}

/// The row of this name.
pub fn find(name: &str) -> Option<&'static Forging> {
    ALL.iter().find(|metal| metal.name == name)
}

const BLUE: Brittle = Brittle {
    from_celsius: 150.0,
    to_celsius: 400.0,
    why: "blue brittleness: a bar that looks cold cracks where it is bent or struck (150-345 in a supplier's glossary, 200-400 elsewhere; the wider is taken)",
};
const BLACK: Brittle = Brittle {
    from_celsius: 400.0,
    to_celsius: 700.0,
    why: "black heat: too cold to forge, and hot enough to burn a hand (common practice)",
};
const BLACK_HIGH: Brittle = Brittle {
    from_celsius: 400.0,
    to_celsius: 750.0,
    why: "black heat: high-carbon steel cracks here, at once or when it is hardened (common practice)",
};
const STEEL_NEVER: [&str; 2] = [
    "Never hammer or bend it at black heat.",
    "Never heat it until it sparks: burnt steel cannot be saved, cut it off.",
];
const HARD_STEEL_NEVER: [&str; 4] = [
    STEEL_NEVER[0],
    STEEL_NEVER[1],
    "Never cool it in water between heats, nor lay it hot on wet ground: it hardens and cracks.",
    "Never soak it at forging heat: it loses carbon and its grain grows.",
];

/// A carbon steel without figures, which its row fills in.
const CARBON_STEEL: Forging = Forging {
    name: "carbon steel",
    start_celsius: 1200.0,
    finish_celsius: 850.0,
    spoilt_celsius: 1250.0,
    carbon_percent: Some(0.45),
    glows: true,
    brittle: &[BLUE, BLACK],
    never: &STEEL_NEVER,
    source: "0.4-0.6 % C: 1200 start, artizono.com chart of steel grades; 1230 at most, chemeurope.com; finish and burning from memory",
    emissivity: super::loss::SCALED_STEEL,
    expansion_per_celsius: None,
    thermal: None,
};

/// Every metal.
pub const ALL: [Forging; 12] = [
    Forging {
        name: "mild steel",
        start_celsius: 1250.0,
        spoilt_celsius: 1300.0,
        carbon_percent: Some(0.2),
        source: "up to 0.25 % C: 1150-1250 to 850-900, weforging.com; 1250 to 800, artizono.com; light finishing down to 800; burning from memory",
        ..CARBON_STEEL
    },
    CARBON_STEEL,
    Forging { name: "medium-carbon steel", ..CARBON_STEEL },
    Forging {
        name: "high-carbon steel",
        start_celsius: 1120.0,
        spoilt_celsius: 1220.0,
        carbon_percent: Some(0.9),
        brittle: &[BLUE, BLACK_HIGH],
        never: &HARD_STEEL_NEVER,
        source: "0.7-1.0 % C: 1100-1150 start, artizono.com; light red for 0.7-1.1 % C, Ilgen, Forge Work 1912; burning from memory",
        ..CARBON_STEEL
    },
    Forging {
        name: "spring steel",
        start_celsius: 1150.0,
        finish_celsius: 900.0,
        spoilt_celsius: 1220.0,
        carbon_percent: Some(0.6),
        brittle: &[BLUE, BLACK_HIGH],
        never: &HARD_STEEL_NEVER,
        source: "alloy and spring steels 1100-1200 to 850-950, weforging.com; burning from memory",
        ..CARBON_STEEL
    },
    Forging {
        name: "wrought iron",
        start_celsius: 1150.0,
        finish_celsius: 950.0,
        spoilt_celsius: 1370.0,
        carbon_percent: Some(0.05),
        brittle: &[
            BLUE,
            Brittle {
                from_celsius: 400.0,
                to_celsius: 900.0,
                why: "below a bright orange it splits along its fibre (from memory)",
            },
        ],
        never: &["Never work it below a bright orange, least of all across the fibre.", STEEL_NEVER[1]],
        source: "1149 best, 982 for light work, wroughtworks.com; up to 1371 in an encyclopedia; finish from memory",
        ..CARBON_STEEL
    },
    Forging {
        name: "stainless steel",
        start_celsius: 1150.0,
        finish_celsius: 925.0,
        spoilt_celsius: 1260.0,
        carbon_percent: None,
        brittle: &[Brittle {
            from_celsius: 425.0,
            to_celsius: 900.0,
            why: "too stiff to forge, and carbides fall out at its grain edges (from memory)",
        }],
        never: &[
            "Never go by its color alone: it holds its shape at a heat where mild steel gives.",
            "Never grind or pickle it among rusty iron.",
        ],
        source: "austenitic, 1150 in an encyclopedia and to 900 at kiforging.com; 925 and 1260 from memory",
        expansion_per_celsius: Some(19e-6),
        thermal: Some((8000.0, 600.0, 27.0)),
        ..CARBON_STEEL
    },
    Forging {
        name: "copper",
        start_celsius: 870.0,
        finish_celsius: 700.0,
        spoilt_celsius: 1000.0,
        carbon_percent: None,
        brittle: &[],
        never: &["Never heat it to a bright orange: it crumbles and melts without warning."],
        source: "900 in an encyclopedia; 760-870 of copper makers and the finish from memory; it can be worked cold as well",
        emissivity: 0.75,
        expansion_per_celsius: Some(20e-6),
        thermal: Some((8940.0, 430.0, 350.0)),
        ..CARBON_STEEL
    },
    Forging {
        name: "brass",
        start_celsius: 815.0,
        finish_celsius: 650.0,
        spoilt_celsius: 850.0,
        carbon_percent: None,
        brittle: &[Brittle {
            from_celsius: 300.0,
            to_celsius: 600.0,
            why: "leaded and alpha brass breaks when struck here (from memory)",
        }],
        never: &["Never strike it between 300 and 600 °C.", "Never heat it until it fumes: what smokes is zinc."],
        source: "60/40: 815 in an encyclopedia; 650 and spoiling from memory",
        emissivity: 0.6,
        expansion_per_celsius: Some(21e-6),
        thermal: Some((8520.0, 420.0, 130.0)),
        ..CARBON_STEEL
    },
    Forging {
        name: "bronze",
        start_celsius: 870.0,
        finish_celsius: 700.0,
        spoilt_celsius: 930.0,
        carbon_percent: None,
        brittle: &[Brittle {
            from_celsius: 300.0,
            to_celsius: 650.0,
            why: "many bronzes break when struck here (from memory)",
        }],
        never: &[
            "Never forge phosphor bronze hot: it is worked cold.",
            "Never heat beryllium copper: its dust and fume are poison.",
        ],
        source: "silicon bronze, from memory",
        emissivity: 0.7,
        expansion_per_celsius: Some(19e-6),
        thermal: Some((8530.0, 420.0, 45.0)),
        ..CARBON_STEEL
    },
    Forging {
        name: "aluminium",
        start_celsius: 480.0,
        finish_celsius: 350.0,
        spoilt_celsius: 550.0,
        carbon_percent: None,
        glows: false,
        brittle: &[Brittle {
            from_celsius: 550.0,
            to_celsius: 650.0,
            why: "hot short: it crumbles just before it melts (from memory)",
        }],
        never: &["Never wait for a color: it melts black. Go by the char of a pine stick, a crayon or a thermometer."],
        source: "6061: 430-480 and 300-480 for all in an encyclopedia; 350 in another text; spoiling from memory",
        emissivity: 0.2,
        expansion_per_celsius: Some(26e-6),
        thermal: Some((2700.0, 1050.0, 180.0)),
    },
    Forging {
        name: "titanium",
        start_celsius: 955.0,
        finish_celsius: 800.0,
        spoilt_celsius: 1010.0,
        carbon_percent: None,
        brittle: &[],
        never: &[
            "Never throw water on burning swarf.",
            "Never soak it: above 1000 °C it takes up air and its skin turns brittle.",
        ],
        source: "955 in an encyclopedia, 900-1010 for the alloys; finish from memory",
        emissivity: 0.6,
        expansion_per_celsius: Some(10e-6),
        thermal: Some((4500.0, 650.0, 20.0)),
        ..CARBON_STEEL
    },
];

#[cfg(test)]
mod tests {
    use super::*;

    /// Where each metal begins to melt, in °C, from memory.
    const SOLIDUS: [(&str, f64); 12] = [
        ("mild steel", 1480.0),
        ("carbon steel", 1430.0),
        ("medium-carbon steel", 1430.0),
        ("high-carbon steel", 1350.0),
        ("spring steel", 1410.0),
        ("wrought iron", 1510.0),
        ("stainless steel", 1400.0),
        ("copper", 1083.0),
        ("brass", 885.0),
        ("bronze", 970.0),
        ("aluminium", 580.0),
        ("titanium", 1660.0),
    ];

    #[test]
    fn every_material_of_a_plan_has_its_row() {
        for material in fh_core::material::ALL {
            assert!(find(material.name).is_some(), "{}", material.name);
        }
    }

    #[test]
    fn no_start_is_near_melting_and_every_range_is_in_order() {
        for metal in ALL {
            let (_, solidus) = SOLIDUS.iter().find(|(name, _)| *name == metal.name).copied().unwrap_or(("", 0.0));
            assert!(metal.start_celsius + 273.15 <= 0.95 * (solidus + 273.15), "{}", metal.name);
            assert!(metal.finish_celsius < metal.start_celsius && metal.start_celsius < metal.spoilt_celsius);
            assert!(metal.spoilt_celsius < solidus && !metal.source.is_empty() && !metal.never.is_empty());
            assert!(metal.brittle.iter().all(|range| range.from_celsius < range.to_celsius));
        }
    }

    #[test]
    fn blue_and_black_heat_are_told_apart() {
        let mild = find("mild steel").map(|steel| [250.0, 500.0, 900.0].map(|at| steel.brittle_at(at).is_some()));
        assert_eq!(mild, Some([true, true, false]));
    }
}
