//! A bar tried with other sizes of the parts that keep its asked sizes.

use super::measure::Measured;
use super::wanted::Wanted;
use crate::balance::Walk;
use crate::balance::bar::settle_to_fit;
use crate::metal::in_mm;
use crate::plan::Gives;

/// A part that gives to keep a size.
#[derive(Clone, Copy, Debug)]
pub(super) struct Keeper {
    /// Counted through the bar.
    pub(super) part: usize,
    pub(super) gives: Gives,
    /// Its length in mm as it is; for any other size 1, for that is multiplied.
    pub(super) now: f64,
    /// What its factor is multiplied with: its written length in mm, or 1 where none is written.
    pub(super) written: f64,
}

/// A bar, the parts that keep its sizes, and those sizes.
pub(super) struct Trial<'w, 'a> {
    pub(super) walk: &'w Walk<'a>,
    pub(super) keepers: &'w [Keeper],
    pub(super) wanted: &'w [&'w Wanted],
}

impl Trial<'_, '_> {
    /// The sizes in mm where the parts have these sizes; none where they cannot have them.
    pub(super) fn values(&self, sizes: &[f64]) -> Option<Vec<f64>> {
        if sizes.iter().any(|size| !size.is_finite() || *size <= 0.0) {
            return None;
        }
        let pairs = self.keepers.iter().zip(sizes);
        let mut kept: Vec<_> = pairs.map(|(keeper, size)| (keeper.part, keeper.gives, size / keeper.written)).collect();
        kept.sort_unstable_by_key(|give| give.0);
        let walk = Walk { kept: &kept, ..*self.walk };
        let mut met = Vec::new();
        let (settled, fills) = settle_to_fit(&walk, 0, &mut met);
        let is_filled = fills.iter().all(|fill| fill.gives.is_empty() || fill.factor.is_some());
        let is_sound =
            self.keepers.iter().all(|keeper| settled.get(keeper.part).is_some_and(|it| it.trouble.is_none()));
        if !is_filled || !is_sound || !met.is_empty() {
            return None;
        }
        let measured = Measured::of_settled(walk.bar, &settled);
        self.wanted.iter().map(|wanted| measured.value_mm(&wanted.what).ok()).collect()
    }

    /// How far the bar's parts are from end to end while it is straight, in mm.
    pub(super) fn reach(&self) -> f64 {
        let (settled, _) = settle_to_fit(self.walk, 0, &mut Vec::new());
        settled.iter().filter_map(|settled| settled.shape.as_ref()).map(|shape| in_mm(shape.length())).sum()
    }
}
