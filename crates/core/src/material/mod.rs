//! The table of materials: what a bar weighs, what it does in the fire, and what never to do with it. One row each.
//!
//! Every value has its source beside it, or is *from memory*: to be checked before anyone leans on it. Temperatures are in °C.
//! What a metal can do is a column; nothing compares its name.

mod copper;
mod iron;
mod light;

use uom::si::f64::MassDensity;
use uom::si::mass_density::kilogram_per_cubic_meter;

/// How far from a range in which it breaks a metal is worked, in °C: an eye misses by as much (common practice, no source).
pub const BRITTLE_MARGIN_CELSIUS: f64 = 50.0;

/// A material that bars are made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// Its name, as plans write it.
    pub name: &'static str,
    /// Other names that plans may write for it, which do not say all that has to be known.
    pub also: &'static [&'static str],
    /// Its density in kg/m³.
    density_kg_m3: f64,
    /// Where the density is from.
    pub density_source: &'static str,
    /// Between which heats it is forged; none where it is not forged hot.
    pub forging: Option<Forging>,
    /// Where its heats are from.
    pub heats_source: &'static str,
    /// Where it begins to melt, in °C, from memory unless `heats_source` says more.
    pub melts_celsius: f64,
    /// How it is welded in the fire; none where it cannot be.
    pub weld: Option<Weld>,
    /// What is done in place of a fire weld.
    pub instead_of_weld: &'static str,
    /// In which ranges it must not be strained.
    pub brittle: &'static [Brittle],
    /// What comes of cooling it in water while it is hot.
    pub quench: Quench,
    /// Whether its heat shows as a color before it melts.
    pub glows: bool,
    /// What never to do with it besides what holds for all steel; each a sentence.
    pub never: &'static [&'static str],
    /// What it gives off that harms, a sentence; none where it is no more than any bare metal.
    pub fume: Option<&'static str>,
    /// The caution that each of its hot steps carries; none where the general ones are enough.
    pub hot_caution: Option<&'static str>,
    /// How its grain is evened out after the last forging heat; none where there is no need.
    pub normalise: Option<Normalise>,
    /// What a smith stays below while the carbon of a bar is not known, in °C: the heat of the hardest that its name may mean. None
    /// where its name says how much carbon it has.
    pub open_most_celsius: Option<f64>,
    /// Whether what holds for all steel holds for it: black heat, and burning.
    pub is_plain_steel: bool,
    /// Carbon in percent where the flow stress of carbon steel holds for it.
    pub carbon_percent: Option<f64>,
    /// Share of a black body's radiation at its forging heat, from memory but for steel.
    pub emissivity: f64,
    /// Expansion per °C, from memory; none where it is that of carbon steel (EN 1993-1-2).
    pub expansion_per_celsius: Option<f64>,
    /// How it takes and carries heat; none where it does as carbon steel (EN 1993-1-2).
    pub thermal: Option<Thermal>,
}

/// Between which heats a metal is forged, in °C.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Forging {
    /// The most that it stands: the figure for quick work, in a press or under a power hammer.
    pub most_celsius: f64,
    /// What a smith heats it to, whose heats are slow: 50 below the most (common practice, no source).
    pub usual_celsius: f64,
    /// Where forging stops.
    pub finish_celsius: f64,
    /// Where light work stops: bending, twisting, straightening, cutting off (common practice, no source).
    pub light_celsius: f64,
    /// Where it is spoilt, but for a welding heat: it burns, grows coarse or crumbles.
    pub spoilt_celsius: f64,
}

/// How a metal is welded in the fire: common practice, the heats from memory.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weld {
    /// From how many °C.
    pub from_celsius: f64,
    /// To how many °C.
    pub to_celsius: f64,
    /// How it looks then.
    pub looks: &'static str,
    /// What keeps scale out of the seam, and at which heat it is put on.
    pub flux: &'static str,
    /// What serves where there is no such flux; none where nothing does.
    pub other_flux: Option<&'static str>,
    /// What makes it a hard metal to weld; none where it is an easy one.
    pub hard: Option<&'static str>,
}

/// A range of temperature in which a metal must not be strained.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Brittle {
    /// From how many °C.
    pub from_celsius: f64,
    /// To how many °C.
    pub to_celsius: f64,
    /// What it is called and what comes of it.
    pub why: &'static str,
    /// Whether every steel has it, so that every smith looks out for it.
    pub is_of_all_steel: bool,
    /// Whether a blow there breaks it, so that pieces fly.
    pub breaks: bool,
}

