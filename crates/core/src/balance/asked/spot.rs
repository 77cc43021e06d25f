//! Places on a part, in space.

use crate::metal::{Bent, Outline, SectionSize, Shape, in_mm};
use crate::plan::{FeatureAt, SocketAxis};
use crate::space::vector::Vector;
use crate::space::{Formed, Run, of_side};
use std::f64::consts::{FRAC_PI_2, PI};

/// A place in space, or a round about one.
pub(super) struct Spot {
    pub(super) at: Vector,
    /// How much farther away than `at` the place is, in mm; below 0 where it lies nearer.
    pub(super) beyond: f64,
}

/// A bend in its plane, at its start.
struct Turn {
    angle: f64,
    /// Of its inside face, in mm.
    inside: f64,
    /// From the middle of the section to the inside face and to the outside face, in mm.
    to_faces: [f64; 2],
    side: f64,
}

/// A place on a part; none where it has none of that kind. With the place goes whether the part's tip is where it starts.
pub(super) fn spot(
    run: &Run,
    shape: &Shape,
    formed: &Formed<'_>,
    (at, tip_is_start): (FeatureAt, bool),
) -> Option<Spot> {
    let exactly = |at: Vector| Some(Spot { at, beyond: 0.0 });
    let turn = Turn::of(shape, formed);
    match at {
        FeatureAt::Start => exactly(run.start.at),
        FeatureAt::Tip if tip_is_start => exactly(run.start.at),
        FeatureAt::End | FeatureAt::Tip => exactly(run.frame_at(run.way.length_mm).at),
        FeatureAt::Apex => exactly(turn?.corner(run, true)?),
        FeatureAt::Inside => exactly(turn?.corner(run, false)?),
        FeatureAt::Middle => exactly(middle(run, shape, formed, turn.as_ref())),
        _ => {
            let (inside, outside) = radii(shape, turn.as_ref())?;
            let beyond = match at {
                FeatureAt::NearInside => -inside,
                FeatureAt::FarInside => inside,
                FeatureAt::NearOutside => -outside?,
                _ => outside?,
            };
            Some(Spot { at: middle(run, shape, formed, turn.as_ref()), beyond })
        }
    }
}

/// The middle of a hole, a ring or an eye; else half way along.
fn middle(run: &Run, shape: &Shape, formed: &Formed<'_>, turn: Option<&Turn>) -> Vector {
    let long = run.way.length_mm;
    match (shape, turn) {
        (Shape::Hole { at, .. }, None) => run.frame_at(if formed.reversed { long - in_mm(*at) } else { in_mm(*at) }).at,
        (_, Some(turn)) if turn.is_ring(formed) => turn.place(run, 0.0, turn.inside + turn.to_faces[0]),
        _ => run.frame_at(long / 2.0).at,
    }
}

/// The inside and the outside radius of a ring or an eye, in mm; half of a hole along the bar, which has no outside.
fn radii(shape: &Shape, turn: Option<&Turn>) -> Option<(f64, Option<f64>)> {
    match (shape, turn) {
        (Shape::Hole { hole, .. }, None) => Some((in_mm(hole.length()) / 2.0, None)),
        (_, Some(turn)) => Some((turn.inside, Some(turn.inside + turn.to_faces[0] + turn.to_faces[1]))),
        _ => None,
    }
}

impl Turn {
    /// The bend of a part at one radius; none of any other.
    fn of(shape: &Shape, formed: &Formed<'_>) -> Option<Self> {
        let (angle, inside, side) = match (formed.bent?, shape) {
            (Bent::Curve { angle, inside_radius, side }, _) => (angle, in_mm(inside_radius), side),
            (Bent::Ring { inside_diameter, sweep, side }, _) => (sweep, in_mm(inside_diameter) / 2.0, side),
            (Bent::Socket { mandrel, sweep, axis: SocketAxis::Across, side }, _) => (sweep, in_mm(mandrel) / 2.0, side),
            (Bent::Corner { side }, Shape::Peak { corner, .. }) => (corner.turn, in_mm(corner.inside_radius), side),
            _ => return None,
        };
        let inner = shape.inside_to_centroid(side).0;
        let thickness = match shape {
            Shape::Prism { section, .. } | Shape::Peak { section, .. } => thickness(section, side),
            Shape::Taper { from, .. } | Shape::Shoulder { from, .. } => thickness(from, side),
            Shape::Flag { outline, root, .. } => plate_thickness(outline, in_mm(*root), side),
            Shape::Hole { outline, thickness, .. } => plate_thickness(outline, in_mm(*thickness), side),
            _ => inner * 2.0,
        };
        Some(Self { angle, inside, to_faces: [inner, thickness - inner], side })
    }

    /// Whether it closes about a middle of its own.
    fn is_ring(&self, formed: &Formed<'_>) -> bool {
        matches!(formed.bent, Some(Bent::Ring { .. } | Bent::Socket { .. })) || self.angle >= PI
    }

    /// Where its two outside or inside faces meet; none where they do not.
    fn corner(&self, run: &Run, outside: bool) -> Option<Vector> {
        if self.angle >= PI {
            return None;
        }
        let [inner, outer] = self.to_faces;
        let tangent = (self.angle / 2.0).tan();
        Some(if outside {
            self.place(run, (self.inside + inner + outer) * tangent, -outer)
        } else {
            self.place(run, self.inside * tangent, inner)
        })
    }

    /// A place so far ahead of its start and so far toward its inside, in mm.
    fn place(&self, run: &Run, ahead: f64, inside: f64) -> Vector {
        let [toward, up] = of_side(self.side);
        run.start.place([ahead, inside * toward, inside * up])
    }
}

/// A section's size in the plane of a bend toward a side, in mm.
fn thickness(section: &SectionSize, side: f64) -> f64 {
    in_mm(section.section().extent(FRAC_PI_2 - side))
}

fn plate_thickness(outline: &Outline, thick: f64, side: f64) -> f64 {
    in_mm(outline.width()) * side.sin().abs() + thick * side.cos().abs()
}
