//! Rotations about an axis.

use fh_core::space::Frame;
use fh_core::space::vector::{Vector, cross, dot, length, plus, times};

/// A direction turned about a unit axis, counter-clockwise seen against it (Rodrigues' formula).
pub(crate) fn turned(direction: Vector, axis: Vector, angle: f64) -> Vector {
    let (sin, cos) = angle.sin_cos();
    let along = times(axis, dot(axis, direction) * (1.0 - cos));
    plus(plus(times(direction, cos), times(cross(axis, direction), sin)), along)
}

/// A frame whose directions are turned about a unit axis; it stays where it is.
pub(crate) fn frame_turned(frame: &Frame, axis: Vector, angle: f64) -> Frame {
    let turn = |direction| turned(direction, axis, angle);
    Frame { at: frame.at, along: turn(frame.along), toward: turn(frame.toward), up: turn(frame.up) }
}

/// The axis and the angle that turn one frame's directions to another's.
pub(crate) fn between(from: &Frame, to: &Frame) -> (Vector, f64) {
    let pairs = [(from.along, to.along), (from.toward, to.toward), (from.up, to.up)];
    let axis = pairs.iter().fold([0.0; 3], |sum, (a, b)| plus(sum, times(cross(*a, *b), 0.5)));
    let cos = (pairs.iter().map(|(a, b)| dot(*a, *b)).sum::<f64>() - 1.0) / 2.0;
    let sin = length(axis);
    if sin < 1e-12 { ([1.0, 0.0, 0.0], 0.0) } else { (times(axis, 1.0 / sin), sin.atan2(cos)) }
}
