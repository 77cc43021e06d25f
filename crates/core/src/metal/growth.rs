//! What growth a section asks of the bar that it is forged from.

use fh_heat::growth::{Growth, growth, share_asked};

/// What it takes to make a section, its width and thickness in mm, of another: one size grows while the other is struck down.
///
/// Where both become smaller, or nothing grows, flat tools do it; where both grow it is no question of drawing.
pub(crate) fn growth_asked(before_mm: [f64; 2], after_mm: [f64; 2]) -> Growth {
    let turned = |[one, other]: [f64; 2]| [other, one];
    let grows = |before: [f64; 2], after: [f64; 2]| after[0] > before[0] && after[1] < before[1];
    let share = match () {
        () if grows(before_mm, after_mm) => share_asked(before_mm, after_mm),
        () if grows(turned(before_mm), turned(after_mm)) => share_asked(turned(before_mm), turned(after_mm)),
        () => None,
    };
    share.map_or(Growth::FlatTools, growth)
}
