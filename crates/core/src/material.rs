//! The table of materials: what a bar weighs.

use uom::si::f64::MassDensity;
use uom::si::mass_density::kilogram_per_cubic_meter;

/// A material that bars are made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// Its name, as plans write it.
    pub name: &'static str,
    /// Its density in kg/m³.
    density_kg_m3: f64,
    /// Where the density is from.
    pub source: &'static str,
}

impl Material {
    /// Its density.
    pub fn density(&self) -> MassDensity {
        MassDensity::new::<kilogram_per_cubic_meter>(self.density_kg_m3)
    }
}

/// The material of a plan that names none.
pub const DEFAULT: Material =
    Material { name: "mild steel", density_kg_m3: 7850.0, source: "EN 1993-1-1 §3.2.6 (7850 kg/m³), from memory" };

/// Every material that a plan may name.
pub const ALL: [Material; 12] = [
    DEFAULT,
    Material {
        name: "carbon steel",
        density_kg_m3: 7850.0,
        source: "as mild steel: carbon changes it by under 1 %, from memory",
    },
    Material { name: "medium-carbon steel", density_kg_m3: 7850.0, source: "as carbon steel, from memory" },
    Material { name: "high-carbon steel", density_kg_m3: 7850.0, source: "as carbon steel, from memory" },
    Material {
        name: "spring steel",
        density_kg_m3: 7850.0,
        source: "as carbon steel: its alloys change it by under 1 %, from memory",
    },
    Material {
        name: "wrought iron",
        density_kg_m3: 7689.0,
        source: "480 lb/ft³: Shop Practice, vol. 2 (American technical cyclopedia, c. 1906-1913), weight of forging",
    },
    Material { name: "stainless steel", density_kg_m3: 8000.0, source: "grade 304, from memory" },
    Material { name: "copper", density_kg_m3: 8940.0, source: "C110: 0.322-0.323 lb/in³, alloys.copper.org" },
    Material { name: "brass", density_kg_m3: 8520.0, source: "60/40: wermac.org density table" },
    Material {
        name: "bronze",
        density_kg_m3: 8800.0,
        source: "phosphor bronze: middle of 8780-8920, wermac.org density table",
    },
    Material { name: "aluminium", density_kg_m3: 2700.0, source: "6061: 0.0975 lb/in³, wermac.org density table" },
    Material { name: "titanium", density_kg_m3: 4500.0, source: "commercially pure, wermac.org density table" },
];

/// The material of this name, where the table has it.
pub fn find(name: &str) -> Option<&'static Material> {
    ALL.iter().find(|material| material.name == name)
}
