//! One segment as it lies in the plane of a template: its middle line and both faces.

use super::space::Plane;
use fh_core::balance::SegmentBalance;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::SocketAxis;
use fh_piece::vector::{Vector, dot, length, minus};
use fh_piece::{Frame, Line};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// The farthest that two samples of a straight segment stand apart.
const STEP_MM: f64 = 3.0;
/// A straight segment is not cut finer than this.
const MOST_STEPS: f64 = 200.0;

/// One place along a segment on paper, to the right and up in mm.
#[derive(Clone, Copy, Debug)]
pub(in crate::sheets) struct Sample {
    /// The middle line.
    pub(in crate::sheets) middle: [f64; 2],
    /// Its direction, of length 1.
    pub(in crate::sheets) ahead: [f64; 2],
    /// From the middle line to the face on its left, in mm.
    pub(in crate::sheets) left: f64,
    /// To the face on its right, in mm.
    pub(in crate::sheets) right: f64,
}

impl Sample {
    /// The direction to the left.
    pub(super) fn leftward(&self) -> [f64; 2] {
        [-self.ahead[1], self.ahead[0]]
    }

    /// A place so far to the left of the middle line.
    pub(in crate::sheets) fn aside(&self, mm: f64) -> [f64; 2] {
        let [x, y] = self.leftward();
        [self.middle[0] + x * mm, self.middle[1] + y * mm]
    }
}

/// The samples of a segment in a plane, from its datum side.
pub(in crate::sheets) fn samples(line: &Line, balance: &SegmentBalance, shape: &Shape, plane: &Plane) -> Vec<Sample> {
    let frames = refined(&line.frames);
    let mut run = 0.0;
    let mut along = Vec::with_capacity(frames.len());
    for (index, frame) in frames.iter().enumerate() {
        let before = frames.get(index.wrapping_sub(1)).unwrap_or(frame);
        run += distance(before.at, frame.at);
        along.push(run);
    }
    let whole = run.max(1e-9);
    let sample = |(frame, run): (&Frame, &f64)| {
        let share = if balance.reversed { 1.0 - run / whole } else { run / whole };
        let [x, y] = plane.direction(frame.along);
        let long = x.hypot(y).max(1e-9);
        let ahead = [x / long, y / long];
        let leftward = plane.lifted([-ahead[1], ahead[0]]);
        let swell = balance.swell.max(0.0).sqrt();
        let depth = |direction: Vector| depth(shape, balance.bent.as_ref(), share, side_of(frame, direction)) * swell;
        Sample { middle: plane.place(frame.at), ahead, left: depth(leftward), right: depth(leftward.map(|part| -part)) }
    };
    frames.iter().zip(&along).map(sample).collect()
}

/// Straight stretches with more places between their ends.
fn refined(frames: &[Frame]) -> Vec<Frame> {
    let mut all: Vec<Frame> = Vec::with_capacity(frames.len());
    for pair in frames.windows(2) {
        let [from, to] = [pair[0], pair[1]];
        let straight = dot(from.along, to.along) > 1.0 - 1e-9;
        let steps =
            if straight { (distance(from.at, to.at) / STEP_MM).ceil().clamp(1.0, MOST_STEPS) as usize } else { 1 };
        for step in 0..steps {
            let share = step as f64 / steps as f64;
            all.push(Frame { at: [0, 1, 2].map(|axis| from.at[axis] + (to.at[axis] - from.at[axis]) * share), ..from });
        }
    }
    all.extend(frames.last());
    all
}

/// The side of the section that a direction points to, in radians from up by way of toward-you.
fn side_of(frame: &Frame, direction: Vector) -> f64 {
    dot(direction, frame.toward).atan2(dot(direction, frame.up))
}

