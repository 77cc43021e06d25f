//! Asked sizes: what they come to, and the parts that give so that they are kept.
//!
//! One size kept by one part: every length of the part that makes the size is bracketed, and the one nearest to its present
//! length is taken. Several on one bar: damped Newton steps from the present lengths. Where no length makes them nothing moves.

mod keep;
mod measure;
mod newton;
mod one;
mod overall;
mod places;
mod size_balance;
mod spot;
mod trial;
mod wanted;

pub use places::{FeaturePlace, feature_places};
pub use size_balance::{SizeBalance, SizeMissed};

pub(super) use keep::{gives, keep};

use super::BarBalance;
use crate::metal::mm;
use crate::plan::Plan;
use keep::Kept;
use measure::Measured;
use wanted::Wanted;

/// What every asked size comes to on bars that are balanced, with what was found for those that a part keeps.
pub(super) fn size_balances(plan: &Plan, bars: &[BarBalance], kept: &[Kept]) -> Vec<SizeBalance> {
    let step = plan.units.marks.step_mm();
    let one = |(index, size)| {
        let wanted = match Wanted::new(plan, size) {
            Ok(wanted) => wanted,
            Err(missed) => return SizeBalance::missed(missed),
        };
        let found = kept.iter().find(|kept| kept.size == index);
        let keeper = SizeBalance { bar: Some(wanted.bar), kept_by: wanted.keeper, ..SizeBalance::default() };
        let both = plan.bars.get(wanted.bar).zip(bars.get(wanted.bar));
        let value = both.map(|(bar, balance)| Measured::of_balance(bar, balance).value_mm(&wanted.what));
        match value {
            None => keeper,
            Some(Err(missed)) => SizeBalance { missed: Some(missed.named(size)), ..keeper },
            Some(Ok(value)) => {
                let met = wanted.is_met(value, step);
                let told = found.and_then(|kept| kept.missed.clone());
                let missed = told.or((!met).then_some(SizeMissed::Off));
                let factor = found.and_then(|kept| kept.factor);
                SizeBalance { value: Some(mm(value)), factor, met, missed, ..keeper }
            }
        }
    };
    plan.sizes.iter().enumerate().map(one).collect()
}
