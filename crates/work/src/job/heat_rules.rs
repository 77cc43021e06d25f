//! The plain rules that heats are reckoned by, with the plan's own numbers or the defaults of its unit.

use fh_core::plan::{HeatRules, InBoth, Limits, Plan};
use fh_measure::WrittenLength;

/// The length of bar that one heat makes hot enough to work, in mm.
pub(crate) fn zone_mm(plan: &Plan) -> f64 {
    size(plan, plan.work.heats.zone.as_ref(), HeatRules::ZONE)
}

/// The width of the anvil's face, in mm.
pub(crate) fn anvil_mm(plan: &Plan) -> f64 {
    size(plan, plan.work.heats.anvil.as_ref(), HeatRules::ANVIL)
}

/// The least length to hold, in mm.
pub(crate) fn hold_mm(plan: &Plan) -> f64 {
    size(plan, plan.limits.hold.as_ref(), Limits::HOLD)
}

fn size(plan: &Plan, own: Option<&WrittenLength>, default: InBoth) -> f64 {
    own.map_or_else(|| default.in_unit(plan.units.length), WrittenLength::mm)
}
