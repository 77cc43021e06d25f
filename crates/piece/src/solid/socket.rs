//! A flag rolled up across its width: a socket or a knuckle whose axis lies along the bar.

use super::plate::{Flag, plate};
use crate::Mesh;
use crate::fineness::Fineness;
use fh_core::metal::{HoleInPlate, Outline};
use fh_measure::in_mm;

/// A flag rolled round a mandrel, both in mm, whose axis lies over the bar, or under it where it is rolled down.
///
/// The middle of the bar stays where it is; the metal's inside lies on the mandrel, of a tapered flag half way along it.
pub(crate) fn socket(
    outline: &Outline,
    (thickness, holes): ([f64; 2], &[HoleInPlate]),
    reversed: bool,
    (mandrel, side): (f64, f64),
    fineness: &Fineness,
) -> Mesh {
    let flag = Flag::new(outline, thickness, holes, reversed, fineness);
    let reach = in_mm(outline.width()) / 2.0;
    // To the middle of the metal, at its mean thickness.
    let radius = (mandrel + (thickness[0] + thickness[1]) / 2.0) / 2.0;
    let steps = (2.0 * reach / radius / fineness.turn).ceil().clamp(1.0, 1e4);
    let cuts: Vec<f64> = (0..=steps as usize).map(|step| reach * (2.0 * step as f64 / steps - 1.0)).collect();
    // Cut along the bar instead of across it.
    let turn = |points: &Vec<[f64; 2]>| points.iter().map(|[along, toward]| [*toward, *along]).collect();
    let turned: Vec<Vec<[f64; 2]>> = flag.loops.iter().map(turn).collect();
    let mut mesh = plate(&turned, &cuts, |[_, along]| flag.half(along));
    mesh.flip();
    let up = if side.cos() < 0.0 { -1.0 } else { 1.0 };
    for point in &mut mesh.points {
        let [toward, along, out] = *point;
        let (sin, cos) = (toward / radius).sin_cos();
        let from_axis = radius - out * up;
        *point = [along, from_axis * sin, up * (radius - from_axis * cos)];
    }
    mesh
}
