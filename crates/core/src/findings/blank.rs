//! Plates that are cut to shape: an outline that its blank does not hold.

use super::scene::{Rule, Scene, Seen};
use super::{Check, Finding, Severity};
use crate::metal::{Outline, Shape, in_mm, mm2, mm3};

pub(super) const CHECK: Check = Check {
    ids: &["outline-out-of-blank"],
    summary: "Plates whose outline runs out of the blank it is cut from.",
    run,
};

const OUT: Rule = Rule {
    id: "outline-out-of-blank",
    severity: Severity::Stop,
    reason: "Where the blank has no metal there is nothing to cut the outline from.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        let Some(cut) = seen.shape.cut().filter(|cut| cut.missing_area > mm2(0.0)) else { continue };
        let message = format!(
            "The outline of “{}” runs out of its blank: {} mm² of it are missing, {} mm³ of metal.",
            scene.name(seen.at),
            figure((cut.missing_area / mm2(1.0)).value),
            figure((cut.missing / mm3(1.0)).value),
        );
        found.push(OUT.at(scene.place(Some(seen.at)), message, remedy(scene, &seen)));
    }
}

/// A figure with one decimal where it is small.
fn figure(size: f64) -> String {
    if size < 100.0 { format!("{size:.1}") } else { format!("{size:.0}") }
}

/// By how much the blank falls short at each of its sides, where one does.
fn remedy(scene: &Scene<'_>, seen: &Seen<'_>) -> String {
    let Shape::Flag { outline, blank: Some(blank), .. } = seen.shape else { return String::new() };
    let [own, of_blank] = [outline, &blank.outline].map(reach);
    let beyond = [
        ("longer at the tip", own[1] - of_blank[1]),
        ("wider towards you", of_blank[2] - own[2]),
        ("wider away from you", own[3] - of_blank[3]),
    ];
    let short: Vec<_> = beyond
        .into_iter()
        .filter(|(_, by)| *by > 1e-6)
        .map(|(where_, by)| format!("{} {where_}", scene.millimeters_or_more(by)))
        .collect();
    match short.as_slice() {
        [] => {
            "Give the blank the shape of the outline there, move the base line, or cut the outline smaller.".to_owned()
        }
        _ => format!("Spread the blank {}; or move the base line, or cut the outline smaller.", short.join(", ")),
    }
}

/// From where to where an outline goes along the bar, and across it, in mm.
fn reach(outline: &Outline) -> [f64; 4] {
    let [low, high] = outline.across_mm();
    [0.0, in_mm(outline.length()), low, high]
}
