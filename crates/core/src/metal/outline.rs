//! The outline of a flag, settled: exact area, centroid and width at each place.

use super::{HoleSize, in_mm, mm, mm2};
use crate::plan::Gives;
use std::f64::consts::PI;
use uom::si::f64::{Area, Length};

/// Points on a round outline when it is drawn.
const ROUND_POINTS: usize = 72;

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
    /// A simple polygon in mm: along the bar from the root, and across it.
    Polygon(Vec<[f64; 2]>),
}

impl Outline {
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
                let (low, high) = extremes(corners.iter().map(|corner| corner[0]));
                mm(high - low)
            }
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
                let (low, high) = extremes(corners.iter().map(|corner| corner[1]));
                mm(high - low)
            }
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
            Self::Polygon(corners) => mm2(polygon_moments(corners).0.abs()),
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
                let (low, high) = extremes(corners.iter().map(|corner| corner[0]));
                let (area, moment) = polygon_moments(corners);
                (moment / area - low) / (high - low)
            }
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
                let (low, high) = extremes(corners.iter().map(|corner| corner[0]));
                polygon_width(corners, low + (high - low) * share)
            }
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
        }
    }

    /// The outline in mm as a closed polygon: along the bar from the root, and across it.
    pub fn points_mm(&self) -> Vec<[f64; 2]> {
        match self {
            Self::Polygon(corners) => {
                let (low, _) = extremes(corners.iter().map(|corner| corner[0]));
                corners.iter().map(|corner| [corner[0] - low, corner[1]]).collect()
            }
            Self::Rectangle { .. } | Self::Trapezoid { .. } => self.strip(&[0.0, 1.0]),
            _ => {
                // Steps bunched toward both ends, where a round outline turns fastest.
                let steps = ROUND_POINTS / 2;
                let shares: Vec<f64> =
                    (0..=steps).map(|step| (1.0 - (PI * step as f64 / steps as f64).cos()) / 2.0).collect();
                self.strip(&shares)
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
                Self::Polygon(corners.iter().map(|corner| [corner[0] * long, corner[1] * wide]).collect())
            }
        })
    }
}

fn extremes(values: impl Iterator<Item = f64>) -> (f64, f64) {
    values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)))
}

fn leaf_radius(length: f64, width: f64) -> f64 {
    (length * length + width * width) / (4.0 * width)
}

fn leaf_area(length: f64, width: f64) -> f64 {
    let radius = leaf_radius(length, width);
    let angle = 4.0 * (width / length).atan();
    radius * radius * less_sine(angle)
}

/// θ - sin θ without losing figures where θ is small.
pub(super) fn less_sine(angle: f64) -> f64 {
    if angle < 0.1 {
        let square = angle * angle;
        angle * square / 6.0 * (1.0 - square / 20.0 * (1.0 - square / 42.0 * (1.0 - square / 72.0)))
    } else {
        angle - angle.sin()
    }
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

/// Signed area and first moment along the bar.
fn polygon_moments(corners: &[[f64; 2]]) -> (f64, f64) {
    let (mut area, mut moment) = (0.0, 0.0);
    for (index, a) in corners.iter().enumerate() {
        let b = &corners[(index + 1) % corners.len()];
        let cross = a[0] * b[1] - b[0] * a[1];
        area += cross / 2.0;
        moment += (a[0] + b[0]) * cross / 6.0;
    }
    (area, moment)
}

/// The metal across a polygon at a place along it.
fn polygon_width(corners: &[[f64; 2]], along: f64) -> f64 {
    let mut crossings: Vec<f64> = corners
        .iter()
        .enumerate()
        .filter_map(|(index, a)| {
            let b = &corners[(index + 1) % corners.len()];
            let crosses = (a[0] <= along) != (b[0] <= along);
            crosses.then(|| a[1] + (b[1] - a[1]) * (along - a[0]) / (b[0] - a[0]))
        })
        .collect();
    crossings.sort_by(f64::total_cmp);
    crossings.chunks_exact(2).map(|pair| pair[1] - pair[0]).sum()
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
