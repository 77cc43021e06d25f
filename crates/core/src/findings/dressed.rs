//! Lengths dressed in a die: whether the die can leave what is written, and whether a later bend leaves it.

use super::scene::{Rule, Scene, Seen};
use super::{Check, Finding, Severity, is_over};
use crate::describe::{die_words, dressed_side_words};
use crate::metal::{Bent, Die, Dressing, in_mm};
use std::f64::consts::{FRAC_1_SQRT_2, FRAC_PI_2};

pub(super) const CHECK: Check = Check {
    ids: &["die-too-deep", "die-runs-out", "die-pinched"],
    summary: "Lengths dressed in a die: too deep, beyond their part, or closed by a later bend.",
    run,
};

const DEEP: Rule = Rule {
    id: "die-too-deep",
    severity: Severity::Warning,
    reason: "Deeper than half the metal or than its own radius, a die cuts and folds where it should press.",
};

const RUNS_OUT: Rule = Rule {
    id: "die-runs-out",
    severity: Severity::Warning,
    reason: "What lies beyond the part belongs to another part, and is not in the figures.",
};

const PINCHED: Rule = Rule {
    id: "die-pinched",
    severity: Severity::Warning,
    reason: "The inside of a bend is upset: a groove there closes to a fold, which is a cold shut when it is worked again.",
};

/// A die goes no deeper than this share of the metal: common practice, no source.
const HALF: f64 = 0.5;

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        for (index, dressing) in seen.balance.dressed.iter().enumerate() {
            let words = Words::new(scene, &seen, index, dressing);
            found.extend(deep(scene, &seen, dressing, &words));
            found.extend(runs_out(scene, &seen, dressing, &words));
            found.extend(pinched(scene, &seen, dressing, &words));
        }
    }
}

/// How one dressed length is told.
struct Words {
    /// `“arm”, dressed length 2`.
    name: String,
    die: String,
    side: String,
}

impl Words {
    fn new(scene: &Scene<'_>, seen: &Seen<'_>, index: usize, dressing: &Dressing) -> Self {
        let number =
            if seen.balance.dressed.len() > 1 { format!(", dressed length {}", index + 1) } else { String::new() };
        let written = seen.segment.dressed.get(index);
        Self {
            name: format!("“{}”{number}", scene.name(seen.at)),
            die: die_words(dressing, scene.plan.units.length),
            side: written.map_or_else(String::new, |written| dressed_side_words(written, dressing)),
        }
    }
}

/// How thick the part is toward a die, where it is thinnest under it, in mm.
fn thickness(seen: &Seen<'_>, dressing: &Dressing) -> Option<f64> {
    let across = |section: &crate::metal::SectionSize| in_mm(section.section().extent(FRAC_PI_2 - dressing.side));
    let mut ends = seen.shape.sections().map(across);
    let first = ends.next()?;
    let last = ends.next().unwrap_or(first);
    let long = in_mm(seen.shape.length()).max(1e-9);
    let at = |place: f64| {
        let share = (place / long).clamp(0.0, 1.0);
        let share = seen.shape.runout().share_at(if seen.balance.reversed { 1.0 - share } else { share });
        first + (last - first) * share
    };
    Some(at(in_mm(dressing.start)).min(at(in_mm(dressing.end))))
}

/// How deep a die may go on a part, in mm: half the metal, a fuller no deeper than its nose is round, a swage no deeper than its
/// hollow.
fn deepest(seen: &Seen<'_>, dressing: &Dressing) -> Option<f64> {
    let half = thickness(seen, dressing)? * HALF;
    Some(match dressing.die {
        Die::Fuller { radius } | Die::FullerAcross { radius } | Die::Swage { radius } => half.min(in_mm(radius)),
        Die::VBlock { .. } => half,
    })
}

fn deep(scene: &Scene<'_>, seen: &Seen<'_>, dressing: &Dressing, words: &Words) -> Option<Finding> {
    let (depth, most) = (in_mm(dressing.depth), deepest(seen, dressing)?);
    if !is_over(depth, most) {
        return None;
    }
    let [now, allowed] = scene.apart([depth, most]);
    let Words { name, die, side } = words;
    let message = format!("{name}: {now} deep on {side}; a {die} goes {allowed} deep there at most.");
    let thin = most < 0.05;
    let remedy = if thin {
        "End it before the part runs out thin.".to_owned()
    } else {
        format!("Go {} deep at most, or take a larger die or thicker metal.", scene.millimeters_or_less(most))
    };
    Some(DEEP.at(scene.place(Some(seen.at)), message, remedy))
}

fn runs_out(scene: &Scene<'_>, seen: &Seen<'_>, dressing: &Dressing, words: &Words) -> Option<Finding> {
    let (start, end, long) = (in_mm(dressing.start), in_mm(dressing.end), in_mm(seen.shape.length()));
    let beyond = (-start).max(end - long);
    if !is_over(beyond, 0.0) {
        return None;
    }
    let message = format!(
        "{}: reaches {} beyond the part, which is {} long forged.",
        words.name,
        scene.millimeters_or_more(beyond),
        scene.millimeters(long)
    );
    let remedy = "Begin it nearer the middle, make it shorter, or dress the part beside it too.";
    Some(RUNS_OUT.at(scene.place(Some(seen.at)), message, remedy.to_owned()))
}

fn pinched(scene: &Scene<'_>, seen: &Seen<'_>, dressing: &Dressing, words: &Words) -> Option<Finding> {
    if !matches!(dressing.die, Die::Fuller { .. } | Die::FullerAcross { .. }) {
        return None;
    }
    let (radius, side) = match seen.balance.bent? {
        Bent::Curve { inside_radius, side, .. } => (in_mm(inside_radius), side),
        Bent::Ring { inside_diameter, side, .. } => (in_mm(inside_diameter) / 2.0, side),
        Bent::Scroll { spiral: _, side, .. } => (f64::INFINITY, side),
        _ => return None,
    };
    if (dressing.side - side).cos() <= FRAC_1_SQRT_2 {
        return None;
    }
    let (start, end) = seen.shape.inside_to_centroid(side);
    let middle = f64::midpoint(start, end);
    let shorter =
        if radius.is_finite() { format!("by {:.0} %", 100.0 * middle / (radius + middle)) } else { "there".to_owned() };
    let message = format!(
        "{}: on the inside of its bend, which the bend makes shorter {shorter}: the groove closes.",
        words.name
    );
    let remedy =
        "Dress the outside, or a side across the bend, or sink it wider and true it with the fuller once it is bent.";
    Some(PINCHED.at(scene.place(Some(seen.at)), message, remedy.to_owned()))
}
