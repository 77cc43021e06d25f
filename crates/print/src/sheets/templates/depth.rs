//! From the middle line of a segment to its faces, and the places along it that these need to be drawn true.

use fh_core::metal::{Bent, Runout, SectionSize, Shape};
use fh_core::plan::{Sides, SocketAxis};
use fh_measure::{in_mm, mm};
use std::f64::consts::{FRAC_PI_2, PI};

/// No chord of a drawn curve lies farther from it than this, in mm: a quarter of a dot of a good printer.
pub(super) const OFF_MM: f64 = 0.01;
/// Places along a run-out that is not straight.
const RUNOUT_PLACES: u32 = 80;
/// Places along a fillet.
const FILLET_PLACES: u32 = 24;

/// From the middle line to the face on a side (radians from up by way of toward-you), at a share of the segment's length
/// from where it is read, in mm.
pub(super) fn depth(shape: &Shape, bent: Option<&Bent>, share: f64, side: f64) -> f64 {
    let share = share.clamp(0.0, 1.0);
    match (shape, bent) {
        (Shape::Ball { diameter }, _) => {
            let radius = in_mm(*diameter) / 2.0;
            let from_middle = radius * (2.0 * share - 1.0);
            (radius * radius - from_middle * from_middle).max(0.0).sqrt()
        }
        (Shape::Shoulder { from, to, radius, sides }, _) => shoulder([from, to], in_mm(*radius), sides, share, side),
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
        _ => {
            let (start, end) = shape.inside_to_centroid(side);
            start + (end - start) * shape.runout().share_at(share)
        }
    }
}

/// From the middle of the smaller section to the face of a step: its fillet on a side that is set down, else the face that
/// runs through.
fn shoulder([from, to]: [&SectionSize; 2], radius: f64, sides: &Sides, share: f64, side: f64) -> f64 {
    let reach = |section: &SectionSize| Shape::Prism { section: *section, length: mm(1.0) }.inside_to_centroid(side).0;
    let falls = to.area() < from.area();
    let (small, large) = if falls { (reach(to), reach(from)) } else { (reach(from), reach(to)) };
    let quarter = (side / FRAC_PI_2).round().rem_euclid(4.0) as u16;
    let stepped = |quarter: u16| sides.contains(quarter % 4 * 90);
    let step = match (stepped(quarter), stepped(quarter + 2)) {
        (true, true) => large - small,
        // The whole difference lies on the one side.
        (true, false) => 2.0 * (large - small),
        (false, _) => 0.0,
    };
    let from_wall = if falls { share } else { 1.0 - share };
    small + radius.min(step.max(0.0)) * (1.0 - (1.0 - (1.0 - from_wall).powi(2)).max(0.0).sqrt())
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

/// The shares of its length, from where it is read, at which a shape's faces have to be drawn beside those that its line
/// asks for.
pub(super) fn own_places(shape: &Shape) -> Vec<f64> {
    // Evenly round a half circle from one end to the other.
    let round =
        |steps: u32| (0..=steps).map(|step| (1.0 - (PI * f64::from(step) / f64::from(steps)).cos()) / 2.0).collect();
    match shape {
        Shape::Ball { .. } | Shape::Flag { .. } | Shape::Hole { .. } => {
            // A chord of an angle a lies r a²/8 inside its arc.
            let radius = in_mm(shape.length()) / 2.0;
            round((PI / (8.0 * OFF_MM / radius.max(1e-6)).sqrt()).ceil().clamp(12.0, 360.0) as u32)
        }
        Shape::Taper { runout, .. } if *runout != Runout::Straight => {
            let even = (0..=RUNOUT_PLACES).map(|step| f64::from(step) / f64::from(RUNOUT_PLACES));
            // t^p with p below 1 starts square to the bar.
            even.flat_map(|share| [share, share.powi(3)]).collect()
        }
        Shape::Shoulder { from, to, .. } => {
            let from_wall =
                (0..=FILLET_PLACES).map(|step| 1.0 - (FRAC_PI_2 * f64::from(step) / f64::from(FILLET_PLACES)).cos());
            let falls = to.area() < from.area();
            from_wall.map(|share| if falls { share } else { 1.0 - share }).collect()
        }
        _ => Vec::new(),
    }
}

/// The farthest that a face lies from the middle line, in mm.
pub(super) fn farthest(shape: &Shape) -> f64 {
    let reaches = [0.0, FRAC_PI_2].map(|side| shape.inside_to_centroid(side));
    reaches.into_iter().flat_map(|(start, end)| [start, end]).fold(0.0, f64::max)
}
