//! Where a bend lies in space: its center, and where its handles stand.

use fh_piece::raster::Sight;
use fh_piece::vector::{cross, direction, dot, minus, plus, times};
use fh_piece::{Frame, Line};

/// How far the plane of a bend may be turned from who looks before its angle can no longer be seen: as a cosine.
const EDGE_ON: f64 = 0.15;

/// A bend in space.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Arc {
    pub(super) middle: Frame,
    pub(super) end: Frame,
    center: [f64; 3],
    /// From the center to its start, along the bar there, and across the plane of the bend.
    axes: [[f64; 3]; 3],
}

impl Arc {
    /// The bend of a center line whose mean radius is so many mm; none where the line is straight.
    pub(super) fn of(line: &Line, radius_mm: f64) -> Option<Self> {
        let (start, end) = (line.frames.first()?, *line.frames.last()?);
        let middle = *line.frames.get(line.frames.len() / 2)?;
        let aside = |frame: &Frame| {
            let way = minus(frame.at, start.at);
            minus(way, times(start.along, dot(way, start.along)))
        };
        let farthest = line.frames.iter().map(aside).max_by(|a, b| dot(*a, *a).total_cmp(&dot(*b, *b)))?;
        let inward = direction(farthest)?;
        let center = plus(start.at, times(inward, radius_mm));
        let outward = times(inward, -1.0);
        Some(Self { middle, end, center, axes: [outward, start.along, cross(outward, start.along)] })
    }

    /// Away from the center at a place of the bend.
    pub(super) fn outward_at(&self, frame: &Frame) -> [f64; 3] {
        direction(minus(frame.at, self.center)).unwrap_or(self.axes[0])
    }

    /// How far round from the start a place in the picture lies, in radians; none where the bend is seen edge-on.
    pub(super) fn angle_at(&self, sight: &Sight, [x, y]: [f64; 2]) -> Option<f64> {
        let across = dot(self.axes[2], sight.toward);
        if across.abs() < EDGE_ON {
            return None;
        }
        let on_picture = minus(sight.place([x, y, 0.0]), self.center);
        let depth = -dot(on_picture, self.axes[2]) / across;
        let from = plus(on_picture, times(sight.toward, depth));
        Some(dot(from, self.axes[1]).atan2(dot(from, self.axes[0])))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use std::f64::consts::FRAC_PI_2;

    /// A bend upward through a right angle, with a radius of 20 mm.
    pub(super) fn right_angle() -> Line {
        let frame = |step: i32| {
            let (sine, cosine) = (FRAC_PI_2 * f64::from(step) / 8.0).sin_cos();
            Frame {
                at: [20.0 * sine, 0.0, 20.0 * (1.0 - cosine)],
                along: [cosine, 0.0, sine],
                up: [-sine, 0.0, cosine],
                ..Frame::START
            }
        };
        let shares = (0..=8).map(|step| f64::from(step) / 8.0).collect();
        Line { bar: 0, copy: 0, segment: 0, frames: (0..=8).map(frame).collect(), shares }
    }

    const FRONT: Sight = Sight {
        right: [1.0, 0.0, 0.0],
        up: [0.0, 0.0, 1.0],
        toward: [0.0, -1.0, 0.0],
        center: [0.0; 3],
        pixels_per_mm: 2.0,
    };

    #[test]
    fn the_pointer_tells_how_far_round_it_is() {
        let arc = Arc::of(&right_angle(), 20.0).unwrap();
        let [x, y, _] = FRONT.seen(arc.end.at);
        assert!((arc.angle_at(&FRONT, [x, y]).unwrap() - FRAC_PI_2).abs() < 1e-9);
        let [x, y, _] = FRONT.seen(arc.middle.at);
        assert!((arc.angle_at(&FRONT, [x, y]).unwrap() - FRAC_PI_2 / 2.0).abs() < 1e-9);
    }

    #[test]
    fn edge_on_no_angle_can_be_seen() {
        let arc = Arc::of(&right_angle(), 20.0).unwrap();
        let above = Sight { up: [0.0, 1.0, 0.0], toward: [0.0, 0.0, 1.0], ..FRONT };
        assert_eq!(arc.angle_at(&above, [3.0, 4.0]), None);
    }

    #[test]
    fn a_straight_line_has_no_bend() {
        let mut line = right_angle();
        line.frames.iter_mut().for_each(|frame| frame.at = [frame.at[0], 0.0, 0.0]);
        assert_eq!(Arc::of(&line, 20.0), None);
    }
}
