//! The findings, for people and for other programs.

use fh_core::balance::Balance;
use fh_core::describe::{self, plain_line};
use fh_core::findings::{Finding, NONE_FOUND};
use fh_core::plan::Plan;
use serde::Serialize;

/// A finding for other programs. The keys and their order are a promise.
#[derive(Debug, Serialize)]
pub(crate) struct FindingReport<'a> {
    id: &'a str,
    severity: &'a str,
    /// The bar's name; empty where the whole plan is meant.
    bar: &'a str,
    /// The segment, counted from 1; empty where the whole bar is meant.
    path: String,
    message: &'a str,
    remedy: &'a str,
}

/// The findings for other programs.
pub(crate) fn reports<'a>(plan: &'a Plan, balance: &'a Balance) -> Vec<FindingReport<'a>> {
    balance.findings.iter().map(|finding| report(plan, finding)).collect()
}

/// One finding for other programs.
pub(crate) fn report<'a>(plan: &'a Plan, finding: &'a Finding) -> FindingReport<'a> {
    FindingReport {
        id: finding.id,
        severity: finding.severity.name(),
        bar: finding.place.bar.and_then(|bar| plan.bars.get(bar)).map_or("", |bar| &bar.name),
        path: finding.place.path(plan),
        message: &finding.message,
        remedy: &finding.remedy,
    }
}

/// The findings for people, the place first.
pub(crate) fn words(plan: &Plan, balance: &Balance) -> String {
    if balance.findings.is_empty() {
        return format!("{NONE_FOUND}\n");
    }
    balance.findings.iter().map(|finding| finding_words(plan, finding)).collect()
}

/// A finding for people.
pub(crate) fn finding_words(plan: &Plan, finding: &Finding) -> String {
    let place = plain_line(&place_words(plan, finding));
    let place = if place.is_empty() { String::new() } else { format!("{place}: ") };
    let mut words = format!("{:<8} {place}{}\n", finding.severity.name(), plain_line(&finding.message));
    for more in [finding.reason, &finding.remedy] {
        if !more.is_empty() {
            words.push_str(&format!("         {}\n", plain_line(more)));
        }
    }
    words
}

/// The bar, and the segment by number and name. A bar needs no name where it is the only one.
fn place_words(plan: &Plan, finding: &Finding) -> String {
    let Some((index, bar)) = finding.place.bar.and_then(|index| Some((index, plan.bars.get(index)?))) else {
        return String::new();
    };
    let segment = finding.place.segment.filter(|at| bar.segment(*at).is_some());
    let segment = segment.map(|at| format!("{} {}", bar.path(at), describe::segment_name(bar, at)));
    let bar_name = if bar.name.trim().is_empty() { format!("bar {}", index + 1) } else { bar.name.clone() };
    match segment {
        Some(segment) if plan.bars.len() == 1 => segment,
        Some(segment) => format!("{bar_name}, {segment}"),
        None => bar_name,
    }
}
