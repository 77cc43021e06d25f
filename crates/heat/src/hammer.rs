//! What strikes: how heavy, how fast, how often, and how much of a blow goes into the bar.

/// A hammer in the smith's hand, the striker's, or a machine's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hammer {
    /// What moves, in kg.
    pub mass_kg: f64,
    /// How fast it lands, in m/s.
    pub speed_m_s: f64,
    /// Blows in a second, with the turning of the bar.
    pub blows_per_second: f64,
    /// The share of the blow that deforms the bar: 0.8 to 0.9 for soft blows on thick hot steel, 0.2 to 0.5 for hard ones
    /// (ASM Forging Handbook).
    pub efficiency: f64,
}

impl Hammer {
    /// A hand hammer: 6 m/s, 4.5 to 9 by evidence that is thin; 1.7 blows in a second with turning.
    pub fn hand(mass_kg: f64) -> Self {
        Self { mass_kg, speed_m_s: 6.0, blows_per_second: 1.7, efficiency: 0.8 }
    }

    /// A striker's sledge: 7 m/s, a blow in a second and a half (common practice, no source).
    pub fn striker(mass_kg: f64) -> Self {
        Self { mass_kg, speed_m_s: 7.0, blows_per_second: 0.67, efficiency: 0.8 }
    }

    /// A power hammer by its ram: 6 m/s and 200 blows in a minute (from memory).
    pub fn power(ram_kg: f64) -> Self {
        Self { mass_kg: ram_kg, speed_m_s: 6.0, blows_per_second: 200.0 / 60.0, efficiency: 0.8 }
    }

    /// The energy of one blow in J.
    pub fn blow_joules(&self) -> f64 {
        let mass = positive(self.mass_kg, 1e5);
        let speed = positive(self.speed_m_s, 100.0);
        mass * speed * speed / 2.0
    }

    /// What one blow leaves in the bar, in J; over 0 whatever the figures.
    pub fn delivered_joules(&self) -> f64 {
        (self.blow_joules() * positive(self.efficiency, 1.0)).max(1e-6)
    }
}

/// A figure within what can be; a tiny one where it is no positive number.
fn positive(value: f64, most: f64) -> f64 {
    if value.is_finite() { value.clamp(1e-6, most) } else { 1e-6 }
}
