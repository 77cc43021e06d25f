//! The outline of a flag, settled: exact area, centroid and width at each place.

use super::arc::{arc, less_sine};
use super::polygon::{self, OutlineCorner};
use super::{HoleSize, in_mm, mm, mm2};
use crate::plan::{Corners, Gives, OutlineSpec};
use fh_measure::WrittenLength;
use std::f64::consts::{FRAC_PI_2, PI};
use uom::si::f64::{Area, Length};

/// An outline with its root at 0 along the bar.
#[derive(Clone, Debug, PartialEq)]
pub enum Outline {
    /// A rectangle.
    Rectangle {
        /// Along the bar.
        length: Length,
        /// Across the bar.
        width: Length,
    },
    /// A trapezoid.
    Trapezoid {
        /// Along the bar.
        length: Length,
        /// The width at the root.
        root: Length,
        /// The width at the tip.
        tip: Length,
    },
    /// An ellipse; a disc where both sizes are alike.
    Ellipse {
        /// Along the bar.
        length: Length,
        /// Across the bar.
        width: Length,
    },
    /// A disc.
    Disc {
        /// Its diameter.
        diameter: Length,
    },
    /// Two equal arcs through both tips.
    Leaf {
        /// From tip to tip.
        length: Length,
        /// At its widest.
        width: Length,
    },
    /// Straight sides and round ends, over all.
    Stadium {
        /// Along the bar.
        length: Length,
        /// Across the bar.
        width: Length,
    },
    /// A simple outline by its corners, with straight sides and arcs between them.
    Polygon(Vec<OutlineCorner>),
    /// Any but a polygon, its base line not its middle.
    OffMiddle {
        /// The outline.
        outline: Box<Outline>,
        /// How far the base line lies from the edge toward you; below 0 outside it.
        base: Length,
    },
}

impl From<&OutlineSpec> for Outline {
    /// What is left out is 0 until it follows.
    fn from(spec: &OutlineSpec) -> Self {
        let or_zero = |size: &Option<WrittenLength>| size.as_ref().map_or(mm(0.0), WrittenLength::length);
        match spec {
            OutlineSpec::Rectangle { length, width } => {
                Self::Rectangle { length: or_zero(length), width: or_zero(width) }
            }
            OutlineSpec::Trapezoid { length, root, tip } => {
                Self::Trapezoid { length: length.length(), root: root.length(), tip: tip.length() }
            }
            OutlineSpec::Disc { diameter } => Self::Disc { diameter: diameter.length() },
            OutlineSpec::Ellipse { length, width } => Self::Ellipse { length: length.length(), width: width.length() },
            OutlineSpec::Leaf { length, width } => Self::Leaf { length: length.length(), width: width.length() },
            OutlineSpec::Stadium { length, width } => Self::Stadium { length: length.length(), width: width.length() },
            OutlineSpec::Polygon(Corners(corners)) => Self::Polygon(polygon::settled(corners)),
        }
    }
}

impl Outline {
    /// It with its base line so far from the edge toward you, where that is said; a polygon's corners count from it already.
    pub(crate) fn on_base_line(self, base: Option<Length>) -> Self {
        match base {
            Some(base) if !matches!(self, Self::Polygon(_)) => Self::OffMiddle { outline: Box::new(self), base },
            _ => self,
        }
    }

    /// It without its base line.
    pub fn bare(&self) -> &Self {
        match self {
            Self::OffMiddle { outline, .. } => outline.bare(),
            _ => self,
        }
    }

    /// The length along the bar.
    pub fn length(&self) -> Length {
        match self {
            Self::Rectangle { length, .. }
            | Self::Trapezoid { length, .. }
            | Self::Ellipse { length, .. }
            | Self::Leaf { length, .. }
            | Self::Stadium { length, .. } => *length,
            Self::Disc { diameter } => *diameter,
            Self::Polygon(corners) => {
                let [low, high] = polygon::extents(corners)[0];
                mm(high - low)
            }
            Self::OffMiddle { outline, .. } => outline.length(),
        }
    }

    /// Where its root lies along the bar as its corners are counted; 0 but for a polygon.
    pub fn root(&self) -> Length {
        match self {
            Self::Polygon(corners) => mm(polygon::extents(corners)[0][0]),
            _ => mm(0.0),
        }
    }

    /// The width over all.
    pub fn width(&self) -> Length {
        match self {
            Self::Rectangle { width, .. }
            | Self::Ellipse { width, .. }
            | Self::Leaf { width, .. }
            | Self::Stadium { width, .. } => *width,
            Self::Trapezoid { root, tip, .. } => root.max(*tip),
            Self::Disc { diameter } => *diameter,
            Self::Polygon(corners) => {
                let [low, high] = polygon::extents(corners)[1];
                mm(high - low)
            }
            Self::OffMiddle { outline, .. } => outline.width(),
        }
    }

