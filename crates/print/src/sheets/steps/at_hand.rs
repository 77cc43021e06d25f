//! What lies at hand besides tools and gauges, and how the cards are read. Common practice, no source.

use crate::fonts::Weight;
use crate::sheets::findings::heading;
use crate::sheets::flow::Block;
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::BODY;
use fh_core::balance::Balance;
use fh_core::metal::View;
use fh_core::plan::{AnvilPlace, Form, Operation, Plan};
use fh_work::{Worked, checking_celsius};

/// What lies at hand besides the tools of the list.
pub(super) fn at_hand(plan: &Plan, worked: &Worked) -> Vec<&'static str> {
    let tasks = || worked.steps.iter().flat_map(|step| &step.tasks);
    let does = |operation: Operation| tasks().any(|task| task.operation == operation);
    // What a tool of the list is anyway.
    let listed = |words: &str| worked.tools.iter().any(|tool| tool.words.starts_with(words));
    let at = |place: AnvilPlace| worked.steps.iter().any(|step| step.place == place);
    let said = || worked.steps.iter().flat_map(|step| step.lay.iter().chain(&step.check));
    let is_said = |word: &str| said().any(|words| words.contains(word));
    let is_hot = worked.steps.iter().any(fh_work::WorkedStep::is_hot);
    [
        (true, "safety glasses"),
        (is_hot, "glove for the tongs hand"),
        (is_hot, "extinguisher"),
        (!listed("saw"), "saw or hot cut"),
        (true, "rule, square and scriber"),
        (true, "dividers"),
        (true, "the mark sheet"),
        (asks_for_templates(plan), "the templates"),
        (worked.gauges.iter().any(|gauge| !gauge.caliper), "the gauge strip"),
        (worked.gauges.iter().any(|gauge| gauge.caliper) || is_said("caliper"), "caliper"),
        (at(AnvilPlace::SwageBlock), "swage block"),
        (at(AnvilPlace::Vice) && !listed("vice"), "vice"),
        (is_hot, "bucket of water"),
        (does(Operation::Wax), "wax, oil or paint"),
        (tasks().any(|task| matches!(task.operation, Operation::Split | Operation::Trim)), "soft plate to cut on"),
    ]
    .into_iter()
    .filter_map(|(wanted, words)| wanted.then_some(words))
    .collect()
}

/// Whether something is bent, or spread to an outline.
fn asks_for_templates(plan: &Plan) -> bool {
    let flat = plan.bars.iter().flat_map(|bar| bar.flat());
    let mut segments = flat.map(|flat| flat.segment);
    segments.any(|segment| {
        let is_bent = segment.bend.as_ref().is_some_and(|bend| !matches!(bend, fh_core::plan::Bend::Twist { .. }));
        is_bent || matches!(segment.form, Form::Flag(_) | Form::Hole(_))
    })
}

/// How the bar lies, and from what its sides are named.
fn sides_words(plan: &Plan, balance: &Balance) -> String {
    let bars = plan.bars.iter().zip(&balance.bars).filter(|(bar, _)| !bar.segments.is_empty());
    let (tops, nears): (Vec<_>, Vec<_>) = bars.partition(|(_, bar)| bar.marked_view() == View::Top);
    let named = |bars: &[(&fh_core::plan::Bar, &fh_core::balance::BarBalance)]| {
        bars.iter().map(|(bar, _)| format!("“{}”", bar.name.trim())).collect::<Vec<_>>().join(", ")
    };
    let punched = match (tops.as_slice(), nears.as_slice()) {
        (_, []) => "the punched side is the top".to_owned(),
        ([], _) => "the punched side is the near side".to_owned(),
        (_, nears) => format!("the punched side is the top, but of {} the near side", named(nears)),
    };
    format!("Sides are named as the bar lies on the mark sheet, its datum end at the left: {punched}.")
}

/// How the cards are read, in a few lines.
pub(super) fn reading_block(plan: &Plan, balance: &Balance, width: f64) -> Block {
    let sizes = checking_celsius(plan).map_or_else(
        || "Sizes are cold.".to_owned(),
        |celsius| format!("Sizes are cold, and as measured hot at {celsius:.0} °C."),
    );
    let said = [
        sides_words(plan, balance),
        format!("{sizes} The bar is drawn as it is after the step; the length to heat is that before it."),
    ];
    said.iter().fold(heading("How to read the cards"), |all, words| {
        all.over(paragraph(words, BODY, Weight::Regular, width).then_free(0.8))
    })
}
