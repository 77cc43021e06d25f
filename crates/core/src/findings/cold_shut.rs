//! Cold shut: a step too deep for its inside radius, or an inside corner without one.

use super::scene::{Rule, Scene, Seen, plain, times};
use super::{Check, Finding, Severity, apart, is_over};
use crate::metal::{Shape, View, in_mm};
use crate::plan::{Limits, Sides};

pub(super) const CHECK: Check =
    Check { ids: &["cold-shut"], summary: "Inside corners set down with too small a radius for their depth.", run };

const RULE: Rule = Rule {
    id: "cold-shut",
    severity: Severity::Warning,
    reason: "The metal folds over the corner instead of flowing round it, and the fold is a crack.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    let most = scene.plan.limits.step_to_radius.unwrap_or(Limits::STEP_TO_RADIUS);
    for seen in scene.segments() {
        if let Shape::Shoulder { radius, sides, .. } = seen.shape {
            let (depth, radius) = (deepest_step(&seen, sides), in_mm(*radius));
            if is_over(depth, most * radius) {
                found.push(shoulder(scene, &seen, depth, radius, most));
            }
        }
        if let Some(standing) = &seen.balance.standing {
            let depth = in_mm(standing.height - standing.corner.thickness);
            let edge = standing.edges.iter().map(|edge| in_mm(*edge)).fold(f64::INFINITY, f64::min);
            if is_over(depth, most * edge) {
                found.push(beside_corner(scene, &seen, depth, edge, most));
            }
        }
        if let Shape::Peak { corner, .. } = seen.shape
            && !is_over(in_mm(corner.inside_radius), 0.0)
        {
            let message = format!("The corner “{}” has no inside radius.", scene.name(seen.at));
            let remedy = "Keep an inside radius of a quarter of the thickness or more, and square the outside only.";
            found.push(RULE.at(scene.place(Some(seen.at)), message, remedy.to_owned()));
        }
    }
}

fn shoulder(scene: &Scene<'_>, seen: &Seen<'_>, depth: f64, radius: f64, most: f64) -> Finding {
    if !is_over(radius, 0.0) {
        let message = format!("The shoulder “{}” has no inside radius.", scene.name(seen.at));
        let remedy = format!("Use a radius of {} or more.", scene.millimeters_or_more(depth / most));
        return RULE.at(scene.place(Some(seen.at)), message, remedy);
    }
    let [times, limit] = apart([depth / radius, most], 1, times);
    let limit = plain(&limit);
    let message = format!(
        "The shoulder “{}” steps {} deep with an inside radius of {}: {times} times the radius, where {limit} is the limit.",
        scene.name(seen.at),
        scene.millimeters(depth),
        scene.millimeters(radius)
    );
    let remedy = format!("Use a radius of {} or more, or set down in stages.", scene.millimeters_or_more(depth / most));
    RULE.at(scene.place(Some(seen.at)), message, remedy)
}

/// The set-down beside what is left for a corner, over an edge that is too sharp for it.
fn beside_corner(scene: &Scene<'_>, seen: &Seen<'_>, depth: f64, edge: f64, most: f64) -> Finding {
    let message = format!(
        "Beside the corner “{}” the bar is set down {} over an edge of {}.",
        scene.name(seen.at),
        scene.millimeters(depth),
        scene.millimeters(edge)
    );
    let remedy = format!("Use an edge of {} or more.", scene.millimeters_or_more(depth / most));
    RULE.at(scene.place(Some(seen.at)), message, remedy)
}

/// The deepest step on any side that is set down, in mm.
fn deepest_step(seen: &Seen<'_>, sides: &Sides) -> f64 {
    let Shape::Shoulder { from, to, .. } = seen.shape else { return 0.0 };
    let step = |view: View, one: u16, other: u16| {
        let change = (from.seen_mm(view) - to.seen_mm(view)).abs();
        match (sides.contains(one), sides.contains(other)) {
            (true, true) => change / 2.0,
            (false, false) => 0.0,
            _ => change,
        }
    };
    step(View::Side, 0, 180).max(step(View::Top, 90, 270))
}
