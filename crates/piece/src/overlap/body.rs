//! A part as a body: its section carried along its center line.

use super::outlines::Outlines;
use super::part::PartOf;
use crate::path::{Nearest, Path};
use crate::{Bounds, Frame, Line, Piece};
use fh_core::balance::{Balance, SegmentBalance};
use fh_core::metal::{Bent, HoleSize, Shape};
use fh_core::plan::SocketAxis;
use fh_core::space::vector::{Vector, dot, minus};
use fh_measure::in_mm;
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
    /// From its center line to its nearest surface, its points left out, in mm.
    thinnest: f64,
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
        Some(Self { part, balance, path, ends, thinnest, farthest, stations, outlines, bounds })
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

    /// The place on its surface that lies deepest in a part of the same bar, or in itself, with what lies between them along
    /// the bar told apart: `apart_mm` from the start of this part to that of the other. Places that follow each other along
    /// the bar are one piece of metal and are left out.
    pub(super) fn deepest_along(&self, other: &Self, apart_mm: f64) -> Option<Depth> {
        /// So many thicknesses along the bar are no neighbor.
        const FAR: f64 = 1.5;
        /// So many times closer the deepest place is looked at.
        const CLOSER: f64 = 8.0;
        let far = FAR * (self.thinnest + other.thinnest);
        let at = |share: f64, frame: &Frame| self.deepest_at((share, frame), other, apart_mm, far);
        let coarse = self.stations.iter().filter_map(|(share, frame)| Some((*share, at(*share, frame)?)));
        let mut deepest = coarse.max_by(|a, b| a.1.0.total_cmp(&b.1.0))?;
        let mut step = 1.0 / self.stations.len().max(2) as f64;
        // Looked at more closely on both sides of the deepest place, and of that again.
        for _ in 0..2 {
            step /= CLOSER;
            let (middle, steps) = (deepest.0, -(CLOSER as i32)..=CLOSER as i32);
            let closer = steps.map(|count| (middle + f64::from(count) * step).clamp(0.0, 1.0));
            let found = closer.filter_map(|share| Some((share, at(share, &self.path.frame_at(share)?)?)));
            deepest = found.chain([deepest]).max_by(|a, b| a.1.0.total_cmp(&b.1.0))?;
        }
        Some(deepest.1)
    }

    /// The place of its surface or its middle line, at one place along it, that lies deepest in another part.
    fn deepest_at(&self, (share, frame): (f64, &Frame), other: &Self, apart_mm: f64, far: f64) -> Option<Depth> {
        let here = share * self.path.length() - apart_mm;
        let is_far =
            |step: &usize| other.path.span(*step).is_some_and(|[start, end]| start - here > far || here - end > far);
        let near: Vec<usize> = other.steps_near(frame.at, self.farthest).into_iter().filter(is_far).collect();
        // Where the one lies just in the other, no place on its surface is deep: its middle is.
        let places = self.outlines.at(share).points.into_iter().chain([[0.0, 0.0]]);
        let points = places.map(|[toward, up]| frame.place([0.0, toward, up]));
        let depth = |point: Vector| {
            let depths = near.iter().filter_map(|step| other.depth_square_to(point, *step));
            (depths.fold(0.0, f64::max), point)
        };
        points.map(depth).max_by(|a, b| a.0.total_cmp(&b.0)).filter(|(depth, _)| *depth > 0.0)
    }

    /// How deep a place lies within one step of its line, where it lies square to that.
    fn depth_square_to(&self, point: Vector, step: usize) -> Option<f64> {
        let nearest = self.nearest(point, &[step])?;
        (nearest.ahead.abs() < self.thinnest.min(1.0)).then(|| self.depth_at(&nearest, point)).flatten()
    }

    /// Whether it is a split, whose metal is in its branches.
    pub(super) fn is_split(&self) -> bool {
        matches!(self.balance.shape, Some(Shape::Split(_)))
    }

    /// The steps of its line that may hold something within so far of a place.
    fn steps_near(&self, point: Vector, within: f64) -> Vec<usize> {
        let in_box = (0..3)
            .all(|axis| point[axis] > self.bounds.low[axis] - within && point[axis] < self.bounds.high[axis] + within);
        if in_box { self.path.steps_near(point, self.farthest + within) } else { Vec::new() }
    }

    /// The place of some steps of its line nearest to a point; none where it lies out of reach.
    fn nearest(&self, point: Vector, steps: &[usize]) -> Option<Nearest> {
        // A chord is a little nearer or farther than its arc.
        self.path.nearest(point, steps, self.farthest * 1.05 + 0.5)
    }

    /// How deep a place lies within it, in mm; below 0 where it lies outside.
    fn depth(&self, point: Vector, steps: &[usize]) -> Option<f64> {
        self.depth_at(&self.nearest(point, steps)?, point)
    }

    /// How deep a place lies within it, in mm, seen from the place of its line nearest to that.
    fn depth_at(&self, nearest: &Nearest, point: Vector) -> Option<f64> {
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
        let length = in_mm(self.balance.forged_length);
        let holes = self.balance.shape.as_ref().map_or(&[][..], Shape::plate_holes);
        if !holes.is_empty() {
            let along = length * if self.balance.reversed { 1.0 - share } else { share };
            return holes.iter().any(|hole| hole.contains_mm([along, -toward]));
        }
        let Some(Shape::Hole { hole, at, .. }) = &self.balance.shape else { return false };
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
