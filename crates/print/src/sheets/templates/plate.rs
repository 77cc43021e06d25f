//! A leaf, plate or boss as it lies in the plane of a drawing, seen on its width: its true outline and its holes.

use super::space::Plane;
use fh_core::balance::SegmentBalance;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::SocketAxis;
use fh_piece::vector::{Vector, cross, dot};
use fh_piece::{Frame, Line};
use uom::si::length::millimeter;

/// What is turned farther from the plane than this, as a cosine, is not seen on its width.
const FACE_ON: f64 = 0.9;
/// Points on a whole turn of a round hole: of 60 mm it is 0.02 mm off at the most.
const TURN_POINTS: usize = 128;
/// The longest straight piece of an outline that is bent along with the bar, in mm.
const STEP_MM: f64 = 0.5;

/// A plate on paper, to the right and up in mm.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::sheets) struct Plate {
    /// Its closed outline.
    pub(in crate::sheets) outline: Vec<[f64; 2]>,
    /// Its holes, each with its middle.
    pub(in crate::sheets) holes: Vec<(Vec<[f64; 2]>, [f64; 2])>,
}

/// A flag or a boss in a plane; none for other segments, and where it is not seen on its width.
pub(in crate::sheets) fn plate(line: &Line, balance: &SegmentBalance, shape: &Shape, plane: &Plane) -> Option<Plate> {
    let (outline, holes) = match shape {
        Shape::Flag { outline, holes, .. } => {
            (outline, holes.iter().map(|hole| (hole.points_mm(TURN_POINTS), hole.middle_mm())).collect())
        }
        Shape::Hole { outline, hole, at, .. } => {
            let middle = at.get::<millimeter>();
            let points = hole.points_mm(TURN_POINTS).into_iter().map(|[along, toward]| [middle + along, -toward]);
            (outline, vec![(points.collect::<Vec<_>>(), [middle, 0.0])])
        }
        _ => return None,
    };
    let rolled = matches!(balance.bent, Some(Bent::Socket { axis: SocketAxis::Along, .. } | Bent::Twist { .. }));
    let toward_viewer = cross(plane.right, plane.up);
    let is_seen = |frame: &Frame| {
        let [x, y] = plane.direction(frame.toward);
        x.hypot(y) > FACE_ON && dot(frame.up, toward_viewer).abs() > FACE_ON
    };
    if rolled || !line.frames.iter().all(is_seen) {
        return None;
    }
    let length = outline.length().get::<millimeter>();
    let swell = balance.swell.max(0.0).sqrt();
    let frame = |along: f64| {
        let share = along / length.max(1e-9);
        line.frame_at(if balance.reversed { 1.0 - share } else { share }, length)
    };
    // Along the bar from the root, and away from the smith.
    let place = |[along, away]: [f64; 2]| Some(plane.place(frame(along)?.place([0.0, -away * swell, 0.0])));
    let points = outline.points_mm();
    let points = if is_straight(line) { points } else { cut_fine(&points) };
    let hole = |(points, middle): (Vec<[f64; 2]>, [f64; 2])| {
        let rim: Vec<_> = points.into_iter().filter_map(place).collect();
        Some((rim, place(middle)?))
    };
    let holes = holes.into_iter().filter_map(hole).collect();
    let outline: Vec<[f64; 2]> = points.into_iter().filter_map(place).collect();
    (outline.len() > 2).then_some(Plate { outline, holes })
}

/// Whether a line runs straight on.
fn is_straight(line: &Line) -> bool {
    let along: Vec<Vector> = line.frames.iter().map(|frame| frame.along).collect();
    along.iter().all(|direction| dot(*direction, along[0]) > 1.0 - 1e-12)
}

/// An outline with its straight edges cut, so that they bend with the bar.
fn cut_fine(points: &[[f64; 2]]) -> Vec<[f64; 2]> {
    const MOST_PIECES: f64 = 400.0;
    let edges = points.iter().zip(points.iter().cycle().skip(1));
    edges
        .flat_map(|(a, b)| {
            let pieces = ((b[0] - a[0]).hypot(b[1] - a[1]) / STEP_MM).ceil().clamp(1.0, MOST_PIECES) as u32;
            (0..pieces).map(move |piece| {
                let share = f64::from(piece) / f64::from(pieces);
                [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]
            })
        })
        .collect()
}
