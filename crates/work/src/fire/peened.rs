//! A block that is spread under the peen, pass by pass.

use crate::bar::state::begun_section;
use crate::job::site::{Part, Site, extents, in_mm};
use crate::job::task::operations;
use crate::job::upsets::upset_length_mm;
use fh_core::metal::Shape;
use fh_core::plan::Operation;
use fh_heat::drawing::{Drawn, Sides, USUAL_REDUCTION, set_down};

/// The width of a peen's ridge as it bites, in mm: common practice, no source.
const PEEN: f64 = 8.0;

/// A block spread under the peen to its mean thickness; none where nothing is taken.
pub(crate) fn spread(site: &Site<'_>, part: Part<'_>, operation: Operation) -> Option<Drawn> {
    let thickness = match &part.balance.shape {
        Some(Shape::Flag { root, tip, .. }) => (in_mm(*root) + in_mm(*tip)) / 2.0,
        Some(Shape::Hole { thickness, .. }) => in_mm(*thickness),
        _ => return None,
    };
    let [width_mm, height_mm] = extents(&begun_section(site, part, operation));
    let is_upset = operations(site, part).contains(&Operation::Upset);
    let laid_off = in_mm(part.balance.mark_end - part.balance.mark_start);
    let block_mm = if is_upset { upset_length_mm(site, part) } else { laid_off };
    let across = set_down(Sides { height_mm, width_mm: block_mm }, thickness, PEEN.min(width_mm), USUAL_REDUCTION);
    (!across.passes.is_empty()).then_some(across)
}
