//! Settles what the mark sheet of a plan says.

use super::facts::{facts, whole_plan_fact};
use super::marks::{strip, table_rows};
use super::words::{BarWords, SheetWords};
use crate::sheets::findings::{FindingWords, finding_words};
use crate::sheets::names::{bar_name, title};
use fh_core::balance::{Balance, BarBalance, BarSpread, SizeBalance, spread};
use fh_core::describe::{asked_size_state, asked_size_words};
use fh_core::findings::{Finding, Severity};
use fh_core::plan::{AskedSize, Bar, Plan};

/// Everything that the sheet says.
pub(super) fn sheet_words(plan: &Plan, balance: &Balance, short: &[Finding]) -> SheetWords {
    let bars = plan.bars.iter().zip(&balance.bars).enumerate();
    let spread = spread(plan);
    SheetWords {
        title: title(plan),
        notes: plan.notes.clone().unwrap_or_default(),
        bars: bars
            .map(|(index, (bar, worked))| {
                let found = balance.findings.iter().chain(short);
                BarWords {
                    findings: findings_of(plan, found, index),
                    ..bar_words(plan, balance, spread.bar(index), index, bar, worked)
                }
            })
            .collect(),
    }
}

fn bar_words(
    plan: &Plan,
    balance: &Balance,
    spread: Option<&BarSpread>,
    index: usize,
    bar: &Bar,
    worked: &BarBalance,
) -> BarWords {
    let mut facts = facts(plan, bar, worked, spread);
    if index == 0 && plan.bars.len() > 1 {
        facts.push(whole_plan_fact(plan, balance));
    }
    BarWords {
        name: bar_name(plan, index, bar),
        facts,
        strip: strip(plan, bar, worked),
        rows: table_rows(plan, bar, worked, spread),
        sizes: asked_sizes(plan, balance, index),
        findings: Vec::new(),
    }
}

/// The asked sizes of a bar, with those that name no bar there is, on the first.
fn asked_sizes(plan: &Plan, balance: &Balance, bar: usize) -> Vec<String> {
    let all = plan.sizes.iter().zip(&balance.sizes).enumerate();
    let here = all.filter(|(_, (_, of))| of.bar.unwrap_or(0) == bar);
    let line = |(index, (size, of)): (usize, (&AskedSize, &SizeBalance))| {
        let state = asked_size_state(size, of, plan.units.length);
        format!("{}: {state}; {}.", size.title(index), asked_size_words(size))
    };
    here.map(line).collect()
}

/// The stops and warnings of a bar; those of the whole plan stand with the first.
fn findings_of<'f>(plan: &Plan, found: impl Iterator<Item = &'f Finding>, bar: usize) -> Vec<FindingWords> {
    let here = |finding: &&Finding| finding.severity > Severity::Note && finding.place.bar.unwrap_or(0) == bar;
    found.filter(here).map(|finding| finding_words(plan, finding)).collect()
}
