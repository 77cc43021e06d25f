//! The other hand of a piece: all of it as a mirror shows it that stands along the bar, between you and what lies away.

use crate::forms::{Flag, Hole, Shoulder, Split};
use crate::joints::{Joined, Role, joined};
use crate::metal::{Outline, in_mm};
use crate::plan::{
    BaseLine, Bend, DressedSide, Form, Hangs, JointKind, JointSide, OutlineSpec, Plan, Segment, Sides, SocketAxis,
};
use fh_measure::{LengthRange, MeasureError, WrittenAngle, WrittenLength};

type Done = Result<(), MeasureError>;

/// An angle this close to up or down, in degrees, lies in the mirror.
const IN_THE_MIRROR: f64 = 1e-9;
/// The side on which the first branch of a split lies where the plan does not say: away from you.
const AWAY: f64 = 270.0;

/// The plan of the other hand. Words stay as they were written.
pub(super) fn mirrored(plan: &Plan) -> Result<Plan, MeasureError> {
    let mut next = plan.clone();
    for bar in &mut next.bars {
        bar.segments.iter_mut().try_for_each(segment)?;
    }
    let rolled = rolled_eyes(plan);
    for (index, joint) in next.joints.iter_mut().enumerate() {
        for (at, member) in std::iter::once(&mut joint.fixed).chain(&mut joint.moved).enumerate() {
            match &mut member.side {
                _ if rolled.contains(&(index, at)) => from_other_side(&mut member.side)?,
                Some(JointSide::Around(side)) => turn_round(side)?,
                _ => {}
            }
            member.turn.iter_mut().try_for_each(turn_round)?;
        }
    }
    let Hangs { rolled, turned, .. } = &mut next.hangs;
    rolled.iter_mut().chain(turned).try_for_each(turn_round)?;
    for step in next.work.steps.iter_mut().flatten() {
        step.up.iter_mut().try_for_each(turn_round)?;
    }
    Ok(next)
}

/// The eyes of hooks that are rolled across the bar, by joint and member: their axis runs toward you or away, so that the pin
/// comes through them from the other side in the mirror.
fn rolled_eyes(plan: &Plan) -> Vec<(usize, usize)> {
    let eye = |joint: &Joined| {
        let at = joint.eye().filter(|_| joint.kind == JointKind::Hook)?;
        let member = joint.members.get(at)?;
        let bend = plan.segment(member.bar, member.segment)?.bend.as_ref()?;
        let is_rolled = matches!(bend, Bend::Ring { .. } | Bend::Socket { axis: SocketAxis::Across, .. });
        (member.role == Role::Eye && is_rolled).then_some((joint.joint, at))
    };
    joined(plan).iter().filter_map(eye).collect()
}

/// The side of an eye from which its pin comes, turned to the one across.
fn from_other_side(side: &mut Option<JointSide>) -> Done {
    let degrees = match side {
        Some(JointSide::Around(side)) => side.radians().to_degrees(),
        _ => 0.0,
    };
    *side = Some(JointSide::Around(WrittenAngle::from_degrees((degrees + 180.0).rem_euclid(360.0))?));
    Ok(())
}

fn segment(segment: &mut Segment) -> Done {
    form(&mut segment.form)?;
    segment.bend.iter_mut().try_for_each(bend)?;
    for dressed in &mut segment.dressed {
        if let DressedSide::Around(side) = &mut dressed.side {
            turn_round(side)?;
        }
    }
    for via in &mut segment.via {
        via.form.iter_mut().try_for_each(form)?;
        via.bend.iter_mut().try_for_each(bend)?;
    }
    Ok(())
}

fn form(form: &mut Form) -> Done {
    match form {
        Form::Flag(flag) => plate(flag),
        Form::Hole(Hole { outline, .. }) => corners(outline),
        Form::Shoulder(Shoulder { sides: Sides::Some(sides), .. }) => {
            sides.iter_mut().for_each(|side| *side = (360 - *side) % 360);
            Ok(())
        }
        Form::Split(split) => branches(split),
        _ => Ok(()),
    }
}

/// A plate turned over: what lay toward you lies away.
fn plate(flag: &mut Flag) -> Done {
    if let Some(BaseLine { outline, blank }) = &mut flag.base_line {
        outline.iter_mut().try_for_each(|base| from_other_edge(base, &flag.outline))?;
        if let Some(of) = &flag.blank {
            blank.iter_mut().try_for_each(|base| from_other_edge(base, of))?;
        }
    }
    flag.holes.iter_mut().filter_map(|hole| hole.across.as_mut()).try_for_each(to_other_side)?;
    corners(&mut flag.outline)?;
    flag.blank.iter_mut().try_for_each(corners)
}

/// A place across the bar, counted from the base line.
fn to_other_side(across: &mut WrittenLength) -> Done {
    *across = across.longer_by(-2.0 * across.mm(), LengthRange::Any)?;
    Ok(())
}

/// A base line is written from the edge toward you; in the mirror that edge is the one that lay away.
fn from_other_edge(base: &mut WrittenLength, outline: &OutlineSpec) -> Done {
    let width = in_mm(Outline::from(outline).width());
    *base = base.longer_by(width - 2.0 * base.mm(), LengthRange::Any)?;
    Ok(())
}

fn corners(outline: &mut OutlineSpec) -> Done {
    let OutlineSpec::Polygon(corners) = outline else { return Ok(()) };
    for corner in &mut corners.0 {
        let [_, across] = &mut corner.at;
        to_other_side(across)?;
    }
    Ok(())
}

fn branches(split: &mut Split) -> Done {
    match &mut split.side {
        Some(side) => turn_round(side)?,
        None => split.side = Some(WrittenAngle::from_degrees(360.0 - AWAY)?),
    }
    if let Some(turns) = split.opening.as_mut().and_then(|opening| opening.turns.as_mut()) {
        *turns = -*turns;
    }
    split.branches.iter_mut().flat_map(|branch| &mut branch.segments).try_for_each(segment)
}

fn bend(bend: &mut Bend) -> Done {
    match bend {
        Bend::Curve { side, .. }
        | Bend::Ring { side, .. }
        | Bend::Corner { side, .. }
        | Bend::Scroll { side, .. }
        | Bend::Socket { side, .. } => side.iter_mut().try_for_each(turn_round),
        Bend::Twist { turns, .. } => {
            *turns = -*turns;
            Ok(())
        }
    }
}

/// An angle round the bar from up by way of toward-you, counted the other way round.
fn turn_round(angle: &mut WrittenAngle) -> Done {
    let degrees = angle.radians().to_degrees();
    let half = degrees.rem_euclid(180.0);
    if half > IN_THE_MIRROR && 180.0 - half > IN_THE_MIRROR {
        *angle = WrittenAngle::from_degrees((-degrees).rem_euclid(360.0))?;
    }
    Ok(())
}
