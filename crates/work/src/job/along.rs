//! What is so short that it is drawn out along with what lies beside it: an end that would be left a lump, and a stub beyond a
//! step, which would fold over it.

use crate::job::ends::is_free_end;
use crate::job::forging::forging;
use crate::job::site::{Part, Site, extents, in_mm, in_mm2, in_mm3, least};
use fh_core::metal::{SectionSize, Shape};
use fh_core::plan::{Form, Operation};

/// What is shorter than so many times the bar's thickness is drawn out with what lies beside it: common practice, no source.
const SHORT: f64 = 1.5;

/// What keeps more than this share of the bar's section is not drawn down: common practice, no source.
const DOWN: f64 = 0.9;

/// What a part is drawn out along with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Leader {
    /// The part that is drawn.
    pub(crate) part: usize,
    /// The section to which both are drawn.
    pub(crate) section: SectionSize,
}

/// The part along with which another is drawn out first, before it gets its own shape; none of what is forged by itself.
pub(crate) fn leader(site: &Site<'_>, at: usize) -> Option<Leader> {
    if site.passes_through(at) {
        return None;
    }
    match site.flat.get(at)?.segment.form {
        Form::Shoulder(_) => {
            let stub = beyond_the_step(site, at)?;
            stub_leader(site, stub, at)
        }
        Form::Taper(_) | Form::Drawn(_) => {
            let steps = site.beside(at).into_iter().flatten();
            let stub = steps.filter(|step| beyond_the_step(site, *step) == Some(at));
            stub.filter_map(|step| stub_leader(site, at, step)).next().or_else(|| end_leader(site, at))
        }
        Form::Tenon(_) => end_leader(site, at),
        Form::Weld(_) if site.plan.material().weld.is_some() => end_leader(site, at),
        _ => None,
    }
}

/// What is drawn out along with a part.
pub(crate) fn followers(site: &Site<'_>, at: usize) -> Vec<usize> {
    let near = site.beside(at).into_iter().flatten();
    let mut all: Vec<usize> =
        near.flat_map(|beside| site.beside(beside).into_iter().flatten().chain([beside])).collect();
    all.sort_unstable();
    all.dedup();
    all.retain(|other| *other != at && leader(site, *other).is_some_and(|leader| leader.part == at));
    all
}

/// How long a part is once it is drawn out along with another one, in mm.
pub(crate) fn along_mm(site: &Site<'_>, at: usize) -> Option<f64> {
    let (part, leader) = (site.part(at)?, leader(site, at)?);
    let raw = in_mm(part.balance.mark_end - part.balance.mark_start) * in_mm2(site.raw_section(at).area());
    Some(raw / in_mm2(leader.section.area()))
}

/// How long a part is when its own shape is begun, in mm: as it was drawn out along with another, or as it was cut.
pub(crate) fn begun_mm(site: &Site<'_>, part: Part<'_>) -> f64 {
    along_mm(site, part.at).unwrap_or_else(|| in_mm(part.balance.stock_length))
}

/// The part on the thin side of a step.
pub(crate) fn beyond_the_step(site: &Site<'_>, at: usize) -> Option<usize> {
    let Some(Shape::Shoulder { from, to, .. }) = &site.part(at)?.balance.shape else { return None };
    site.beside(at)[usize::from(from.area() > to.area())]
}

/// Of a stub beyond a step, the part on the thick side of it.
fn stub_leader(site: &Site<'_>, stub: usize, step: usize) -> Option<Leader> {
    let is_drawn = matches!(site.flat[stub].segment.form, Form::Taper(_) | Form::Drawn(_));
    let side = site.beside(step).into_iter().position(|beside| beside == Some(stub))?;
    let thick = site.beside(step)[1 - side]?;
    (is_drawn && is_short(site, stub) && is_an_end(site, stub, side))
        .then(|| drawn(site, thick, side == 1, stub))
        .flatten()
}

/// Of a short taper, tenon or scarf at an end, the part beside it: forged by itself so short a block becomes a disc that folds.
fn end_leader(site: &Site<'_>, at: usize) -> Option<Leader> {
    let tapers = matches!(site.flat[at].segment.form, Form::Taper(_) | Form::Tenon(_) | Form::Weld(_));
    let beside = site.beside(at);
    let side = beside.iter().position(Option::is_none)?;
    let is_meant = tapers && is_short(site, at) && is_free_end(site, at);
    let next = beside[1 - side].filter(|_| is_meant)?;
    drawn(site, next, side == 1, at)
}

fn is_short(site: &Site<'_>, at: usize) -> bool {
    let thick = least(extents(&site.raw_section(at)));
    site.part(at).is_some_and(|part| in_mm(part.balance.stock_length) < SHORT * thick)
}

/// Whether the bar or the branch ends beyond a part, on a side of it, or is cut off there.
fn is_an_end(site: &Site<'_>, at: usize, side: usize) -> bool {
    match site.beside(at)[side] {
        None => is_free_end(site, at),
        Some(beside) => matches!(site.flat[beside].segment.form, Form::Hold(_) | Form::Trim(_)),
    }
}

/// A part that is drawn down, as leader of one that lies away from the datum or toward it and gets no thicker than that.
fn drawn(site: &Site<'_>, at: usize, is_before: bool, follower: usize) -> Option<Leader> {
    let part = site.part(at)?;
    let far = is_before != part.balance.reversed;
    let section = match &part.balance.shape {
        Some(Shape::Prism { section, .. }) => *section,
        Some(Shape::Taper { from, to, .. }) => *if far { to } else { from },
        _ => return None,
    };
    let draws = |operation: &Operation| matches!(operation, Operation::Draw | Operation::Taper);
    let is_drawn = matches!(part.segment.form, Form::Drawn(_) | Form::Taper(_))
        && forging(site, part, part.balance.shape.as_ref()?).iter().any(draws);
    let (own, raw) = (in_mm2(section.area()), in_mm2(site.raw_section(at).area()));
    let most = site
        .part(follower)?
        .balance
        .shape
        .as_ref()
        .map(|shape| in_mm2(shape.area_at(0.0)).max(in_mm2(shape.area_at(1.0))))?;
    // The bar's section is what a scarf is written with, and not what it becomes.
    let is_no_thicker = most <= 1.02 * own || matches!(site.flat[follower].segment.form, Form::Weld(_));
    (is_drawn && own < DOWN * raw && own > 1e-3 * raw && is_no_thicker).then_some(Leader { part: at, section })
}

/// The metal that a part is begun with has this section, in mm²: that to which it was drawn along, or the bar's.
pub(crate) fn begun_mm2(site: &Site<'_>, at: usize) -> f64 {
    leader(site, at).map_or_else(|| in_mm2(site.raw_section(at).area()), |leader| in_mm2(leader.section.area()))
}

/// The metal that is drawn along with a part, in mm³, and the natural logarithm of its change of section.
pub(crate) fn moved_along(site: &Site<'_>, at: usize) -> Vec<(f64, f64)> {
    let of = |other: usize| {
        let metal = site.part(other).map_or(0.0, |part| in_mm3(part.balance.finished_volume));
        (metal, (in_mm2(site.raw_section(other).area()) / begun_mm2(site, other).max(1e-6)).ln().abs())
    };
    followers(site, at).into_iter().map(of).collect()
}
