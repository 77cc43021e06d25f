//! A ball.

use super::loft::{Ring, loft};
use super::taper::merged;
use crate::Mesh;
use crate::fineness::Fineness;
use fh_core::space::Way;
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// A ball of a diameter in mm, its first point at the start.
///
/// It is cut in rings; across the bar they stand out as far as keeps its volume.
pub(super) fn ball(diameter: f64, way: &Way, fineness: &Fineness) -> Mesh {
    let radius = diameter / 2.0;
    let round = fineness.round;
    let lines: Vec<f64> =
        (0..=round / 2).map(|line| radius * (1.0 - (TAU * line as f64 / round as f64).cos())).collect();
    let places = merged(lines.into_iter().chain(fineness.stations_mm(way)).collect(), diameter);
    let reach = |at: f64| (at * (diameter - at)).max(0.0).sqrt();
    let enclosed: f64 = places
        .windows(2)
        .map(|pair| {
            let (a, b) = (reach(pair[0]), reach(pair[1]));
            (pair[1] - pair[0]) * (a * a + a * b + b * b) / 3.0
        })
        .sum();
    // A ring of n points holds n/2 sin(2π/n) r²; the rings a sum of frustums.
    let ring_area = round as f64 / 2.0 * (TAU / round as f64).sin();
    let swell = (PI / 6.0 * diameter.powi(3) / (enclosed * ring_area)).sqrt();
    let ring = |at: &f64| {
        let reach = reach(*at) * swell;
        let point = |step: usize| {
            let (sin, cos) = (TAU * step as f64 / round as f64 - FRAC_PI_2).sin_cos();
            [reach * cos, reach * sin]
        };
        Ring { at: *at, points: (0..round).map(point).collect() }
    };
    loft(&places.iter().map(ring).collect::<Vec<_>>(), way.twist_radians != 0.0)
}
