//! Metal that is moved, in words.

use crate::figures;
use crate::state::Desk;
use fh_rack::which::options::Moved;
use uom::si::f64::Mass;
use uom::si::mass::kilogram;

/// Metal that is moved, and how far: `420 g × 1.8`.
pub(super) fn moved(desk: &Desk<'_>, moved: Moved) -> String {
    if moved.kg < 0.000_5 {
        return "–".to_owned();
    }
    let mass = figures::mass(Mass::new::<kilogram>(moved.kg), desk.document.plan().units.length);
    format!("{mass} × {:.1}", moved.times)
}
