//! The section of a part at any place along it, measured once at even steps.

use fh_core::balance::SegmentBalance;
use fh_core::metal::Shape;
use fh_measure::in_mm;
use std::f64::consts::TAU;
use std::sync::LazyLock;

/// In how many directions a section is measured.
const DIRECTIONS: usize = 24;
/// At how many places along a part that changes.
const PLACES: usize = 9;

/// Every direction: its sine and cosine, from up by way of toward-you.
static TURNS: LazyLock<[[f64; 2]; DIRECTIONS]> =
    LazyLock::new(|| std::array::from_fn(|index| angle(index).sin_cos().into()));

fn angle(direction: usize) -> f64 {
    TAU * direction as f64 / DIRECTIONS as f64
}

/// The outlines of a part at even steps along it; only one where it is the same all along.
pub(super) struct Outlines(Vec<Outline>);

/// A section, in mm.
#[derive(Clone, Copy)]
pub(super) struct Outline {
    /// How far it reaches in every direction.
    reaches: [f64; DIRECTIONS],
    /// Places round it, toward you and up: in each direction as far as all its faces allow.
    pub(super) points: [[f64; 2]; DIRECTIONS],
}

impl Outlines {
    pub(super) fn of(balance: &SegmentBalance) -> Self {
        let is_even = matches!(balance.shape, Some(Shape::Prism { .. } | Shape::Peak { .. } | Shape::Shoulder { .. }));
        let places = if is_even { 1 } else { PLACES };
        let length = in_mm(balance.forged_length);
        let outline = |place: usize| {
            let at = length * place as f64 / (PLACES - 1) as f64;
            Outline::new(std::array::from_fn(|direction| balance.reach_mm(at, angle(direction))))
        };
        Self((0..places).map(outline).collect())
    }

    /// The outline at a share (0 to 1) of the length.
    pub(super) fn at(&self, share: f64) -> Outline {
        let place = share.clamp(0.0, 1.0) * (self.0.len().max(1) - 1) as f64;
        let first = self.0.get(place as usize).copied().unwrap_or_else(|| Outline::new([0.0; DIRECTIONS]));
        let part = place.fract();
        match self.0.get(place as usize + 1) {
            Some(second) if part > 0.0 => first.toward(second, part),
            _ => first,
        }
    }

    /// Its least reach, but for its points, and its greatest, in mm; beyond an outline's corner there is nothing.
    pub(super) fn least_and_most(&self) -> [f64; 2] {
        let reaches = || self.0.iter().flat_map(|outline| outline.reaches);
        let least = reaches().filter(|reach| *reach > 0.5).fold(f64::INFINITY, f64::min);
        let corners = self.0.iter().flat_map(|outline| outline.points.map(|[toward, up]| toward.hypot(up)));
        [least, corners.fold(0.0, f64::max)]
    }
}

impl Outline {
    fn new(reaches: [f64; DIRECTIONS]) -> Self {
        const QUARTER: usize = DIRECTIONS / 4;
        let point = |direction: usize| {
            let [sin, cos] = TURNS[direction];
            // Only faces that look the same way hold it back.
            let faces = (1..2 * QUARTER).map(|step| (direction + step + 3 * QUARTER) % DIRECTIONS);
            let far = faces.fold(f64::INFINITY, |far, face| {
                let [other_sin, other_cos] = TURNS[face];
                far.min(reaches[face] / (sin * other_sin + cos * other_cos))
            });
            [far * sin, far * cos]
        };
        Self { reaches, points: std::array::from_fn(point) }
    }

    /// The outline a part of the way to another.
    fn toward(&self, other: &Self, part: f64) -> Self {
        let mixed = |a: f64, b: f64| a * (1.0 - part) + b * part;
        Self {
            reaches: std::array::from_fn(|index| mixed(self.reaches[index], other.reaches[index])),
            points: std::array::from_fn(|index| {
                let ([a, b], [c, d]) = (self.points[index], other.points[index]);
                [mixed(a, c), mixed(b, d)]
            }),
        }
    }

    /// How deep a place, toward you and up, lies within it, in mm; below 0 outside.
    pub(super) fn depth(&self, [toward, up]: [f64; 2]) -> f64 {
        let faces = self.reaches.iter().zip(TURNS.iter());
        faces.map(|(reach, [sin, cos])| reach - toward * sin - up * cos).fold(f64::INFINITY, f64::min)
    }
}
