//! The lower and the upper edge of each bar.

use super::per_view::PerView;
use crate::canvas::strip::Strip;
use crate::state::Views;
use fh_core::metal::View;

/// The lower and the upper edge of each bar in mm, as it is seen.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(in crate::canvas) struct Edges {
    pub(in crate::canvas) bar: PerView<[f64; 2]>,
    pub(in crate::canvas) forged: PerView<[f64; 2]>,
}

impl Edges {
    pub(in crate::canvas) fn of(&self, strip: Strip, view: View) -> [f64; 2] {
        match strip {
            Strip::Bar => *self.bar.of(view),
            Strip::Forged => *self.forged.of(view),
        }
    }

    /// All thicknesses that lie one above the other, in mm.
    pub(in crate::canvas) fn across_mm(&self, views: Views) -> f64 {
        let seen = |view: &View| {
            let size = |strip| self.of(strip, *view)[1] - self.of(strip, *view)[0];
            size(Strip::Bar) + size(Strip::Forged)
        };
        views.shown().iter().map(seen).sum()
    }
}
