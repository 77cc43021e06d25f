//! An outline as a closed way of straight sides and arcs, counterclockwise, and what two such have in common.

use super::edge::{Edge, NEAR_MM, Point};
use super::polygon::{self, OutlineCorner};
use super::{Outline, in_mm};
use std::f64::consts::{PI, TAU};

/// Arcs that take the place of an ellipse: they are off by the fourth power of their angle, below a millionth of a millimetre.
const ELLIPSE_ARCS: usize = 256;

/// A closed way, counterclockwise: the metal lies to its left.
#[derive(Clone, Debug)]
pub(crate) struct OutlinePath(Vec<Edge>);

/// Area in mm², and its moments along and across in mm³.
pub(crate) type Moments = [f64; 3];

impl Outline {
    /// Where its centroid lies in mm: along the bar from the root, and away from you across it from the base line.
    pub fn centroid_mm(&self) -> [f64; 2] {
        let [area, along, across] = OutlinePath::new(self).moments();
        [along / area, across / area]
    }

    /// From where to where it goes across the bar in mm, away from you counted from the base line.
    pub fn across_mm(&self) -> [f64; 2] {
        OutlinePath::new(self).across()
    }
}

impl OutlinePath {
    /// The way round an outline, its root at 0 along the bar and its base line at 0 across it.
    pub(crate) fn new(outline: &Outline) -> Self {
        let (length, width) = (in_mm(outline.length()), in_mm(outline.width()));
        let way = |corners: &[(Point, f64)]| Self(round(corners));
        let half = width / 2.0;
        match outline {
            Outline::Rectangle { .. } => {
                way(&[([0.0, -half], 0.0), ([length, -half], 0.0), ([length, half], 0.0), ([0.0, half], 0.0)])
            }
            Outline::Trapezoid { root, tip, .. } => {
                let (root, tip) = (in_mm(*root) / 2.0, in_mm(*tip) / 2.0);
                way(&[([0.0, -root], 0.0), ([length, -tip], 0.0), ([length, tip], 0.0), ([0.0, root], 0.0)])
            }
            Outline::Disc { .. } => way(&[([0.0, 0.0], 1.0), ([length, 0.0], 1.0)]),
            Outline::Ellipse { .. } => ellipse(length, half),
            Outline::Leaf { .. } => {
                let bulge = width / length;
                way(&[([0.0, 0.0], bulge), ([length, 0.0], bulge)])
            }
            Outline::Stadium { .. } if length >= width => way(&[
                ([half, -half], 0.0),
                ([length - half, -half], 1.0),
                ([length - half, half], 0.0),
                ([half, half], 1.0),
            ]),
            Outline::Stadium { .. } => {
                let side = half - length / 2.0;
                way(&[([0.0, -side], 1.0), ([length, -side], 0.0), ([length, side], 1.0), ([0.0, side], 0.0)])
            }
            Outline::Polygon(corners) => {
                let start = polygon::extents(corners)[0][0];
                let at_root = |corner: &OutlineCorner| ([corner.at[0] - start, corner.at[1]], corner.bulge);
                let path = way(&corners.iter().map(at_root).collect::<Vec<_>>());
                if path.moments()[0] < 0.0 { path.turned() } else { path }
            }
            Outline::OffMiddle { outline, base } => {
                let up = in_mm(outline.width()) / 2.0 - in_mm(*base);
                Self(Self::new(outline).0.into_iter().map(|edge| raised(edge, up)).collect())
            }
        }
    }

    /// It the other way round.
    fn turned(self) -> Self {
        let back = |edge: Edge| Edge { from: edge.to, to: edge.from, bulge: -edge.bulge };
        Self(self.0.into_iter().rev().map(back).collect())
    }

    /// Area and moments of what it encloses.
    pub(crate) fn moments(&self) -> Moments {
        sum(self.0.iter().map(Edge::moments))
    }

