//! Joints that are all made alike, one after the other: told once, with how many they are.

use super::words::{Below, StepWords, step_words};
use fh_core::plan::Plan;
use fh_work::WorkedStep;

/// Of more joints what goes where is on the cards.
const MOST_TOLD: usize = 5;

/// Whether a step makes a joint as the one before it does: with the same tools, at the same place.
pub(super) fn are_alike(one: &WorkedStep, other: &WorkedStep) -> bool {
    let [[own], [next]] = [&one.tasks[..], &other.tasks[..]] else { return false };
    let said = |step: &WorkedStep| (step.tool.clone(), step.place, step.caution.clone(), step.is_hot());
    let is_plain = |step: &WorkedStep| step.step.note.is_none() && step.step.title.is_none();
    own.joint.is_some()
        && next.joint.is_some()
        && own.operation == next.operation
        && said(one) == said(other)
        && is_plain(one)
        && is_plain(other)
}

/// Some steps that are alike, in the words of one: which they are, and how many.
pub(super) fn alike_words(
    plan: &Plan,
    (alike, steps): (&[usize], &[WorkedStep]),
    told: (Below, Option<&str>),
) -> Option<StepWords> {
    let (first, last) = (*alike.first()?, *alike.last()?);
    let words = step_words(plan, (first, steps), told)?;
    if first == last {
        return Some(words);
    }
    let names: Vec<&str> = alike.iter().filter_map(|at| quoted(&steps.get(*at)?.title)).collect();
    let verb = words.title.split(" “").next().unwrap_or_default();
    let (most, end) = names.split_at(names.len().saturating_sub(1));
    let listed = [most.join(", "), end.concat()].into_iter().filter(|words| !words.is_empty());
    let title = format!("{verb} {}", listed.collect::<Vec<_>>().join(" and "));
    let heats = [first, last].map(|at| steps.get(at).filter(|step| step.is_hot()));
    let heat = match heats {
        [Some(from), Some(to)] if to.heat + to.needs - 1 > from.heat => {
            format!("{}–{}", from.heat, to.heat + to.needs - 1)
        }
        _ => words.heat.clone(),
    };
    let times = format!("×{}, to step {}", alike.len(), last + 1);
    let sizes = [times, words.sizes.clone()].join(" ").trim().to_owned();
    // What goes where of the others.
    let others = alike.iter().skip(1).filter_map(|at| steps.get(*at)?.becomes.first()?.split_once(": "));
    let others: Vec<&str> = others.map(|(_, members)| members).collect();
    let below = match others.len() {
        ..=MOST_TOLD => [words.below.trim_end_matches('.'), &others.join("; ")].join("; ") + ".",
        _ => words.below.clone(),
    };
    Some(StepWords { heat, title, sizes, below, ..words })
}

/// What stands in quotation marks in a title, with them.
fn quoted(title: &str) -> Option<&str> {
    let (from, to) = (title.find('“')?, title.rfind('”')?);
    title.get(from..to + '”'.len_utf8())
}
