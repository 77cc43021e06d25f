//! How far a part's metal reaches in a direction.
//!
//! The metal is its section carried along its center line, square to it. At each place it reaches as far as the line does, and
//! beyond that as far as the section reaches across: `p·d + |d⊥| h(d⊥)`, h being the section's support function. The farthest
//! place is an end, or one within a bend, which is closed in upon to the last figures.

use crate::metal::{Bent, CornerSize, Shape, in_mm};
use crate::plan::SocketAxis;
use crate::space::vector::{Vector, dot};
use crate::space::{Formed, Frame, Run, of_side};

/// The most that a line turns from one place looked at to the next, in radians.
const STEP: f64 = 0.15;
/// The fewest steps along what is no even bar.
const PLATE_STEPS: usize = 24;
/// How often the range about the farthest place is narrowed.
const NARROWINGS: usize = 80;

/// How far a part reaches in a direction, in mm from the origin.
pub(super) fn extreme_mm(run: &Run, formed: &Formed<'_>, direction: Vector) -> f64 {
    let Some(shape) = formed.shape else { return f64::NEG_INFINITY };
    if let (Shape::Peak { corner, .. }, Some(Bent::Corner { .. })) = (shape, formed.bent) {
        return corner_mm(run, shape, corner, direction);
    }
    if let Some(Bent::Socket { mandrel, axis: SocketAxis::Along, side, .. }) = formed.bent {
        return rolled_mm(run, shape, (in_mm(mandrel), side), direction);
    }
    let long = run.way.length_mm;
    let reach = |share: f64| {
        let at = if formed.reversed { 1.0 - share } else { share };
        reach_mm(&run.frame_at(share * long), shape, (at, formed.swell), direction)
    };
    let turns = run.way.stations_mm(STEP, STEP).len().saturating_sub(1);
    let is_even = matches!(shape, Shape::Prism { .. } | Shape::Cube { .. } | Shape::Shoulder { .. });
    let steps = if is_even { turns } else { turns.max(PLATE_STEPS) };
    if steps <= 1 {
        return reach(0.0).max(reach(1.0));
    }
    farthest(reach, steps)
}

/// The greatest value of a function of a share, looked at in steps and closed in upon.
fn farthest(reach: impl Fn(f64) -> f64, steps: usize) -> f64 {
    let share = |step: usize| step as f64 / steps as f64;
    let best = (0..=steps).map(|step| (step, reach(share(step)))).max_by(|a, b| a.1.total_cmp(&b.1));
    let Some((best, most)) = best else { return f64::NEG_INFINITY };
    let (mut low, mut high) = (share(best.saturating_sub(1)), share((best + 1).min(steps)));
    // Golden section.
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    let (mut left, mut right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut at_left, mut at_right) = (reach(left), reach(right));
    for _ in 0..NARROWINGS {
        if high - low < 1e-9 {
            break;
        }
        if at_left > at_right {
            (high, right, at_right) = (right, left, at_left);
            left = high - GOLDEN * (high - low);
            at_left = reach(left);
        } else {
            (low, left, at_left) = (left, right, at_right);
            right = low + GOLDEN * (high - low);
            at_right = reach(right);
        }
    }
    most.max(at_left).max(at_right)
}

/// How far a section reaches that stands on a frame, in mm; the share is that of its shape's length.
fn reach_mm(frame: &Frame, shape: &Shape, (share, swell): (f64, f64), direction: Vector) -> f64 {
    let (toward, up) = (dot(frame.toward, direction), dot(frame.up, direction));
    let across = toward.hypot(up);
    let beyond = if across < 1e-12 { 0.0 } else { across * shape.reach_mm(share, up.atan2(toward)) * swell.sqrt() };
    dot(frame.at, direction) + beyond
}

/// A sharp corner: its two ends, and its outside edge.
fn corner_mm(run: &Run, shape: &Shape, corner: &CornerSize, direction: Vector) -> f64 {
    let end = run.frame_at(run.way.length_mm);
    let ends = [run.start, end].map(|frame| reach_mm(&frame, shape, (0.0, 1.0), direction));
    let [toward, up] = of_side(corner.side);
    let (out, half) = (-in_mm(corner.thickness) / 2.0, in_mm(corner.width) / 2.0);
    let edge = [half, -half].map(|across| {
        let place = [in_mm(corner.to_apex()), out * toward - across * up, out * up + across * toward];
        dot(run.start.place(place), direction)
    });
    ends.into_iter().chain(edge).fold(f64::NEG_INFINITY, f64::max)
}

/// A flag rolled up across its width: a tube over the bar, or under it where it is rolled down.
fn rolled_mm(run: &Run, shape: &Shape, (mandrel, side): (f64, f64), direction: Vector) -> f64 {
    let thickness = match shape {
        Shape::Flag { root, tip, .. } => (in_mm(*root) + in_mm(*tip)) / 2.0,
        _ => 0.0,
    };
    let middle = (mandrel + thickness) / 2.0 * if side.cos() < 0.0 { -1.0 } else { 1.0 };
    let outside = mandrel / 2.0 + thickness;
    let at = |along: f64| {
        let frame = run.frame_at(along);
        let across = dot(frame.toward, direction).hypot(dot(frame.up, direction));
        dot(frame.place([0.0, 0.0, middle]), direction) + across * outside
    };
    at(0.0).max(at(run.way.length_mm))
}
