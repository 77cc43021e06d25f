//! The findings that the smith must know before the bar is hot, and the smith's own notes.

use crate::drawing::{Item, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::{Block, Flow};
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::{BODY, FACT};
use crate::typeset;
use fh_core::describe::segment_name;
use fh_core::findings::{Finding, Severity};
use fh_core::plan::Plan;

/// The width of the column of severities.
const SEVERITY_MM: f64 = 24.0;
/// The findings of one bar that are printed at most.
const MOST_FINDINGS: usize = 40;

/// One stop or warning.
pub(super) struct FindingWords {
    /// Whether the plan cannot be forged as it stands.
    pub(super) stop: bool,
    /// What was seen, with its numbers.
    pub(super) message: String,
    /// What the smith can do.
    pub(super) remedy: String,
}

/// A finding of the plan in words, its part first where the message does not name it.
pub(super) fn finding_words(plan: &Plan, finding: &Finding) -> FindingWords {
    let place = finding.place.bar.zip(finding.place.segment);
    let name = place.and_then(|(bar, number)| Some(segment_name(plan.bars.get(bar)?, number)));
    let named = name.filter(|name| !finding.message.contains(name.as_str())).map(|name| format!("{name}: "));
    FindingWords {
        stop: finding.severity == Severity::Stop,
        message: named.unwrap_or_default() + &finding.message,
        remedy: finding.remedy.clone(),
    }
}

/// Puts the warnings of the plan on the flow, what was seen alone: what to change in the plan is on the mark sheet. The stops stand
/// over the sheet.
pub(super) fn put_warnings(flow: &mut Flow, plan: &Plan, findings: &[Finding]) {
    /// The warnings that are told at most.
    const MOST: usize = 6;
    let warnings: Vec<&Finding> = findings.iter().filter(|one| one.severity == Severity::Warning).collect();
    for finding in warnings.iter().take(MOST) {
        let words = FindingWords { remedy: String::new(), ..finding_words(plan, finding) };
        flow.put(finding_block(&words, flow.width()));
    }
    if let Some(more @ 1..) = warnings.len().checked_sub(MOST) {
        let words = format!("… and {more} more warnings: see the mark sheet.");
        flow.put(paragraph(&words, BODY, Weight::SemiBold, flow.width()).then_free(2.0));
    }
}

/// A heading over what follows.
pub(super) fn heading(words: &str) -> Block {
    Block { height: 8.0, items: vec![Text::new(at(0.0, 5.4), FACT, words).bold().into()] }
}

/// Puts findings on the flow, under a heading.
pub(super) fn put_findings(flow: &mut Flow, head: &str, findings: &[FindingWords]) {
    let width = flow.width();
    for (index, finding) in findings.iter().take(MOST_FINDINGS).enumerate() {
        let block = finding_block(finding, width);
        flow.put(if index == 0 { heading(head).over(block) } else { block });
    }
    if let Some(more @ 1..) = findings.len().checked_sub(MOST_FINDINGS) {
        flow.put(paragraph(&format!("… and {more} more: open the plan to read them."), BODY, Weight::SemiBold, width));
    }
}

fn finding_block(finding: &FindingWords, width: f64) -> Block {
    let room = width - SEVERITY_MM;
    let message = paragraph(&finding.message, BODY, Weight::SemiBold, room);
    let remedy = paragraph(&finding.remedy, BODY, Weight::Regular, room);
    let mut block = message.over(remedy).indented(SEVERITY_MM).then_free(2.0);
    block.items.extend(severity_box(finding.stop));
    block
}

/// White on black for a stop, black in a frame for a warning.
fn severity_box(stop: bool) -> Vec<Item> {
    let (word, ink, fill) =
        if stop { ("STOP", Gray::WHITE, Gray::BLACK) } else { ("warning", Gray::BLACK, Gray::WHITE) };
    vec![
        Item::rectangle(at(0.0, 0.2), at(SEVERITY_MM - 4.0, 5.6), Some(fill), Some(Pen::Frame)),
        Text::new(at((SEVERITY_MM - 4.0) / 2.0, 4.3), BODY, word).centered().bold().gray(ink).into(),
    ]
}

/// The smith's own words about the job.
pub(super) fn notes_block(notes: &str, width: f64) -> Block {
    let words = typeset::printable(notes);
    heading("Notes").over(paragraph(&words, BODY, Weight::Regular, width)).then_free(2.0)
}

/// The same where there is little room.
pub(super) fn close_notes_block(notes: &str, width: f64) -> Block {
    paragraph(&format!("Notes: {}", typeset::printable(notes)), BODY, Weight::Regular, width)
}
