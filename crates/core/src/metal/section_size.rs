//! The sizes of a section, settled.

use super::arc::less_sine;
use super::{Section, View, in_mm, mm, mm2};
use crate::plan::Gives;
use std::f64::consts::{PI, SQRT_2};
use uom::si::f64::{Area, Length};

/// 1/√3.
const FRAC_1_SQRT_3: f64 = 0.577_350_269_189_625_8;

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

    /// The area; the same as its outline's, without building that.
    ///
    /// Regular polygon of n sides by its size f across flats: `n/4 f² tan(π/n)`; circular segment of radius R and half
    /// angle α: `R² (α - sin α cos α)` (plane geometry).
    pub fn area(&self) -> Area {
        match *self {
            Self::Point | Self::Edge { .. } => mm2(0.0),
            Self::Square { side, edge_radius } => eased_area(side, side, edge_radius),
            Self::Round { diameter } => diameter * diameter * (PI / 4.0),
            Self::Flat { width, thickness, edge_radius } => eased_area(width, thickness, edge_radius),
            Self::Oval { width, thickness } => eased_area(width, thickness, width.min(thickness) / 2.0),
            Self::Hexagon { across_flats } => across_flats * across_flats * (1.5 * FRAC_1_SQRT_3),
            Self::Octagon { across_flats } => across_flats * across_flats * (2.0 * (SQRT_2 - 1.0)),
            Self::Diamond { side } => side * side,
            Self::HalfRound { width, height } => {
                let (radius, spread) = segment_arc(width, height);
                mm2(radius * radius * less_sine(2.0 * spread) / 2.0)
            }
        }
    }

    /// Its size in mm as it is seen: the thickness from the side, the width from above.
    pub fn seen_mm(&self, view: View) -> f64 {
        let (wide, thick) = match *self {
            Self::Point => (mm(0.0), mm(0.0)),
            Self::Square { side, .. } => (side, side),
            Self::Round { diameter } => (diameter, diameter),
            Self::Flat { width, thickness, .. } | Self::Oval { width, thickness } => (width, thickness),
            Self::Hexagon { across_flats } => (across_flats * (2.0 * FRAC_1_SQRT_3), across_flats),
            Self::Octagon { across_flats } => (across_flats, across_flats),
            Self::Diamond { side } => (side * SQRT_2, side * SQRT_2),
            Self::HalfRound { width, height } => {
                // Over half as high as wide, the arc bulges beyond its flat side to its full diameter.
                let (radius, _) = segment_arc(width, height);
                (if height * 2.0 > width { mm(radius * 2.0) } else { width }, height)
            }
            Self::Edge { width } => (width, mm(0.0)),
        };
        in_mm(match view {
            View::Side => thick,
            View::Top => wide,
        })
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
        let (radius, spread) = segment_arc(width, height);
        let area = radius * radius * less_sine(2.0 * spread) / 2.0;
        // So low an arc is a parabola, whose centroid lies 2/5 of its height up; the arc's own figures would be lost.
        if height < width * 1e-4 {
            return height * -0.1;
        }
        mm(in_mm(height) / 2.0 - radius + 2.0 * (radius * spread.sin()).powi(3) / (3.0 * area))
    }

    /// Whether it has no area: a point or an edge.
    pub fn is_end(&self) -> bool {
        matches!(self, Self::Point | Self::Edge { .. })
    }

    /// Whether it is alike all round but for its size, so that two of its kind never swell between each other.
    pub(crate) fn is_even(&self) -> bool {
        !matches!(self, Self::Flat { .. } | Self::Oval { .. } | Self::HalfRound { .. })
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

/// The area of a rectangle with its edges eased.
fn eased_area(width: Length, thickness: Length, edge_radius: Length) -> Area {
    let radius = edge_radius.min(width.min(thickness) / 2.0);
    width * thickness - radius * radius * (4.0 - PI)
}

/// The radius in mm and half the angle of a half-round's arc.
fn segment_arc(width: Length, height: Length) -> (f64, f64) {
    let (half, height) = (in_mm(width) / 2.0, in_mm(height));
    let radius = (half * half + height * height) / (2.0 * height);
    (radius, half.atan2(radius - height))
}

/// A rectangle whose edges are eased no further than half its shorter side.
fn rectangle(width: Length, thickness: Length, edge_radius: Length) -> Section {
    let most = width.min(thickness) / 2.0;
    Section::rectangle(in_mm(width), in_mm(thickness), in_mm(edge_radius.min(most)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// One of each kind.
    fn all() -> Vec<SectionSize> {
        let (a, b, r) = (mm(20.0), mm(8.0), mm(1.5));
        vec![
            SectionSize::Point,
            SectionSize::Square { side: a, edge_radius: r },
            SectionSize::square(b),
            SectionSize::Round { diameter: a },
            SectionSize::Flat { width: a, thickness: b, edge_radius: r },
            SectionSize::Flat { width: b, thickness: a, edge_radius: mm(100.0) },
            SectionSize::Oval { width: a, thickness: b },
            SectionSize::Oval { width: b, thickness: a },
            SectionSize::Hexagon { across_flats: a },
            SectionSize::Octagon { across_flats: a },
            SectionSize::Diamond { side: a },
            SectionSize::HalfRound { width: a, height: b },
            SectionSize::HalfRound { width: a, height: a / 2.0 },
            SectionSize::HalfRound { width: b, height: a },
            SectionSize::Edge { width: a },
        ]
    }

    #[test]
    fn closed_forms_agree_with_the_outline() {
        for size in all() {
            let section = size.section();
            let close = |a: f64, b: f64| (a - b).abs() <= 1e-12 * a.abs().max(1.0);
            assert!(close((size.area() / mm2(1.0)).value, (section.area() / mm2(1.0)).value), "{size:?}");
            for view in [View::Side, View::Top] {
                assert!(close(size.seen_mm(view), section.seen_mm(view)), "{size:?} {view:?}");
            }
        }
    }

    #[test]
    fn the_centroid_of_a_half_round_agrees_with_its_outline() {
        let size = SectionSize::HalfRound { width: mm(20.0), height: mm(8.0) };
        let points = size.section().outline_mm(20_000);
        let (mut area, mut moment) = (0.0, 0.0);
        for (index, a) in points.iter().enumerate() {
            let b = points[(index + 1) % points.len()];
            let cross = a[0] * b[1] - b[0] * a[1];
            area += cross / 2.0;
            moment += (a[1] + b[1]) * cross / 6.0;
        }
        assert!((in_mm(size.centroid_rise()) - moment / area).abs() < 1e-6);
    }
}
