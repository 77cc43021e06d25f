//! The run-out of a taper: how the change of section runs along its length.

use crate::plan::RunoutSpec;

/// The share f of the far section at each share t of the length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Runout {
    /// f = t.
    Straight,
    /// f = 3t² - 2t³.
    Eased,
    /// f = t^p.
    Power(f64),
}

impl From<RunoutSpec> for Runout {
    fn from(spec: RunoutSpec) -> Self {
        match spec {
            RunoutSpec::Straight => Self::Straight,
            RunoutSpec::Eased => Self::Eased,
            RunoutSpec::Power(power) => Self::Power(power),
        }
    }
}

impl Runout {
    /// f at the share t of the length, both 0 to 1.
    pub fn share_at(self, t: f64) -> f64 {
        match self {
            Self::Straight => t,
            Self::Eased => t * t * (3.0 - 2.0 * t),
            Self::Power(power) => t.powf(power),
        }
    }

    /// The mean of f and of f² over the length: m₁ and m₂ of the transition's volume.
    pub fn means(self) -> (f64, f64) {
        match self {
            Self::Straight => (1.0 / 2.0, 1.0 / 3.0),
            Self::Eased => (1.0 / 2.0, 13.0 / 35.0),
            Self::Power(power) => (1.0 / (power + 1.0), 1.0 / (2.0 * power + 1.0)),
        }
    }
}
