//! Pins and hooks in the eyes that must take them.

use super::held::{Held, Part};
use crate::findings::scene::Rule;
use crate::findings::{Finding, Severity, is_over, is_under};
use crate::joints::Role;
use crate::metal::{Bent, HoleSize};
use crate::plan::JointKind;

const RULE: Rule =
    Rule { id: "hook-eye", severity: Severity::Stop, reason: "What does not go into its eye cannot be hung in it." };

pub(super) fn check(held: &Held<'_>, found: &mut Vec<Finding>) {
    if held.joined.kind != JointKind::Hook {
        return;
    }
    let Some(eye) = held.joined.eye() else { return };
    let Some((opening, name)) = held.parts.get(eye).and_then(|part| Some((opening(part)?, part.name()))) else {
        return;
    };
    for (_, pin) in held.parts.iter().enumerate().filter(|(index, _)| *index != eye) {
        let play = pin.play_in(&opening, pin.member.turn);
        if !is_over(play, 0.0) {
            let over = if is_under(play, 0.0) {
                format!("is {} too large for", held.millimeters(-play))
            } else {
                "is just as large as".to_owned()
            };
            let message = format!("“{}”: “{}” {over} the eye of “{name}”.", held.title(), pin.name());
            let remedy = format!("Make the eye larger, or “{}” smaller there.", pin.name());
            found.push(RULE.at(pin.place(), message, remedy));
        }
    }
}

/// The inside of an eye.
fn opening(eye: &Part<'_>) -> Option<HoleSize> {
    match (eye.member.role, eye.balance.bent) {
        (Role::Hole, _) => eye.hole().copied(),
        (_, Some(Bent::Ring { inside_diameter: diameter, .. } | Bent::Socket { mandrel: diameter, .. })) => {
            Some(HoleSize::Round { diameter })
        }
        _ => None,
    }
}
