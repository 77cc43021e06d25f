//! What a kind of joint needs: a tenon and a hole, a collar and a bundle, an eye and a pin.

use super::held::{Held, Part};
use crate::findings::scene::Rule;
use crate::findings::{Finding, Severity};
use crate::joints::{PartSide, Role};
use crate::plan::JointKind;
use std::f64::consts::PI;

const MEMBERS: Rule =
    Rule { id: "joint-members", severity: Severity::Stop, reason: "These parts cannot be held together in this way." };

const WELD: Rule = Rule {
    id: "weld-side",
    severity: Severity::Note,
    reason: "A fire weld burns away metal and needs the scarf's overlap; without an allowance the bars come out short.",
};

/// Whether the joint has the members that its kind needs; what is missing is told.
pub(super) fn check(held: &Held<'_>, found: &mut Vec<Finding>) -> bool {
    match wrong(held) {
        Some((part, message, remedy)) => {
            let message = format!("“{}”: {message}", held.title());
            found.push(MEMBERS.at(held.parts[part].place(), message, remedy.to_owned()));
            false
        }
        None => {
            weld(held, found);
            true
        }
    }
}

/// Which part does not belong, and why.
fn wrong(held: &Held<'_>) -> Option<(usize, String, &'static str)> {
    if let Some(index) = held.parts.iter().position(|part| !part.segment.form.is_finished()) {
        let message = format!("“{}” isn't a part of the finished piece.", held.parts[index].name());
        return Some((index, message, "Choose a part that stays on the piece."));
    }
    let count = |role| held.all(role).count();
    let missing = |message: &str, remedy| Some((0, message.to_owned(), remedy));
    match held.joined.kind {
        JointKind::Tenon if count(Role::Tenon) != 1 || count(Role::Hole) == 0 => {
            missing("it needs one tenon, and a hole for it.", "Name a part of the form tenon, and one with a hole.")
        }
        JointKind::Rivet if count(Role::Rivet) > 1 || count(Role::Hole) == 0 || held.parts.len() < 2 => missing(
            "it needs parts with holes that lie on each other, and at most one rivet.",
            "Name parts with a hole, and the rivet.",
        ),
        JointKind::Collar if count(Role::Collar) != 1 => {
            missing("it needs one collar, and the bars of its bundle.", "Name a part of the form collar.")
        }
        JointKind::Hook if held.joined.eye().is_none() => {
            missing("it needs a ring, a socket or a hole for the pin.", "Name a part that has an eye.")
        }
        JointKind::Tenon | JointKind::Rivet => odd(held, |part| {
            (part.member.role == Role::Bar || part.member.role == Role::Eye || part.member.role == Role::Collar)
                .then(|| format!("“{}” has no hole.", part.name()))
                .or_else(|| not_through(part))
        }),
        JointKind::Collar => odd(held, |part| {
            (part.side().is_none() && part.member.role != Role::Collar)
                .then(|| format!("“{}” lies in the bundle by one of its ends.", part.name()))
        }),
        JointKind::Weld | JointKind::Hook => None,
    }
}

/// The first part of which a fault is told.
fn odd(held: &Held<'_>, fault: impl Fn(&Part<'_>) -> Option<String>) -> Option<(usize, String, &'static str)> {
    let remedy = "Name another part or side, or choose another kind of joint.";
    let mut all = held.parts.iter().enumerate();
    all.find_map(|(index, part)| fault(part).map(|message| (index, message, remedy)))
}

/// A hole goes through the thickness: its sides are up and down.
fn not_through(part: &Part<'_>) -> Option<String> {
    if part.member.role != Role::Hole {
        return None;
    }
    let through = match part.member.side {
        PartSide::Around(side) => (side / PI).fract().abs() < 1e-6 || 1.0 - (side / PI).fract().abs() < 1e-6,
        PartSide::Start | PartSide::End => false,
    };
    (!through).then(|| format!("the hole of “{}” comes out on the sides 0 and 180 deg.", part.name()))
}

/// A weld whose members have no metal set by for it.
fn weld(held: &Held<'_>, found: &mut Vec<Finding>) {
    use crate::plan::Form;
    let has_allowance = held.parts.iter().any(|part| matches!(part.segment.form, Form::Weld(_)));
    if held.joined.kind != JointKind::Weld || has_allowance {
        return;
    }
    if let Some(part) = held.parts.first() {
        let message = format!("“{}” is welded, and none of its parts has metal for the scarf.", held.title());
        let remedy = "Join parts of the form weld, or add one where the bars meet.".to_owned();
        found.push(WELD.at(part.place(), message, remedy));
    }
}