    /// From where to where it goes across the bar, in mm.
    pub(crate) fn across(&self) -> [f64; 2] {
        let places =
            self.0.iter().flat_map(|edge| edge.quarters(false).into_iter().chain([0.0]).map(|share| edge.at(share)));
        places.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], place| [low.min(place[1]), high.max(place[1])])
    }

    /// Whether a point lies inside it, on neither side nor edge.
    fn holds(&self, point: Point) -> bool {
        self.0.iter().map(|edge| edge.seen_from(point)).sum::<f64>() > PI
    }

    /// Whether a side of it runs through a point the same way as another there; none where none runs through it.
    fn runs_with(&self, point: Point, way: Point) -> Option<bool> {
        let edge = self.0.iter().find(|edge| edge.distance(point) < NEAR_MM)?;
        let own = edge.way(edge.share_of(point));
        Some(own[0] * way[0] + own[1] * way[1] > 0.0)
    }

    /// Area and moments of what two outlines have in common, exact: the sides of each are cut where they meet the other's,
    /// and those pieces that lie in the other go round what they have in common (Green's theorem).
    pub(crate) fn shared_with(&self, other: &Self) -> Moments {
        let own = self.pieces_at(other).filter(|piece| {
            let middle = piece.at(0.5);
            other.runs_with(middle, piece.way(0.5)).unwrap_or_else(|| other.holds(middle))
        });
        let others = other.pieces_at(self).filter(|piece| {
            let middle = piece.at(0.5);
            // A side that both have counts once.
            self.runs_with(middle, piece.way(0.5)).is_none() && self.holds(middle)
        });
        sum(own.chain(others).map(|piece| piece.moments()))
    }

    /// Its sides, cut where they meet another outline's.
    fn pieces_at<'a>(&'a self, other: &'a Self) -> impl Iterator<Item = Edge> + 'a {
        self.0.iter().flat_map(move |edge| {
            let mut cuts: Vec<f64> = other.0.iter().flat_map(|side| edge.meets(side)).chain([0.0, 1.0]).collect();
            cuts.sort_by(f64::total_cmp);
            cuts.dedup_by(|later, earlier| *later - *earlier < 1e-12);
            let pairs: Vec<_> = cuts.windows(2).filter_map(|pair| Some((*pair.first()?, *pair.get(1)?))).collect();
            pairs.into_iter().map(move |(from, to)| edge.part(from, to))
        })
    }
}

/// The sides from each corner to the next, and from the last to the first.
fn round(corners: &[(Point, f64)]) -> Vec<Edge> {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|((from, bulge), (to, _))| Edge { from: *from, to: *to, bulge: *bulge }).collect()
}

fn raised(edge: Edge, up: f64) -> Edge {
    let raise = |[along, across]: Point| [along, across + up];
    Edge { from: raise(edge.from), to: raise(edge.to), bulge: edge.bulge }
}

fn sum(all: impl Iterator<Item = Moments>) -> Moments {
    all.fold([0.0; 3], |sum, one| [sum[0] + one[0], sum[1] + one[1], sum[2] + one[2]])
}

/// An ellipse by arcs through its points, each with the rise over its chord that the ellipse has there.
fn ellipse(length: f64, half: f64) -> OutlinePath {
    let place = |share: f64| {
        let (sin, cos) = (TAU * share).sin_cos();
        [length / 2.0 * (1.0 + cos), half * sin]
    };
    let count = ELLIPSE_ARCS as f64;
    let arc = |index: usize| {
        let at = |steps: f64| place((index as f64 + steps) / count);
        let (from, middle, to) = (at(0.0), at(0.5), at(1.0));
        let [dx, dy] = [to[0] - from[0], to[1] - from[1]];
        let chord = dx.hypot(dy);
        let rise = ((middle[0] - from[0]) * dy - (middle[1] - from[1]) * dx) / chord;
        Edge { from, to, bulge: 2.0 * rise / chord }
    };
    OutlinePath((0..ELLIPSE_ARCS).map(arc).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::metal::mm;
    use std::f64::consts::FRAC_PI_2;

    #[test]
    fn a_place_on_the_chord_of_an_arc_lies_inside() {
        let disc = OutlinePath::new(&Outline::Disc { diameter: mm(36.154) });
        assert!(disc.holds([36.0, 0.0]) && disc.holds([18.0, 0.0]) && disc.holds([18.0, 17.9]));
        assert!(!disc.holds([36.2, 0.0]) && !disc.holds([-0.1, 0.0]) && !disc.holds([1.0, 17.0]));
    }

    #[test]
    fn a_disc_and_a_square_of_its_size_share_the_disc_and_two_discs_their_lens() {
        let of = |outline: &Outline| OutlinePath::new(outline);
        let disc = of(&Outline::Disc { diameter: mm(40.0) });
        let square = of(&Outline::Rectangle { length: mm(40.0), width: mm(40.0) });
        let want = 400.0 * PI;
        assert!((disc.shared_with(&square)[0] - want).abs() < 1e-9 * want);
        assert!((square.shared_with(&disc)[0] - want).abs() < 1e-9 * want);
        // Of one as large, its edge 20 mm off: R² (π/2 - 1) each way where they cross at right angles.
        let apart = 20.0 * 2.0_f64.sqrt();
        let other = OutlinePath(disc.0.iter().map(|edge| raised(*edge, apart)).collect());
        let lens = 400.0 * (FRAC_PI_2 - 1.0);
        assert!((disc.shared_with(&other)[0] - lens).abs() < 1e-9 * lens, "{}", disc.shared_with(&other)[0]);
    }
}
