//! After every edit: the parts that keep asked sizes are written as they give, so that the next edit starts from what is there.

use super::boundary::Change;
use super::gave::Gave;
use crate::balance::balance;
use crate::plan::{Gives, Plan, Segment};

/// A factor this close to 1 moves nothing.
const STAYS: f64 = 1e-7;

/// A plan with the sizes written that give so that asked sizes are kept, and those of one bar told. What cannot be written stays
/// as it is: the balance lets it give all the same.
pub(super) fn written(plan: Plan, told: Option<usize>) -> (Plan, Vec<Gave>) {
    if plan.sizes.iter().all(|size| size.kept_by.is_none()) {
        return (plan, Vec::new());
    }
    let found = balance(&plan).sizes;
    let mut gave = Vec::new();
    let mut plan = plan;
    for size in found {
        let (Some(bar), Some(part), Some(factor)) = (size.bar, size.kept_by, size.factor) else { continue };
        if (factor - 1.0).abs() < STAYS {
            continue;
        }
        let gives = plan.segment(bar, part).map_or(Gives::Nothing, Segment::giving);
        let mut change = Change { plan: plan.clone(), bar, gave: Vec::new() };
        if change.write(part, gives, factor).is_ok() && crate::file::check(&change.plan).is_ok() {
            plan = change.plan;
            gave.extend(change.gave.into_iter().filter(|_| told == Some(bar)));
        }
    }
    (plan, gave)
}
