//! Notches in an outline: straight sides that run in from an edge and out again, with a bottom between them.

use super::{Outline, OutlineCorner};

/// What is no longer than this is nothing, and what differs by less is the same, in mm.
const ALIKE_MM: f64 = 1e-3;

/// A notch with parallel sides, square to its bottom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Notch {
    /// How wide it is, in mm.
    pub width_mm: f64,
    /// How deep it goes in from the nearer of its two mouth corners, in mm.
    pub depth_mm: f64,
    /// Whether its bottom is a whole half-circle, as wide as it is.
    pub is_round: bool,
    /// Whether it runs along the bar; across it where not.
    pub is_along: bool,
    /// The middle of its mouth in mm: along the bar from the root, and away from you from the base line.
    pub mouth_mm: [f64; 2],
}

impl Outline {
    /// Its notches, in the order of its corners; only a polygon has any.
    pub fn notches(&self) -> Vec<Notch> {
        let Self::Polygon(corners) = self else { return Vec::new() };
        let places: Vec<[f64; 2]> = corners.iter().map(|corner| corner.at).collect();
        let left = super::chord_area(&places) >= 0.0;
        let root = places.iter().map(|at| at[0]).fold(f64::INFINITY, f64::min);
        (0..corners.len()).filter_map(|first| notch(corners, first, left, root)).collect()
    }
}

/// The notch whose first side begins at a corner; `left` where the metal lies to the left of the way round.
fn notch(corners: &[OutlineCorner], first: usize, left: bool, root: f64) -> Option<Notch> {
    let corner = |ahead: usize| corners[(first + ahead) % corners.len()];
    let [mouth, inner, outer, end] = [0, 1, 2, 3].map(corner);
    if corners.len() < 5 || mouth.bulge != 0.0 || outer.bulge != 0.0 {
        return None;
    }
    let (inward, across, outward) = (way(mouth, inner)?, way(inner, outer)?, way(outer, end)?);
    let is_square = |one: Way, other: Way| (one.x * other.x + one.y * other.y).abs() < ALIKE_MM;
    // It turns away from the metal at the bottom.
    let turns = (inward.x * across.y - inward.y * across.x) * if left { -1.0 } else { 1.0 };
    let is_back = (inward.x + outward.x).hypot(inward.y + outward.y) < ALIKE_MM;
    if !is_back || !is_square(inward, across) || turns <= 0.0 {
        return None;
    }
    // The tangent of a quarter of the arc's angle, times half the chord, is how far the arc stands off it.
    let deeper = inner.bulge * if left { -1.0 } else { 1.0 };
    let depth_mm = inward.long.min(outward.long) + deeper * across.long / 2.0;
    Some(Notch {
        width_mm: across.long,
        depth_mm,
        is_round: (deeper - 1.0).abs() < 1e-6,
        is_along: inward.x.abs() > inward.y.abs(),
        mouth_mm: [f64::midpoint(mouth.at[0], end.at[0]) - root, f64::midpoint(mouth.at[1], end.at[1])],
    })
    .filter(|notch| notch.depth_mm > ALIKE_MM)
}

/// The way from a corner to another: its direction and its length in mm.
#[derive(Clone, Copy)]
struct Way {
    x: f64,
    y: f64,
    long: f64,
}

fn way(from: OutlineCorner, to: OutlineCorner) -> Option<Way> {
    let [x, y] = [to.at[0] - from.at[0], to.at[1] - from.at[1]];
    let long = x.hypot(y);
    (long > ALIKE_MM).then(|| Way { x: x / long, y: y / long, long })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn polygon(places: &[([f64; 2], f64)]) -> Outline {
        Outline::Polygon(places.iter().map(|(at, bulge)| OutlineCorner { at: *at, bulge: *bulge }).collect())
    }

    /// A plate 50 × 40 with a notch 12 wide, its sides 16 long and its bottom a half-circle: 16 + 12/2 = 22 deep.
    const ROUND: [([f64; 2], f64); 8] = [
        ([0.0, -20.0], 0.0),
        ([50.0, -20.0], 0.0),
        ([50.0, -4.0], 0.0),
        ([34.0, -4.0], -1.0),
        ([34.0, 8.0], 0.0),
        ([50.0, 8.0], 0.0),
        ([50.0, 20.0], 0.0),
        ([0.0, 20.0], 0.0),
    ];

    #[test]
    fn a_notch_is_measured_the_same_whichever_way_round_its_corners_run() {
        let mut back: Vec<_> = ROUND.iter().rev().copied().collect();
        // The arc begins at the other of its ends, and turns the other way.
        back.iter_mut().for_each(|corner| corner.1 = 0.0);
        back[3].1 = 1.0;
        for outline in [polygon(&ROUND), polygon(&back)] {
            let [notch] = outline.notches()[..] else { panic!("{:?}", outline.notches()) };
            let (mouth, sizes) = (notch.mouth_mm, [notch.width_mm, notch.depth_mm]);
            assert!((sizes[0] - 12.0).abs() < 1e-9 && (sizes[1] - 22.0).abs() < 1e-9, "{sizes:?}");
            assert!((mouth[0] - 50.0).abs() < 1e-9 && (mouth[1] - 2.0).abs() < 1e-9, "{mouth:?}");
            assert!(notch.is_round && notch.is_along);
        }
    }

    #[test]
    fn a_tab_and_a_plain_plate_have_no_notch() {
        let tab = [([0.0, 0.0], 0.0), ([40.0, 0.0], 0.0), ([40.0, 10.0], 0.0), ([60.0, 10.0], 0.0)];
        let rest = [([60.0, 20.0], 0.0), ([40.0, 20.0], 0.0), ([40.0, 30.0], 0.0), ([0.0, 30.0], 0.0)];
        assert!(polygon(&[tab, rest].concat()).notches().is_empty());
        let plate =
            [([0.0, 0.0], 0.0), ([40.0, 0.0], 0.0), ([40.0, 10.0], 0.0), ([20.0, 15.0], 0.0), ([0.0, 10.0], 0.0)];
        assert!(polygon(&plate).notches().is_empty());
    }
}
