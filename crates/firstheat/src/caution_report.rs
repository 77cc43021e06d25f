//! The cautions of a plan for other programs: the same of marks, check and steps.

use fh_core::balance::Balance;
use fh_core::cautions::listed;
use fh_core::plan::Plan;
use serde::Serialize;

/// One thing that a plan asks to beware of.
#[derive(Debug, Serialize)]
pub(crate) struct CautionReport {
    id: &'static str,
    words: String,
}

/// What a plan asks to beware of.
pub(crate) fn reports(plan: &Plan, balance: &Balance) -> Vec<CautionReport> {
    listed(plan, balance).into_iter().map(|caution| CautionReport { id: caution.id, words: caution.words }).collect()
}
