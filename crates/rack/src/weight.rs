//! What bar weighs: area times density, by the sizes that it is called by.
//!
//! Steel is taken at 7850 kg/m³; the trade's 3.40 lb for a square inch and a foot is 0.1 % lower. Rolled bars are up to 8 % off
//! by their size tolerance at 10 mm, so a weight by size is for a quote, not for the scales.

use fh_core::balance::balance;
use fh_core::material;
use fh_core::plan::{Plan, SectionSpec, Units};
use uom::si::area::square_meter;
use uom::si::f64::Area;

/// The area of a section.
pub fn area(section: &SectionSpec) -> Area {
    let plan = Plan::new("", Units::default(), section.clone());
    balance(&plan).bars.first().map_or_else(|| Area::new::<square_meter>(0.0), |bar| bar.stock_area)
}

/// The mass in kg of a metre of bar; a material that the table does not have weighs as mild steel.
pub fn kg_per_meter(material: Option<&str>, section: &SectionSpec) -> f64 {
    let metal = material.and_then(material::find).unwrap_or(&material::DEFAULT);
    area(section).get::<square_meter>() * metal.density_kg_m3()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::said::section::parse;

    #[test]
    fn a_meter_weighs_its_area_times_its_density() {
        let weighs = |said: &str, material| kg_per_meter(material, &parse(said).unwrap());
        assert!((weighs("12 mm square", None) - 0.144 * 7.85).abs() < 1e-12);
        assert!((weighs("12 mm square", Some("copper")) - 0.144 * 8.94).abs() < 0.01);
        assert!((weighs("30 x 8 mm flat", None) - 1.884).abs() < 1e-12);
        assert!((weighs("16 mm hexagon", None) - 0.866_025_4 * 0.256 * 7.85).abs() < 1e-6);
    }
}
