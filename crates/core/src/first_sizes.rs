//! Sizes as they are first offered, to be typed over: in the plan's unit, and against the bar.

use crate::balance::BarBalance;
use crate::metal::Shape;
use crate::plan::{Chain, PlanUnit, Units};
use fh_measure::{LengthRange, WrittenLength};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// The smallest stock that new sizes are taken from, in mm: a bar of no size must not make sizes of none.
const LEAST_STOCK_MM: f64 = 1.0;
/// The side of the bar that new sizes are taken from where there is none yet, in mm.
const USUAL_STOCK_MM: f64 = 12.0;

/// The plan's units, and the bar that new sizes are taken from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FirstSizes {
    /// The plan's units.
    pub units: Units,
    /// Width and thickness of the bar in mm.
    pub stock_mm: [f64; 2],
}

impl FirstSizes {
    /// For a bar.
    pub fn new(units: Units, bar: Option<&BarBalance>) -> Self {
        let stock_mm = bar.map_or([USUAL_STOCK_MM; 2], |bar| {
            let mm = |length: Length| length.get::<millimeter>().max(LEAST_STOCK_MM);
            [mm(bar.stock_section.width()), mm(bar.stock_section.thickness())]
        });
        Self { units, stock_mm }
    }

    /// For a chain of a bar: in a branch, sizes are taken from what an even cut leaves of the bar.
    pub fn within(units: Units, bar: Option<&BarBalance>, chain: Chain) -> Self {
        let whole = Self::new(units, bar);
        let Chain::Branch { split, .. } = chain else { return whole };
        let split = bar.and_then(|bar| bar.segments.get(split)).and_then(|split| split.shape.as_ref());
        let Some(Shape::Split(split)) = split else { return whole };
        let count = split.branches.len().max(1) as f64;
        let section = split.stock.section();
        let [wide, thick] = [section.width(), section.thickness()].map(|size| size.get::<millimeter>());
        let is_upright = split.side.cos().abs() > split.side.sin().abs();
        let cut = if is_upright { [wide, thick / count] } else { [wide / count, thick] };
        Self { stock_mm: cut.map(|mm| mm.max(LEAST_STOCK_MM)), ..whole }
    }

    /// Where there is no bar yet.
    pub fn without_stock(units: Units) -> Self {
        Self::new(units, None)
    }

    /// A new size of about so many mm, in the plan's unit and in a step that a smith would choose.
    pub fn size(&self, about_mm: f64) -> Option<WrittenLength> {
        self.rounded(about_mm, f64::round)
    }

    /// The next such size that is no smaller than so many mm.
    pub fn size_that_holds(&self, least_mm: f64) -> Option<WrittenLength> {
        // A hair less, or dust makes a step of it.
        self.rounded(least_mm, |steps| (steps - 1e-6).ceil())
    }

    fn rounded(&self, about_mm: f64, to_whole: impl Fn(f64) -> f64) -> Option<WrittenLength> {
        let step = match self.units.length {
            PlanUnit::Inch if about_mm < 50.0 => 25.4 / 16.0,
            PlanUnit::Inch => 25.4 / 4.0,
            PlanUnit::Millimeter if about_mm < 30.0 => 0.5,
            PlanUnit::Millimeter => 5.0,
        };
        let mm = (to_whole(about_mm / step) * step).max(step);
        WrittenLength::from_mm(mm, self.units.length.length_unit(), LengthRange::AboveZero).ok()
    }
}
