//! A hole through a plate, settled: what metal it takes, and where its edge lies.

use super::{HoleSize, in_mm, mm, mm2, slug_area};
use crate::plan::{Made, PlateHole};
use fh_measure::WrittenLength;
use std::f64::consts::PI;
use uom::si::f64::{Area, Length};

/// Points on a whole turn of a hole where it is held against edges.
pub(super) const TURN_POINTS: usize = 48;

/// A hole with its sizes settled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoleInPlate {
    /// Its shape.
    pub hole: HoleSize,
    /// How it is made.
    pub made: Made,
    /// Where its middle lies, along the bar from the plate's root.
    pub at: Length,
    /// Where its middle lies, away from you across the bar from the base line.
    pub across: Length,
    /// The area of the metal that is lost through the full thickness when it is made: what is drilled out, or the slug.
    pub lost: Area,
}

impl From<&PlateHole> for HoleInPlate {
    fn from(written: &PlateHole) -> Self {
        let hole = HoleSize::from(&written.hole);
        let lost = match (written.made, &written.slug) {
            (Made::Drifted, _) => hole.area() * 0.0,
            (Made::Punched, Some(slug)) => slug_area(slug.length()),
            _ => hole.area(),
        };
        let across = written.across.as_ref().map_or(mm(0.0), WrittenLength::length);
        Self { hole, made: written.made, at: written.at.length(), across, lost }
    }
}

impl HoleInPlate {
    /// Its edge in mm: along the bar from the plate's root, and away from you from the base line.
    pub fn points_mm(&self, turn_points: usize) -> Vec<[f64; 2]> {
        let [at, across] = self.middle_mm();
        self.hole.points_mm(turn_points).into_iter().map(|[along, aside]| [at + along, across + aside]).collect()
    }

    /// Its middle in mm.
    pub fn middle_mm(&self) -> [f64; 2] {
        [in_mm(self.at), in_mm(self.across)]
    }

    /// How wide the slug is that a punch drives out; as wide as the hole where that is what is lost.
    pub fn slug_width(&self) -> Length {
        if self.lost == self.hole.area() {
            return self.hole.width();
        }
        mm(2.0 * ((self.lost / mm2(1.0)).value / PI).sqrt())
    }

    /// Whether a place lies within it.
    pub fn contains_mm(&self, place: [f64; 2]) -> bool {
        let [at, across] = self.middle_mm();
        self.hole.contains_mm([place[0] - at, place[1] - across])
    }

    /// Whether it lies wholly within an outline.
    pub(super) fn is_within(&self, outline: &[[f64; 2]]) -> bool {
        let holds = |place: &[f64; 2]| is_inside(*place, outline);
        self.points_mm(TURN_POINTS).iter().all(holds) && !outline.iter().any(|place| self.contains_mm(*place))
    }

    /// Whether it and another run into each other.
    pub(super) fn meets(&self, other: &Self) -> bool {
        let into = |one: &Self, other: &Self| one.points_mm(TURN_POINTS).iter().any(|place| other.contains_mm(*place));
        into(self, other) || into(other, self) || self.middle_mm() == other.middle_mm()
    }
}

/// Whether a place lies inside a closed way of straight sides (the even-odd rule).
fn is_inside([along, across]: [f64; 2], way: &[[f64; 2]]) -> bool {
    let next = way.iter().cycle().skip(1);
    let crossed = way.iter().zip(next).filter(|(a, b)| {
        (a[1] > across) != (b[1] > across) && along < a[0] + (across - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
    });
    crossed.count() % 2 == 1
}
