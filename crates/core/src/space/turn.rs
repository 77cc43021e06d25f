//! The way that a settled segment's bend gives its center line.

use super::formed::Formed;
use super::way::{Course, Curve, SpiralLine, TaperTurn, Way};
use crate::metal::{Bent, Shape, in_mm};
use crate::plan::SocketAxis;

/// The way of a segment's center line; straight where it has no bend or none that is settled.
pub(super) fn way_of(formed: &Formed<'_>, shape: &Shape) -> Way {
    let length = in_mm(shape.length());
    let straight = Way { swell: formed.swell, ..Way::straight(length) };
    let reversed = formed.reversed;
    match formed.bent {
        None => straight,
        Some(Bent::Curve { angle, inside_radius, side }) => {
            around(shape, reversed, [angle, in_mm(inside_radius)], side)
        }
        Some(Bent::Ring { inside_diameter, sweep, side }) => {
            around(shape, reversed, [sweep, in_mm(inside_diameter) / 2.0], side)
        }
        Some(Bent::Corner { side }) => match shape {
            Shape::Peak { corner, .. } => Way::bent(length, Curve::Arc { angle: corner.turn }, side, false),
            _ => straight,
        },
        Some(Bent::Scroll { spiral, eye_at_start, side }) => {
            let line = SpiralLine::new([spiral.inner_mm, spiral.outer_mm], spiral.angle(), spiral.opening);
            Way::bent(length, Curve::Spiral(line), side, !eye_at_start)
        }
        Some(Bent::Socket { mandrel, axis: SocketAxis::Across, side, .. }) => {
            rolled(shape, reversed, in_mm(mandrel), side)
        }
        // Rolled up across its width, its line stays straight.
        Some(Bent::Socket { axis: SocketAxis::Along, .. }) => straight,
        Some(Bent::Twist { angle }) => Way {
            course: Course::Plane { curve: Curve::Line, side: 0.0, backward: false },
            twist_radians: sense(angle),
            ..straight
        },
    }
}

/// How far a twist turns from toward-you to up, where above 0 it is to wind as a right-handed screw does.
pub(super) fn sense(angle: f64) -> f64 {
    -angle
}

/// Through an angle round an inside radius in mm: at one radius where the section is even, faster where a taper is thinner.
fn around(shape: &Shape, reversed: bool, [angle, inside]: [f64; 2], side: f64) -> Way {
    let length = in_mm(shape.length());
    let (start, end) = shape.inside_to_centroid(side);
    if start == end {
        return Way::bent(length, Curve::Arc { angle }, side, false);
    }
    let turn = TaperTurn::new(shape.runout(), length, angle, [inside + start, inside + end]);
    Way::bent(length, Curve::Taper(turn), side, reversed)
}

/// A flag rolled up along its length round a mandrel: as far as its own length reaches. Each piece ds of it turns by
/// ds / (r + c), c changing evenly from end to end: all of it by the length times `ln(b/a) / (b - a)`.
fn rolled(shape: &Shape, reversed: bool, mandrel: f64, side: f64) -> Way {
    let (start, end) = shape.inside_to_centroid(side);
    let (first, last) = (mandrel / 2.0 + start, mandrel / 2.0 + end);
    let change = last / first - 1.0;
    let mean = if change.abs() < 1e-9 { 1.0 / first } else { change.ln_1p() / (last - first) };
    around(shape, reversed, [in_mm(shape.length()) * mean, mandrel / 2.0], side)
}