/// What comes of cooling a hot metal in water.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Quench {
    /// Whether it may be done.
    pub may: bool,
    /// What comes of it, to be read after *it*.
    pub does: &'static str,
}

/// How a steel that hardens is normalised: heated evenly, once, and left to cool in still air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Normalise {
    /// To how many °C, from memory: the maker's data sheet comes first.
    pub celsius: f64,
    /// How it looks then.
    pub looks: &'static str,
}

/// How a metal takes and carries heat near its forging heat, from memory.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thermal {
    /// Specific heat in J/(kg K).
    pub specific_heat_j_kgk: f64,
    /// Conductivity in W/(m K).
    pub conductivity_w_mk: f64,
}

/// What never to do with any steel.
pub const STEEL_NEVER: [&str; 2] =
    ["Never hammer or bend it at black heat.", "Never heat it until it showers sparks: burnt steel cannot be saved."];

impl Material {
    /// Its density.
    pub fn density(&self) -> MassDensity {
        MassDensity::new::<kilogram_per_cubic_meter>(self.density_kg_m3)
    }

    /// Its density in kg/m³.
    pub fn density_kg_m3(&self) -> f64 {
        self.density_kg_m3
    }

    /// A heat in °C, but no more than what the hardest that its name may mean stands.
    pub fn no_hotter(&self, celsius: f64) -> f64 {
        self.open_most_celsius.map_or(celsius, |most| most.min(celsius))
    }

    /// What never to do with it: what holds for all steel, then its own.
    pub fn nevers(&self) -> impl Iterator<Item = &'static str> {
        let general: &[&str] = if self.is_plain_steel { &STEEL_NEVER } else { &[] };
        general.iter().chain(self.never).copied()
    }

    /// The range that a temperature in °C lies in, in which it must not be strained.
    pub fn brittle_at(&self, celsius: f64) -> Option<&'static Brittle> {
        self.brittle.iter().find(|range| (range.from_celsius..range.to_celsius).contains(&celsius))
    }

    /// The ranges that not every steel has.
    pub fn own_brittle(&self) -> impl Iterator<Item = &'static Brittle> {
        self.brittle.iter().filter(|range| !range.is_of_all_steel)
    }

    /// Whether it measures hot as carbon steel does (EN 1993-1-2).
    pub fn expands_as_steel(&self) -> bool {
        self.expansion_per_celsius.is_none()
    }
}

/// The material of a plan that names none.
pub const DEFAULT: Material = iron::MILD_STEEL;

/// Every material that a plan may name.
pub const ALL: [Material; 13] = [
    DEFAULT,
    iron::CARBON_STEEL,
    iron::MEDIUM_CARBON_STEEL,
    iron::HIGH_CARBON_STEEL,
    iron::SPRING_STEEL,
    iron::WROUGHT_IRON,
    iron::STAINLESS_STEEL,
    copper::COPPER,
    copper::BRASS,
    copper::SILICON_BRONZE,
    copper::PHOSPHOR_BRONZE,
    light::ALUMINIUM,
    light::TITANIUM,
];

