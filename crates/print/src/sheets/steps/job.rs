//! The job that the step sheets tell: a plan with its order of work, and the band over each of its bars.

use super::bar_scale::BarScale;
use super::cell::{fitted, in_white};
use crate::drawing::{Align, Item, at};
use crate::fonts::Weight;
use crate::pen::Gray;
use crate::sheets::flow::Block;
use crate::sheets::names::bar_name;
use crate::sheets::type_sizes::{CAPTION, FACT};
use crate::typeset;
use fh_core::balance::Balance;
use fh_core::cautions::Cautions;
use fh_core::plan::{Bar, Plan};
use fh_work::Worked;

/// What is worked is told apart without color.
const HATCHED: &str = "hatched: what the step works";
/// The height of the band over the steps of a bar.
const BAND_MM: f64 = 7.5;

/// A plan with its order of work.
pub(in crate::sheets) struct Job<'a> {
    pub(in crate::sheets) plan: &'a Plan,
    pub(in crate::sheets) balance: &'a Balance,
    pub(in crate::sheets) worked: &'a Worked,
    /// What the plan asks to beware of.
    pub(in crate::sheets) warned: &'a Cautions,
}

impl Job<'_> {
    /// A band over the steps of a bar, or of the whole piece.
    pub(super) fn band(&self, bar: Option<usize>, scale: Option<BarScale>, width: f64) -> Block {
        let words = match bar.and_then(|index| Some((index, self.plan.bars.get(index)?))) {
            Some((index, bar)) => {
                format!("{}: {}, make {}", bar_name(self.plan, index, bar), bar.stock.describe(), bar.pieces())
            }
            None => "The whole piece".to_owned(),
        };
        let mut items = vec![Item::rectangle(at(0.0, 0.0), at(width, BAND_MM), Some(Gray::DARK), None)];
        let words = fitted(&words, FACT, Weight::SemiBold, width - 6.0, at(3.0, 5.4), Align::Left);
        items.extend(words.map(in_white));
        let band = Block { height: BAND_MM, items };
        let Some(scale) = scale else { return band.then_free(1.5) };
        let datum = bar.and_then(|bar| self.plan.bars.get(bar)).map_or("datum end", Bar::datum_name);
        let datum = typeset::shorten(datum, CAPTION, Weight::SemiBold, width * 0.4);
        let thicker = scale.explained().map_or_else(String::new, |how| format!("; from the side, {how}"));
        let legend = format!("{}; at the left: {datum}; {HATCHED}{thicker}", scale.words());
        let legend = fitted(&legend, CAPTION, Weight::Regular, width - 6.0, at(3.0, 3.6), Align::Left);
        band.over(Block { height: 4.8, items: legend.into_iter().collect() })
    }
}
