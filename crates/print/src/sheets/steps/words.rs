//! What a card says, settled in words before anything is laid out.

use super::anvil::Act;
use fh_core::describe::upper_first;
use fh_core::plan::{AnvilPlace, Operation, Plan};
use fh_work::{LaidLine, MarkLine, Size, Task, WorkedStep};

/// One card.
pub(in crate::sheets) struct CardWords<'a> {
    /// The step's number.
    pub(in crate::sheets) number: String,
    /// `heat 3`, `heats 4 to 7`, `cold`, `warm`.
    pub(in crate::sheets) heat: String,
    /// What it is called.
    pub(in crate::sheets) title: &'a str,
    /// What its parts become.
    pub(super) becomes: String,
    /// Where it is done.
    pub(in crate::sheets) place: AnvilPlace,
    /// What is done there, for its picture.
    pub(super) act: Act,
    /// How the bar lies there.
    pub(in crate::sheets) lies: Vec<String>,
    /// What it is done with.
    pub(in crate::sheets) tools: Vec<&'a str>,
    /// What the tongs hold.
    pub(super) tongs: Option<String>,
    /// The sizes to reach.
    pub(super) sizes: &'a [Size],
    /// The marks to lay off.
    pub(super) marks: &'a [MarkLine],
    /// The holes and slits that are laid off with them.
    pub(super) laid: &'a [LaidLine],
    /// What is read besides, each under its word.
    pub(super) said: Vec<(&'static str, String)>,
    /// What to beware of.
    pub(in crate::sheets) caution: Option<&'a str>,
    /// The same as it stands on a card, where an earlier one has it too.
    pub(super) caution_words: Option<String>,
    /// How long a stretch is hot, how hot it is worked, and for how long.
    pub(super) fire: Option<String>,
    /// Whether so little is to be said that a row does for it.
    pub(super) is_slim: bool,
}

/// The words of step `number`, counted from 0.
pub(in crate::sheets) fn card_words<'a>(plan: &Plan, number: usize, step: &'a WorkedStep) -> CardWords<'a> {
    CardWords {
        number: (number + 1).to_string(),
        heat: step.warmth().words(),
        title: &step.title,
        becomes: if is_told_by_its_sizes(step) { String::new() } else { step.becomes.join("; ") },
        place: step.place,
        act: Act::of(step),
        lies: lies(step),
        tools: step.tool.split("; ").map(str::trim).filter(|tool| !tool.is_empty()).collect(),
        tongs: step.held_words(plan),
        sizes: &step.sizes,
        marks: &step.marks,
        laid: &step.laid,
        said: said(step),
        caution: step.caution.as_deref().filter(|words| !words.trim().is_empty()),
        caution_words: None,
        fire: fire(plan, step),
        is_slim: is_slim(step),
    }
}

/// Whether a step looks at the bar, or puts something on it: it has no size of its own, and nothing is drawn of it.
fn is_slim(step: &WorkedStep) -> bool {
    use Operation as O;
    let looks = |task: &Task| {
        let whole = matches!(task.operation, O::Check | O::Brush | O::Wax | O::Straighten);
        whole && task.joint.is_none() && (task.part.is_none() || task.operation == O::Brush)
    };
    let own = step.step.reach.is_some() || step.step.picture.is_some();
    !step.tasks.is_empty() && step.tasks.iter().all(looks) && !own
}

/// Whether the table of sizes tells all of what the parts become.
fn is_told_by_its_sizes(step: &WorkedStep) -> bool {
    use Operation as O;
    let is_told = |task: &Task| matches!(task.operation, O::Draw | O::Taper | O::SetDown) && task.to.is_none();
    !step.sizes.is_empty() && step.tasks.iter().all(is_told)
}

/// `Hot: 54 mm, in 2 heats · yellow, 1200 °C, down to cherry red, 850 °C; about 25 s of work`.
fn fire(plan: &Plan, step: &WorkedStep) -> Option<String> {
    let told: Vec<String> = hot_words(plan, step).into_iter().chain(step.heat_words(plan)).collect();
    (!told.is_empty()).then(|| upper_first(&told.join(" · ")))
}

/// What has to be hot, in words; none where it is done cold.
fn hot_words(plan: &Plan, step: &WorkedStep) -> Option<String> {
    let words = step.hot_words(plan)?;
    Some(match step.needs {
        0 | 1 => words,
        needs => format!("{words}, in {needs} heats"),
    })
}

/// The edge and the side of the bar that is up.
fn lies(step: &WorkedStep) -> Vec<String> {
    let edge = step.edge.as_ref().map(|edge| match step.place {
        AnvilPlace::NearEdge | AnvilPlace::FarEdge => format!("edge rounded to {edge}"),
        _ => format!("edge radius {edge}"),
    });
    // How it lies for marking is told in a sentence.
    let up = step.up.as_ref().filter(|_| step.marked_view.is_none()).map(|up| format!("{up} up"));
    edge.into_iter().chain(up).collect()
}

/// Everything that is read besides the sizes: what has to be hot first of all.
fn said(step: &WorkedStep) -> Vec<(&'static str, String)> {
    let heat = step.heat_with.iter().map(|words| ("heat", words.clone()));
    let measure = (!step.measure.is_empty()).then(|| ("measure", step.measure.join("; ")));
    let others = [
        ("lay", &step.lay),
        ("leave", &step.leave),
        ("check", &step.check),
        ("note", &step.step.note),
        ("picture", &step.step.picture),
    ];
    let others = others.into_iter().filter_map(|(head, words)| Some((head, words.clone()?)));
    let notes = step.part_notes.iter().map(|words| ("note", words.clone()));
    let known = step.step.accepted.iter().map(|accepted| ("I know", accepted.because.clone()));
    let notes = known.chain(notes);
    heat.chain(measure).chain(others).chain(notes).filter(|(_, words)| !words.trim().is_empty()).collect()
}
