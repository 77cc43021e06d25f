//! What a field for a size needs to know of the plan around it.

use crate::theme::Theme;
use fh_core::balance::BarBalance;
use fh_core::metal::Shape;
use fh_core::plan::{Chain, PlanUnit, Units};
use fh_measure::{LengthRange, Rounding, WrittenLength, format_length};
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// The smallest stock that new sizes are taken from, in mm: a bar of no size must not make sizes of none.
const LEAST_STOCK_MM: f64 = 1.0;
/// The side of the bar that new sizes are taken from where there is none yet, in mm.
const USUAL_STOCK_MM: f64 = 12.0;

/// The plan's units, and the bar that new sizes are taken from.
pub(crate) struct Sizing<'a> {
    pub(crate) theme: &'a Theme,
    pub(crate) units: Units,
    /// Width and thickness of the bar in mm.
    pub(crate) stock_mm: [f64; 2],
}

impl<'a> Sizing<'a> {
    /// For a bar.
    pub(crate) fn new(theme: &'a Theme, units: Units, bar: Option<&BarBalance>) -> Self {
        let stock_mm = bar.map_or([USUAL_STOCK_MM; 2], |bar| {
            let mm = |length: Length| length.get::<millimeter>().max(LEAST_STOCK_MM);
            [mm(bar.stock_section.width()), mm(bar.stock_section.thickness())]
        });
        Self { theme, units, stock_mm }
    }

    /// For a chain of a bar: in a branch, sizes are taken from what an even cut leaves of the bar.
    pub(crate) fn within(theme: &'a Theme, units: Units, bar: Option<&BarBalance>, chain: Chain) -> Self {
        let whole = Self::new(theme, units, bar);
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
    pub(crate) fn without_stock(theme: &'a Theme, units: Units) -> Self {
        Self::new(theme, units, None)
    }

    /// A new size of about so many mm, in the plan's unit and in a step that a smith would choose.
    pub(crate) fn size(&self, about_mm: f64) -> Option<WrittenLength> {
        let step = match self.units.length {
            PlanUnit::Inch if about_mm < 50.0 => 25.4 / 16.0,
            PlanUnit::Inch => 25.4 / 4.0,
            PlanUnit::Millimeter if about_mm < 30.0 => 0.5,
            PlanUnit::Millimeter => 5.0,
        };
        let mm = ((about_mm / step).round() * step).max(step);
        WrittenLength::from_mm(mm, self.units.length.length_unit(), LengthRange::AboveZero).ok()
    }

    /// A length that is forged to, finer than the marks.
    pub(crate) fn fine_words(&self, length: Length) -> String {
        let rounding = match self.units.length {
            PlanUnit::Inch => Rounding::SIXTY_FOURTH_INCH,
            PlanUnit::Millimeter => Rounding::TENTH_MILLIMETER,
        };
        format_length(length.get::<millimeter>(), self.units.length.length_unit(), rounding)
    }

    /// A length as the plan shows it.
    pub(crate) fn words(&self, length: Length) -> String {
        format_length(length.get::<millimeter>(), self.units.length.length_unit(), self.units.marks)
    }
}
