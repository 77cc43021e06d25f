//! The sizes of a section, settled.

use super::{Section, in_mm, mm};
use crate::plan::Gives;
use uom::si::f64::Length;

/// A section by its kind and sizes. [`SectionSize::section`] gives its outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SectionSize {
    /// A point.
    Point,
    /// A square, with eased edges where the radius is above 0.
    Square {
        /// The side.
        side: Length,
        /// The radius of its eased edges.
        edge_radius: Length,
    },
    /// A round.
    Round {
        /// The diameter.
        diameter: Length,
    },
    /// A flat, with eased edges where the radius is above 0.
    Flat {
        /// The side toward the smith.
        width: Length,
        /// The side up.
        thickness: Length,
        /// The radius of its eased edges.
        edge_radius: Length,
    },
    /// Flat sides and round ends.
    Oval {
        /// Over both round ends.
        width: Length,
        /// Between the flat sides.
        thickness: Length,
    },
    /// A hexagon.
    Hexagon {
        /// The size across flats.
        across_flats: Length,
    },
    /// An octagon.
    Octagon {
        /// The size across flats.
        across_flats: Length,
    },
    /// A square on its corner.
    Diamond {
        /// The side.
        side: Length,
    },
    /// A half-round, flat side down.
    HalfRound {
        /// The width of the flat side.
        width: Length,
        /// The height over the flat side.
        height: Length,
    },
    /// A chisel edge, lying across the bar.
    Edge {
        /// Its width.
        width: Length,
    },
}

impl SectionSize {
    /// The outline.
    pub fn section(&self) -> Section {
        match *self {
            Self::Point => Section::point(),
            Self::Square { side, edge_radius } => rectangle(side, side, edge_radius),
            Self::Round { diameter } => Section::disk(in_mm(diameter) / 2.0),
            Self::Flat { width, thickness, edge_radius } => rectangle(width, thickness, edge_radius),
            Self::Oval { width, thickness } => rectangle(width, thickness, width.min(thickness) / 2.0),
            Self::Hexagon { across_flats } => Section::regular(6, in_mm(across_flats)),
            Self::Octagon { across_flats } => Section::regular(8, in_mm(across_flats)),
            Self::Diamond { side } => Section::diamond(in_mm(side)),
            Self::HalfRound { width, height } => Section::half_round(in_mm(width), in_mm(height)),
            Self::Edge { width } => Section::rectangle(in_mm(width), 0.0, 0.0),
        }
    }

    /// It with the size that gives multiplied; none where it has no such size. Edge radii keep their size as far as they can.
    pub fn scaled(&self, gives: Gives, factor: f64) -> Option<Self> {
        let (wide, thick) = match gives {
            Gives::Width => (factor, 1.0),
            Gives::Thickness => (1.0, factor),
            Gives::Length | Gives::Nothing => return None,
        };
        Some(match *self {
            Self::Point => return None,
            Self::Square { side, edge_radius } => Self::Square { side: side * factor, edge_radius },
            Self::Round { diameter } => Self::Round { diameter: diameter * factor },
            Self::Flat { width, thickness, edge_radius } => {
                Self::Flat { width: width * wide, thickness: thickness * thick, edge_radius }
            }
            Self::Oval { width, thickness } => Self::Oval { width: width * wide, thickness: thickness * thick },
            Self::Hexagon { across_flats } => Self::Hexagon { across_flats: across_flats * factor },
            Self::Octagon { across_flats } => Self::Octagon { across_flats: across_flats * factor },
            Self::Diamond { side } => Self::Diamond { side: side * factor },
            Self::HalfRound { width, height } => Self::HalfRound { width: width * wide, height: height * thick },
            Self::Edge { width } if gives == Gives::Width => Self::Edge { width: width * factor },
            Self::Edge { .. } => return None,
        })
    }

    /// How far its centroid lies above the middle of its thickness; 0 for every section but the half-round.
    ///
    /// A circular segment of radius R and half angle α has its centroid at `2 R³ sin³ α / (3 A)` from the circle's
    /// center (plane geometry).
    pub fn centroid_rise(&self) -> Length {
        let Self::HalfRound { width, height } = *self else { return mm(0.0) };
        let (half, height) = (in_mm(width) / 2.0, in_mm(height));
        let radius = (half * half + height * height) / (2.0 * height);
        let spread = half.atan2(radius - height);
        let area = radius * radius * (spread - spread.sin() * spread.cos());
        mm(height / 2.0 - radius + 2.0 * (radius * spread.sin()).powi(3) / (3.0 * area))
    }

    /// Whether it has no area: a point or an edge.
    pub fn is_end(&self) -> bool {
        matches!(self, Self::Point | Self::Edge { .. })
    }

    /// A square with sharp edges.
    pub fn square(side: Length) -> Self {
        Self::Square { side, edge_radius: mm(0.0) }
    }

    /// A flat with sharp edges.
    pub fn flat(width: Length, thickness: Length) -> Self {
        Self::Flat { width, thickness, edge_radius: mm(0.0) }
    }
}

/// A rectangle whose edges are eased no further than half its shorter side.
fn rectangle(width: Length, thickness: Length, edge_radius: Length) -> Section {
    let most = width.min(thickness) / 2.0;
    Section::rectangle(in_mm(width), in_mm(thickness), in_mm(edge_radius.min(most)))
}
