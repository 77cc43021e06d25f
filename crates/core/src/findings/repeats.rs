//! Repeats: rows of marks that do not fit the segment that they stand on.

use super::scene::{Rule, Scene, Seen};
use super::{Check, Finding, Severity, is_over};
use crate::balance::{LaidRepeat, laid_repeats};
use crate::describe::repeat_count_words;
use crate::metal::in_mm;
use crate::plan::Repeat;

pub(super) const CHECK: Check =
    Check { ids: &["repeats"], summary: "Rows of marks that do not fit on their part.", run };

const RULE: Rule = Rule {
    id: "repeats",
    severity: Severity::Warning,
    reason: "A row that does not fit is struck unevenly, or on metal that belongs to something else.",
};

fn run(scene: &Scene<'_>, found: &mut Vec<Finding>) {
    for seen in scene.segments() {
        let length = in_mm(seen.balance.forged_length);
        let wrong: Vec<_> = seen
            .segment
            .repeats
            .iter()
            .zip(laid_repeats(seen.segment, seen.balance))
            .filter_map(|(repeat, laid)| words(scene, repeat, &laid, length))
            .collect();
        found.extend(told(scene, &seen, wrong));
    }
}

/// One finding for a segment, whatever is wrong with its rows.
fn told(scene: &Scene<'_>, seen: &Seen<'_>, wrong: Vec<(String, String)>) -> Option<Finding> {
    let (messages, mut remedies): (Vec<_>, Vec<_>) = wrong.into_iter().unzip();
    remedies.dedup();
    (!messages.is_empty()).then(|| RULE.at(scene.place(Some(seen.at)), messages.join(" "), remedies.join(" ")))
}

/// What is wrong with a row, and what can be done.
fn words(scene: &Scene<'_>, repeat: &Repeat, laid: &LaidRepeat, length: f64) -> Option<(String, String)> {
    let what = &laid.what;
    if laid.count() == 0 {
        return Some((
            format!("None of “{what}” fits on {}.", scene.millimeters(length)),
            "Take a smaller step, width or margin, or make the part longer.".to_owned(),
        ));
    }
    if laid.more {
        let message = format!("More than {} of “{what}” fit; no more are counted.", Repeat::MOST);
        return Some((message, "Take a larger step.".to_owned()));
    }
    let over = in_mm(laid.over);
    if !is_over(over, 0.0) {
        return None;
    }
    let beyond = match &repeat.margin {
        Some(margin) if margin.mm() > 0.0 => "the room between its margins",
        _ => "the part",
    };
    let message = format!(
        "The row of “{what}”, {}, reaches {} beyond {beyond}.",
        repeat_count_words(laid, scene.plan.units.length),
        scene.millimeters_or_more(over)
    );
    Some((message, "Strike fewer, take a smaller step or margin, or make the part longer.".to_owned()))
}
