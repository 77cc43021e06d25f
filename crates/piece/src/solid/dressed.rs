//! Bars with lengths that are dressed in a die: each section is pressed as its die presses it.
//!
//! The metal that goes along the bar is in its length already, so the solid holds the volume of the balance. Where the bar is bent
//! each section stands with its own middle on the center line, as the bend keeps metal only so; the face across from the die then
//! steps by as much as the die moves that middle, some tenths of a millimetre.

use super::loft::{Ring, centroid, loft};
use super::taper::{cut_edges, merged, stations};
use crate::Mesh;
use crate::fineness::Fineness;
use fh_core::metal::{Die, Dressing, Shape, dressed_outline, ring_at};
use fh_core::space::Way;
use fh_measure::in_mm;

/// A wall at the end of a dressed length takes this share of the part's length.
const WALL: f64 = 2e-6;
/// An arc is cut into so many times more steps than elsewhere.
const ROUND: usize = 4;
/// Along a taper a dressed length is cut into so many pieces.
const PIECES: usize = 12;
/// A groove across is cut into so many steps for a full turn of the fuller at least.
const LEAST_STEPS: usize = 16;

/// The surface of a dressed bar while it is straight: its way is taken only to know where it must be cut.
pub(super) fn dressed(
    shape: &Shape,
    reversed: bool,
    (way, dressings): (&Way, &[Dressing]),
    fineness: &Fineness,
) -> Mesh {
    // A die cuts an arc in two or three: it is cut finer than on a part that is left as it is.
    let round = ROUND * fineness.round;
    let Some(outline) = dressed_outline(shape, reversed, dressings, [round, round / 2]) else {
        return Mesh::default();
    };
    let outline = if way.twist_radians == 0.0 { outline } else { cut_edges(&outline, fineness.round / 2) };
    // A bend keeps metal where the middle of its sections is on its line; a twist turns it about that line as it is.
    let is_bent = !way.is_straight() && way.twist_radians == 0.0;
    let rings: Vec<Ring> = places(shape, reversed, (way, dressings), fineness)
        .into_iter()
        .map(|at| {
            let mut points = ring_at(&outline, shape, reversed, at);
            for dressing in dressings {
                dressing.press(&mut points, at);
            }
            if is_bent {
                let [toward, up] = centroid(&points);
                points.iter_mut().for_each(|point| *point = [point[0] - toward, point[1] - up]);
            }
            Ring { at, points }
        })
        .collect();
    loft(&rings, way.twist_radians != 0.0)
}

/// Where it is cut: as finely as its way and its run-out need, on both sides of each die's end, and along grooves across.
fn places(shape: &Shape, reversed: bool, (way, dressings): (&Way, &[Dressing]), fineness: &Fineness) -> Vec<f64> {
    let long = way.length_mm;
    let mut all = match shape {
        Shape::Taper { runout, .. } => stations(*runout, reversed, way, fineness),
        _ => fineness.stations_mm(way),
    };
    let wall = long * WALL;
    for dressing in dressings {
        let (start, end) = (in_mm(dressing.start), in_mm(dressing.end));
        all.extend([start - wall, start + wall, end - wall, end + wall]);
        if let Shape::Taper { .. } = shape {
            all.extend((1..PIECES).map(|piece| start + (end - start) * piece as f64 / PIECES as f64));
        }
        if let Die::FullerAcross { .. } = dressing.die {
            let steps = fineness.round.max(LEAST_STEPS);
            let (middle, half) = (f64::midpoint(start, end), (end - start) / 2.0);
            let turn = |step: usize| (std::f64::consts::PI * step as f64 / steps as f64).cos();
            all.extend((1..steps).map(|step| middle + half * turn(step)));
        }
    }
    all.retain(|at| (0.0..=long).contains(at));
    merged(all, long)
}
