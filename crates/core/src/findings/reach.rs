//! Reach: a part that has to be hot farther in from the end of the bar than the fire takes it.
//!
//! How far in the fire takes a bar is one thing; how much of it one heat makes hot, wherever that is, is another: the zone
//! of the heat rules.

use super::scene::{Rule, Scene, Seen};
use super::{Check, Finding, Severity, is_over};
use crate::metal::in_mm;
use crate::plan::{Form, Limits, Segment};
use uom::si::f64::Length;

pub(super) const CHECK: Check = Check {
    ids: &["beyond-the-fire"],
    summary: "Parts that have to be hot farther in from the end of the bar than the fire takes it.",
    run,
};

const RULE: Rule = Rule {
    id: "beyond-the-fire",
    severity: Severity::Note,
    reason: "A closed forge takes in no more. In an open fire the bar goes through, and what is bent already may not pass.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    if !scene.is_bar() {
        return;
    }
    let depth = scene.limit(scene.plan.limits.reach.as_ref(), Limits::REACH);
    let worked = scene.segments().filter(|seen| !seen.segment.form.is_as_stock() || seen.segment.bend.is_some());
    let end = scene.balance.last_mark();
    let farthest = worked.map(|seen| (how_far(scene, end, &seen), seen)).max_by(|one, other| one.0.total_cmp(&other.0));
    let Some((far, seen)) = farthest.filter(|(far, _)| is_over(*far, depth)) else { return };
    let [far, depth] = scene.apart([far, depth]);
    let name = scene.name(seen.at);
    let message = format!("“{name}” has to be hot {far} in from the end of the bar; the fire takes in about {depth}.");
    let remedy =
        "Put the bar through an open fire, work it from the other end, or say in the limits how deep your fire is.";
    found.push(RULE.at(scene.place(Some(seen.at)), message, remedy.to_owned()));
}

/// How far in from an end that goes into the fire a part reaches, in mm, of a bar with its last mark there. What is held does not
/// go in; of two free ends the nearer one does.
fn how_far(scene: &Scene<'_>, end: Length, seen: &Seen<'_>) -> f64 {
    let is_hold = |segment: Option<&Segment>| segment.is_some_and(|it| matches!(it.form, Form::Hold(_)));
    let from_datum = in_mm(seen.balance.mark_end);
    let from_far = in_mm(end - seen.balance.mark_start);
    match (is_hold(scene.bar.segments.first()), is_hold(scene.bar.segments.last())) {
        (true, false) => from_far,
        (false, true) => from_datum,
        _ => from_datum.min(from_far),
    }
}
