//! The ends of parts: which run out to nothing, and which go thin beside the rest of the bar.

use crate::job::heat_rules::hold_mm;
use crate::job::site::{Part, Site, in_mm};
use fh_core::metal::{FreeEnd, SectionSize, Shape};
use fh_core::plan::Form;

/// What has less than this share of the bar's section is thin at its end: common practice, no source.
const THIN_END: f64 = 0.5;

/// Whether a part beside the rest of the bar goes so thin there that it is forged once that is parted off.
///
/// What tapers down to the cut is drawn from its thin end, and so after it; what is thin all along stays on the rest of the bar
/// where nothing else is left to hold it by.
pub(crate) fn needs_the_cut(site: &Site<'_>, at: usize, at_far_end: bool) -> bool {
    let thin = |part: Part<'_>| {
        let tapers = matches!(part.balance.shape, Some(Shape::Taper { .. }));
        is_thin_at(part, at_far_end, site.raw_section(at)) && (tapers || has_handle(site, at))
    };
    runs_out(site, at, at_far_end) || site.part(at).is_some_and(thin)
}

/// Whether so much of a bar is neither thin nor fine that it can be held by that, once the rest is parted off, while a part is forged.
fn has_handle(site: &Site<'_>, at: usize) -> bool {
    let is_fine = |form: &Form| {
        matches!(form, Form::Flag(_) | Form::Weld(_) | Form::Rivet(_) | Form::Tenon(_) | Form::Ball(_) | Form::Cube(_))
    };
    let others = site.chains[0].1.iter().filter(|other| **other != at).filter_map(|other| site.part(*other));
    let stout = others.filter(|part| part.segment.form.is_finished() && !is_fine(&part.segment.form));
    stout.map(|part| in_mm(part.balance.forged_length)).sum::<f64>() >= hold_mm(site.plan)
}

/// Whether a part is forged only once the rest of the bar beside it is off.
pub(crate) fn waits_for_the_cut(site: &Site<'_>, at: usize) -> bool {
    let is_hold = |beside: usize| matches!(site.flat[beside].segment.form, Form::Hold(_));
    let beside = site.beside(at).into_iter().enumerate();
    let waits = |(side, beside): (usize, Option<usize>)| {
        beside.is_some_and(|beside| is_hold(beside) && needs_the_cut(site, at, side == 1))
    };
    beside.into_iter().any(waits)
}

/// What has less than this share of the bar's section ends in a step where the bar beside it is still full: common practice, no
/// source.
const STEPPED: f64 = 0.8;

/// Whether a part is so much thinner than the bar at one of its ends that it steps up there while its neighbor is full.
pub(crate) fn is_stepped_at(part: Part<'_>, at_far_end: bool, raw: SectionSize) -> bool {
    share_at(part, at_far_end, raw) < STEPPED
}

/// Whether a part is thin at one of its ends.
pub(crate) fn is_thin_at(part: Part<'_>, at_far_end: bool, raw: SectionSize) -> bool {
    share_at(part, at_far_end, raw) < THIN_END
}

/// What share of the bar's section a part has at one of its ends.
fn share_at(part: Part<'_>, at_far_end: bool, raw: SectionSize) -> f64 {
    let share = if at_far_end == part.balance.reversed { 0.0 } else { 1.0 };
    let area = part.balance.shape.as_ref().map_or(raw.area(), |shape| shape.area_at(share));
    (area / raw.area()).value
}

/// The part on the thick side of a shoulder that steps down to what is thin beside the rest of the bar: the work, while the rest
/// is held. None of other parts.
pub(crate) fn tang_shoulder(site: &Site<'_>, at: usize) -> Option<usize> {
    let part = site.part(at)?;
    let Some(Shape::Shoulder { from, to, .. }) = &part.balance.shape else { return None };
    let thin_side = usize::from(from.area() > to.area());
    let beside = site.beside(at);
    let thin = beside[thin_side]?;
    let hold = site.beside(thin)[thin_side]?;
    let is_held = matches!(site.flat[hold].segment.form, Form::Hold(_));
    (is_held && needs_the_cut(site, thin, thin_side == 1)).then(|| beside[1 - thin_side]).flatten()
}

/// Whether a part lies at an end of the bar, or at the free end of its branch.
pub(crate) fn is_free_end(site: &Site<'_>, at: usize) -> bool {
    let [before, after] = site.beside(at);
    match site.branch_free(at) {
        Some(FreeEnd::Datum) => before.is_none(),
        Some(FreeEnd::Far) => after.is_none(),
        Some(FreeEnd::Neither) => false,
        None => before.is_none() || after.is_none(),
    }
}

/// Whether what lies beside a part is cut off before the part is forged.
pub(crate) fn is_cut_before(site: &Site<'_>, at: usize, at_far_end: bool) -> bool {
    match site.beside(at)[usize::from(at_far_end)].map(|beside| &site.flat[beside].segment.form) {
        Some(Form::Hold(_)) => needs_the_cut(site, at, at_far_end),
        Some(Form::Trim(_)) => runs_out(site, at, at_far_end),
        _ => false,
    }
}

/// Whether a part runs out to a point, an edge or a finial at one of its ends.
pub(crate) fn runs_out(site: &Site<'_>, at: usize, at_far_end: bool) -> bool {
    let Some(part) = site.part(at) else { return false };
    let end = |section: &SectionSize| section.is_end();
    match &part.balance.shape {
        Some(Shape::Taper { from, to, .. }) => end(if at_far_end != part.balance.reversed { to } else { from }),
        Some(Shape::Ball { .. } | Shape::Cube { .. }) => true,
        Some(Shape::Flag { tip, outline, .. }) => {
            at_far_end != part.balance.reversed && (in_mm(*tip) <= 0.0 || outline.end_width(true).is_none())
        }
        Some(Shape::Split(split)) => split.free == if at_far_end { FreeEnd::Far } else { FreeEnd::Datum },
        _ => false,
    }
}
