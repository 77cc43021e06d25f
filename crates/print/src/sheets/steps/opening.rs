//! The opening of the step sheets: the job, what the order is held against, what is laid ready, and the heat it is for.

use crate::drawing::{Item, at};
use crate::fonts::Weight;
use crate::pen::Pen;
use crate::sheets::cautions;
use crate::sheets::fact_boxes::{Fact, facts_block};
use crate::sheets::findings::{FindingWords, heading, put_findings, put_warnings};
use crate::sheets::flow::{Block, Flow};
use crate::sheets::names::{bar_name, title};
use crate::sheets::paragraph::{lines, paragraph};
use crate::sheets::sizes_in_words::mm_words;
use crate::sheets::steps::at_hand::put_at_hand;
use crate::sheets::steps::cell::lines_block;
use crate::sheets::steps::job::Job;
use crate::sheets::title::title_block;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT};
use fh_core::describe::scale_words;
use fh_core::findings::Severity;
use fh_core::plan::Plan;
use fh_work::{Gauge, ScaleLoss, Tool, Worked, hot_note};

/// The width of a box to tick with its gutter.
const TICK_MM: f64 = 7.0;
/// On a page as wide as this, they are listed in two columns.
const TWO_COLUMNS_MM: f64 = 220.0;
/// Between the columns.
const GUTTER_MM: f64 = 6.0;
/// The tools and gauges that are listed at most.
const MOST: usize = 60;
/// The lines of one cell at most.
const MOST_LINES: usize = 10;

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
    let count = |count: usize, what: &str| format!("{count} {what}{}", if count == 1 { "" } else { "s" });
    let heats = worked.heats_words();
    // What all pieces take stands below, with whose order it is: a wide fact would push the others out of its row.
    let (one, all) = heats.split_once(", ").unwrap_or((&heats, ""));
    let work = format!("{}, {one}", count(worked.steps.len(), "step"));
    let order = if all.is_empty() { order.to_owned() } else { format!("{all}; {order}") };
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

/// Puts the tools and gauges on the flow, each with a box to tick when it lies ready.
pub(super) fn put_ready(flow: &mut Flow, plan: &Plan, worked: &Worked) {
    let tools: Vec<[String; 2]> = worked.tools.iter().map(tool_words).collect();
    put_list(flow, "Tools to lay out", &tools);
    put_at_hand(flow, plan, worked);
    let gauges: Vec<[String; 2]> = worked.gauges.iter().map(|gauge| gauge_words(plan, gauge)).collect();
    put_list(flow, "Gauges to make, from the gauge strip, and what the caliper measures", &gauges);
}

/// Puts on the flow at which heat the hot sizes are meant, and what the fire takes; nothing where nothing is known.
pub(super) fn put_heat_notes(flow: &mut Flow, plan: &Plan, worked: &Worked) {
    /// The bars that are told of at most.
    const MOST_BARS: usize = 8;
    let losses = &worked.scale;
    let many = losses.len() > 1;
    let loss = |loss: &ScaleLoss| match plan.bars.get(loss.bar).filter(|_| many) {
        Some(bar) => format!("{}: {}", bar_name(plan, loss.bar, bar), loss.reason),
        None => loss.reason.clone(),
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
    let notes = who
        .into_iter()
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

fn tool_words(tool: &Tool) -> [String; 2] {
    let uses = tool.uses.iter().map(|one| format!("{} {}", steps_words(&one.steps), one.reason));
    let mut reason = uses.collect::<Vec<_>>().join(" ");
    if !tool.owned && !tool.other_way.is_empty() {
        reason = format!("{reason} If you have none: {}", tool.other_way);
    }
    [tool.words.clone(), reason]
}

fn gauge_words(plan: &Plan, gauge: &Gauge) -> [String; 2] {
    let words = |mm: f64| mm_words(plan.units.length, mm);
    let no_go = words(gauge.no_go_mm);
    let hot = |what: &str| gauge.hot_mm.map_or_else(String::new, |mm| format!(" {what}: {}.", words(mm)));
    let use_it = match (gauge.caliper, gauge.go_mm) {
        (true, Some(go)) => format!("Too thin for a notch: caliper, {no_go} to {}.", words(go)),
        (true, None) => format!("Too thin for a notch: caliper, {no_go} or more."),
        (false, Some(go)) => format!("Cold: go {}, no go {no_go}.{}", words(go), hot("Over the hot bar")),
        (false, None) => format!("Cold: no go {no_go}.{}", hot("Not over the hot bar")),
    };
    [gauge.words.clone(), format!("{use_it} {} {}", steps_words(&gauge.steps), gauge.what)]
}

/// `Steps 2 to 6, 9:`.
fn steps_words(steps: &[usize]) -> String {
    match steps {
        [] => String::new(),
        [only] => format!("Step {}:", only + 1),
        _ => format!("Steps {}:", runs(steps).join(", ")),
    }
}

/// The numbers of steps, those that follow each other as a run.
fn runs(steps: &[usize]) -> Vec<String> {
    let runs = steps.chunk_by(|one, next| one + 1 == *next);
    let words = |run: &[usize]| match run {
        [first, _, .., last] => vec![format!("{} to {}", first + 1, last + 1)],
        few => few.iter().map(|step| (step + 1).to_string()).collect(),
    };
    runs.flat_map(words).collect()
}

fn put_list(flow: &mut Flow, head: &str, rows: &[[String; 2]]) {
    let width = flow.width();
    let columns = if width >= TWO_COLUMNS_MM { 2 } else { 1 };
    let column_mm = (width - GUTTER_MM * (columns as f64 - 1.0)) / columns as f64;
    for (index, rows) in rows.chunks(columns).take(MOST / columns).enumerate() {
        let mut block = Block::default();
        for (column, row) in rows.iter().enumerate() {
            let own = list_row(row, column_mm).indented((column_mm + GUTTER_MM) * column as f64);
            block.height = block.height.max(own.height);
            block.items.extend(own.items);
        }
        block.items.push(Item::line(at(0.0, block.height - 0.3), at(width, block.height - 0.3), Pen::Hairline));
        flow.put(if index == 0 { heading(head).over(block) } else { block });
    }
    if rows.len() > MOST {
        let words = format!("… and {} more: see the plan.", rows.len() - MOST);
        flow.put(paragraph(&words, BODY, Weight::SemiBold, width));
    }
    flow.skip(3.0);
}

fn list_row([what, why]: &[String; 2], width: f64) -> Block {
    let what_mm = width * 0.31;
    let what = lines_block(&lines(what, BODY, Weight::SemiBold, what_mm - 3.0, MOST_LINES), BODY, Weight::SemiBold);
    let room = width - TICK_MM - what_mm;
    let why = lines_block(&lines(why, CAPTION, Weight::Regular, room, MOST_LINES), CAPTION, Weight::Regular);
    let height = (what.height.max(why.height) + 1.4).max(5.6);
    let mut items = vec![Item::rectangle(at(0.2, 0.9), at(4.4, 5.1), None, Some(Pen::Frame))];
    items.extend(what.items.into_iter().map(|item| item.shifted(TICK_MM, 0.9)));
    items.extend(why.items.into_iter().map(|item| item.shifted(TICK_MM + what_mm, 1.3)));
    Block { height, items }
}
