//! Settles what the mark sheet of a plan says.

use super::facts::{facts, whole_plan_fact};
use super::marks::{strip, table_rows};
use super::words::{BarWords, SheetWords};
use crate::sheets::findings::{FindingWords, finding_words};
use crate::sheets::names::{bar_name, title};
use fh_core::balance::{Balance, BarBalance, BarSpread, spread};
use fh_core::findings::{Finding, Severity};
use fh_core::plan::{Bar, Plan};

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
        findings: Vec::new(),
    }
}

/// The stops and warnings of a bar; those of the whole plan stand with the first.
fn findings_of<'f>(plan: &Plan, found: impl Iterator<Item = &'f Finding>, bar: usize) -> Vec<FindingWords> {
    let here = |finding: &&Finding| finding.severity > Severity::Note && finding.place.bar.unwrap_or(0) == bar;
    found.filter(here).map(|finding| finding_words(plan, finding)).collect()
}
