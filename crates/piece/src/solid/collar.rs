//! A collar: a strip closed round a bundle.

use super::loft::ring_of;
use crate::fineness::Fineness;
use crate::{Frame, Mesh};
use fh_core::metal::{SectionSize, matched_outline};
use fh_core::space::vector::{Vector, length, minus};
use std::f64::consts::FRAC_PI_2;

/// The collar about the inside sizes of its bundle in mm, made of a strip of some length, and its line: it starts in the
/// middle of its lower side and closes upward.
///
/// Inside, its corners are sharp; outside they are as full as the strip's length leaves metal for: `q u` out at the corner
/// where the strip is u thick, with q the length left over by 8 times the distance from the inside to the centroid.
pub(crate) fn collar(
    section: &SectionSize,
    [width, height]: [f64; 2],
    strip: f64,
    fineness: &Fineness,
) -> (Mesh, Vec<Frame>) {
    let outline = section.section();
    let points = ring_of(&matched_outline(&outline, &outline, fineness.round), 0.0, 0.0).points;
    let inside = points.iter().map(|point| point[1]).fold(f64::NEG_INFINITY, f64::max);
    let fullness = ((strip - 2.0 * (width + height)) / (8.0 * inside)).max(0.05);
    let mut mesh = Mesh::default();
    let mut rings: Vec<Vec<u32>> = Vec::with_capacity(12);
    let mut frames = vec![Frame::START];
    let mut frame = Frame::START.moved([width / 2.0, 0.0, 0.0]);
    for side in [height, width, height, width] {
        let turned = Frame { at: frame.at, ..frame.bent(FRAC_PI_2, 0.0) };
        let corner = frame.place([0.0, 0.0, inside]);
        let out = |point: &[f64; 2]| inside - point[1];
        let along = |direction: Vector, point: &[f64; 2]| {
            let out = out(point);
            [0, 1, 2].map(|axis| corner[axis] + frame.toward[axis] * point[0] - direction[axis] * out)
        };
        let apex = [0, 1, 2].map(|axis| (frame.up[axis] + turned.up[axis]) * fullness);
        for direction in [frame.up, apex, turned.up] {
            let placed = points.iter().map(|point| along(direction, point));
            let ring = put(&mut mesh, placed, rings.last());
            rings.push(ring);
        }
        frames.push(frame);
        let next = Frame { at: corner, ..turned }.moved([0.0, 0.0, -inside]);
        frames.push(next);
        frame = next.moved([side, 0.0, 0.0]);
    }
    frames.push(Frame::START);
    for (index, ring) in rings.iter().enumerate() {
        let next = &rings[(index + 1) % rings.len()];
        for at in 0..ring.len() {
            let after = (at + 1) % ring.len();
            mesh.triangle(ring[at], ring[after], next[after]);
            mesh.triangle(ring[at], next[after], next[at]);
        }
    }
    (mesh, frames)
}

/// Puts a ring in the mesh; what lies where the ring before it does is the same point.
fn put(mesh: &mut Mesh, points: impl Iterator<Item = Vector>, before: Option<&Vec<u32>>) -> Vec<u32> {
    let mut ring = Vec::new();
    for (index, point) in points.enumerate() {
        let same = before.map(|before| before[index]);
        let same = same.filter(|same| length(minus(mesh.points[*same as usize], point)) < 1e-9);
        ring.push(same.unwrap_or_else(|| mesh.point(point)));
    }
    ring
}
