//! The opening of the step sheets: the job, what the order is held against, and the heat it is for.

use crate::fonts::Weight;
use crate::sheets::cautions;
use crate::sheets::fact_boxes::{Fact, facts_block};
use crate::sheets::findings::{FindingWords, heading, put_findings, put_warnings};
use crate::sheets::flow::Flow;
use crate::sheets::names::{bar_name, title};
use crate::sheets::paragraph::paragraph;
use crate::sheets::steps::job::Job;
use crate::sheets::steps::usual_heat::usual_heat;
use crate::sheets::title::title_block;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT};
use fh_core::describe::scale_words;
use fh_core::findings::Severity;
use fh_core::plan::Plan;
use fh_measure::counted;
use fh_work::{ScaleLoss, Worked, hot_note};

impl Job<'_> {
    /// The title, the facts and the findings; whether there are any steps.
    pub(super) fn start(&self, flow: &mut Flow, kind: &str) -> bool {
        flow.start_part(format!("{} · {}", title(self.plan), kind.to_lowercase()));
        put_head(flow, self, kind);
        let width = flow.width();
        let any = !self.worked.steps.is_empty();
        if !any {
            let words =
                if self.plan.bars.is_empty() { "This plan has no bar yet." } else { "This plan has no steps yet." };
            flow.put(paragraph(words, FACT, Weight::SemiBold, width));
        }
        any
    }
}

/// Puts the title, what to beware of, the facts, the plan's warnings and the findings of the order on the flow.
fn put_head(flow: &mut Flow, job: &Job<'_>, kind: &str) {
    let Job { plan, balance, worked, warned } = *job;
    let width = flow.width();
    let bar = match &plan.bars[..] {
        [bar] => bar_name(plan, 0, bar),
        _ => String::new(),
    };
    flow.put(title_block(&title(plan), &bar, kind, width));
    cautions::put_own(flow, warned);
    flow.put(facts_block(&facts(plan, worked), width).then_free(3.0));
    put_warnings(flow, plan, &balance.findings);
    let findings = order_problems(worked);
    if !findings.is_empty() {
        put_findings(flow, "Problems with this order", &findings);
        flow.skip(3.0);
    }
}

fn facts(plan: &Plan, worked: &Worked) -> Vec<Fact> {
    let fact = |caption, value: String, also: &str| Fact { caption, value, also: also.to_owned() };
    let order = if worked.proposed { "proposed order" } else { "your own order" };
    let mut facts = match &plan.bars[..] {
        [bar] => vec![
            fact("stock", bar.stock.describe(), ""),
            fact("how many", bar.pieces().to_string(), if bar.pieces() > 1 { "all the same" } else { "" }),
        ],
        bars => vec![fact("bars", bars.len().to_string(), "")],
    };
    // What all pieces take stands below, with whose order it is: a wide fact would push the others out of its row.
    let work = format!("{}, {}", counted(worked.steps.len(), "step"), worked.heats_of_one_words());
    let order = worked.heats_of_all_words().map_or_else(|| order.to_owned(), |all| format!("{all}; {order}"));
    let caption = if plan.bars.len() > 1 { "work on one of each bar" } else { "work on one piece" };
    facts.push(fact(caption, work, &order));
    facts.push(fact("material", plan.material_name().to_owned(), ""));
    facts
}

/// What speaks against the order, in words.
pub(in crate::sheets) fn order_problems(worked: &Worked) -> Vec<FindingWords> {
    worked.open_findings().filter_map(finding_words).collect()
}

fn finding_words(finding: &fh_work::OrderFinding) -> Option<FindingWords> {
    let numbers: Vec<String> = finding.steps.iter().take(6).map(|step| (step + 1).to_string()).collect();
    let steps = match numbers.len() {
        0 => String::new(),
        1 => format!("Step {}: ", numbers[0]),
        _ => format!("Steps {}: ", numbers.join(", ")),
    };
    let found = &finding.finding;
    (found.severity > Severity::Note).then(|| FindingWords {
        stop: found.severity == Severity::Stop,
        message: steps + &found.message,
        remedy: found.remedy.clone(),
    })
}

/// Puts on the flow at which heat the hot sizes are meant, and what the fire takes; nothing where nothing is known.
pub(super) fn put_heat_notes(flow: &mut Flow, plan: &Plan, worked: &Worked) {
    /// The bars that are told of at most.
    const MOST_BARS: usize = 8;
    let losses = &worked.scale;
    let many = losses.len() > 1;
    let loss = |loss: &ScaleLoss| match plan.bars.get(loss.bar).filter(|_| many) {
        Some(bar) => format!("{}: {}", bar_name(plan, loss.bar, bar), loss.reason()),
        None => loss.reason(),
    };
    let allowed = plan.bars.iter().enumerate().take(MOST_BARS).map(|(index, bar)| {
        let whose = if plan.bars.len() > 1 { format!("{}: ", bar_name(plan, index, bar)) } else { String::new() };
        format!("{whose}Scale allowed for in the marks: {}.", scale_words(plan, bar))
    });
    let short: Vec<String> = worked.scale_short.iter().map(|it| format!("{} {}", it.message, it.remedy)).collect();
    let longer = (!short.is_empty()).then(|| "Then print the sheets again: the marks move.".to_owned());
    let is_hot = worked.steps.iter().any(fh_work::WorkedStep::is_hot);
    let who = is_hot
        .then(|| format!("Heats are for {}: {}", worked.smith.name(), worked.smith.figures(plan.work.heats.hammer)));
    let usual = usual_heat(plan, &worked.steps).map(|heat| format!("Work at {heat}, where a card has nothing else."));
    let notes = usual
        .into_iter()
        .chain(who)
        .chain(hot_note(plan))
        .chain(allowed)
        .chain(losses.iter().take(MOST_BARS).map(loss))
        .chain(short)
        .chain(longer);
    for (index, note) in notes.enumerate() {
        let block = paragraph(&note, BODY, Weight::Regular, flow.width());
        flow.put(if index == 0 { heading("Heat and scale").over(block) } else { block });
    }
    flow.skip(3.0);
}

/// Puts on the flow why the steps come in this order, each reason once; nothing where any other order would do.
pub(super) fn put_reasons(flow: &mut Flow, worked: &Worked) {
    for (index, reason) in worked.reasons().iter().enumerate() {
        let block = paragraph(reason, CAPTION, Weight::Regular, flow.width()).then_free(0.4);
        flow.put(if index == 0 { heading("Why in this order").over(block) } else { block });
    }
}
