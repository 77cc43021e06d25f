//! `firstheat steps`: the order of work.

use crate::cli::ReadArgs;
use crate::failure::Failure;
use crate::steps_report::StepsReport;
use crate::{check, finding_report, input, output};
use fh_core::balance::balance;
use fh_core::cautions::{Cautions, cautions};
use fh_core::describe::plain_line;
use fh_core::plan::Plan;
use fh_measure::counted;
use fh_work::{ScaleLoss, Shop, Worked, WorkedStep, hot_note, work_out};
use std::process::ExitCode;

/// Prints the steps of a plan.
pub(crate) fn run(args: &ReadArgs) -> Result<ExitCode, Failure> {
    let plan = input::read(&args.plan)?;
    let balance = balance(&plan);
    let worked = work_out(&plan, &balance, &Shop::default());
    let text = if args.json {
        check::as_json(&StepsReport::new(&plan, &balance, &worked))?
    } else {
        words(&plan, &cautions(&plan, &balance), &worked, &worked.scale)
    };
    output::print(&text)?;
    Ok(ExitCode::SUCCESS)
}

fn words(plan: &Plan, warned: &Cautions, worked: &Worked, losses: &[ScaleLoss]) -> String {
    let title = if plan.title.trim().is_empty() { "Untitled plan".to_owned() } else { plain_line(&plan.title) };
    if worked.steps.is_empty() {
        return format!("{title}: nothing has to be done yet.\n");
    }
    let whose = if worked.proposed { "proposed by the program" } else { "your own order" };
    let mut text = format!("{title}: {}, {}, {whose}\n", counted(worked.steps.len(), "step"), worked.heats_words());
    text.push_str(&caution_lines(warned));
    let mut bar = None;
    for (number, step) in worked.steps.iter().enumerate() {
        if step.bar != bar {
            bar = step.bar;
            text.push_str(&format!("\n{}\n", bar_words(plan, bar)));
        }
        text.push_str(&step_words(plan, number, step));
    }
    if !worked.tools.is_empty() {
        text.push_str("\nTools\n");
        let line = |tool: &fh_work::Tool| format!("  {}. {}\n", plain_line(&tool.words), plain_line(&tool.reason()));
        text.extend(worked.tools.iter().map(line));
    }
    if let Some(note) = hot_note(plan) {
        text.push_str(&format!("\n{note}\n"));
    }
    if !losses.is_empty() {
        text.push_str("\nScale\n");
        text.extend(losses.iter().map(|loss| format!("  {}\n", plain_line(&loss.reason()))));
    }
    text.push('\n');
    if worked.findings.is_empty() {
        text.push_str("The order breaks no rule.\n");
    }
    let of_order = worked.open_findings().map(|found| &found.finding);
    let found = of_order.chain(&worked.scale_short).chain(&worked.into_itself);
    text.extend(found.map(|finding| finding_report::finding_words(plan, finding)));
    let known = worked.findings.iter().filter_map(|found| Some((&found.finding.message, found.accepted.as_ref()?)));
    text.extend(
        known.map(|(message, because)| format!("accepted {} Because: {}\n", plain_line(message), plain_line(because))),
    );
    text
}

/// What the plan asks to beware of, each on a line of its own.
fn caution_lines(warned: &Cautions) -> String {
    let stops = warned.stops.iter().map(|words| format!("STOP: {}\n", plain_line(words)));
    let rest = warned.rating.iter().chain(&warned.own).map(|words| format!("Caution: {words}\n"));
    stops.chain(rest).collect()
}

fn bar_words(plan: &Plan, bar: Option<usize>) -> String {
    let Some((index, of)) = bar.and_then(|bar| Some((bar, plan.bars.get(bar)?))) else {
        return "The whole piece".to_owned();
    };
    let name = if of.name.trim().is_empty() { format!("Bar {}", index + 1) } else { plain_line(&of.name) };
    let pieces = if of.pieces() > 1 { format!(", {} pieces", of.pieces()) } else { String::new() };
    format!("{name}: {}{pieces}", of.stock.describe())
}

fn step_words(plan: &Plan, number: usize, step: &WorkedStep) -> String {
    let heat = step.warmth().words();
    let mut text = format!("{:>3}  {}  [{heat}]\n", number + 1, plain_line(&step.title));
    let mut line = |words: String| text.push_str(&format!("       {}\n", plain_line(&words)));
    if !step.becomes.is_empty() {
        line(step.becomes.join("; "));
    }
    let mut where_ = step.place.name().to_owned();
    if let Some(edge) = &step.edge {
        where_.push_str(&format!(", edge rounded to {edge}"));
    }
    if let Some(up) = &step.up {
        where_.push_str(&format!(", {up} up"));
    }
    if !step.tool.is_empty() {
        where_.push_str(&format!("; {}", step.tool));
    }
    line(where_);
    if !step.sizes.is_empty() {
        let size = |size: &fh_work::Size| {
            let hot = size.hot.as_ref().map_or_else(String::new, |hot| format!(" ({hot} hot)"));
            format!("{} {}{hot}", size.what, size.cold)
        };
        line(step.sizes.iter().map(size).collect::<Vec<_>>().join("; "));
    }
    let hot = step.hot_words(plan);
    let at_hand: Vec<String> = hot.into_iter().chain(step.held_words(plan)).collect();
    if !at_hand.is_empty() {
        line(at_hand.join("; "));
    }
    step.marks.iter().map(fh_work::MarkLine::words).for_each(&mut line);
    step.laid.iter().map(fh_work::LaidLine::words).for_each(&mut line);
    step.measure.iter().cloned().for_each(&mut line);
    for words in
        [&step.heat_with, &step.lay, &step.leave, &step.check, &step.caution, &step.step.note].into_iter().flatten()
    {
        line(words.clone());
    }
    for note in &step.part_notes {
        text.push_str(&format!("       note: {}\n", plain_line(note)));
    }
    text
}
