//! Walls: what is left beside a hole.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity, is_over, is_under};
use crate::metal::Shape;
use crate::plan::Limits;

pub(super) const CHECK: Check =
    Check { ids: &["thin-wall"], summary: "Holes that leave a thin wall, which burns or tears.", run };

const RULE: Rule = Rule {
    id: "thin-wall",
    severity: Severity::Warning,
    reason: "Thin metal next to thick burns first and cools first, and tears when the hole is drifted.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    let least = scene.limit(scene.plan.limits.thin.as_ref(), Limits::THIN);
    for seen in scene.segments() {
        let Shape::Hole { outline, hole, at, .. } = seen.shape else { continue };
        let wall = outline.wall_mm(hole, *at);
        if is_under(wall, least) && is_over(wall, 0.0) {
            let [left, needed] = scene.apart([wall, least]);
            let message =
                format!("The hole of “{}” leaves a wall of {left}; {needed} is the least.", scene.name(seen.at));
            let remedy = format!(
                "Make the boss {} wider or longer there, or the hole smaller.",
                scene.millimeters_or_more(2.0 * (least - wall))
            );
            found.push(RULE.at(scene.place(Some(seen.at)), message, remedy));
        }
    }
}
