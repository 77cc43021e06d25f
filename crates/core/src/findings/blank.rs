//! Plates that are cut to shape: an outline that its blank does not hold, a blank that runs on where other bar begins.

use super::scene::{Rule, Scene, Seen, area, volume};
use super::{Check, Finding, Severity};
use crate::metal::{FreeEnd, Outline, Shape, in_mm, mm2, mm3};
use crate::plan::{Chain, Form};

pub(super) const CHECK: Check = Check {
    ids: &["outline-out-of-blank", "blank-runs-on"],
    summary: "Plates whose outline runs out of the blank it is cut from, or stops short of it where the bar goes on.",
    run,
};

const OUT: Rule = Rule {
    id: "outline-out-of-blank",
    severity: Severity::Stop,
    reason: "Where the blank has no metal there is nothing to cut the outline from.",
};

const RUNS_ON: Rule = Rule {
    id: "blank-runs-on",
    severity: Severity::Stop,
    reason: "The next part hangs on the end of the blank; all of the blank beyond the outline is cut away, and the piece would \
             come apart there.",
};

/// A blank that is longer than its outline by less than this ends with it, in mm.
const EVEN_MM: f64 = 0.05;

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    found.extend(scene.segments().filter_map(|seen| runs_on(scene, &seen)));
    let unit = scene.plan.units.length;
    for seen in scene.segments() {
        let Some(cut) = seen.shape.cut().filter(|cut| cut.missing_area > mm2(0.0)) else { continue };
        let message = format!(
            "The outline of “{}” runs out of its blank: {} of it are missing, {} of metal.",
            scene.name(seen.at),
            area((cut.missing_area / mm2(1.0)).value, unit),
            volume((cut.missing / mm3(1.0)).value, unit),
        );
        found.push(OUT.at(scene.place(Some(seen.at)), message, remedy(scene, &seen)));
    }
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

/// A blank that ends beyond its outline, with more of the bar behind it.
fn runs_on(scene: &Scene<'_>, seen: &Seen<'_>) -> Option<Finding> {
    let Shape::Flag { outline, blank: Some(blank), .. } = seen.shape else { return None };
    let [own, of_blank] = [outline, &blank.outline].map(|outline| in_mm(outline.length()));
    if of_blank - own < EVEN_MM {
        return None;
    }
    let next = next_at_tip(scene, seen)?;
    let [own, of_blank, by] = [own, of_blank, of_blank - own].map(|mm| scene.millimeters(mm));
    let name = scene.name(seen.at);
    let message =
        format!("“{name}” is cut {own} long from a blank of {of_blank}, and {next} goes on from the end of the blank.");
    let remedy = format!(
        "Let the outline run on to the end of the blank, as wide there as what it joins; or spread the blank {by} shorter, \
         wider or thicker in place of that."
    );
    Some(RUNS_ON.at(scene.place(Some(seen.at)), message, remedy))
}

/// What hangs on a plate's tip; none where that is free, or only trimmed away or held after it.
fn next_at_tip(scene: &Scene<'_>, seen: &Seen<'_>) -> Option<String> {
    if seen.balance.reversed {
        return None;
    }
    let after = scene.written().skip_while(|(at, _)| *at != seen.at).skip(1);
    let kept = after.filter(|(_, segment)| !matches!(segment.form, Form::Trim(_) | Form::Hold(_)));
    match kept.map(|(at, _)| at).next() {
        Some(next) => Some(format!("“{}”", scene.name(next))),
        None => goes_on(scene).then(|| "the bar".to_owned()),
    }
}

/// Whether the bar goes on behind the end of a chain: behind a branch that is not free there.
fn goes_on(scene: &Scene<'_>) -> bool {
    let Chain::Branch { split, branch } = scene.chain else { return false };
    match scene.balance.segments.get(split).and_then(|segment| segment.shape.as_ref()) {
        Some(Shape::Split(size)) => size.branches.get(branch).is_some_and(|branch| branch.free != FreeEnd::Far),
        _ => false,
    }
}
