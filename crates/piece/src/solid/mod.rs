//! The solid of one segment, seen from its own start: built straight, then taken along its way.

mod ball;
mod collar;
mod corner;
mod dressed;
mod lines;
mod loft;
mod outline_loop;
mod plate;
mod shoulder;
mod socket;
mod taper;

pub(crate) use collar::collar;
pub(crate) use socket::socket;

use crate::Mesh;
use crate::fineness::Fineness;
use fh_core::metal::{Dressing, SectionSize, Shape};
use fh_core::space::Way;
use fh_measure::in_mm;

/// The surface of a shape along its way; `reversed` where it is read from its other end.
pub(crate) fn solid(shape: &Shape, reversed: bool, way: &Way, fineness: &Fineness) -> Mesh {
    if let Shape::Peak { corner, .. } = shape
        && !way.is_straight()
    {
        return corner::corner(corner, fineness);
    }
    let mut mesh = straight(shape, reversed, way, fineness);
    take_along(&mut mesh, way);
    mesh
}

/// The surface of a bar with lengths that are dressed in dies along its way.
pub(crate) fn dressed(
    shape: &Shape,
    reversed: bool,
    (way, dressings): (&Way, &[Dressing]),
    fineness: &Fineness,
) -> Mesh {
    let mut mesh = dressed::dressed(shape, reversed, (way, dressings), fineness);
    take_along(&mut mesh, way);
    mesh
}

/// The surface while the segment is straight: its way is taken only to know where it must be cut.
fn straight(shape: &Shape, reversed: bool, way: &Way, fineness: &Fineness) -> Mesh {
    match shape {
        Shape::Prism { section, .. } => taper::prism(section, way, fineness),
        Shape::Taper { from, to, runout, .. } => taper::taper([from, to], *runout, reversed, way, fineness),
        Shape::Shoulder { from, to, radius, sides } => shoulder::shoulder([from, to], *radius, sides, way, fineness),
        Shape::Flag { outline, root, tip, holes, .. } => {
            plate::flag(outline, [in_mm(*root), in_mm(*tip)], holes, reversed, way, fineness)
        }
        Shape::Hole { outline, thickness, hole, at } => {
            plate::boss(outline, in_mm(*thickness), (hole, in_mm(*at)), reversed, way, fineness)
        }
        Shape::Ball { diameter } => ball::ball(in_mm(*diameter), way, fineness),
        Shape::Cube { side } => taper::prism(&SectionSize::square(*side), way, fineness),
        // A bent corner is built bent.
        Shape::Peak { corner, .. } => corner::swelling(corner),
        // A split is its branches.
        Shape::Split(_) => Mesh::default(),
    }
}

/// Takes a straight surface along a way: each point keeps its place across the bar, but for what the bar swells.
fn take_along(mesh: &mut Mesh, way: &Way) {
    if way.is_straight() && way.swell == 1.0 {
        return;
    }
    let wider = way.swell.sqrt();
    let mut last = (f64::NAN, way.frame_at(0.0));
    for point in &mut mesh.points {
        if point[0] != last.0 {
            last = (point[0], way.frame_at(point[0]));
        }
        *point = last.1.place([0.0, point[1] * wider, point[2] * wider]);
    }
}
