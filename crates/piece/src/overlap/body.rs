//! A part as a body: its section carried along its center line.

use super::PartOf;
use super::outlines::Outlines;
use crate::path::Path;
use crate::solid::in_mm;
use crate::vector::{Vector, dot, minus};
use crate::{Bounds, Frame, Line, Piece};
use fh_core::balance::{Balance, SegmentBalance};
use fh_core::metal::{Bent, HoleSize, Shape};
use fh_core::plan::SocketAxis;
use std::collections::HashMap;

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
    /// Places along it: the share of its length, and the frame.
    stations: Vec<(f64, Frame)>,
    outlines: Outlines,
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

/// A box that surely holds a part of which no surface was made.
fn round_about(stations: &[(f64, Frame)], farthest: f64) -> Option<Bounds> {
    let about = |(_, frame): &(f64, Frame)| Bounds {
        low: frame.at.map(|place| place - farthest),
        high: frame.at.map(|place| place + farthest),
    };
    stations.iter().map(about).reduce(|all, next| all.with(&next))
}

impl<'a> Body<'a> {
    fn new(balance: &'a Balance, line: &'a Line, boxes: &HashMap<PartOf, Bounds>) -> Option<Self> {
        let part = PartOf { bar: line.bar, copy: line.copy, segment: line.segment };
        let balance = balance.bars.get(line.bar)?.segments.get(line.segment)?;
        if matches!(balance.bent, Some(Bent::Socket { axis: SocketAxis::Along, .. })) {
            return None;
        }
        let ends = [*line.frames.first()?, *line.frames.last()?];
        let outlines = Outlines::of(balance);
        let [thinnest, farthest] = outlines.least_and_most();
        let path = Path::new(&line.frames);
        let stations = stations(&path, thinnest);
        let bounds = boxes.get(&part).copied().or_else(|| round_about(&stations, farthest))?;
        Some(Self { part, balance, path, ends, farthest, stations, outlines, bounds })
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
        let mut deepest: Option<Depth> = None;
        for (share, frame) in &self.stations {
            let near = other.steps_near(frame.at, self.farthest);
            if near.is_empty() {
                continue;
            }
            for [toward, up] in self.outlines.at(*share).points {
                let point = frame.place([0.0, toward, up]);
                let depth = other.depth(point, &near).filter(|depth| *depth > 0.0);
                if let Some(depth) = depth.filter(|depth| deepest.is_none_or(|(most, _)| *depth > most)) {
                    deepest = Some((depth, point));
                }
            }
        }
        deepest
    }

    /// The steps of its line that may hold something within so far of a place.
    fn steps_near(&self, point: Vector, within: f64) -> Vec<usize> {
        let in_box = (0..3)
            .all(|axis| point[axis] > self.bounds.low[axis] - within && point[axis] < self.bounds.high[axis] + within);
        if in_box { self.path.steps_near(point, self.farthest + within) } else { Vec::new() }
    }

    /// How deep a place lies within it, in mm; below 0 where it lies outside.
    fn depth(&self, point: Vector, steps: &[usize]) -> Option<f64> {
        // A chord is a little nearer or farther than its arc.
        let nearest = self.path.nearest(point, steps, self.farthest * 1.05 + 0.5)?;
        let way = minus(point, nearest.frame.at);
        let [toward, up] = [dot(way, nearest.frame.toward), dot(way, nearest.frame.up)];
        let is_outside = nearest.beyond > 0.0 || toward.hypot(up) > self.farthest;
        if is_outside || self.is_in_hole(nearest.share, toward) {
            return None;
        }
        Some(self.outlines.at(nearest.share).depth([toward, up]).min(-nearest.beyond))
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

/// Places along a line, no farther apart than its thinnest reach.
fn stations(path: &Path<'_>, thinnest: f64) -> Vec<(f64, Frame)> {
    let steps = (path.length() / thinnest.max(1.0)).ceil().clamp(1.0, MOST_PLACES);
    let station = |step: usize| {
        let share = step as f64 / steps;
        path.frame_at(share).map(|frame| (share, frame))
    };
    (0..=steps as usize).filter_map(station).collect()
}
