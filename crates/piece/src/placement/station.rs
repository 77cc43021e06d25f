//! The frame at a place between the frames of a center line.

use super::rotation::{between, frame_turned, turned};
use crate::Frame;
use crate::vector::{Vector, dot, length, minus, plus, times};

/// The frame at a share (0 to 1) of a line's length; none where the line has no frames.
///
/// From one frame to the next the bar is taken to run on a screw: exact for straight lines, arcs and even twists.
pub(super) fn frame_at(frames: &[Frame], share: f64) -> Option<Frame> {
    let steps: Vec<Screw> = frames.windows(2).map(|pair| Screw::new(&pair[0], &pair[1])).collect();
    let mut left = share.clamp(0.0, 1.0) * steps.iter().map(|step| step.length).sum::<f64>();
    for (index, step) in steps.iter().enumerate() {
        if left <= step.length || index + 1 == steps.len() {
            let part = if step.length > 0.0 { (left / step.length).min(1.0) } else { 0.0 };
            return frames.get(index).map(|frame| step.frame(frame, part));
        }
        left -= step.length;
    }
    frames.first().copied()
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
        let (axis, angle) = between(from, to);
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
            let (got, want) = (frame_at(&frames, share).unwrap(), on(FRAC_PI_2 * share));
            for (a, b) in [(got.at, want.at), (got.along, want.along), (got.up, want.up)] {
                assert!(length(minus(a, b)) < 1e-12, "{got:?} where {want:?} is right");
            }
        }
    }

    #[test]
    fn a_straight_line_has_its_middle_halfway() {
        let frames = [Frame::START, Frame::START.moved([80.0, 0.0, 0.0])];
        assert_eq!(frame_at(&frames, 0.5).unwrap().at, [40.0, 0.0, 0.0]);
        assert!(frame_at(&[], 0.5).is_none());
    }
}
