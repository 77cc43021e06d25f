//! Tenons and rivets in their holes.

use super::held::{Held, Part};
use crate::findings::scene::Rule;
use crate::findings::{Finding, Severity, is_over, is_under};
use crate::joints::Role;
use crate::metal::HoleSize;

/// The rules of one kind: too large, and too loose. Common practice, no source.
struct InHole {
    role: Role,
    large: Rule,
    loose: Rule,
}

const KINDS: [InHole; 2] = [
    InHole {
        role: Role::Tenon,
        large: Rule {
            id: "tenon-hole",
            severity: Severity::Stop,
            reason: "A tenon that does not go in cannot be headed, and driven in it tears the boss.",
        },
        loose: Rule {
            id: "tenon-loose",
            severity: Severity::Warning,
            reason: "Heading does not fill a hole this wide; the joint works loose.",
        },
    },
    InHole {
        role: Role::Rivet,
        large: Rule {
            id: "rivet-hole",
            severity: Severity::Stop,
            reason: "A rivet that does not go in cannot be headed, and driven in it tears the boss.",
        },
        loose: Rule {
            id: "rivet-loose",
            severity: Severity::Warning,
            reason: "The rivet bends in a hole this wide before its head is made; the joint works loose.",
        },
    },
];

pub(super) fn check(held: &Held<'_>, found: &mut Vec<Finding>) {
    for kind in &KINDS {
        let Some(pin) = held.first(kind.role) else { continue };
        for boss in held.all(Role::Hole) {
            if let Some(hole) = boss.hole() {
                fit(held, kind, pin, (boss, hole), found);
            }
        }
    }
}

fn fit(held: &Held<'_>, kind: &InHole, pin: &Part<'_>, (boss, hole): (&Part<'_>, &HoleSize), found: &mut Vec<Finding>) {
    let play = pin.play_in(hole, pin.member.turn - boss.member.turn);
    let (title, pin_name, boss_name) = (held.title(), pin.name(), boss.name());
    if is_under(play, 0.0) {
        let over = held.millimeters(-play);
        let message = format!("“{title}”: “{pin_name}” is {over} too large for the hole of “{boss_name}”.");
        let remedy = format!("Make the hole {over} larger or “{pin_name}” {over} smaller, or turn it to fit.");
        found.push(kind.large.at(boss.place(), message, remedy));
    } else if is_over(play, held.play()) {
        let [play, most] = held.apart([play, held.play()]);
        let message =
            format!("“{title}”: “{pin_name}” has {play} of play in the hole of “{boss_name}”; {most} is the most.");
        let remedy = format!("Make the hole smaller, or “{pin_name}” larger.");
        found.push(kind.loose.at(boss.place(), message, remedy));
    }
}
