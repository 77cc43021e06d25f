//! Twists so tight that their edges tear, and twists that end between two faces.

use super::scene::{Rule, Scene, plain, times};
use super::{Check, Finding, Severity, apart, is_over};
use crate::metal::{Bent, in_mm};
use crate::plan::Limits;

pub(super) const CHECK: Check =
    Check { ids: &["tight-twist"], summary: "Twists whose edges are stretched too far.", run };

const RULE: Rule = Rule {
    id: "tight-twist",
    severity: Severity::Warning,
    reason: "The edges of a tight twist are stretched far, and tear or thin out where the bar is coldest.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    let most = scene.plan.limits.twist_stretch.unwrap_or(Limits::TWIST_STRETCH);
    for seen in scene.segments() {
        let Some(Bent::Twist { angle }) = seen.balance.bent else { continue };
        let (length, fibre) = (in_mm(seen.shape.length()), in_mm(seen.shape.edge_fibre(angle)));
        if length > 0.0 && is_over(fibre / length, most) {
            let [stretched, most] = apart([fibre / length, most], 2, times);
            let most = plain(&most);
            let message = format!(
                "The edges of “{}” are stretched to {}, {stretched} times its length; {most} is the limit.",
                scene.name(seen.at),
                scene.millimeters(fibre)
            );
            let remedy = "Twist a sample first, twist over a greater length, or in two even heats.";
            found.push(RULE.at(scene.place(Some(seen.at)), message, remedy.to_owned()));
        }
    }
}
