//! What lies at hand besides tools and gauges, and how the cards are read. Common practice, no source.

use crate::drawing::{Item, at};
use crate::fonts::Weight;
use crate::pen::Pen;
use crate::sheets::findings::heading;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::paragraph::{lines, paragraph};
use crate::sheets::steps::cell::lines_block;
use crate::sheets::type_sizes::BODY;
use crate::typeset;
use fh_core::balance::Balance;
use fh_core::metal::View;
use fh_core::plan::{AnvilPlace, Form, Operation, Plan};
use fh_work::{Worked, checking_celsius};

/// The side of a box to tick.
const TICK_MM: f64 = 4.2;
/// From the start of a box to its words.
const WORDS_MM: f64 = 6.2;
/// Between two things in a line.
const BETWEEN_MM: f64 = 7.0;
/// From one line to the next.
const LINE_MM: f64 = 7.0;

/// Puts on the flow what lies at hand besides, each with a box to tick.
pub(super) fn put_at_hand(flow: &mut Flow, plan: &Plan, worked: &Worked) {
    let width = flow.width();
    let mut items = Vec::new();
    let (mut x, mut y) = (0.0, 0.0);
    for words in at_hand(plan, worked) {
        let long = WORDS_MM + typeset::width_mm(words, BODY, Weight::Regular);
        if x > 0.0 && x + long > width {
            (x, y) = (0.0, y + LINE_MM);
        }
        items.push(Item::rectangle(
            at(x + 0.2, y + 0.6),
            at(x + 0.2 + TICK_MM, y + 0.6 + TICK_MM),
            None,
            Some(Pen::Frame),
        ));
        let line = lines_block(&lines(words, BODY, Weight::Regular, width - WORDS_MM, 1), BODY, Weight::Regular);
        items.extend(line.items.into_iter().map(|item| item.shifted(x + WORDS_MM, y + 0.6)));
        x += long + BETWEEN_MM;
    }
    flow.put(heading("Also have at hand").over(Block { height: y + LINE_MM, items }).then_free(3.0));
}

fn at_hand(plan: &Plan, worked: &Worked) -> Vec<&'static str> {
    let tasks = || worked.steps.iter().flat_map(|step| &step.tasks);
    let does = |operation: Operation| tasks().any(|task| task.operation == operation);
    // What a tool of the list is anyway.
    let listed = |words: &str| worked.tools.iter().any(|tool| tool.words.starts_with(words));
    let in_the_vice = worked.steps.iter().any(|step| step.place == AnvilPlace::Vice);
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
        (worked.gauges.iter().any(|gauge| gauge.caliper), "caliper"),
        (in_the_vice && !listed("vice"), "vice"),
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
    format!(
        "The bar lies as on the mark sheet, its datum end at the left: {punched}. All sides are named from that, however it is turned."
    )
}

/// How the cards are read, in a few lines.
pub(super) fn reading_block(plan: &Plan, balance: &Balance, width: f64) -> Block {
    let sizes = checking_celsius(plan).map_or_else(
        || "Every size is the cold one.".to_owned(),
        |celsius| format!("Each size is given twice: cold, and as measured hot at {celsius:.0} °C."),
    );
    let said = [
        sides_words(plan, balance),
        format!("{sizes} All strips under a band are drawn at one scale; what the step works is hatched."),
        "Each card shows the bar as it is when the step is done; the length to heat is given as it is before the step."
            .to_owned(),
        "Forge to the section, by the gauge: how long a part comes out follows from it, fat short and thin long. Its range \
            is given with what it follows from."
            .to_owned(),
        "“Heat 3” is the third time in the fire; “heats 4 to 7” are four times.".to_owned(),
    ];
    said.iter().fold(heading("How to read the cards"), |all, words| {
        all.over(paragraph(words, BODY, Weight::Regular, width).then_free(0.8))
    })
}
