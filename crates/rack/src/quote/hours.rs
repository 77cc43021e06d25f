//! Hours at the fire: from the order of work, as a range, with what is learned from piece to piece.

use crate::kept::shop::{Hours, Shop};
use fh_core::balance::balance;
use fh_core::metal::Section;
use fh_core::plan::Plan;
use fh_work::{Shop as Tools, work_out};
use uom::si::length::meter;
use uom::si::mass::kilogram;

/// How many times as long or as short it may be, before anything was logged: the minutes are a first guess (common practice, no
/// source).
const DOUBT: f64 = 1.5;
/// The same once the smith's own log corrects the minutes (common practice, no source).
const DOUBT_LEARNED: f64 = 1.25;
/// How long a heat takes in the fire where the shop does not say, in minutes: common practice, no source.
const HEAT_UP: f64 = 4.0;

/// What one of a plan takes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PlanWork {
    /// Minutes of work, hot and cold, all its bars.
    pub minutes: f64,
    /// How many heats, all its bars.
    pub heats: usize,
    /// Whether the smith's own log corrected the minutes.
    pub is_learned: bool,
    /// The mass of the finished piece in kg.
    pub mass_kg: f64,
    /// Its surface in m², each part by its middle section; for a finish, not for the scales.
    pub surface_m2: f64,
}

/// Works out what one of a plan takes.
pub fn work_of(plan: &Plan, tools: &Tools) -> PlanWork {
    let balanced = balance(plan);
    let worked = work_out(plan, &balanced, tools);
    let times = |bar: Option<usize>| bar.and_then(|bar| plan.bars.get(bar)).map_or(1.0, |bar| f64::from(bar.pieces()));
    let mut work = PlanWork {
        minutes: worked.steps.iter().map(|step| step.minutes * times(step.bar)).sum(),
        heats: worked.heats_of_all,
        is_learned: !worked.learnt.is_empty(),
        ..PlanWork::default()
    };
    for (bar, of) in balanced.bars.iter().zip(&plan.bars) {
        let pieces = f64::from(of.pieces());
        work.mass_kg += of_mass(bar.finished_mass) * pieces;
        for segment in bar.segments.iter().filter(|segment| segment.finished_mass.value > 0.0) {
            let around =
                segment.shape.as_ref().and_then(|shape| shape.middle()).map_or(0.0, |size| around_m(&size.section()));
            work.surface_m2 += around * segment.forged_length.get::<meter>() * pieces;
        }
    }
    work
}

fn of_mass(mass: uom::si::f64::Mass) -> f64 {
    mass.get::<kilogram>()
}

fn around_m(section: &Section) -> f64 {
    section.perimeter().get::<meter>()
}

/// Minutes with their doubt.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Range {
    /// The least.
    pub low: f64,
    /// The likely figure.
    pub likely: f64,
    /// The most.
    pub high: f64,
}

impl Range {
    /// The figure that is taken.
    pub fn taken(self, hours: Hours) -> f64 {
        match hours {
            Hours::Low => self.low,
            Hours::Likely => self.likely,
            Hours::High => self.high,
        }
    }

    /// Both together.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self { low: self.low + other.low, likely: self.likely + other.likely, high: self.high + other.high }
    }
}

/// Minutes at the fire for the first of a plan: the work, and the wait for each heat, shared by the irons that lie in the fire.
pub fn first_piece(work: &PlanWork, shop: &Shop) -> f64 {
    work.minutes + work.heats as f64 * wait_for_a_heat(shop)
}

/// How long the work waits for a heat, in minutes: as long as it takes in the fire, shared by the irons that lie in it.
pub fn wait_for_a_heat(shop: &Shop) -> f64 {
    let heat_up = shop.heat_up.as_ref().map_or(HEAT_UP, |time| time.minutes);
    heat_up / f64::from(shop.irons.unwrap_or(1).max(1))
}

/// Minutes at the fire for so many of a plan.
pub fn minutes_for(work: &PlanWork, count: u64, shop: &Shop) -> Range {
    let likely = first_piece(work, shop) * equal_to_first(count, learning(shop));
    let doubt = if work.is_learned { DOUBT_LEARNED } else { DOUBT };
    Range { low: likely / doubt, likely, high: likely * doubt }
}

/// What a doubling of the count leaves of the time of a piece, 0.5 to 1.
pub fn learning(shop: &Shop) -> f64 {
    shop.learning.as_ref().map_or(1.0, |share| share.hundredths as f64 / 10_000.0)
}

/// How many first pieces so many take as long as: `Σ k^b` over k from 1, `b = log2(rate)`.
///
/// T. P. Wright, *Factors affecting the cost of airplanes*, Journal of the Aeronautical Sciences 3, 1936, in the form that
/// speaks of each unit (J. R. Crawford, 1944), from memory.
pub fn equal_to_first(count: u64, rate: f64) -> f64 {
    let power = rate.log2();
    // Beyond this many the sum is worked out as an integral, which is off by less than a ten-thousandth.
    const SUMMED: u64 = 10_000;
    let summed: f64 = (1..=count.min(SUMMED)).map(|piece| (piece as f64).powf(power)).sum();
    let (from, to) = (SUMMED as f64 + 0.5, count as f64 + 0.5);
    if count <= SUMMED { summed } else { summed + (to.powf(power + 1.0) - from.powf(power + 1.0)) / (power + 1.0) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_doubling_leaves_the_rate() {
        // At 80 %: 1, 0.8, 0.7021, 0.64.
        let unit = |count: u64| equal_to_first(count, 0.8) - equal_to_first(count - 1, 0.8);
        assert!((unit(2) - 0.8).abs() < 1e-12 && (unit(4) - 0.64).abs() < 1e-12 && (unit(3) - 0.7021).abs() < 1e-4);
        assert!((equal_to_first(40, 1.0) - 40.0).abs() < 1e-12);
        let by_sum: f64 = (1..=30_000_u64).map(|piece| (piece as f64).powf(0.9_f64.log2())).sum();
        assert!((equal_to_first(30_000, 0.9) / by_sum - 1.0).abs() < 1e-4);
    }

    #[test]
    fn a_heat_waits_for_the_fire_and_irons_share_the_wait() {
        let work = PlanWork { minutes: 20.0, heats: 10, ..PlanWork::default() };
        // 10 heats of 4 min in a fire that takes two irons: 20 + 20.
        assert!((first_piece(&work, &Shop::common()) - 40.0).abs() < 1e-12);
        let range = minutes_for(&work, 1, &Shop::common());
        assert!((range.high - 60.0).abs() < 1e-9 && (range.low - 40.0 / 1.5).abs() < 1e-9);
    }
}
