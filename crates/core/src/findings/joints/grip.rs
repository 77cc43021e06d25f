//! The grip of tenons and rivets: the thickness that they are made for, against what they go through.

use super::held::Held;
use crate::findings::scene::Rule;
use crate::findings::{Finding, Severity};
use crate::joints::Role;
use crate::plan::Form;

const TENON: Rule = Rule {
    id: "tenon-grip",
    severity: Severity::Warning,
    reason: "What the grip has too much or too little, the head has too little or too much.",
};

const RIVET: Rule = Rule {
    id: "rivet-grip",
    severity: Severity::Warning,
    reason: "What the grip has too much or too little, the heads have too little or too much.",
};

/// What the heading evens out, in mm; common practice, no source.
const EVENED_OUT: f64 = 0.5;

pub(super) fn check(held: &Held<'_>, found: &mut Vec<Finding>) {
    for (role, rule) in [(Role::Tenon, TENON), (Role::Rivet, RIVET)] {
        let Some(pin) = held.first(role) else { continue };
        let (Form::Tenon { grip, .. } | Form::Rivet { grip, .. }) = &pin.segment.form else { continue };
        let through: f64 = held.all(Role::Hole).map(super::held::Part::thickness_mm).sum();
        if (grip.mm() - through).abs() <= EVENED_OUT || through <= 0.0 {
            continue;
        }
        let message = format!(
            "“{}”: the grip of “{}” is {}, and what it goes through is {} thick.",
            held.title(),
            pin.name(),
            held.millimeters(grip.mm()),
            held.millimeters(through)
        );
        let remedy = format!("Make the grip {}.", held.millimeters(through));
        found.push(rule.at(pin.place(), message, remedy));
    }
}
