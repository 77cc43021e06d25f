//! How a part lies beside its neighbors, and which tool finds room there.

use crate::job::along::begun_mm;
use crate::job::ends::is_cut_before;
use crate::job::neck::{size_at, thicker_beside};
use crate::job::site::{Part, Site, extents};
use fh_core::forms;
use fh_core::metal::Shape;
use fh_core::plan::Form;

/// Whether a flattened part has thicker bar on both sides, so that it is laid on a block between them.
pub(crate) fn is_flat_on_a_block(site: &Site<'_>, part: Part<'_>) -> bool {
    let is_flat = matches!(part.segment.form, Form::Flag(_) | Form::Hole(_));
    is_flat && thicker_beside(site, part) == [true, true]
}

/// Whether a part grows so much that it is drawn over the horn first.
pub(crate) fn is_long(site: &Site<'_>, part: Part<'_>) -> bool {
    part.balance.forged_length > part.balance.stock_length * 1.5 && !is_between_thicker(site, part)
}

/// Whether a shoulder is set down under the spring fuller alone: no hammer's face and no edge goes in.
pub(crate) fn is_fullered_alone(site: &Site<'_>, part: Part<'_>) -> bool {
    let Form::Shoulder(forms::Shoulder { sides, .. }) = &part.segment.form else { return false };
    [0, 90, 180, 270].into_iter().filter(|side| sides.contains(*side)).count() > 2 && is_short_beside(site, part)
}

/// Whether what goes thin beside a shoulder is so short before the bar is thick again that no hammer's face goes in.
fn is_short_beside(site: &Site<'_>, part: Part<'_>) -> bool {
    /// Half a hammer's face, in mm: common practice, no source.
    const HALF_A_FACE: f64 = 20.0;
    let Some(Shape::Shoulder { from, to, .. }) = &part.balance.shape else { return false };
    let thin = site.beside(part.at)[usize::from(from.area() > to.area())];
    let short = thin.and_then(|at| site.part(at)).filter(|thin| begun_mm(site, *thin) < HALF_A_FACE);
    short.is_some_and(|thin| !site.beside(thin.at).contains(&None))
}

/// Whether a part of even section is thicker in one direction than the bar is.
pub(crate) fn is_thicker_than_bar(site: &Site<'_>, part: Part<'_>) -> bool {
    let raw = extents(&site.raw_section(part.at));
    match &part.balance.shape {
        Some(Shape::Prism { section, .. }) => extents(section).into_iter().zip(raw).any(|(own, raw)| own > raw * 1.02),
        _ => false,
    }
}

/// What is shorter than this lies beside the hammer's face, in mm: common practice, no source.
const HAMMER_FACE: f64 = 40.0;

/// Whether a part is so short between two thicker ones that no hammer's face goes in.
pub(crate) fn is_between_thicker(site: &Site<'_>, part: Part<'_>) -> bool {
    let is_thicker = |(side, beside): (usize, Option<usize>)| {
        let beside = beside.filter(|_| !is_cut_before(site, part.at, side == 1));
        beside.and_then(|at| site.part(at)).is_some_and(|beside| {
            let own = size_at(site, part, side == 1);
            // Beyond a shoulder the bar is thicker again.
            let ends = [true, false].map(|at_end| size_at(site, beside, at_end));
            let is_shoulder = matches!(beside.segment.form, Form::Shoulder(_));
            let near = if is_shoulder { [0, 1].map(|way| ends[0][way].max(ends[1][way])) } else { ends[side] };
            near[0] > 1.1 * own[0] || near[1] > 1.1 * own[1]
        })
    };
    begun_mm(site, part) < HAMMER_FACE && site.beside(part.at).into_iter().enumerate().all(is_thicker)
}

/// Whether a part lies between two steps that go down on one side alone.
pub(crate) fn is_between_one_sided(site: &Site<'_>, part: Part<'_>) -> bool {
    let one_sided = |beside: Option<usize>| match beside.map(|at| &site.flat[at].segment.form) {
        Some(Form::Shoulder(forms::Shoulder { sides, .. })) => {
            [0, 90, 180, 270].iter().filter(|side| sides.contains(**side)).count() == 1
        }
        _ => false,
    };
    is_between_thicker(site, part) && site.beside(part.at).into_iter().all(one_sided)
}
