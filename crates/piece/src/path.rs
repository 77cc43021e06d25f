//! The center line between its frames: the frame at any place on it, and its place nearest to a point.
//!
//! From one frame to the next the bar is taken to run on a screw: exact for straight lines, arcs and even twists.

use crate::rotation::{between as rotation_between, frame_turned, turned};
use fh_core::space::Frame;
use fh_core::space::vector::{Vector, dot, length, minus, plus, times};

/// A center line.
pub(crate) struct Path<'a> {
    frames: &'a [Frame],
    steps: Vec<Screw>,
    /// Where each step starts along the line, in mm.
    starts: Vec<f64>,
    length: f64,
}

/// The place of a line nearest to a point.
pub(crate) struct Nearest {
    /// The share of the line's length, 0 to 1.
    pub(crate) share: f64,
    /// The frame there.
    pub(crate) frame: Frame,
    /// How far the point lies beyond the line's nearer end, along it, in mm; below 0 within.
    pub(crate) beyond: f64,
    /// How far it lies ahead of that place, along the line there, in mm: about 0 unless the steps asked of end before it.
    pub(crate) ahead: f64,
}

impl<'a> Path<'a> {
    pub(crate) fn new(frames: &'a [Frame]) -> Self {
        let steps: Vec<Screw> = frames.windows(2).map(|pair| Screw::new(&pair[0], &pair[1])).collect();
        let mut length = 0.0;
        let start = |step: &Screw| {
            length += step.length;
            length - step.length
        };
        let starts = steps.iter().map(start).collect();
        Self { frames, steps, starts, length }
    }

    /// Its length in mm.
    pub(crate) fn length(&self) -> f64 {
        self.length
    }

    /// How far along the line a step begins and ends, in mm.
    pub(crate) fn span(&self, step: usize) -> Option<[f64; 2]> {
        let start = *self.starts.get(step)?;
        Some([start, start + self.steps.get(step)?.length])
    }

    /// The frame at a share (0 to 1) of its length; none where the line has no frames.
    pub(crate) fn frame_at(&self, share: f64) -> Option<Frame> {
        let mut left = share.clamp(0.0, 1.0) * self.length;
        for (index, step) in self.steps.iter().enumerate() {
            if left <= step.length || index + 1 == self.steps.len() {
                let part = if step.length > 0.0 { (left / step.length).min(1.0) } else { 0.0 };
                return self.frames.get(index).map(|frame| step.frame(frame, part));
            }
            left -= step.length;
        }
        self.frames.first().copied()
    }

    /// The steps from frame to frame that come within so far of a point.
    pub(crate) fn steps_near(&self, point: Vector, within: f64) -> Vec<usize> {
        let near = |index: &usize| self.off_chord(*index, point).is_some_and(|(off, _)| off <= within * within);
        (0..self.steps.len()).filter(near).collect()
    }

    /// How far a point lies from a step's chord, squared, and at which share of it.
    fn off_chord(&self, index: usize, point: Vector) -> Option<(f64, f64)> {
        let (from, to) = (self.frames.get(index)?, self.frames.get(index + 1)?);
        let (out, way) = (minus(point, from.at), minus(to.at, from.at));
        let square = dot(way, way);
        let part = if square > 0.0 { (dot(out, way) / square).clamp(0.0, 1.0) } else { 0.0 };
        let off = minus(out, times(way, part));
        Some((dot(off, off), part))
    }

    /// The place nearest to a point on some of its steps; none where no chord of theirs comes within so far of it.
    pub(crate) fn nearest(&self, point: Vector, steps: &[usize], within: f64) -> Option<Nearest> {
        let off = |index: &usize| self.off_chord(*index, point).map(|(off, part)| (off, *index, part));
        let (distance, index, part) = steps.iter().filter_map(off).min_by(|a, b| a.0.total_cmp(&b.0))?;
        if distance > within * within {
            return None;
        }
        let (step, start) = (self.steps.get(index)?, self.frames.get(index)?);
        // The chord is near the line; one step along the line's own direction comes to its nearest place.
        let chord = step.frame(start, part);
        let ahead = |frame: &Frame| dot(minus(point, frame.at), frame.along);
        let part = if step.length > 0.0 { (part + ahead(&chord) / step.length).clamp(0.0, 1.0) } else { part };
        let frame = step.frame(start, part);
        let place = self.starts.get(index)? + part * step.length;
        let off = ahead(&frame);
        let beyond = (-place - off).max(place + off - self.length);
        let share = if self.length > 0.0 { place / self.length } else { 0.0 };
        Some(Nearest { share, frame, beyond, ahead: off })
    }
}

