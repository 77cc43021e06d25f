//! Plates in one with what is before them: zones that follow each other without a neck.

use super::scene::{Rule, Scene, Seen};
use super::{Check, Finding, Severity};
use crate::metal::{Shape, in_mm};
use crate::plan::Form;

pub(super) const CHECK: Check = Check {
    ids: &["joined-to-nothing", "plate-steps"],
    summary: "Plates that follow each other without a neck: whether there is one before, as wide and as thick where they meet.",
    run,
};

const NOTHING: Rule = Rule {
    id: "joined-to-nothing",
    severity: Severity::Warning,
    reason: "Only a plate that follows a plate can be one with it; beside other bar it begins at a neck.",
};

const STEPS: Rule = Rule {
    id: "plate-steps",
    severity: Severity::Warning,
    reason: "Zones without a neck are spread as one plate, which is as wide and as thick on both sides of a line across it.",
};

/// Two sizes that differ by less than this are one, in mm.
const ALIKE_MM: f64 = 0.05;

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    let written: Vec<_> = scene.written().collect();
    let before = std::iter::once(None).chain(written.iter().map(Some));
    for ((at, segment), before) in written.iter().zip(before) {
        if !segment.form.joins_before() {
            continue;
        }
        let place = scene.place(Some(*at));
        let Some((plate, _)) = before.filter(|(_, before)| matches!(before.form, Form::Flag(_))) else {
            let message =
                format!("“{}” is to be one plate with what is before it, and that isn't a plate.", scene.name(*at));
            let remedy = "Put a flag before it, or let it begin at a neck.";
            found.push(NOTHING.at(place, message, remedy.to_owned()));
            continue;
        };
        let seen = |wanted: usize| scene.segments().find(|seen| seen.at == wanted);
        let Some(([own_width, own_thick], [width, thick])) =
            seen(*at).and_then(|own| Some((end(&own, false)?, end(&seen(*plate)?, true)?)))
        else {
            continue;
        };
        if (own_width - width).abs() > ALIKE_MM || (own_thick - thick).abs() > ALIKE_MM {
            let size = |wide: f64, thick: f64| format!("{} × {}", scene.millimeters(wide), scene.millimeters(thick));
            let message = format!(
                "“{}” begins {}, and “{}” ends {}: they are to be one plate.",
                scene.name(*at),
                size(own_width, own_thick),
                scene.name(*plate),
                size(width, thick)
            );
            let remedy = "Give both the same width and thickness where they meet, or let it begin at a neck.";
            found.push(STEPS.at(place, message, remedy.to_owned()));
        }
    }
}

/// How wide and how thick a plate is spread at its start or at its end, away from the datum, in mm.
fn end(seen: &Seen<'_>, at_end: bool) -> Option<[f64; 2]> {
    let blank = seen.shape.blank();
    let Shape::Flag { outline, root, tip, .. } = blank.as_ref().unwrap_or(seen.shape) else { return None };
    let at_tip = at_end != seen.balance.reversed;
    let width = outline.end_width(at_tip).map_or(0.0, in_mm);
    Some([width, in_mm(if at_tip { *tip } else { *root })])
}
