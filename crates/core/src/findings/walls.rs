//! Walls: what is left beside a hole.

use super::scene::{Rule, Scene, Seen};
use super::{Check, Finding, Severity, is_over, is_under};
use crate::metal::{Shape, in_mm};
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
        in_plate(scene, &seen, least, found);
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

/// The thinnest of the walls that the holes of a plate leave, to its edge or to each other.
fn in_plate(scene: &Scene<'_>, seen: &Seen<'_>, least: f64, found: &mut Vec<Finding>) {
    if !seen.shape.holds_its_holes() {
        return;
    }
    let mut thin = seen.shape.walls();
    thin.retain(|wall| is_under(in_mm(wall.left), least));
    let Some(wall) = thin.iter().min_by(|one, other| in_mm(one.left).total_cmp(&in_mm(other.left))) else { return };
    let [left, needed] = scene.apart([in_mm(wall.left), least]);
    let name = scene.name(seen.at);
    let which = match (wall.other, seen.shape.plate_holes().len()) {
        (Some(other), _) => format!("Between holes {} and {} of “{name}”", wall.hole + 1, other + 1),
        (None, 1) => format!("Between the hole of “{name}” and its edge"),
        (None, _) => format!("Between hole {} of “{name}” and its edge", wall.hole + 1),
    };
    let message = format!("{which} a wall of {left} is left; {needed} is the least.");
    let by = scene.millimeters_or_more(least - in_mm(wall.left));
    let remedy = match wall.other {
        Some(_) => format!("Move them {by} apart, or make them smaller."),
        None => format!("Move the hole {by} inwards, make it smaller, or the plate larger there."),
    };
    found.push(RULE.at(scene.place(Some(seen.at)), message, remedy));
}