/// From the middle line to the face on a side, at a share of the segment's length, in mm.
fn depth(shape: &Shape, bent: Option<&Bent>, share: f64, side: f64) -> f64 {
    let (start, end) = shape.inside_to_centroid(side);
    let even = start + (end - start) * shape.runout().share_at(share.clamp(0.0, 1.0));
    match (shape, bent) {
        (Shape::Ball { diameter }, _) => {
            let radius = in_mm(*diameter) / 2.0;
            let from_middle = radius * (2.0 * share - 1.0);
            (radius * radius - from_middle * from_middle).max(0.0).sqrt()
        }
        // Rolled up, its tube lies on one side of the bar's middle.
        (Shape::Flag { root, .. }, Some(Bent::Socket { mandrel, axis: SocketAxis::Along, side: rolled, .. })) => {
            let (mandrel, thick) = (in_mm(*mandrel), in_mm(*root));
            (mandrel / 2.0 + thick) + (mandrel + thick) / 2.0 * (side - rolled).cos()
        }
        // Seen on its width.
        (Shape::Flag { outline, .. } | Shape::Hole { outline, .. }, _) if side.sin().abs() > 0.7 => {
            let away = if side.sin() > 0.0 { -1.0 } else { 1.0 };
            outline_reach(&outline.points_mm(), share * in_mm(outline.length()), away)
        }
        _ => even,
    }
}

/// How far an outline reaches to one side of its middle line, at a place along it, in mm.
fn outline_reach(points: &[[f64; 2]], along: f64, away: f64) -> f64 {
    let edges = points.iter().zip(points.iter().cycle().skip(1));
    let crossing = |(a, b): (&[f64; 2], &[f64; 2])| {
        let (low, high) = (a[0].min(b[0]) - 1e-6, a[0].max(b[0]) + 1e-6);
        if along < low || along > high {
            return None;
        }
        let share = if (b[0] - a[0]).abs() < 1e-9 { 0.5 } else { ((along - a[0]) / (b[0] - a[0])).clamp(0.0, 1.0) };
        Some((a[1] + (b[1] - a[1]) * share) * away)
    };
    edges.filter_map(crossing).fold(0.0, f64::max)
}

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

/// The outside apex of a sharp corner, on paper; none for other segments.
pub(in crate::sheets) fn apex(samples: &[Sample], balance: &SegmentBalance) -> Option<[f64; 2]> {
    let (Some(Bent::Corner { .. }), [first, .., last]) = (balance.bent, samples) else { return None };
    let outside = if turning(samples) > 0.0 {
        |sample: &Sample| sample.aside(-sample.right)
    } else {
        |sample: &Sample| sample.aside(sample.left)
    };
    meeting((outside(first), first.ahead), (outside(last), last.ahead))
}

/// How far the line turns to the left, in radians, within half a turn.
pub(in crate::sheets) fn turning(samples: &[Sample]) -> f64 {
    let turn = |pair: &[Sample]| {
        let (a, b) = (pair[0].ahead, pair[1].ahead);
        (a[0] * b[1] - a[1] * b[0]).atan2(a[0] * b[0] + a[1] * b[1])
    };
    samples.windows(2).map(turn).sum()
}

/// The center of the circle that the inside face of a bent segment lies on; none where it is straight.
pub(super) fn inside_center(samples: &[Sample], inside_radius: f64) -> Option<[f64; 2]> {
    let first = samples.first()?;
    let turn = turning(samples);
    if turn.abs() < 1e-6 {
        return None;
    }
    let inside = if turn > 0.0 { first.left } else { first.right };
    Some(first.aside((inside_radius + inside) * turn.signum()))
}

/// Where two lines meet; none where they run alike.
fn meeting((from, ahead): ([f64; 2], [f64; 2]), (to, back): ([f64; 2], [f64; 2])) -> Option<[f64; 2]> {
    let across = ahead[0] * back[1] - ahead[1] * back[0];
    if across.abs() < 1e-6 {
        return None;
    }
    let along = ((to[0] - from[0]) * back[1] - (to[1] - from[1]) * back[0]) / across;
    Some([from[0] + ahead[0] * along, from[1] + ahead[1] * along])
}

fn distance(a: Vector, b: Vector) -> f64 {
    length(minus(a, b))
}
