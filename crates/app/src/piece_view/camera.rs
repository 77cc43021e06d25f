//! From where the piece is looked at, and how large: turned, panned and zoomed by hand.

use crate::state::Standard;
use egui::{Vec2, vec2};
use fh_piece::raster::Sight;
use fh_piece::vector::{plus, times};
use std::f64::consts::{FRAC_PI_2, TAU};

/// The scales that can be reached, in points for each mm.
const SCALES: [f64; 2] = [1e-3, 1e3];
/// The room that a fitted piece leaves at each edge, as a share of the window and in points.
const MARGIN: f64 = 0.04;
const LEAST_MARGIN: f64 = 14.0;

/// Where the piece is looked at from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Camera {
    /// How far round and how far up it is looked from, in radians.
    angles: [f64; 2],
    /// The place in the middle of the window, in mm.
    center: [f64; 3],
    points_per_mm: f64,
    /// Whether the piece is kept whole in the window, until the hand wants otherwise.
    fits: bool,
}

impl Default for Camera {
    fn default() -> Self {
        Self { angles: Standard::Turned.angles(), center: [0.0; 3], points_per_mm: 1.0, fits: true }
    }
}

impl Camera {
    /// Looks from a named side, and shows the whole piece.
    pub(super) fn look_from(&mut self, standard: Standard) {
        self.angles = standard.angles();
        self.fits = true;
    }

    /// Shows the whole piece.
    pub(super) fn fit(&mut self) {
        self.fits = true;
    }

    /// Whether the piece is kept whole in the window.
    pub(super) fn fits(&self) -> bool {
        self.fits
    }

    /// The named view that this is.
    pub(super) fn standard(&self) -> Option<Standard> {
        let close = |a: [f64; 2]| (a[0] - self.angles[0]).abs() < 1e-6 && (a[1] - self.angles[1]).abs() < 1e-6;
        Standard::ALL.into_iter().find(|standard| close(standard.angles()))
    }

    /// How many points on the screen a millimetre takes.
    pub(super) fn points_per_mm(&self) -> f64 {
        self.points_per_mm
    }

    /// What is seen, in points.
    pub(super) fn sight(&self) -> Sight {
        let [(s, c), (t, d)] = self.angles.map(f64::sin_cos);
        Sight {
            right: [c, s, 0.0],
            up: [-s * t, c * t, d],
            toward: [s * d, -c * d, t],
            center: self.center,
            pixels_per_mm: self.points_per_mm,
        }
    }

    /// Brings all of these places into a window of so many points.
    pub(super) fn show_all(&mut self, places: impl Iterator<Item = [f64; 3]>, window: Vec2) {
        let sight = Sight { center: [0.0; 3], pixels_per_mm: 1.0, ..self.sight() };
        let mut reach = [[f64::INFINITY, f64::NEG_INFINITY]; 3];
        for seen in places.map(|place| sight.seen(place)) {
            for (reach, at) in reach.iter_mut().zip(seen) {
                *reach = [reach[0].min(at), reach[1].max(at)];
            }
        }
        if !reach.iter().flatten().all(|at| at.is_finite()) {
            return;
        }
        self.center = sight.place(reach.map(|[least, most]| f64::midpoint(least, most)));
        let scale = |axis: usize, points: f32| {
            let room = f64::from(points) - 2.0 * (f64::from(points) * MARGIN).max(LEAST_MARGIN);
            room.max(1.0) / (reach[axis][1] - reach[axis][0]).max(1e-3)
        };
        self.points_per_mm = scale(0, window.x).min(scale(1, window.y)).clamp(SCALES[0], SCALES[1]);
    }

    /// Turns by angles in radians: round, and up.
    pub(super) fn turn(&mut self, [round, up]: [f64; 2]) {
        self.angles[0] = (self.angles[0] + round + TAU / 2.0).rem_euclid(TAU) - TAU / 2.0;
        self.angles[1] = (self.angles[1] + up).clamp(-FRAC_PI_2, FRAC_PI_2);
    }

