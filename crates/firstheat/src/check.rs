//! `firstheat check`: the findings, with what the fire takes; of a plan with an order of its own, those of the order too.

use crate::caution_report::{self, CautionReport};
use crate::cli::ReadArgs;
use crate::failure::Failure;
use crate::finding_report::{self, FindingReport};
use crate::{input, output};
use fh_core::balance::{Balance, balance};
use fh_core::findings::Severity;
use fh_work::{Shop, work_out};
use serde::Serialize;
use std::process::ExitCode;

/// The exit status where the plan cannot be forged as it stands.
const STOP: u8 = 1;

/// The findings for other programs.
#[derive(Serialize)]
struct CheckReport<'a> {
    title: &'a str,
    findings: Vec<FindingReport<'a>>,
    /// What the plan asks to beware of.
    cautions: Vec<CautionReport>,
}

/// Prints the findings of a plan.
pub(crate) fn run(args: &ReadArgs) -> Result<ExitCode, Failure> {
    let plan = input::read(&args.plan)?;
    let mut balance = balance(&plan);
    let worked = work_out(&plan, &balance, &Shop::default());
    let cautions = caution_report::reports(&plan, &balance);
    balance.findings.extend(worked.own_findings().map(|found| found.finding.clone()));
    balance.findings.extend(worked.scale_short);
    balance.findings.extend(worked.into_itself);
    balance.findings.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
    if args.json {
        let findings = finding_report::reports(&plan, &balance);
        // Its own stops and warnings, as marks and steps have them.
        let report = CheckReport { title: &plan.title, findings, cautions };
        output::print(&as_json(&report)?)?;
    } else {
        output::print(&finding_report::words(&plan, &balance))?;
    }
    Ok(if has_stop(&balance) { ExitCode::from(STOP) } else { ExitCode::SUCCESS })
}

fn has_stop(balance: &Balance) -> bool {
    balance.findings.iter().any(|finding| finding.severity == Severity::Stop)
}

/// A report as JSON for other programs.
pub(crate) fn as_json(report: &impl Serialize) -> Result<String, Failure> {
    serde_json::to_string_pretty(report).map(|text| text + "\n").map_err(Failure::new)
}