/// The material of this name, where the table has it.
pub fn find(name: &str) -> Option<&'static Material> {
    const TABLE: &[Material] = &ALL;
    TABLE.iter().find(|material| material.name == name || material.also.contains(&name))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_start_is_near_melting_and_every_range_is_in_order() {
        for metal in ALL {
            assert!(!metal.heats_source.is_empty() && !metal.density_source.is_empty(), "{}", metal.name);
            assert!(metal.nevers().next().is_some(), "{}", metal.name);
            assert!(metal.brittle.iter().all(|range| range.from_celsius < range.to_celsius), "{}", metal.name);
            let Some(heat) = metal.forging else { continue };
            let solidus = metal.melts_celsius;
            assert!(heat.most_celsius + 273.15 <= 0.95 * (solidus + 273.15), "{}", metal.name);
            let up = [heat.light_celsius, heat.finish_celsius, heat.usual_celsius, heat.most_celsius];
            assert!(up[0] <= up[1] && up[1] < up[2] && up[2] < up[3], "{}: {up:?}", metal.name);
            assert!(heat.most_celsius < heat.spoilt_celsius && heat.spoilt_celsius < solidus, "{}", metal.name);
        }
    }

    /// Neither forging nor light work comes within 50 °C of a range in which the metal breaks.
    #[test]
    fn no_metal_is_worked_at_the_edge_of_a_range_in_which_it_breaks() {
        for metal in ALL {
            let Some(heat) = metal.forging else { continue };
            for range in metal.brittle {
                let below = heat.light_celsius >= range.to_celsius + BRITTLE_MARGIN_CELSIUS;
                let above = heat.most_celsius <= range.from_celsius - BRITTLE_MARGIN_CELSIUS;
                assert!(below || above, "{}: {range:?}", metal.name);
            }
        }
    }

    #[test]
    fn only_iron_and_carbon_steel_weld_in_the_fire_and_below_their_melting() {
        for metal in ALL {
            assert_eq!(metal.weld.is_some(), metal.carbon_percent.is_some(), "{}", metal.name);
            assert_eq!(metal.weld.is_none(), !metal.instead_of_weld.is_empty(), "{}", metal.name);
            let Some((weld, heat)) = metal.weld.zip(metal.forging) else { continue };
            assert!(weld.from_celsius < weld.to_celsius && weld.to_celsius < metal.melts_celsius, "{}", metal.name);
            assert!(weld.to_celsius > heat.usual_celsius, "{}", metal.name);
            // Iron that has not reached its spoiling heat can always be welded.
            assert!(weld.from_celsius < heat.spoilt_celsius, "{}", metal.name);
        }
        assert!(find("high-carbon steel").is_some_and(|steel| steel.weld.is_some_and(|weld| weld.hard.is_some())));
    }

    #[test]
    fn copper_aluminium_and_iron_without_carbon_may_be_quenched_and_what_hardens_may_not() {
        let may = |name: &str| find(name).map(|metal| metal.quench.may);
        for name in ["mild steel", "wrought iron", "copper", "aluminium"] {
            assert_eq!(may(name), Some(true), "{name}");
        }
        for name in ["carbon steel", "medium-carbon steel", "high-carbon steel", "spring steel"] {
            assert_eq!(may(name), Some(false), "{name}");
            assert!(find(name).is_some_and(|metal| metal.quench.does.contains("harden")), "{name}");
        }
    }

    #[test]
    fn every_steel_that_hardens_is_normalised_above_its_finish_and_nothing_else_is() {
        for metal in ALL {
            let hardens = metal.carbon_percent.is_some() && !metal.quench.may;
            assert_eq!(metal.normalise.is_some(), hardens, "{}", metal.name);
            let Some((normal, heat)) = metal.normalise.zip(metal.forging) else { continue };
            assert!(normal.celsius > heat.light_celsius && normal.celsius < heat.usual_celsius, "{}", metal.name);
            assert!(metal.brittle.iter().all(|range| normal.celsius > range.to_celsius), "{}", metal.name);
        }
    }

    #[test]
    fn bronze_is_two_metals_and_the_old_word_means_the_one_that_is_forged() {
        let [silicon, phosphor] = ["silicon bronze", "phosphor bronze"].map(|name| find(name).copied());
        assert!(silicon.is_some_and(|metal| metal.forging.is_some()));
        assert!(phosphor.is_some_and(|metal| metal.forging.is_none()));
        assert_eq!(find("bronze").map(|metal| metal.name), Some("silicon bronze"));
    }

    #[test]
    fn blue_and_black_heat_are_told_apart() {
        let mild = find("mild steel").map(|steel| [250.0, 500.0, 900.0].map(|at| steel.brittle_at(at).is_some()));
        assert_eq!(mild, Some([true, true, false]));
    }

    /// A seller's page changes or goes away, and nobody can check it: a handbook, a standard, a data sheet, or memory.
    #[test]
    fn every_source_is_one_that_a_reader_can_look_up() {
        for metal in ALL {
            for source in [metal.density_source, metal.heats_source] {
                assert!(!source.contains(".com") && !source.contains("an encyclopedia"), "{}: {source}", metal.name);
                let named = ["EN ", "from memory", "Development Association", "ASM", "Shop Practice", "as "];
                assert!(named.iter().any(|word| source.contains(word)), "{}: {source}", metal.name);
            }
        }
    }
}
