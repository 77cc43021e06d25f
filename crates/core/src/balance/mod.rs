//! The balance: every length, mark, volume and finding of a plan, worked out anew from the plan alone.

mod asked;
mod bar;
mod block;
mod blocks;
mod branch_sum;
mod cut_line;
mod draft;
mod dress_draft;
mod dressed;
mod filling;
mod fixed_mark;
mod gave;
mod gave_for;
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
mod via;
mod walk;

pub use asked::{FeaturePlace, SizeBalance, SizeMissed, feature_places};
pub use bar::BarBalance;
pub use block::Block;
pub use dressed::DressedSeen;
pub use fixed_mark::FixedMark;
pub use gave_for::GaveFor;
pub use hot::{CHECKING_HEAT_CELSIUS, hot_length};
pub use ladder::{Ladder, Rung, ladder};
pub use laid_off::{HoleMark, LaidOff, MARKS_APART_MM, SlitEnd, SlitMark};
pub use leeway::{Leeway, blunt_tip_mm, leeway, tolerance_mm};
pub use legs::{Leg, legs};
pub use repeats::{LaidRepeat, laid_repeats, lay_repeat};
pub use segment::{Derived, Follows, Grown, SegmentBalance, ViaBalance};
pub use spread::{BarSpread, Between, SegmentSpread, Spread, spread};
pub use totals::{Totals, totals};
pub use via::{as_by_then, opens_again};

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
    /// What the asked sizes come to, in the plan's order.
    pub sizes: Vec<SizeBalance>,
    /// What the plan is held against, stops first.
    pub findings: Vec<Finding>,
}

impl Balance {
    /// Bars on their own, held against nothing: as they are at some step of the work.
    pub fn of_bars(bars: Vec<BarBalance>) -> Self {
        Self { bars, sizes: Vec::new(), findings: Vec::new() }
    }
}

/// Works out a plan.
///
/// It always answers: what could not be met is told in the findings, and the rest is worked out all the same.
pub fn balance(plan: &Plan) -> Balance {
    let density = plan.material().density();
    let mut bars = Vec::with_capacity(plan.bars.len());
    let (mut troubles, mut kept) = (Vec::new(), Vec::new());
    for (index, bar) in plan.bars.iter().enumerate() {
        let walk = Walk::new(plan, bar);
        let found = asked::keep(&walk, index);
        let gives = asked::gives(&found);
        bars.push(bar::balance_bar(&Walk { kept: &gives, ..walk }, index, density, &mut troubles));
        kept.extend(found);
    }
    let sizes = asked::size_balances(plan, &bars, &kept);
    let findings = findings::findings(plan, (&bars, &sizes), &troubles);
    Balance { bars, sizes, findings }
}
