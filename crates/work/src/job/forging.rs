//! What the hammer does to a part while the bar is straight: its form says it, of the bar that it is made from.

use crate::job::site::{Part, Site};
use crate::job::upsets::is_gathered;
use fh_core::forms::Block;
use fh_core::metal::Shape;
use fh_core::plan::Operation;

/// What the hammer does to a segment while the bar is straight.
pub(crate) fn forging(site: &Site<'_>, part: Part<'_>, shape: &Shape) -> Vec<Operation> {
    part.segment.form.forging(&Block {
        shape,
        raw: site.raw_section(part.at),
        is_gathered: is_gathered(site, part),
        can_weld: site.plan.material().weld.is_some(),
        has_struck_branches: has_struck_branches(site, part),
    })
}

/// Whether something on a branch of a split is struck.
fn has_struck_branches(site: &Site<'_>, part: Part<'_>) -> bool {
    let is_struck =
        |operation: &Operation| operation.is_shaping() || matches!(operation, Operation::Isolate | Operation::SetDown);
    let below = part.at + 1..part.at + part.segment.count();
    below.filter_map(|at| site.part(at)).any(|below| {
        let shape = below.balance.shape.as_ref();
        shape.is_some_and(|shape| forging(site, below, shape).iter().any(is_struck))
    })
}
