//! Sockets that are rolled from a neck too wide to go round.

use super::scene::{Rule, Scene};
use super::{Check, Finding, Severity, is_over};
use crate::metal::{Bent, Shape, in_mm};
use crate::plan::SocketAxis;

pub(super) const CHECK: Check = Check {
    ids: &["socket-root"],
    summary: "Sockets along the bar that begin at a neck wider than what they are rolled round.",
    run,
};

const RULE: Rule = Rule {
    id: "socket-root",
    severity: Severity::Warning,
    reason: "The plate curls up from the neck, and over the width of that, which is stouter, it stays flat.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    let all: Vec<_> = scene.segments().collect();
    for (place, seen) in all.iter().enumerate() {
        let Some(Bent::Socket { mandrel, axis: SocketAxis::Along, .. }) = seen.balance.bent else { continue };
        let before = place.checked_sub(1).and_then(|place| all.get(place));
        // The root lies toward the bar: of the first part away from the datum.
        let neck = if seen.balance.reversed { all.get(place + 1) } else { before };
        let Some(neck) = neck.filter(|neck| !is_plate(neck.shape) && neck.segment.form.is_finished()) else { continue };
        let at_end = seen.balance.reversed == neck.balance.reversed;
        let [wide, _] = neck.shape.end_extents_mm(at_end, &scene.balance.stock);
        if is_over(wide, in_mm(mandrel)) {
            let [wide, round] = scene.apart([wide, in_mm(mandrel)]);
            let message = format!(
                "“{}” is {wide} wide where the socket “{}” begins, which is rolled round {round}.",
                scene.name(neck.at),
                scene.name(seen.at)
            );
            let remedy = format!(
                "Draw “{}” there to well below {}, and let the socket run in to it.",
                scene.name(neck.at),
                scene.millimeters_or_less(in_mm(mandrel))
            );
            found.push(RULE.at(scene.place(Some(seen.at)), message, remedy));
        }
    }
}

/// Whether what lies beside a socket is rolled up with it.
fn is_plate(shape: &Shape) -> bool {
    matches!(shape, Shape::Flag { .. } | Shape::Hole { .. })
}
