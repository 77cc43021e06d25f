//! A flag as it is forged, before it is trimmed to its outline.

use crate::job::part::cut_off_mm3;
use crate::job::site::Part;
use fh_core::metal::{Outline, Shape};
use fh_core::plan::Gives;

/// A share of the metal that is only the arithmetic's.
const HAIR: f64 = 1e-9;

/// The outline of a flag before it is trimmed, larger the same all round, as on its template; none where nothing is to be trimmed,
/// or where a blank is spread first, which has an outline of its own.
pub(crate) fn rough_outline(part: Part<'_>, is_trimmed: bool) -> Option<Outline> {
    let Some(Shape::Flag { outline, blank: None, .. }) = &part.balance.shape else { return None };
    let (finished, trimmed) = cut_off_mm3(part);
    let is_rough = trimmed > finished * HAIR && !is_trimmed;
    let factor = ((finished + trimmed) / finished.max(1e-9)).sqrt();
    let wide = outline.scaled(Gives::Width, factor).filter(|_| is_rough)?;
    match wide.bare() {
        Outline::Disc { .. } => Some(wide),
        _ => wide.scaled(Gives::Length, factor),
    }
}
