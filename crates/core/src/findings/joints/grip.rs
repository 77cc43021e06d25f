//! The grip of tenons and rivets: the thickness that they are made for, against what they go through.

use super::held::Held;
use crate::findings::scene::Rule;
use crate::findings::{Finding, Severity, is_over};
use crate::forms;
use crate::joints::Role;
use crate::plan::Form;

const TENON: Rule = Rule {
    id: "tenon-grip",
    severity: Severity::Warning,
    reason: "If the grip is too long the head is too small, and the other way round.",
};

const RIVET: Rule = Rule {
    id: "rivet-grip",
    severity: Severity::Warning,
    reason: "If the grip is too long the heads are too small, and the other way round.",
};

/// What the heading evens out, in mm; common practice, no source.
const EVENED_OUT: f64 = 0.5;

pub(super) fn check(held: &Held<'_>, found: &mut Vec<Finding>) {
    for (role, rule) in [(Role::Tenon, TENON), (Role::Rivet, RIVET)] {
        let Some(pin) = held.first(role) else { continue };
        let (Form::Tenon(forms::Tenon { grip, .. }) | Form::Rivet(forms::Rivet { grip, .. })) = &pin.segment.form
        else {
            continue;
        };
        let through: f64 = held.all(Role::Hole).map(super::held::Part::thickness_mm).sum();
        if !is_over((grip.mm() - through).abs(), EVENED_OUT) || through <= 0.0 {
            continue;
        }
        let [own, thick] = held.apart([grip.mm(), through]);
        let (title, name) = (held.title(), pin.name());
        let message = format!("“{title}”: the grip of “{name}” is {own}, and what it goes through is {thick} thick.");
        let remedy = format!("Make the grip {}.", held.millimeters(through));
        found.push(rule.at(pin.place(), message, remedy));
    }
}