    /// The exact area. Leaf: R = (L² + W²)/(4W), θ = 4 atan(W/L), area = R² (θ - sin θ); polygon: shoelace.
    pub fn area(&self) -> Area {
        match self {
            Self::Rectangle { length, width } => *length * *width,
            Self::Trapezoid { length, root, tip } => *length * (*root + *tip) / 2.0,
            Self::Ellipse { length, width } => *length * *width * (PI / 4.0),
            Self::Disc { diameter } => *diameter * *diameter * (PI / 4.0),
            Self::Leaf { length, width } => mm2(leaf_area(in_mm(*length), in_mm(*width))),
            Self::Stadium { length, width } => {
                let (long, short) = (length.max(*width), length.min(*width));
                (long - short) * short + short * short * (PI / 4.0)
            }
            Self::Polygon(corners) => mm2(polygon::moments(corners).0.abs()),
            Self::OffMiddle { outline, .. } => outline.area(),
        }
    }

    /// The share of the length, from the root, at which the area's centroid lies.
    pub fn centroid_share(&self) -> f64 {
        match self {
            Self::Trapezoid { root, tip, .. } => {
                let (root, tip) = (in_mm(*root), in_mm(*tip));
                (root + 2.0 * tip) / (3.0 * (root + tip))
            }
            Self::Polygon(corners) => {
                let [low, high] = polygon::extents(corners)[0];
                let (area, moment) = polygon::moments(corners);
                (moment / area - low) / (high - low)
            }
            Self::OffMiddle { outline, .. } => outline.centroid_share(),
            _ => 0.5,
        }
    }

    /// The width of metal in mm at a share of the length from the root; of a polygon, all its parts together.
    pub(crate) fn width_at(&self, share: f64) -> f64 {
        let from_middle = 2.0 * share - 1.0;
        match self {
            Self::Rectangle { width, .. } => in_mm(*width),
            Self::Trapezoid { root, tip, .. } => in_mm(*root) + (in_mm(*tip) - in_mm(*root)) * share,
            Self::Ellipse { width, .. } | Self::Disc { diameter: width } => {
                in_mm(*width) * (1.0 - from_middle * from_middle).max(0.0).sqrt()
            }
            Self::Leaf { length, width } => {
                let (length, width) = (in_mm(*length), in_mm(*width));
                let radius = leaf_radius(length, width);
                let along = from_middle * length / 2.0;
                2.0 * ((radius * radius - along * along).max(0.0).sqrt() + width / 2.0 - radius).max(0.0)
            }
            Self::Stadium { length, width } => stadium_width(in_mm(*length), in_mm(*width), share),
            Self::Polygon(corners) => {
                let [low, high] = polygon::extents(corners)[0];
                polygon::width_at(corners, low + (high - low) * share)
            }
            Self::OffMiddle { outline, .. } => outline.width_at(share),
        }
    }

    /// The least metal beside a hole, across the bar and before and behind it, in mm; 0 where it breaks out.
    pub(crate) fn wall_mm(&self, hole: &HoleSize, at: Length) -> f64 {
        if !self.holds(hole, at) {
            return 0.0;
        }
        let (length, at, half) = (in_mm(self.length()), in_mm(at), in_mm(hole.length()) / 2.0);
        let beside = |share: f64| {
            let from_middle = half * share;
            (self.width_at((at + from_middle) / length) - hole.width_at_mm(from_middle)) / 2.0
        };
        let across = [-0.5, 0.0, 0.5].into_iter().map(beside).fold(f64::INFINITY, f64::min);
        across.min(at - half).min(length - at - half)
    }

    /// Whether a hole with its middle at this distance from the root leaves metal all round it.
    pub(crate) fn holds(&self, hole: &HoleSize, at: Length) -> bool {
        const PLACES: usize = 17;
        let (length, at, half) = (in_mm(self.length()), in_mm(at), in_mm(hole.length()) / 2.0);
        if at - half <= 0.0 || at + half >= length {
            return false;
        }
        (0..PLACES).all(|place| {
            let from_middle = half * (2.0 * place as f64 / (PLACES - 1) as f64 - 1.0);
            hole.width_at_mm(from_middle) < self.width_at((at + from_middle) / length)
        })
    }

    /// The width it ends with at its root or its tip; none where it runs out to a point or a round.
    pub fn end_width(&self, tip: bool) -> Option<Length> {
        match self {
            Self::Rectangle { width, .. } => Some(*width),
            Self::Trapezoid { root, tip: at_tip, .. } => Some(if tip { *at_tip } else { *root }),
            Self::Stadium { length, width } => (width > length).then(|| *width - *length),
            Self::Ellipse { .. } | Self::Disc { .. } | Self::Leaf { .. } => None,
            Self::Polygon(_) => {
                // At the very end an edge across the bar is met only from inside.
                let width = mm(self.width_at(if tip { 1.0 - 1e-12 } else { 1e-12 }));
                (width > self.width() * 1e-9).then_some(width)
            }
            Self::OffMiddle { outline, .. } => outline.end_width(tip),
        }
    }

