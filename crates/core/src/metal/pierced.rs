//! A plate with its holes: the metal they are in the way of, what is lost to them, and the walls that are left.

use super::plate_hole::TURN_POINTS;
use super::{HoleInPlate, Shape, in_mm, mm, mm3};
use uom::si::f64::{Area, Length, Volume};

/// What lies nearest to a hole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wall {
    /// The hole, counted through the plate.
    pub hole: usize,
    /// The other hole; none where it is the plate's edge.
    pub other: Option<usize>,
    /// How much metal is left between them.
    pub left: Length,
}

impl Shape {
    /// The holes of a flag; none of other shapes.
    pub fn plate_holes(&self) -> &[HoleInPlate] {
        if let Self::Flag { holes, .. } = self { holes } else { &[] }
    }

    /// A flag with these holes; other shapes as they are.
    #[must_use]
    pub fn with_holes(mut self, through: Vec<HoleInPlate>) -> Self {
        if let Self::Flag { holes, .. } = &mut self {
            *holes = through;
        }
        self
    }

    /// A flag before any hole is made; other shapes as they are.
    #[must_use]
    pub fn filled(&self) -> Self {
        if self.plate_holes().is_empty() { self.clone() } else { self.clone().with_holes(Vec::new()) }
    }

    /// The metal that a flag's holes are in the way of.
    pub fn holes_volume(&self) -> Volume {
        self.of_holes(|hole| hole.hole.area())
    }

    /// The metal that is lost when a flag's holes are made.
    pub fn lost_to_holes(&self) -> Volume {
        self.of_holes(|hole| hole.lost)
    }

    /// Each hole's area through the plate's thickness at its middle: exact, since every hole is alike on both sides of that and
    /// the thickness runs straight.
    fn of_holes(&self, area: impl Fn(&HoleInPlate) -> Area) -> Volume {
        let Self::Flag { outline, root, tip, holes, .. } = self else { return mm3(0.0) };
        // Beyond the tip a plate does not run out to less than nothing.
        let share = |hole: &HoleInPlate| (hole.at / outline.length()).value.clamp(0.0, 1.0);
        let thickness = |hole: &HoleInPlate| *root + (*tip - *root) * share(hole);
        holes.iter().fold(mm3(0.0), |sum, hole| sum + area(hole) * thickness(hole))
    }

    /// Whether all holes of a flag lie within it, and none runs into another.
    pub(crate) fn holds_its_holes(&self) -> bool {
        let Self::Flag { outline, holes, .. } = self else { return true };
        if holes.is_empty() {
            return true;
        }
        let edge = outline.points_mm();
        let apart = |(index, hole): (usize, &HoleInPlate)| holes.iter().skip(index + 1).all(|other| !hole.meets(other));
        holes.iter().all(|hole| hole.is_within(&edge)) && holes.iter().enumerate().all(apart)
    }

    /// The thinnest wall beside each hole of a flag, to its edge or to another hole.
    pub fn walls(&self) -> Vec<Wall> {
        let Self::Flag { outline, holes, .. } = self else { return Vec::new() };
        let edge = outline.points_mm();
        let rims: Vec<Vec<[f64; 2]>> = holes.iter().map(|hole| hole.points_mm(2 * TURN_POINTS)).collect();
        let wall = |(hole, rim): (usize, &Vec<[f64; 2]>)| {
            let others = rims.iter().enumerate().skip(hole + 1).map(|(other, rim)| (Some(other), rim));
            let all = std::iter::once((None, &edge)).chain(others);
            let left = all.map(|(other, way)| Wall { hole, other, left: mm(apart_mm(rim, way)) });
            left.min_by(|one, other| in_mm(one.left).total_cmp(&in_mm(other.left)))
        };
        rims.iter().enumerate().filter_map(wall).collect()
    }
}

/// How far two closed ways of straight sides that do not cross lie apart.
fn apart_mm(one: &[[f64; 2]], other: &[[f64; 2]]) -> f64 {
    let from = |points: &[[f64; 2]], way: &[[f64; 2]]| {
        let sides = || way.iter().zip(way.iter().cycle().skip(1));
        let least = |point: &[f64; 2]| sides().map(|(a, b)| to_side_mm(*point, *a, *b)).fold(f64::INFINITY, f64::min);
        points.iter().map(least).fold(f64::INFINITY, f64::min)
    };
    from(one, other).min(from(other, one))
}

/// How far a place lies from a straight side.
fn to_side_mm(point: [f64; 2], a: [f64; 2], b: [f64; 2]) -> f64 {
    let (way, to) = ([b[0] - a[0], b[1] - a[1]], [point[0] - a[0], point[1] - a[1]]);
    let long = way[0] * way[0] + way[1] * way[1];
    let share = if long > 0.0 { ((to[0] * way[0] + to[1] * way[1]) / long).clamp(0.0, 1.0) } else { 0.0 };
    (to[0] - share * way[0]).hypot(to[1] - share * way[1])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::metal::{HoleSize, Outline};
    use crate::plan::Made;

    fn round(at: f64, across: f64) -> HoleInPlate {
        let hole = HoleSize::Round { diameter: mm(10.0) };
        HoleInPlate { hole, made: Made::Drilled, at: mm(at), across: mm(across), lost: hole.area() }
    }

    fn plate(holes: Vec<HoleInPlate>) -> Shape {
        let outline = Outline::Rectangle { length: mm(60.0), width: mm(40.0) };
        Shape::flag(outline, None, mm(4.0), mm(2.0)).with_holes(holes)
    }

    /// From 4 mm to 2 mm over 60 mm: 3 mm thick in the middle, 2 mm at the tip and wherever a hole is put beyond it.
    #[test]
    fn a_hole_beside_its_plate_is_as_deep_as_the_plate_is_thick_at_its_end() {
        let lost = |at: f64| (plate(vec![round(at, 0.0)]).lost_to_holes() / mm3(1.0)).value;
        let area = std::f64::consts::PI * 25.0;
        for (at, thick) in [(30.0, 3.0), (60.0, 2.0), (400.0, 2.0)] {
            assert!((lost(at) - area * thick).abs() < 1e-9 * area, "{at}: {}", lost(at));
        }
    }

    #[test]
    fn the_thinnest_wall_is_that_to_the_edge_or_to_another_hole() {
        // From the rim of the first to the root 20 − 5 = 15, to the side 20 − 5 − 8 = 7, to the other 15 − 10 = 5.
        let walls = plate(vec![round(20.0, 8.0), round(35.0, 8.0)]).walls();
        let left: Vec<f64> = walls.iter().map(|wall| in_mm(wall.left)).collect();
        assert!((left[0] - 5.0).abs() < 0.02 && walls[0].other == Some(1), "{walls:?}");
        assert!((left[1] - 7.0).abs() < 0.02 && walls[1].other.is_none(), "{walls:?}");
    }

    #[test]
    fn holes_that_break_out_or_meet_are_told_from_those_that_do_not() {
        assert!(plate(vec![round(20.0, 8.0), round(35.0, 8.0)]).holds_its_holes());
        assert!(!plate(vec![round(20.0, 16.0)]).holds_its_holes(), "over the side");
        assert!(!plate(vec![round(4.0, 0.0)]).holds_its_holes(), "over the root");
        assert!(!plate(vec![round(90.0, 0.0)]).holds_its_holes(), "beside the plate");
        assert!(!plate(vec![round(20.0, 8.0), round(29.0, 8.0)]).holds_its_holes(), "into each other");
    }
}
