//! What is in a block: how long its metal is at usual sections, how wide a leaf of it is and how far across a disc, with the
//! scale taken off first.

mod answer;
mod usual;

pub use answer::{Answer, disc_diameter, leaf_width, length_as, twice_as_long_leaf};

use crate::balance::BarBalance;
use crate::metal::in_mm;
use crate::plan::{Bar, Form, Plan, Segment};
use fh_measure::{WrittenShare, in_mm2, mm3};
use uom::si::f64::{Length, Volume};

/// What is in an open block.
#[derive(Clone, Debug, PartialEq)]
pub struct Contents {
    /// Its segment, counted through the bar.
    pub segment: usize,
    /// Its length of bar.
    pub bar_length: Length,
    /// Its metal once the scale is lost.
    pub metal: Volume,
    /// What could be made of all of it.
    pub answers: Vec<Answer>,
}

/// What is in each open block of a bar.
pub fn contents(plan: &Plan, bar: &Bar, balance: &BarBalance) -> Vec<Contents> {
    let mut all = Vec::new();
    for (at, flat) in bar.flat().iter().enumerate() {
        if let (Form::Open(_), Some(segment)) = (&flat.segment.form, balance.segments.get(at)) {
            let share = scale(plan, bar, flat.segment);
            let metal = in_mm(segment.stock_length) * in_mm2(balance.stock_area) * (1.0 - share);
            let answers = usual::answers(metal, &balance.stock, plan.units.length);
            all.push(Contents { segment: at, bar_length: segment.stock_length, metal: mm3(metal), answers });
        }
    }
    all
}

/// The share of metal that a block loses to scale once it is forged.
fn scale(plan: &Plan, bar: &Bar, segment: &Segment) -> f64 {
    let scale = segment.scale.as_ref().or(bar.scale.as_ref()).or(plan.scale.as_ref());
    scale.map_or(0.0, WrittenShare::ratio)
}
