//! Where a bar does not lie flat on the anvil, and what goes under it: common practice, no source.

use crate::bar::progress::Progress;
use crate::bar::state::shape_now;
use crate::job::site::{Part, Site, extents, in_mm};
use crate::says::words::length_words;
use fh_core::forms;
use fh_core::metal::Shape;
use fh_core::plan::Form;

/// What is farther away than an anvil is long does not lie on it, in mm.
const FACE: f64 = 250.0;

/// What stands out by such a share of how far away it is tilts a bar that lies on it.
const ROCKS: f64 = 0.03;

/// What stands out by less is not felt under a bar that lies on it, in mm.
const FELT: f64 = 1.5;

/// What goes under a bar while a part is set down on one side or all round, its line on the edge of the anvil; none where it lies flat.
pub(crate) fn set_down(site: &Site<'_>, part: Part<'_>, progress: &Progress) -> Option<String> {
    let side = one_side(&part.segment.form);
    let lengths = progress.lengths(site);
    let starts = progress.starts(site, &lengths);
    let far = |at: usize| {
        let [own, other] = [part.at, at].map(|at| [starts[at], starts[at] + lengths[at]]);
        (other[0] - own[1]).max(own[0] - other[1])
    };
    let chain = &site.chains.get(site.place.get(part.at)?.0)?.1;
    let near = chain.iter().copied().filter(|at| *at != part.at && !progress.stages[*at].off && far(*at) < FACE);
    // What goes thin lies on the face; the other side hangs over its edge.
    let thin_at_end = is_thin_at_its_end(part);
    let on_the_face = |at: &usize| thin_at_end.is_none_or(|at_end| (*at > part.at) == at_end);
    let stepped =
        near.clone().filter(on_the_face).filter_map(|at| Some((at, earlier_step(site, progress, at, side?)?)));
    if let Some((at, step)) = stepped.min_by(|one, other| far(one.0).total_cmp(&far(other.0))) {
        return Some(under_a_step(site, part, at, (step, far(at))));
    }
    let base = match &part.balance.shape {
        Some(Shape::Shoulder { from, to, .. }) => extents(from)[1].max(extents(to)[1]),
        _ => extents(&site.raw_section(part.at))[1],
    };
    let slope = |(at, out): &(usize, f64)| out / far(*at).max(1.0);
    let thick = near.filter_map(|at| Some((at, stands_out(site, progress, at, (&lengths, base))?)));
    let (at, out) = thick.filter(|one| slope(one) > ROCKS).max_by(|one, other| slope(one).total_cmp(&slope(other)))?;
    Some(format!(
        "“{}” is thicker by {} on each side: let it hang clear of the anvil, or pack the bar up by that much, or it rocks.",
        site.name(at),
        length_words(site.plan, out)
    ))
}

/// What goes under a bar beside an earlier step on the same side, so many mm deep and so many mm away: under what lies between,
/// where the bar is thick again beyond that step; else under what lies beyond it.
fn under_a_step(site: &Site<'_>, part: Part<'_>, at: usize, (deep, away): (f64, f64)) -> String {
    let words = |mm: f64| length_words(site.plan, mm);
    let faces_it = site.part(at).and_then(is_thin_at_its_end).is_some_and(|at_end| at_end == (at < part.at));
    let between = if at > part.at { site.beside(part.at)[1] } else { site.beside(part.at)[0] };
    let name = site.name(at);
    match between.filter(|between| faces_it && *between != at) {
        Some(between) => format!(
            "Put a block {} thick and no longer than {} under “{}”, its rounded edge on the mark: beyond “{name}” the bar is thick again, and would rock on the face.",
            words(deep),
            words(away),
            site.name(between)
        ),
        None => format!(
            "Put a block {} thick under the bar beyond “{name}”, which is set down on the same side: or it rocks.",
            words(deep)
        ),
    }
}

/// Whether a shoulder is thin at its end away from the datum; none of other parts.
fn is_thin_at_its_end(part: Part<'_>) -> Option<bool> {
    match &part.balance.shape {
        Some(Shape::Shoulder { from, to, .. }) => Some(from.area() > to.area()),
        _ => None,
    }
}

/// The one side on which a shoulder goes down; none of one on several sides.
fn one_side(form: &Form) -> Option<u16> {
    let Form::Shoulder(forms::Shoulder { sides, .. }) = form else { return None };
    let all: Vec<u16> = [0, 90, 180, 270].into_iter().filter(|side| sides.contains(*side)).collect();
    match all.as_slice() {
        [side] => Some(*side),
        _ => None,
    }
}

/// How deep a step is that was set down on a side before, in mm.
fn earlier_step(site: &Site<'_>, progress: &Progress, at: usize, side: u16) -> Option<f64> {
    let part = site.part(at).filter(|_| progress.stages[at].forged)?;
    let Some(Shape::Shoulder { from, to, .. }) = &part.balance.shape else { return None };
    let way = usize::from(side.is_multiple_of(180));
    let deep = (extents(from)[way] - extents(to)[way]).abs();
    (one_side(&part.segment.form) == Some(side) && deep > FELT).then_some(deep)
}

/// By how much a part is thicker than so much bar on each side, in mm; none where that is not felt, and of a swelling, which lies
/// where it is meant to.
fn stands_out(site: &Site<'_>, progress: &Progress, at: usize, (lengths, base): (&[f64], f64)) -> Option<f64> {
    let thick = match shape_now(site, progress, at, lengths)? {
        Shape::Prism { section, .. } => extents(&section)[1],
        Shape::Taper { from, to, .. } => extents(&from)[1].max(extents(&to)[1]),
        Shape::Ball { diameter: size } | Shape::Cube { side: size } => in_mm(size),
        _ => return None,
    };
    Some((thick - base) / 2.0).filter(|out| *out > FELT)
}
