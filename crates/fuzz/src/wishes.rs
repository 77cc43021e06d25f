//! Random edits.

use crate::corpus::Corpus;
use crate::mutate::mutate;
use crate::random::Random;
use fh_core::balance::balance;
use fh_core::edit::{BarHeader, BoundaryMove, BoundaryTarget, Edit, Neighbor, PlanHeader, WholeChange};
use fh_core::plan::{Chain, Plan};
use fh_measure::{LengthRange, LengthUnit, WrittenLength};
use serde::de::DeserializeOwned;
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// Factors at the ends of what a piece may be scaled by, and beyond.
const FACTORS: [f64; 7] = [f64::NAN, 0.0, -2.0, 0.01, 1.0, 100.0, 1e9];

/// Makes edits from what stands in other plans.
pub(crate) struct Wishes<'a> {
    pub(crate) corpus: &'a Corpus,
    pub(crate) random: Random,
}

impl Wishes<'_> {
    /// An edit of a plan; none where what was picked makes none.
    pub(crate) fn edit(&mut self, plan: &Plan) -> Option<Edit> {
        let bar = self.random.place(plan.bars.len());
        let count = plan.bars.get(bar).map_or(0, |bar| bar.flat().len());
        let at = self.random.place(count);
        if self.random.one_in(2) {
            return self.deed(plan, bar, at);
        }
        Some(match self.random.below(17) {
            0 => Edit::ReplacePlan(Box::new(self.other_plan()?)),
            1 => Edit::SetPlan(Box::new(PlanHeader::from(&self.other_plan()?))),
            2 => Edit::SetJoints(self.any("joints")?),
            3 => Edit::SetWork(Box::new(self.any("work")?)),
            4 => Edit::AddBar { at: bar, bar: Box::new(self.any("bars[]")?) },
            5 => Edit::RemoveBar { bar },
            6 => Edit::SetBar { bar, header: Box::new(self.header(plan, bar, at)?) },
            7 => Edit::InsertSegment { bar, at, segment: Box::new(self.any("segments[]")?) },
            8 => {
                let chain = self.chain(plan, bar);
                Edit::InsertInto { bar, chain, place: at, segment: Box::new(self.any("segments[]")?) }
            }
            9 => {
                let chain = self.chain(plan, bar);
                Edit::InsertSegments { bar, chain, place: at, segments: self.any("segments")? }
            }
            10 => Edit::ReplaceSegment { bar, at, segment: Box::new(self.any("segments[]")?) },
            11 => Edit::RemoveSegment { bar, at },
            12 => Edit::MoveSegment { bar, from: at, to: self.random.place(count) },
            13 => Edit::MoveToRound(self.boundary(plan, bar, at)),
            14 => Edit::Whole(self.whole(bar)?),
            _ => Edit::MoveBoundary(self.boundary(plan, bar, at)),
        })
    }

    /// The other hand, another bar or another size; now and then by a number that is none to scale by.
    fn whole(&mut self, bar: usize) -> Option<WholeChange> {
        Some(match self.random.below(3) {
            0 => WholeChange::OtherHand,
            1 => WholeChange::OtherBar { bar, section: Box::new(self.any("stock")?) },
            _ if self.random.one_in(4) => WholeChange::Scaled(*self.random.of(&FACTORS)?),
            _ => WholeChange::Scaled(0.3 + 3.0 * self.random.share()),
        })
    }

    fn other_plan(&mut self) -> Option<Plan> {
        self.random.of(&self.corpus.plans).cloned()
    }

    /// A value that stands behind a key in some plan, now and then changed.
    pub(crate) fn any<T: DeserializeOwned>(&mut self, key: &str) -> Option<T> {
        let mut value = self.random.of(self.corpus.values.get(key)?)?.clone();
        if self.random.one_in(3) {
            mutate(&mut value, &self.corpus.values, &mut self.random, 2);
        }
        serde_json::from_value(value).ok()
    }

    /// A bar's header, mostly of a bar that is cut already, with a segment that takes up.
    fn header(&mut self, plan: &Plan, bar: usize, at: usize) -> Option<BarHeader> {
        let own = plan.bars.get(bar)?;
        let mut header = BarHeader::from(own);
        if self.random.one_in(3) {
            header = BarHeader::from(self.other_plan()?.bars.first()?);
        }
        if !self.random.one_in(4) {
            let length = 50.0 + 2000.0 * self.random.share();
            header.length = WrittenLength::from_mm(length, LengthUnit::Millimeter, LengthRange::AboveZero).ok();
            header.takes_up = own.flat().get(at).map(|flat| flat.segment.name.clone());
        }
        Some(header)
    }

    fn chain(&mut self, plan: &Plan, bar: usize) -> Chain {
        let chains: Vec<Chain> = plan.bars.get(bar).map_or_else(Vec::new, |bar| {
            let flat = bar.flat();
            let splits = flat.iter().enumerate().filter(|(_, flat)| !flat.segment.form.branches().is_empty());
            splits.flat_map(|(split, _)| (0..3).map(move |branch| Chain::Branch { split, branch })).collect()
        });
        if self.random.one_in(3) { Chain::Bar } else { self.random.of(&chains).copied().unwrap_or(Chain::Bar) }
    }

    fn boundary(&mut self, plan: &Plan, bar: usize, at: usize) -> BoundaryMove {
        let balance = balance(plan);
        let segment = balance.bars.get(bar).and_then(|bar| bar.segments.get(at));
        let forged = self.random.one_in(2);
        let now = segment.map_or(Length::new::<millimeter>(100.0), |segment| {
            if forged { segment.forged_start + segment.forged_length } else { segment.mark_end }
        });
        let to = match self.random.below(12) {
            0 => Length::new::<millimeter>(
                *self.random.of(&[f64::NAN, f64::INFINITY, -1.0, 0.0, 1e14, 1e-12]).unwrap_or(&0.0),
            ),
            1..5 => now * (0.95 + 0.1 * self.random.share()),
            _ => now * (0.2 + 1.8 * self.random.share()),
        };
        let to = if forged { BoundaryTarget::Forged(to) } else { BoundaryTarget::Mark(to) };
        let neighbor = if self.random.one_in(2) { Neighbor::KeepsMetal } else { Neighbor::TradesMetal };
        BoundaryMove { bar, segment: at, to, neighbor }
    }
}
