//! What a whole plan takes: all its bars, each as often as it is made.

use super::Balance;
use crate::plan::Plan;
use uom::si::f64::{Length, Mass};
use uom::si::length::millimeter;

/// The sums over all pieces of all bars.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Totals {
    /// How many pieces are cut.
    pub pieces: u64,
    /// The length of bar that is cut, each piece as it is rounded for the shop.
    pub cut_length: Length,
    /// The mass of the bars as they are cut.
    pub stock_mass: Mass,
    /// The mass of the finished pieces.
    pub finished_mass: Mass,
    /// The largest error that rounding made anywhere.
    pub largest_rounding_error: Length,
}

/// Sums up a plan: pieces × how many are made, over all bars.
pub fn totals(plan: &Plan, balance: &Balance) -> Totals {
    let mut all = Totals::default();
    for (bar, worked) in plan.bars.iter().zip(&balance.bars) {
        let count = f64::from(bar.pieces());
        let shop = match bar.length {
            // Cut already: it is as long as it is.
            Some(_) => worked.stock_length,
            None => Length::new::<millimeter>(worked.cut_length_shop(plan.units.marks).mm()),
        };
        all.pieces += u64::from(bar.pieces());
        all.cut_length += shop * count;
        all.stock_mass += worked.stock_mass * count;
        all.finished_mass += worked.finished_mass * count;
        if worked.largest_rounding_error > all.largest_rounding_error {
            all.largest_rounding_error = worked.largest_rounding_error;
        }
    }
    all
}
