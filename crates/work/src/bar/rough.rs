//! A flag as it is forged, before it is trimmed to its outline.

use crate::job::site::{Part, in_mm3};
use fh_core::metal::{Outline, Shape};
use fh_core::plan::Gives;

/// The outline of a flag before it is trimmed, larger the same all round, as on its template; none where nothing is to be trimmed,
/// or where a blank is spread first, which has an outline of its own.
pub(crate) fn rough_outline(part: Part<'_>, is_trimmed: bool) -> Option<Outline> {
    let Some(Shape::Flag { outline, blank: None, .. }) = &part.balance.shape else { return None };
    let (finished, trimmed) = (in_mm3(part.balance.finished_volume), in_mm3(part.balance.trimmed_volume));
    let is_rough = trimmed > 0.0 && !is_trimmed;
    let factor = ((finished + trimmed) / finished.max(1e-9)).sqrt();
    let wide = outline.scaled(Gives::Width, factor).filter(|_| is_rough)?;
    match wide.bare() {
        Outline::Disc { .. } => Some(wide),
        _ => wide.scaled(Gives::Length, factor),
    }
}
