//! A part as a body: its section carried along its center line.

use super::PartOf;
use crate::path::Path;
use crate::solid::in_mm;
use crate::vector::{Vector, dot, minus};
use crate::{Bounds, Frame, Line, Piece};
use fh_core::balance::{Balance, SegmentBalance};
use fh_core::metal::{Bent, HoleSize, Shape};
use fh_core::plan::SocketAxis;
use std::collections::HashMap;
use std::f64::consts::TAU;

/// In how many directions a section is measured.
const DIRECTIONS: usize = 24;
/// The most places along a part that are looked at.
const MOST_PLACES: f64 = 200.0;

/// A part of the piece.
pub(super) struct Body<'a> {
    pub(super) part: PartOf,
    balance: &'a SegmentBalance,
    path: Path<'a>,
    /// The frames at its ends.
    ends: [Frame; 2],
    /// From its center line to its farthest surface, in mm.
    farthest: f64,
    /// The same where it is least far.
    thinnest: f64,
    bounds: Bounds,
}

/// How deep a place lies, and where.
type Depth = (f64, Vector);

/// The parts of a piece; a socket is left out, for it is made to have something in it.
pub(super) fn bodies<'a>(balance: &'a Balance, piece: &'a Piece) -> Vec<Body<'a>> {
    let mut boxes: HashMap<PartOf, Bounds> = HashMap::new();
    for solid in &piece.solids {
        let part = PartOf { bar: solid.bar, copy: solid.copy, segment: solid.segment };
        if let Some(bounds) = solid.mesh.bounds() {
            boxes.entry(part).and_modify(|all| *all = all.with(&bounds)).or_insert(bounds);
        }
    }
    piece.lines.iter().filter_map(|line| Body::new(balance, line, &boxes)).collect()
}

impl<'a> Body<'a> {
    fn new(balance: &'a Balance, line: &'a Line, boxes: &HashMap<PartOf, Bounds>) -> Option<Self> {
        let part = PartOf { bar: line.bar, copy: line.copy, segment: line.segment };
        let balance = balance.bars.get(line.bar)?.segments.get(line.segment)?;
        if matches!(balance.bent, Some(Bent::Socket { axis: SocketAxis::Along, .. })) {
            return None;
        }
        let ends = [*line.frames.first()?, *line.frames.last()?];
        let length = in_mm(balance.forged_length);
        let (mut farthest, mut thinnest) = (0.0_f64, f64::INFINITY);
        for share in [0.0, 0.25, 0.5, 0.75, 1.0] {
            for direction in 0..DIRECTIONS {
                let reach = balance.reach_mm(share * length, angle(direction));
                farthest = farthest.max(reach);
                thinnest = if reach > 0.5 { thinnest.min(reach) } else { thinnest };
            }
        }
        let path = Path::new(&line.frames);
        Some(Self { part, balance, path, ends, farthest, thinnest, bounds: *boxes.get(&part)? })
    }

    /// Whether the boxes of two parts meet.
    pub(super) fn is_near(&self, other: &Self) -> bool {
        (0..3).all(|axis| {
            self.bounds.low[axis] < other.bounds.high[axis] && other.bounds.low[axis] < self.bounds.high[axis]
        })
    }

    /// Whether an end of the one lies at an end of the other, so that the one goes on into the other.
    pub(super) fn meets(&self, other: &Self) -> bool {
        let room = self.farthest + other.farthest;
        let ends = self.ends.iter().flat_map(|end| other.ends.iter().map(move |other| minus(end.at, other.at)));
        ends.into_iter().any(|way| dot(way, way) <= room * room)
    }

    /// The place on its surface that lies deepest in another part.
    pub(super) fn deepest_in(&self, other: &Self) -> Option<Depth> {
        let steps = (self.path.length() / (self.thinnest / 2.0).max(0.5)).ceil().clamp(1.0, MOST_PLACES);
        let mut deepest: Option<Depth> = None;
        for step in 0..=steps as usize {
            let share = step as f64 / steps;
            let frame = self.path.frame_at(share)?;
            if !other.may_hold(frame.at, self.farthest) {
                continue;
            }
            for point in self.surface(share, &frame) {
                let depth = other.depth(point).filter(|depth| *depth > 0.0);
                if let Some(depth) = depth.filter(|depth| deepest.is_none_or(|(most, _)| *depth > most)) {
                    deepest = Some((depth, point));
                }
            }
        }
        deepest
    }

    /// Whether a place may lie within so far of its surface.
    fn may_hold(&self, point: Vector, within: f64) -> bool {
        let in_box = (0..3)
            .all(|axis| point[axis] > self.bounds.low[axis] - within && point[axis] < self.bounds.high[axis] + within);
        let is_near = || {
            self.path.nearest(point).is_some_and(|nearest| {
                let way = minus(point, nearest.frame.at);
                dot(way, way) <= (self.farthest + within).powi(2)
            })
        };
        in_box && is_near()
    }

    /// The reach of its section in every direction, at a share of its length.
    fn reaches(&self, share: f64) -> [f64; DIRECTIONS] {
        let at = share * in_mm(self.balance.forged_length);
        std::array::from_fn(|direction| self.balance.reach_mm(at, angle(direction)))
    }

    /// Places round its surface: in each direction as far as all its faces allow.
    fn surface(&self, share: f64, frame: &Frame) -> impl Iterator<Item = Vector> + use<> {
        let (reaches, frame) = (self.reaches(share), *frame);
        (0..DIRECTIONS).map(move |direction| {
            let faces = reaches.iter().enumerate().filter_map(|(face, reach)| {
                let cos = (angle(direction) - angle(face)).cos();
                (cos > 1e-9).then(|| reach / cos)
            });
            let far = faces.fold(f64::INFINITY, f64::min);
            let (sin, cos) = angle(direction).sin_cos();
            frame.place([0.0, far * sin, far * cos])
        })
    }

    /// How deep a place lies within it, in mm; below 0 where it lies outside.
    fn depth(&self, point: Vector) -> Option<f64> {
        let nearest = self.path.nearest(point)?;
        let way = minus(point, nearest.frame.at);
        let [toward, up] = [dot(way, nearest.frame.toward), dot(way, nearest.frame.up)];
        if -nearest.beyond < 0.0 || self.is_in_hole(nearest.share, toward) {
            return None;
        }
        let faces = self.reaches(nearest.share).into_iter().enumerate().map(|(direction, reach)| {
            let (sin, cos) = angle(direction).sin_cos();
            reach - toward * sin - up * cos
        });
        Some(faces.fold(-nearest.beyond, f64::min))
    }

    /// Whether a place of a boss lies over its hole.
    fn is_in_hole(&self, share: f64, toward: f64) -> bool {
        let Some(Shape::Hole { hole, at, .. }) = &self.balance.shape else { return false };
        let length = in_mm(self.balance.forged_length);
        let middle = if self.balance.reversed { length - in_mm(*at) } else { in_mm(*at) };
        let [along, across] =
            [(share * length - middle) / (in_mm(hole.length()) / 2.0), toward / (in_mm(hole.width()) / 2.0)];
        match hole {
            HoleSize::Square { .. } => along.abs().max(across.abs()) < 1.0,
            HoleSize::Round { .. } | HoleSize::Slot { .. } => along.hypot(across) < 1.0,
        }
    }
}

/// The side of a direction, in radians from up by way of toward-you.
fn angle(direction: usize) -> f64 {
    TAU * direction as f64 / DIRECTIONS as f64
}
