//! What a field for a size needs to know of the plan around it.

use crate::figures;
use crate::theme::Theme;
use fh_core::balance::BarBalance;
use fh_core::first_sizes::FirstSizes;
use fh_core::plan::{Chain, Units};
use uom::si::f64::Length;

/// The theme, and what new sizes are taken from.
pub(crate) struct Sizing<'a> {
    pub(crate) theme: &'a Theme,
    pub(crate) first: FirstSizes,
}

impl<'a> Sizing<'a> {
    /// For a bar.
    pub(crate) fn new(theme: &'a Theme, units: Units, bar: Option<&BarBalance>) -> Self {
        Self { theme, first: FirstSizes::new(units, bar) }
    }

    /// For a chain of a bar.
    pub(crate) fn within(theme: &'a Theme, units: Units, bar: Option<&BarBalance>, chain: Chain) -> Self {
        Self { theme, first: FirstSizes::within(units, bar, chain) }
    }

    /// Where there is no bar yet.
    pub(crate) fn without_stock(theme: &'a Theme, units: Units) -> Self {
        Self { theme, first: FirstSizes::without_stock(units) }
    }

    /// A size of the finished piece, finer than the marks.
    pub(crate) fn words(&self, length: Length) -> String {
        figures::finished(figures::mm(length), self.first.units.length)
    }
}
