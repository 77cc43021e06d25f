//! The section of a bar, as far as cooling needs it.

use std::f64::consts::PI;

/// A section of a bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BarSection {
    /// A square by its side.
    Square {
        /// The side in mm.
        side_mm: f64,
    },
    /// A round by its diameter.
    Round {
        /// The diameter in mm.
        diameter_mm: f64,
    },
    /// A flat by its two sides.
    Flat {
        /// The width in mm.
        width_mm: f64,
        /// The thickness in mm.
        thickness_mm: f64,
    },
}

impl BarSection {
    /// Its area in mm².
    pub fn area_mm2(&self) -> f64 {
        match *self {
            Self::Square { side_mm } => side_mm * side_mm,
            Self::Round { diameter_mm } => PI / 4.0 * diameter_mm * diameter_mm,
            Self::Flat { width_mm, thickness_mm } => width_mm * thickness_mm,
        }
    }

    /// Its girth in mm.
    pub fn perimeter_mm(&self) -> f64 {
        match *self {
            Self::Square { side_mm } => 4.0 * side_mm,
            Self::Round { diameter_mm } => PI * diameter_mm,
            Self::Flat { width_mm, thickness_mm } => 2.0 * (width_mm + thickness_mm),
        }
    }

    /// How far the skin is cooler than the mean, as a factor of `q (A/P) / k`: 1/2 round, 2/3 square, 1/3 thin flat (the parabola of
    /// quasi-steady cooling); between square and thin flat in proportion to thickness over width, which is our own line.
    pub fn skin(&self) -> f64 {
        match *self {
            Self::Square { .. } => 2.0 / 3.0,
            Self::Round { .. } => 0.5,
            Self::Flat { width_mm, thickness_mm } => {
                let slenderness = width_mm.min(thickness_mm) / width_mm.max(thickness_mm);
                if slenderness.is_finite() { (1.0 + slenderness) / 3.0 } else { 0.5 }
            }
        }
    }
}
