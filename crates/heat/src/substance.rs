//! What a bar is made of, as heat sees it.

use super::steel;

/// A metal, as heat sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Substance {
    /// Carbon steel of EN 1993-1-2: its properties change with the temperature.
    Steel,
    /// A metal of constant properties, for what is no steel.
    Constant {
        /// Density of the cold metal, in kg/m³.
        density_kg_m3: f64,
        /// Specific heat, in J/(kg K).
        specific_heat_j_kgk: f64,
        /// Conductivity, in W/(m K).
        conductivity_w_mk: f64,
    },
}

impl Substance {
    /// A metal of constant properties; steel where a figure is none that a metal has.
    pub fn constant(density_kg_m3: f64, specific_heat_j_kgk: f64, conductivity_w_mk: f64) -> Self {
        let is_metal = (100.0..1e5).contains(&density_kg_m3)
            && (10.0..1e5).contains(&specific_heat_j_kgk)
            && (0.1..1e4).contains(&conductivity_w_mk);
        if is_metal { Self::Constant { density_kg_m3, specific_heat_j_kgk, conductivity_w_mk } } else { Self::Steel }
    }

    /// Density of the cold metal, in kg/m³.
    pub fn density_kg_m3(&self) -> f64 {
        match *self {
            Self::Steel => steel::DENSITY_KG_M3,
            Self::Constant { density_kg_m3, .. } => density_kg_m3,
        }
    }

    /// Specific heat in J/(kg K).
    pub fn specific_heat_j_kgk(&self, celsius: f64) -> f64 {
        match *self {
            Self::Steel => steel::specific_heat_j_kgk(celsius),
            Self::Constant { specific_heat_j_kgk, .. } => specific_heat_j_kgk,
        }
    }

    /// Conductivity in W/(m K).
    pub fn conductivity_w_mk(&self, celsius: f64) -> f64 {
        match *self {
            Self::Steel => steel::conductivity_w_mk(celsius),
            Self::Constant { conductivity_w_mk, .. } => conductivity_w_mk,
        }
    }

    /// Enthalpy over that at 20 °C, in J/kg.
    pub fn enthalpy_j_kg(&self, celsius: f64) -> f64 {
        match *self {
            Self::Steel => steel::enthalpy_j_kg(celsius),
            Self::Constant { specific_heat_j_kgk, .. } => specific_heat_j_kgk * (celsius - 20.0),
        }
    }

    /// The temperature in °C of an enthalpy in J/kg over that at 20 °C.
    pub fn celsius_of_enthalpy(&self, j_kg: f64) -> f64 {
        match *self {
            Self::Steel => steel::celsius_of_enthalpy(j_kg),
            Self::Constant { specific_heat_j_kgk, .. } => {
                (20.0 + j_kg / specific_heat_j_kgk).clamp(steel::LOWEST_CELSIUS, steel::HIGHEST_CELSIUS)
            }
        }
    }
}
