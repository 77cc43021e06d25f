//! One segment as it lies in the plane of a template: its middle line and both faces.

use super::depth::{OFF_MM, depth, farthest, own_places};
use super::space::Plane;
use fh_core::balance::SegmentBalance;
use fh_core::metal::{Bent, Shape};
use fh_piece::vector::{Vector, dot, length, minus};
use fh_piece::{Frame, Line};

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

/// The samples of a segment in a plane, from its datum side: so close together that no face is a hundredth of a millimetre
/// off.
pub(in crate::sheets) fn samples(line: &Line, balance: &SegmentBalance, shape: &Shape, plane: &Plane) -> Vec<Sample> {
    let swell = balance.swell.max(0.0).sqrt();
    let sample = |place: f64| {
        let frame = line.frame_at(place, 0.0)?;
        let share = if balance.reversed { 1.0 - place } else { place };
        let [x, y] = plane.direction(frame.along);
        let long = x.hypot(y).max(1e-9);
        let ahead = [x / long, y / long];
        let leftward = plane.lifted([-ahead[1], ahead[0]]);
        let reach = |direction: Vector| depth(shape, balance.bent.as_ref(), share, side_of(&frame, direction)) * swell;
        let (left, right) = (reach(leftward), reach(leftward.map(|part| -part)));
        Some(Sample { middle: plane.place(frame.at), ahead, left, right })
    };
    places(line, balance, shape).into_iter().filter_map(sample).collect()
}

/// The shares of a line at which it is looked at: those of its bends and those that the shape needs, in order.
fn places(line: &Line, balance: &SegmentBalance, shape: &Shape) -> Vec<f64> {
    let aside = farthest(shape);
    let mut all: Vec<f64> = own_places(shape);
    if balance.reversed {
        all.iter_mut().for_each(|place| *place = 1.0 - *place);
    }
    for (frames, shares) in line.frames.windows(2).zip(line.shares.windows(2)) {
        let steps = steps_between(&frames[0], &frames[1], aside);
        all.extend((0..steps).map(|step| shares[0] + (shares[1] - shares[0]) * f64::from(step) / f64::from(steps)));
    }
    all.extend(line.shares.last());
    all.sort_by(f64::total_cmp);
    all.dedup_by(|next, before| *next - *before < 1e-7);
    all
}

/// In how many steps the way between two frames is drawn.
fn steps_between(from: &Frame, to: &Frame, aside: f64) -> u32 {
    let (long, turn) = (distance(from.at, to.at), dot(from.along, to.along).clamp(-1.0, 1.0).acos());
    // A chord of an angle a lies r a²/8 inside its arc, and r a is the length of the arc.
    let bowed = ((long + turn * aside) * turn / 8.0 / OFF_MM).sqrt();
    let steps = if turn < 1e-4 { long / STEP_MM } else { bowed };
    steps.ceil().clamp(1.0, MOST_STEPS) as u32
}

/// The side of the section that a direction points to, in radians from up by way of toward-you.
fn side_of(frame: &Frame, direction: Vector) -> f64 {
    dot(direction, frame.toward).atan2(dot(direction, frame.up))
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