    /// Moves the piece by so many points.
    pub(super) fn pan(&mut self, by: Vec2) {
        if by != Vec2::ZERO {
            let sight = self.sight();
            self.center = sight.place([f64::from(-by.x), f64::from(-by.y), 0.0]);
            self.fits = false;
        }
    }

    /// Enlarges so many times about a place so many points from the window's middle.
    pub(super) fn zoom_about(&mut self, factor: f64, from_middle: Vec2) {
        let wanted = (self.points_per_mm * factor).clamp(SCALES[0], SCALES[1]);
        let factor = wanted / self.points_per_mm;
        if !factor.is_finite() || (factor - 1.0).abs() < 1e-9 {
            return;
        }
        let sight = self.sight();
        let offset = from_middle * (1.0 - 1.0 / factor as f32);
        self.center = sight.place([f64::from(offset.x), f64::from(offset.y), 0.0]);
        self.points_per_mm = wanted;
        self.fits = false;
    }

    /// The scale at which the piece is drawn, and how far it moves on the screen with a step in space: for those who drag.
    pub(super) fn moved(&self, by: [f64; 3]) -> Vec2 {
        let sight = self.sight();
        let [x, y, _] = sight.seen(plus(self.center, by));
        vec2(x as f32, y as f32)
    }

    /// So many points to the right and down, as a step in space.
    pub(super) fn step(&self, by: Vec2) -> [f64; 3] {
        let sight = self.sight();
        plus(
            times(sight.right, f64::from(by.x) / self.points_per_mm),
            times(sight.up, f64::from(-by.y) / self.points_per_mm),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn box_of(sides: [f64; 3]) -> impl Iterator<Item = [f64; 3]> {
        (0..8).map(move |at| std::array::from_fn(|axis| if (at >> axis) & 1 == 0 { 0.0 } else { sides[axis] }))
    }

    #[test]
    fn the_front_shows_what_the_strips_show_from_the_side() {
        let mut camera = Camera::default();
        camera.look_from(Standard::Front);
        let sight = camera.sight();
        assert!(sight.right[0] > 0.999 && sight.up[2] > 0.999 && sight.toward[1] < -0.999);
        camera.look_from(Standard::Top);
        assert!(camera.sight().right[0] > 0.999 && camera.sight().up[1] > 0.999);
        assert_eq!(camera.standard(), Some(Standard::Top));
    }

    #[test]
    fn a_fitted_piece_lies_in_the_window() {
        let mut camera = Camera::default();
        for standard in Standard::ALL {
            camera.look_from(standard);
            camera.show_all(box_of([300.0, 12.0, 90.0]), vec2(800.0, 200.0));
            for place in box_of([300.0, 12.0, 90.0]) {
                let [x, y, _] = camera.sight().seen(place);
                assert!(x.abs() < 400.0 && y.abs() < 100.0, "{standard:?}: {x} {y}");
            }
        }
    }

    #[test]
    fn zooming_keeps_what_lies_under_the_pointer() {
        let mut camera = Camera::default();
        camera.show_all(box_of([300.0, 12.0, 90.0]), vec2(800.0, 200.0));
        let before = camera.sight().place([120.0, -40.0, 0.0]);
        camera.zoom_about(1.7, vec2(120.0, -40.0));
        let [x, y, _] = camera.sight().seen(before);
        assert!((x - 120.0).abs() < 1e-3 && (y + 40.0).abs() < 1e-3);
        assert!(!camera.fits());
    }

    #[test]
    fn panning_moves_the_piece_with_the_hand() {
        let mut camera = Camera::default();
        let place = [5.0, 6.0, 7.0];
        let before = camera.sight().seen(place);
        camera.pan(vec2(30.0, -8.0));
        let after = camera.sight().seen(place);
        assert!((after[0] - before[0] - 30.0).abs() < 1e-6 && (after[1] - before[1] + 8.0).abs() < 1e-6);
    }

    #[test]
    fn it_turns_all_the_way_round_but_not_over_the_top() {
        let mut camera = Camera::default();
        camera.turn([100.0, 100.0]);
        assert!(camera.angles[0].abs() <= TAU / 2.0 && camera.angles[1] <= FRAC_PI_2);
    }
}
