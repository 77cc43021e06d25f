//! The members of a joint, found in the plan by their names.

use crate::balance::SegmentBalance;
use crate::metal::{Shape, in_mm};
use crate::plan::{Bend, Form, JointKind, JointSide, Segment};

/// What a member is in its joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// A boss with a hole.
    Hole,
    /// A tenon.
    Tenon,
    /// A rivet.
    Rivet,
    /// A collar.
    Collar,
    /// A ring, an eye or a socket.
    Eye,
    /// Any other part.
    Bar,
}

/// A side of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PartSide {
    /// Around the bar, in radians from up by way of toward-you.
    Around(f64),
    /// Its end toward the datum.
    Start,
    /// Its other end.
    End,
}

/// A member whose bar and segment are there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MemberPlace {
    /// The bar, counted from 0.
    pub bar: usize,
    /// Which of its copies, counted from 0.
    pub copy: u32,
    /// The segment, counted through the bar from 0.
    pub segment: usize,
    /// What it is there.
    pub role: Role,
    /// The side that faces the other part.
    pub side: PartSide,
    /// How far it is turned about the joint's axis, in radians.
    pub turn: f64,
    /// Where it is along the forged segment as written, in mm.
    pub(super) at_mm: Option<f64>,
}

/// What a member names that is not there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// The bar.
    Bar,
    /// So many copies of the bar.
    Copy,
    /// The segment.
    Segment,
}

pub(super) fn role(segment: &Segment) -> Role {
    match (&segment.form, &segment.bend) {
        (Form::Hole(_), _) => Role::Hole,
        (Form::Tenon(_), _) => Role::Tenon,
        (Form::Rivet(_), _) => Role::Rivet,
        (Form::Collar(_), _) => Role::Collar,
        (_, Some(Bend::Ring { .. } | Bend::Socket { .. })) => Role::Eye,
        _ => Role::Bar,
    }
}

pub(super) fn side(side: Option<&JointSide>) -> PartSide {
    match side {
        None => PartSide::Around(0.0),
        Some(JointSide::Around(angle)) => PartSide::Around(angle.radians()),
        Some(JointSide::Start) => PartSide::Start,
        Some(JointSide::End) => PartSide::End,
    }
}

impl MemberPlace {
    /// Where it is along its forged segment, in mm from the segment's end toward the datum.
    pub fn at_mm(&self, segment: &SegmentBalance) -> f64 {
        let length = in_mm(segment.forged_length);
        match (self.at_mm, &segment.shape) {
            (Some(at), Some(_)) if self.role != Role::Tenon => at.min(length),
            (_, Some(Shape::Hole { at, .. })) if segment.reversed => length - in_mm(*at),
            (_, Some(Shape::Hole { at, .. })) => in_mm(*at),
            _ => length / 2.0,
        }
    }
}

/// How two parts are most likely held together, by what they are.
pub fn kind_between(first: &Segment, second: &Segment) -> JointKind {
    let roles = [role(first), role(second)];
    let has = |wanted: Role| roles.contains(&wanted);
    match roles {
        _ if has(Role::Rivet) => JointKind::Rivet,
        _ if has(Role::Collar) => JointKind::Collar,
        _ if has(Role::Tenon) => JointKind::Tenon,
        [Role::Hole, Role::Hole] => JointKind::Rivet,
        _ if has(Role::Eye) || has(Role::Hole) => JointKind::Hook,
        _ => JointKind::Weld,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    fn segment(text: &str) -> Segment {
        serde_json::from_str(text).unwrap()
    }

    #[test]
    fn what_two_parts_are_says_how_they_are_held_together() {
        let hole = segment(
            r#"{"form":{"hole":{"outline":{"disc":{"diameter":"20 mm"}},"thickness":"5 mm","hole":{"round":"8 mm"},"made":"drilled"}}}"#,
        );
        let tenon = segment(r#"{"form":{"tenon":{"section":{"round":"8 mm"},"grip":"5 mm","allowance":"9 mm"}}}"#);
        let rivet = segment(r#"{"form":{"rivet":{"diameter":"8 mm","grip":"5 mm","allowance":"9 mm"}}}"#);
        let collar = segment(r#"{"form":{"collar":{"section":"stock","width":"20 mm","height":"10 mm"}}}"#);
        let eye = segment(r#"{"form":{"plain":{}},"bend":{"ring":{"inside_diameter":"20 mm"}}}"#);
        let bar = segment(r#"{"form":{"plain":{"length":"20 mm"}}}"#);
        for (first, second, wanted) in [
            (&tenon, &hole, JointKind::Tenon),
            (&hole, &tenon, JointKind::Tenon),
            (&hole, &hole, JointKind::Rivet),
            (&hole, &rivet, JointKind::Rivet),
            (&bar, &collar, JointKind::Collar),
            (&eye, &bar, JointKind::Hook),
            (&bar, &hole, JointKind::Hook),
            (&bar, &bar, JointKind::Weld),
        ] {
            assert_eq!(kind_between(first, second), wanted);
        }
    }
}