/// The frame at a share of the way from one frame to the next.
pub(crate) fn between(from: &Frame, to: &Frame, share: f64) -> Frame {
    match share {
        share if share <= 0.0 => *from,
        share if share >= 1.0 => *to,
        share => Screw::new(from, to).frame(from, share),
    }
}

/// The way from one frame to the next.
struct Screw {
    axis: Vector,
    angle: f64,
    ahead: Vector,
    across: Vector,
    length: f64,
}

impl Screw {
    fn new(from: &Frame, to: &Frame) -> Self {
        let (axis, angle) = rotation_between(from, to);
        let way = minus(to.at, from.at);
        let ahead = times(axis, dot(axis, way));
        let across = minus(way, ahead);
        let half = angle / 2.0;
        let bow = if half.abs() < 1e-9 { 1.0 } else { half / half.sin() };
        let length = length(ahead).hypot(length(across) * bow);
        Self { axis, angle, ahead, across, length }
    }

    /// The frame at a share of the way.
    fn frame(&self, from: &Frame, share: f64) -> Frame {
        if self.angle == 0.0 {
            return Frame { at: plus(from.at, times(plus(self.ahead, self.across), share)), ..*from };
        }
        let half = self.angle / 2.0;
        // A chord of an arc: sin(θ t / 2) / sin(θ / 2) as long as the whole one, and turned back by half the rest.
        let chord = if half.abs() < 1e-9 { share } else { (half * share).sin() / half.sin() };
        let across = turned(times(self.across, chord), self.axis, half * (share - 1.0));
        let at = plus(from.at, plus(times(self.ahead, share), across));
        Frame { at, ..frame_turned(from, self.axis, self.angle * share) }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use std::f64::consts::FRAC_PI_2;

    #[test]
    fn a_place_on_an_arc_lies_on_the_arc() {
        let radius = 30.0;
        let on = |angle: f64| {
            let (sin, cos) = angle.sin_cos();
            Frame { at: [radius * sin, 0.0, radius * (1.0 - cos)], ..Frame::START.bent(angle, 0.0) }
        };
        let frames: Vec<Frame> = (0..=5).map(|step| on(FRAC_PI_2 * f64::from(step) / 5.0)).collect();
        for share in [0.0, 0.13, 0.5, 0.77, 1.0] {
            let (got, want) = (Path::new(&frames).frame_at(share).unwrap(), on(FRAC_PI_2 * share));
            for (a, b) in [(got.at, want.at), (got.along, want.along), (got.up, want.up)] {
                assert!(length(minus(a, b)) < 1e-12, "{got:?} where {want:?} is right");
            }
        }
    }

    #[test]
    fn a_straight_line_has_its_middle_halfway() {
        let frames = [Frame::START, Frame::START.moved([80.0, 0.0, 0.0])];
        assert_eq!(Path::new(&frames).frame_at(0.5).unwrap().at, [40.0, 0.0, 0.0]);
        assert!(Path::new(&[]).frame_at(0.5).is_none());
    }

    #[test]
    fn the_nearest_place_lies_square_under_the_point() {
        let radius = 30.0;
        let on = |angle: f64| {
            let (sin, cos) = angle.sin_cos();
            Frame { at: [radius * sin, 0.0, radius * (1.0 - cos)], ..Frame::START.bent(angle, 0.0) }
        };
        let frames: Vec<Frame> = (0..=5).map(|step| on(FRAC_PI_2 * f64::from(step) / 5.0)).collect();
        let path = Path::new(&frames);
        let near = |point| path.nearest(point, &path.steps_near(point, 10.0), 10.0).unwrap();
        let nearest = near(on(0.37 * FRAC_PI_2).place([0.0, 3.0, -4.0]));
        assert!((nearest.share - 0.37).abs() < 1e-2 && nearest.beyond < 0.0, "{}", nearest.share);
        let past = near(on(FRAC_PI_2).place([2.5, 1.0, 1.0]));
        assert!((past.beyond - 2.5).abs() < 1e-9, "{}", past.beyond);
    }
}
