//! Where the bar is hot when it leaves the fire.

/// A heated length with soft edges: the heat creeps out of the fire along the bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HotZone {
    /// The heat in its middle, in °C.
    pub celsius: f64,
    /// Where half of it is reached at its start, in mm; minus infinity where it takes in the bar's start.
    pub from_mm: f64,
    /// Where half of it is left at its end, in mm; infinity where it takes in the bar's end.
    pub to_mm: f64,
    /// How soft its edges are, in mm: from 12 % to 88 % of the heat takes twice as much.
    pub edge_mm: f64,
}

impl HotZone {
    /// The whole bar at one heat.
    pub fn whole(celsius: f64) -> Self {
        Self { celsius, from_mm: f64::NEG_INFINITY, to_mm: f64::INFINITY, edge_mm: 15.0 }
    }

    /// The bar's start, up to a place.
    pub fn start(celsius: f64, to_mm: f64, edge_mm: f64) -> Self {
        Self { celsius, from_mm: f64::NEG_INFINITY, to_mm, edge_mm }
    }

    /// A length in the bar's middle, or up to an end that lies within the zone.
    pub fn between(celsius: f64, from_mm: f64, to_mm: f64, edge_mm: f64) -> Self {
        Self { celsius, from_mm, to_mm, edge_mm }
    }

    /// The temperature at a place in °C: steps of tanh, our own choice of a soft edge.
    pub fn celsius_at(&self, x_mm: f64, ambient_celsius: f64) -> f64 {
        let edge = if self.edge_mm.is_finite() { self.edge_mm.max(1e-3) } else { 15.0 };
        let rise = |from: f64| if from.is_nan() { 1.0 } else { ((x_mm - from) / edge).tanh() };
        let fall = if self.to_mm.is_nan() { -1.0 } else { ((x_mm - self.to_mm) / edge).tanh() };
        let share = (0.5 * (rise(self.from_mm) - fall)).clamp(0.0, 1.0);
        ambient_celsius + (self.celsius - ambient_celsius) * share
    }
}

/// What a cooling starts from.
#[derive(Clone, Debug, PartialEq)]
pub enum Start {
    /// The bar as it leaves the fire.
    Zone(HotZone),
    /// Temperatures in °C at places in mm, in the order of the bar; the end ones hold beyond: what an earlier cooling left.
    Along(Vec<(f64, f64)>),
}

impl Start {
    pub(super) fn celsius_at(&self, x_mm: f64, ambient_celsius: f64) -> f64 {
        let celsius = match self {
            Self::Zone(zone) => zone.celsius_at(x_mm, ambient_celsius),
            Self::Along(places) => between(places, x_mm).unwrap_or(ambient_celsius),
        };
        let sound = if celsius.is_finite() { celsius } else { ambient_celsius };
        sound.clamp(super::steel::LOWEST_CELSIUS, super::steel::HIGHEST_CELSIUS)
    }
}

/// A value at a place between known ones, in proportion; none without any.
pub(super) fn between(places: &[(f64, f64)], at: f64) -> Option<f64> {
    let next = places.partition_point(|(x, _)| *x <= at);
    let before = next.checked_sub(1).and_then(|index| places.get(index));
    match (before, places.get(next)) {
        (Some((x0, v0)), Some((x1, v1))) if x1 > x0 => Some(v0 + (v1 - v0) * ((at - x0) / (x1 - x0)).clamp(0.0, 1.0)),
        (Some((_, value)), _) | (None, Some((_, value))) => Some(*value),
        (None, None) => None,
    }
}