    /// The outline in mm as a closed polygon: along the bar from the root, and across it. Round parts are cut so finely
    /// that it is nowhere more than a hundredth of a millimetre off.
    pub fn points_mm(&self) -> Vec<[f64; 2]> {
        let length = in_mm(self.length());
        match self {
            Self::Polygon(corners) => polygon::points_mm(corners),
            Self::OffMiddle { outline, base } => {
                let up = in_mm(outline.width() / 2.0 - *base);
                outline.points_mm().into_iter().map(|[along, across]| [along, across + up]).collect()
            }
            Self::Rectangle { .. } | Self::Trapezoid { .. } => self.strip(&[0.0, 1.0]),
            Self::Ellipse { width, .. } | Self::Disc { diameter: width } => {
                let half = [length / 2.0, in_mm(*width) / 2.0];
                let upper = arc([0.0; 2], 1.0, [PI, 0.0], half[0].max(half[1]));
                both_sides(upper.into_iter().map(|[x, y]| [half[0] * (1.0 + x), half[1] * y]).collect())
            }
            Self::Leaf { width, .. } => {
                let width = in_mm(*width);
                let (radius, spread) = (leaf_radius(length, width), 2.0 * (width / length).atan());
                let center = [length / 2.0, width / 2.0 - radius];
                both_sides(arc(center, radius, [FRAC_PI_2 + spread, FRAC_PI_2 - spread], radius))
            }
            Self::Stadium { width, .. } => {
                let half = in_mm(*width) / 2.0;
                let radius = half.min(length / 2.0);
                let round = |along: f64, turn: [f64; 2]| arc([along, half - radius], radius, turn, radius);
                both_sides([round(radius, [PI, FRAC_PI_2]), round(length - radius, [FRAC_PI_2, 0.0])].concat())
            }
        }
    }

    /// Both edges of a symmetric outline through these shares of its length.
    fn strip(&self, shares: &[f64]) -> Vec<[f64; 2]> {
        let length = in_mm(self.length());
        let edge = |side: f64| move |share: &f64| [share * length, side * self.width_at(*share) / 2.0];
        shares.iter().map(edge(1.0)).chain(shares.iter().rev().map(edge(-1.0))).collect()
    }

    /// It with the size that gives multiplied; none where it has no such size.
    pub fn scaled(&self, gives: Gives, factor: f64) -> Option<Self> {
        let (long, wide) = match gives {
            Gives::Length => (factor, 1.0),
            Gives::Width => (1.0, factor),
            Gives::Thickness | Gives::Nothing => return None,
        };
        Some(match self {
            Self::Rectangle { length, width } => Self::Rectangle { length: *length * long, width: *width * wide },
            Self::Ellipse { length, width } => Self::Ellipse { length: *length * long, width: *width * wide },
            Self::Leaf { length, width } => Self::Leaf { length: *length * long, width: *width * wide },
            Self::Stadium { length, width } => Self::Stadium { length: *length * long, width: *width * wide },
            Self::Trapezoid { length, root, tip } => {
                Self::Trapezoid { length: *length * long, root: *root * wide, tip: *tip * wide }
            }
            Self::Disc { diameter } => Self::Disc { diameter: *diameter * factor },
            Self::Polygon(corners) => {
                let scale = |corner: &OutlineCorner| {
                    // An arc keeps its angle.
                    OutlineCorner { at: [corner.at[0] * long, corner.at[1] * wide], bulge: corner.bulge }
                };
                Self::Polygon(corners.iter().map(scale).collect())
            }
            Self::OffMiddle { outline, base } => {
                Self::OffMiddle { outline: Box::new(outline.scaled(gives, factor)?), base: *base }
            }
        })
    }
}

/// An upper edge from the root to the tip, and back along the same below.
fn both_sides(upper: Vec<[f64; 2]>) -> Vec<[f64; 2]> {
    let lower: Vec<[f64; 2]> = upper.iter().rev().map(|[along, away]| [*along, -away]).collect();
    [upper, lower].concat()
}

fn leaf_radius(length: f64, width: f64) -> f64 {
    (length * length + width * width) / (4.0 * width)
}

fn leaf_area(length: f64, width: f64) -> f64 {
    let radius = leaf_radius(length, width);
    let angle = 4.0 * (width / length).atan();
    radius * radius * less_sine(angle)
}

fn stadium_width(length: f64, width: f64, share: f64) -> f64 {
    let radius = length.min(width) / 2.0;
    let from_end = (share.min(1.0 - share) * length).max(0.0);
    if from_end >= radius {
        return width;
    }
    let short = radius - from_end;
    width - 2.0 * radius + 2.0 * (radius * radius - short * short).max(0.0).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_thin_leaf_keeps_its_figures() {
        // Two thin arcs are two parabolas: area → 2/3 L W.
        let area = leaf_area(1000.0, 0.01);
        assert!((area / (2.0 / 3.0 * 1000.0 * 0.01) - 1.0).abs() < 1e-9, "{area}");
    }

    #[test]
    fn a_round_leaf_is_a_disc() {
        assert!((leaf_area(60.0, 60.0) / (PI / 4.0 * 3600.0) - 1.0).abs() < 1e-12);
    }
}
