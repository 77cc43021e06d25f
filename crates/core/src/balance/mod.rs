//! The balance: every length, mark, volume and finding of a plan, worked out anew from the plan alone.

mod bar;
mod block;
mod blocks;
mod draft;
mod filling;
mod fixed_mark;
mod gave;
mod hot;
mod ladder;
mod laid_off;
mod lay_off;
mod leeway;
mod legs;
mod marks;
mod reach;
mod repeats;
mod segment;
mod settle;
mod settle_scroll;
mod settle_socket;
mod settle_split;
mod solve;
mod spread;
mod stretch;
mod totals;
mod trade_sizes;
mod trouble;
mod walk;

pub use bar::BarBalance;
pub use block::Block;
pub use fixed_mark::FixedMark;
pub use hot::{CHECKING_HEAT_CELSIUS, hot_length};
pub use ladder::{Ladder, Rung, ladder};
pub use laid_off::{HoleMark, LaidOff, MARKS_APART_MM, SlitEnd, SlitMark};
pub use leeway::{Leeway, blunt_tip_mm, leeway, tolerance_mm};
pub use legs::{Leg, legs};
pub use repeats::{LaidRepeat, laid_repeats, lay_repeat};
pub use segment::{Derived, Grown, SegmentBalance};
pub use spread::{BarSpread, Between, SegmentSpread, Spread, spread};
pub use totals::{Totals, totals};

pub(crate) use bar::{laid, settled_on_cut_bar};
pub(crate) use blocks::{fill_blocks, surroundings};
pub(crate) use draft::Draft;
pub(crate) use lay_off::lay_off;
pub(crate) use settle::Settled;
pub(crate) use solve::solve;
pub(crate) use trouble::{BarTrouble, Met, Trouble};
pub(crate) use walk::{Walk, scaled};

use crate::findings::{self, Finding};
use crate::plan::Plan;

/// Everything that follows from a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Balance {
    /// One for each bar of the plan, in its order.
    pub bars: Vec<BarBalance>,
    /// What the plan is held against, stops first.
    pub findings: Vec<Finding>,
}

/// Works out a plan.
///
/// It always answers: what could not be met is told in the findings, and the rest is worked out all the same.
pub fn balance(plan: &Plan) -> Balance {
    let density = plan.material().density();
    let mut bars = Vec::with_capacity(plan.bars.len());
    let mut troubles = Vec::new();
    for (index, bar) in plan.bars.iter().enumerate() {
        bars.push(bar::balance_bar(plan, index, bar, density, &mut troubles));
    }
    let findings = findings::findings(plan, &bars, &troubles);
    Balance { bars, findings }
}
