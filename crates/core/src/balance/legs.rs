//! Legs: the straight runs between bends, and what a rule laid on the finished piece reads on them.

use super::{BarBalance, SegmentBalance};
use crate::metal::{Bent, Shape, in_mm, mm};
use crate::plan::Chain;
use std::f64::consts::{FRAC_PI_2, PI};
use uom::si::f64::Length;

/// A straight run of a bar between two bends, or between a bend and an end.
///
/// At a bend through θ with inside radius r and metal t thick in its plane, the inner faces meet `r tan(θ/2)` beyond the
/// tangent point and the outer faces `(r + t) tan(θ/2)`: there lies the apex of a sharp corner (plane geometry). A round
/// bend of a right angle or more reaches r + t beyond it, and no farther.
#[derive(Clone, Debug, PartialEq)]
pub struct Leg {
    /// Its segments, counted through the bar: the first and the last.
    pub segments: (usize, usize),
    /// Its length from tangent point to tangent point.
    pub straight: Length,
    /// From inside to inside.
    pub inside: Length,
    /// From outside to outside; at a sharp corner to its apex.
    pub outside: Length,
}

/// What a bend adds to a leg beyond its tangent point.
#[derive(Clone, Copy, Default)]
struct Beyond {
    inside: f64,
    outside: f64,
}

/// The legs of a bar from its datum end; a bar without a bend has none.
pub fn legs(bar: &BarBalance) -> Vec<Leg> {
    let mut all = Vec::new();
    let mut run: Option<(usize, usize, f64, Beyond)> = None;
    let mut has_bend = false;
    let mut last = Beyond::default();
    let finished = |segment: &&SegmentBalance| segment.finished_volume.value > 0.0;
    for (at, segment) in bar.segments.iter().enumerate() {
        if segment.chain != Chain::Bar || !finished(&segment) {
            continue;
        }
        match beyond(segment) {
            Some(beyond) => {
                has_bend = true;
                all.extend(run.take().map(|run| leg(run, beyond)));
                last = beyond;
            }
            None => {
                let length = in_mm(segment.forged_length);
                run =
                    Some(run.map_or((at, at, length, last), |(first, _, sum, start)| (first, at, sum + length, start)));
            }
        }
    }
    all.extend(run.map(|run| leg(run, Beyond::default())));
    if has_bend { all } else { Vec::new() }
}

fn leg((first, last, straight, start): (usize, usize, f64, Beyond), end: Beyond) -> Leg {
    Leg {
        segments: (first, last),
        straight: mm(straight),
        inside: mm(straight + start.inside + end.inside),
        outside: mm(straight + start.outside + end.outside),
    }
}

/// What a bent segment adds to the legs beside it; none where it is straight.
fn beyond(segment: &SegmentBalance) -> Option<Beyond> {
    let round = |radius: f64, thickness: f64, angle: f64| {
        let tangent = (angle.min(FRAC_PI_2) / 2.0).tan();
        Beyond { inside: radius * tangent, outside: (radius + thickness) * tangent }
    };
    match segment.bent? {
        Bent::Corner { .. } => {
            let Some(Shape::Peak { corner, .. }) = &segment.shape else { return Some(Beyond::default()) };
            let tangent = (corner.turn / 2.0).tan();
            let (radius, thickness) = (in_mm(corner.inside_radius), in_mm(corner.thickness));
            Some(Beyond { inside: radius * tangent, outside: (radius + thickness) * tangent })
        }
        Bent::Curve { angle, inside_radius, side } => {
            Some(round(in_mm(inside_radius), thickness_in_plane(segment, side), angle))
        }
        Bent::Ring { inside_diameter, side, sweep } => {
            Some(round(in_mm(inside_diameter) / 2.0, thickness_in_plane(segment, side), sweep))
        }
        Bent::Scroll { spiral, eye_at_start, side } => {
            let radius = if eye_at_start { spiral.outer_mm } else { spiral.inner_mm };
            let thickness = thickness_in_plane(segment, side);
            Some(round((radius - thickness / 2.0).max(0.0), thickness, PI))
        }
        Bent::Socket { .. } | Bent::Twist { .. } => None,
    }
}

/// The metal's size in the plane of a bend toward a side, in mm: the larger end of a taper.
fn thickness_in_plane(segment: &SegmentBalance, side: f64) -> f64 {
    let shape = segment.shape.as_ref();
    let sizes = shape.into_iter().flat_map(|shape| shape.sections());
    sizes.map(|section| in_mm(section.section().extent(FRAC_PI_2 - side))).fold(0.0, f64::max)
}
