//! Scarfs: how much metal a lap has, and how long its end is once it is forged.

use crate::job::along::leader;
use crate::job::site::{Part, Site, in_mm, in_mm2};
use fh_core::plan::Form;

/// A scarf is upset to so many times the section of its bar: common practice, no source.
pub(crate) const FULL: f64 = 1.25;

/// The section of the bar that a scarf grows from, in mm²: the thinnest beside it.
pub(crate) fn bar_mm2(site: &Site<'_>, part: Part<'_>) -> f64 {
    let raw = in_mm2(site.raw_section(part.at).area());
    let beside = site.beside(part.at).into_iter().flatten().filter_map(|at| site.part(at));
    let thin = beside.map(|beside| in_mm2(beside.balance.area_at(0.5))).filter(|area| *area > 1e-6);
    thin.fold(raw, f64::min)
}

/// The metal that a scarf has of its own, in mm³.
pub(crate) fn metal_mm3(site: &Site<'_>, part: Part<'_>) -> f64 {
    let raw = in_mm2(site.raw_section(part.at).area());
    raw * in_mm(part.balance.stock_length) * (1.0 - part.balance.scale_share)
}

/// By how much the end of a bar lies farther out than what counts of its scarf, in mm, once that is forged and until it is welded:
/// all of its metal is at the section of its bar then.
pub(crate) fn farther_mm(site: &Site<'_>, part: Part<'_>) -> f64 {
    let is_scarf = matches!(part.segment.form, Form::Weld(_));
    let out = || metal_mm3(site, part) / bar_mm2(site, part).max(1e-6) - in_mm(part.balance.forged_length);
    if is_scarf { out().max(0.0) } else { 0.0 }
}

/// Whether an end is drawn out along with what lies beside it before it is scarfed.
pub(crate) fn is_drawn_along(site: &Site<'_>, part: Part<'_>) -> bool {
    leader(site, part.at).is_some()
}
