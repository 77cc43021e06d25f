//! Stubs beyond a step that are drawn down along with the part before it, worked out slowly from the plan and its balance.

use super::ends::{least_of_raw, raw_area};
use fh_core::balance::BarBalance;
use fh_core::metal::{FreeEnd, Shape};
use fh_core::plan::{Chain, Flat, Form};
use tests::{mm, mm2};

/// The part that is drawn down before a step or a tenon is set, or an end tapered, because what goes thin there is a stub; `draws` says of a part
/// whether it is drawn or tapered.
pub(crate) fn drawn_before(
    flat: &[Flat<'_>],
    balance: &BarBalance,
    at: usize,
    draws: impl Fn(usize) -> bool,
) -> Option<usize> {
    let next = |from: usize, ahead: bool| {
        let place = flat[from].place.checked_add_signed(if ahead { 1 } else { -1 })?;
        (0..flat.len()).find(|other| flat[*other].chain == flat[from].chain && flat[*other].place == place)
    };
    let (stub, ahead) = match (&flat[at].segment.form, &balance.segments[at].shape) {
        (Form::Shoulder(_), Some(Shape::Shoulder { from, to, .. })) => {
            let ahead = mm2(from.area()) > mm2(to.area());
            let stub = next(at, ahead)?;
            let is_long_form = matches!(flat[stub].segment.form, Form::Taper(_) | Form::Drawn(_));
            let beyond = next(stub, ahead);
            let cut_off = |at: usize| matches!(flat[at].segment.form, Form::Hold(_) | Form::Trim(_));
            let ends = beyond.map_or_else(|| is_free(flat, balance, stub, ahead), cut_off);
            (is_long_form && ends).then_some((stub, ahead))?
        }
        (Form::Tenon(_) | Form::Taper(_), Some(_)) => {
            let ahead = next(at, true).is_none();
            let ends = next(at, ahead).is_none() && is_free(flat, balance, at, ahead);
            ends.then_some((at, ahead))?
        }
        _ => return None,
    };
    if mm(balance.segments[stub].stock_length) >= 1.5 * least_of_raw(balance, stub) {
        return None;
    }
    let before = next(at, !ahead)?;
    let own = &balance.segments[before];
    let even = matches!(own.shape, Some(Shape::Prism { .. } | Shape::Taper { .. }));
    let form = matches!(flat[before].segment.form, Form::Drawn(_) | Form::Taper(_));
    let shape = own.shape.as_ref()?;
    let area = mm2(shape.area_at(if ahead != own.reversed { 1.0 } else { 0.0 }));
    let raw = raw_area(balance, before);
    let end = |share: f64| balance.segments[stub].shape.as_ref().map(|shape| mm2(shape.area_at(share)));
    let most = end(0.0)?.max(end(1.0)?);
    let drawn = even && form && draws(before) && area < 0.9 * raw && area > 1e-3 * raw && most <= 1.02 * area;
    drawn.then_some(before)
}

/// Whether the end of a chain is free there: the bar's own ends, and of a branch the end away from its root.
fn is_free(flat: &[Flat<'_>], balance: &BarBalance, at: usize, ahead: bool) -> bool {
    let Chain::Branch { split, .. } = flat[at].chain else { return true };
    match &balance.segments[split].shape {
        Some(Shape::Split(size)) => size.free == if ahead { FreeEnd::Far } else { FreeEnd::Datum },
        _ => true,
    }
}
