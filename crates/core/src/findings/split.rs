//! Splits: a slit without a root that stops a crack, too close to a shoulder, or with branches that do not close up again.

use super::scene::{Rule, Scene, Seen};
use super::{Check, Finding, Severity, is_over};
use crate::metal::{FreeEnd, Shape, SplitSize, in_mm};

pub(super) const CHECK: Check = Check {
    ids: &["split-root", "split-near-shoulder", "branches-differ", "branch-as-cut"],
    summary: "Splits whose slit may crack further, and branches that do not fit each other.",
    run,
};

const ROOT: Rule = Rule {
    id: "split-root",
    severity: Severity::Warning,
    reason: "A sharp end of a slit is where a crack begins, and it runs on while the branches are opened.",
};

const NEAR: Rule = Rule {
    id: "split-near-shoulder",
    severity: Severity::Warning,
    reason: "The metal between the slit and the shoulder tears, or is forged away with it.",
};

const DIFFER: Rule = Rule {
    id: "branches-differ",
    severity: Severity::Warning,
    reason: "Branches that are held together at both ends have to be of one length, or the bar bends.",
};

const AS_CUT: Rule = Rule {
    id: "branch-as-cut",
    severity: Severity::Note,
    reason: "What is left as cut is as wide as the cut makes it, and that follows from the other branches.",
};

/// Lengths that differ by less than this share close up under the hammer; common practice, no source.
const ALIKE: f64 = 0.01;

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    let all: Vec<Seen<'_>> = scene.segments().collect();
    for (place, seen) in all.iter().enumerate() {
        let Shape::Split(split) = seen.shape else { continue };
        if split.root.is_none() {
            let message = format!("The slit of “{}” ends without a radius or a hole.", scene.name(seen.at));
            let remedy = "Drill or punch a hole at the end of the slit, or round it before the branches are opened.";
            found.push(ROOT.at(scene.place(Some(seen.at)), message, remedy.to_owned()));
        }
        for neighbor in [place.checked_sub(1), Some(place + 1)].into_iter().flatten() {
            if let Some(near) = all.get(neighbor) {
                near_shoulder(scene, seen, split, near, neighbor > place, found);
            }
        }
        differing(scene, seen, split, found);
        as_cut(scene, seen, split, found);
    }
}

/// A shoulder right after the slit's closed end.
fn near_shoulder(
    scene: &Scene<'_>,
    seen: &Seen<'_>,
    split: &SplitSize,
    near: &Seen<'_>,
    is_after: bool,
    found: &mut Vec<Finding>,
) {
    let is_free = matches!((split.opens(), is_after), (FreeEnd::Datum, false) | (FreeEnd::Far, true));
    if is_free || !matches!(near.shape, Shape::Shoulder { .. }) {
        return;
    }
    let message = format!("The slit of “{}” ends at the shoulder “{}”.", scene.name(seen.at), scene.name(near.at));
    let thickness = scene.millimeters_or_more(split.stock.seen_mm(crate::metal::View::Side));
    let remedy = format!("Leave {thickness}, the bar's thickness, or more of whole bar between them.");
    found.push(NEAR.at(scene.place(Some(seen.at)), message, remedy));
}

fn differing(scene: &Scene<'_>, seen: &Seen<'_>, split: &SplitSize, found: &mut Vec<Finding>) {
    if split.free != FreeEnd::Neither {
        return;
    }
    let runs_on = split.branches.iter().filter(|branch| branch.free == FreeEnd::Neither);
    let lengths = runs_on.map(|branch| in_mm(branch.forged_length));
    let (least, most) = lengths.fold((f64::INFINITY, 0.0_f64), |(low, high), l| (low.min(l), high.max(l)));
    if is_over(most - least, ALIKE * most) {
        let [least, most] = scene.apart([least, most]);
        let message = format!(
            "The branches of “{}” are from {least} to {most} long, and are held together at both ends.",
            scene.name(seen.at)
        );
        found.push(DIFFER.at(scene.place(Some(seen.at)), message, "Make its branches the same length.".to_owned()));
    }
}

/// Parts left as cut are reckoned with an even share; where the cut stands elsewhere they come out wider or narrower.
fn as_cut(scene: &Scene<'_>, seen: &Seen<'_>, split: &SplitSize, found: &mut Vec<Finding>) {
    use crate::plan::Form;
    if matches!(&seen.segment.form, Form::Split(split) if split.cut.is_some()) {
        // Its parts are counted as the cut leaves them.
        return;
    }
    let even = 1.0 / split.branches.len() as f64;
    for (branch, part) in seen.segment.form.branches().iter().zip(&split.branches) {
        let plain = branch.segments.iter().any(|segment| matches!(segment.form, Form::Plain(_)));
        if plain && is_over((part.share - even).abs(), ALIKE) {
            let message = format!(
                "A part of “{}” is left as cut and counted as an even share of the bar; the cut makes it {} wide.",
                scene.name(seen.at),
                scene.length(part.raw_width)
            );
            let remedy = "Draw it to a section of its own, or give the branches equal metal.";
            found.push(AS_CUT.at(scene.place(Some(seen.at)), message, remedy.to_owned()));
            return;
        }
    }
}
