//! What the plan notes on its parts, told where a smith needs it: each sentence at the step that it speaks of, and where it speaks of
//! none at the step that works the part first, before anything is done that it would have another way.

use crate::job::site::Site;
use crate::job::task::Task;
use crate::says::words::sentences;
use crate::step::WorkedStep;
use fh_core::plan::Operation;

/// How a note begins to speak of a deed: the words that it has then, whatever their ending.
const DEEDS: [(&[Operation], &[&str]); 11] = {
    use Operation as O;
    [
        (&[O::Bend, O::Corner, O::Roll], &["bend", "bent", "curl", "roll"]),
        (&[O::Twist], &["twist"]),
        (&[O::Weld], &["weld"]),
        (&[O::Scarf], &["scarf"]),
        (&[O::Upset], &["upset"]),
        (&[O::Draw, O::Taper], &["draw", "taper"]),
        (&[O::Spread, O::Flatten], &["spread", "flatten"]),
        (&[O::Split], &["split"]),
        (&[O::Punch, O::Drift, O::Drill], &["punch", "drift", "drill"]),
        (&[O::Trim, O::PartOff], &["trim", "file", "filing"]),
        (&[O::Wax], &["wax", "oil", "paint"]),
    ]
};

/// What has such a word has to be known before the part is begun.
const EARLY: [&str; 2] = ["before", "first"];

/// What has such a word is done when nothing else is left to do to the part.
const LATE: &str = "last";

/// For each step what the plan notes on the parts that it works; what no step works is told at the check of its bar, or at the bar's
/// last step.
pub(crate) fn part_notes(sites: &[Site<'_>], steps: &[WorkedStep]) -> Vec<Vec<String>> {
    let mut all = vec![Vec::new(); steps.len()];
    for site in sites {
        for part in site.parts() {
            let note = part.segment.notes.as_deref().map_or("", str::trim);
            let mut told: Vec<(usize, Vec<&str>)> = Vec::new();
            for sentence in sentences(note) {
                let Some(step) = step_of(steps, (site.index, part.at), sentence) else { continue };
                match told.iter_mut().find(|(known, _)| *known == step) {
                    Some((_, words)) => words.push(sentence),
                    None => told.push((step, vec![sentence])),
                }
            }
            for (step, words) in told {
                let (words, is_alone) = (words.join(" "), steps[step].parts() == [part.at]);
                all[step].push(if is_alone { words } else { format!("“{}”: {words}", site.name(part.at)) });
            }
        }
    }
    all
}

/// The step that a sentence on a part is told at: of the steps that do to the part what it names the first; what is to be known
/// before, or names nothing that is done, where the part is worked first.
fn step_of(steps: &[WorkedStep], (bar, part): (usize, usize), sentence: &str) -> Option<usize> {
    let words: Vec<String> =
        without_names(sentence).split(|letter: char| !letter.is_alphabetic()).map(str::to_lowercase).collect();
    let says = |word: &str| words.iter().any(|said| said == word);
    let names = |operation: Operation| {
        let mut stems = DEEDS.iter().filter(|(own, _)| own.contains(&operation)).flat_map(|(_, stems)| *stems);
        stems.any(|stem| words.iter().any(|said| said.starts_with(stem)))
    };
    let first = first_of(steps, bar, part);
    if EARLY.into_iter().any(says) {
        return first;
    }
    let works = |step: &WorkedStep| step.bar == Some(bar) && step.tasks.iter().any(|task| task.part == Some(part));
    let does = |step: &WorkedStep| {
        let own = |task: &Task| task.part == Some(part) || (task.part.is_none() && task.operation == Operation::Wax);
        step.bar.is_none_or(|own| own == bar) && step.tasks.iter().any(|task| own(task) && names(task.operation))
    };
    let last = || if says(LATE) { steps.iter().rposition(works) } else { None };
    steps.iter().position(does).or_else(last).or(first)
}

/// Words without what stands in quotation marks: a name is no deed.
fn without_names(words: &str) -> String {
    words.split('“').map(|rest| rest.split_once('”').map_or(rest, |(_, after)| after)).collect::<Vec<_>>().join(" ")
}

/// The step that works a part first; of one that is worked by none the check of its bar.
pub(crate) fn first_of(steps: &[WorkedStep], bar: usize, part: usize) -> Option<usize> {
    let on_bar = |step: &WorkedStep| step.bar == Some(bar);
    let works = |step: &WorkedStep| on_bar(step) && step.tasks.iter().any(|task| task.part == Some(part));
    let checks = |task: &Task| task.operation == Operation::Check;
    let is_checked = |step: &WorkedStep| on_bar(step) && step.tasks.iter().any(checks);
    let first = steps.iter().position(works);
    first.or_else(|| steps.iter().rposition(is_checked)).or_else(|| steps.iter().rposition(on_bar))
}
