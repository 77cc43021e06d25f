//! Random edits: where they land is said in shares, so that they fit any plan.

use crate::properties::forms::segment;
use crate::properties::plans::{bar, plan};
use crate::properties::sizes::{Sizes, Written, length, section, share};
use fh_core::balance::balance;
use fh_core::edit::{BarHeader, BoundaryMove, BoundaryTarget, Edit, Neighbor, PlanHeader};
use fh_core::plan::{Plan, Segment, Units};
use proptest::prelude::*;
use serde_json::Value;
use tests::mm;
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// An edit that is not yet laid on a plan.
#[derive(Clone, Debug)]
pub(crate) enum Deed {
    Insert(f64, Written),
    Replace(f64, Written),
    Remove(f64),
    Move(f64, f64),
    Boundary(Drag),
    Stock(Written),
    Fix(Option<String>, Option<f64>),
    Scale(String),
    Units(bool),
    AddBar(Written),
    RemoveBar(f64),
    Another(Written),
}

/// A dragged boundary: of which segment, and how far between the marks on either side; below 0 and over 1 lie beyond.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Drag {
    pub(crate) segment: f64,
    pub(crate) to: f64,
    pub(crate) trades: bool,
    pub(crate) forged: bool,
}

pub(crate) fn drag() -> impl Strategy<Value = Drag> {
    (0.0..1.0, -0.2..1.4, any::<bool>(), prop::bool::weighted(0.2)).prop_map(|(segment, to, trades, forged)| Drag {
        segment,
        to,
        trades,
        forged,
    })
}

pub(crate) fn deed(sizes: Sizes) -> impl Strategy<Value = Deed> {
    let place = || 0.0..1.0_f64;
    prop_oneof![
        4 => (place(), segment(sizes)).prop_map(|(at, segment)| Deed::Insert(at, segment)),
        3 => (place(), segment(sizes)).prop_map(|(at, segment)| Deed::Replace(at, segment)),
        2 => place().prop_map(Deed::Remove),
        2 => (place(), place()).prop_map(|(from, to)| Deed::Move(from, to)),
        6 => drag().prop_map(Deed::Boundary),
        1 => section(sizes, false, false).prop_map(|stock| Deed::Stock(Written(stock))),
        1 => (prop::option::of(length(sizes)), prop::option::of(place())).prop_map(|(length, up)| Deed::Fix(length, up)),
        1 => share(sizes).prop_map(Deed::Scale),
        1 => any::<bool>().prop_map(Deed::Units),
        1 => bar(sizes).prop_map(Deed::AddBar),
        1 => place().prop_map(Deed::RemoveBar),
        1 => plan(sizes).prop_map(Deed::Another),
    ]
}

/// The place that a share falls on, of so many.
fn of(share: f64, count: usize) -> usize {
    ((share * count as f64) as usize).min(count.saturating_sub(1))
}

fn parsed<T: serde::de::DeserializeOwned>(Written(value): &Written) -> T {
    serde_json::from_value(value.clone()).unwrap()
}

impl Deed {
    /// The edit of this plan's first bar.
    pub(crate) fn on(&self, plan: &Plan) -> Edit {
        let bar = &plan.bars[0];
        let count = bar.count_segments();
        let boxed = |segment: &Written| Box::new(parsed::<Segment>(segment));
        match self {
            Self::Insert(at, segment) => {
                Edit::InsertSegment { bar: 0, at: of(*at, count + 1), segment: boxed(segment) }
            }
            Self::Replace(at, segment) => Edit::ReplaceSegment { bar: 0, at: of(*at, count), segment: boxed(segment) },
            Self::Remove(at) => Edit::RemoveSegment { bar: 0, at: of(*at, count) },
            Self::Move(from, to) => Edit::MoveSegment { bar: 0, from: of(*from, count), to: of(*to, count) },
            Self::Boundary(drag) => Edit::MoveBoundary(drag.on(plan)),
            Self::Stock(stock) => {
                Edit::SetBar { bar: 0, header: Box::new(BarHeader { stock: parsed(stock), ..BarHeader::from(bar) }) }
            }
            Self::Fix(length, takes_up) => {
                let length = length.as_ref().map(|length| parsed(&Written(Value::String(length.clone()))));
                let takes_up = takes_up.and_then(|at| bar.segment(of(at, count))).map(|segment| segment.name.clone());
                Edit::SetBar { bar: 0, header: Box::new(BarHeader { length, takes_up, ..BarHeader::from(bar) }) }
            }
            Self::Scale(share) => {
                let scale = Some(parsed(&Written(Value::String(share.clone()))));
                Edit::SetPlan(Box::new(PlanHeader { scale, ..PlanHeader::from(plan) }))
            }
            Self::Units(inches) => {
                let units = if *inches { Units::inches() } else { Units::millimeters() };
                Edit::SetPlan(Box::new(PlanHeader { units, ..PlanHeader::from(plan) }))
            }
            Self::AddBar(bar) => Edit::AddBar { at: plan.bars.len(), bar: Box::new(parsed(bar)) },
            Self::RemoveBar(bar) => Edit::RemoveBar { bar: of(*bar, plan.bars.len()) },
            Self::Another(plan) => Edit::ReplacePlan(Box::new(parsed(plan))),
        }
    }
}

impl Drag {
    /// The move of a boundary of this plan's first bar.
    pub(crate) fn on(self, plan: &Plan) -> BoundaryMove {
        let balanced = &balance(plan).bars[0];
        let segment = of(self.segment, balanced.segments.len());
        let place = |at: usize| {
            balanced.segments.get(at).map(|segment| {
                if self.forged {
                    (mm(segment.forged_start), mm(segment.forged_start + segment.forged_length))
                } else {
                    (mm(segment.mark_start), mm(segment.mark_end))
                }
            })
        };
        let (start, end) = place(segment).unwrap_or((0.0, 1.0));
        let next = plan.bars[0].next_in_chain(segment).and_then(place);
        let last = next.map_or(end + (end - start), |(_, end)| end);
        let to = Length::new::<millimeter>(start + (last - start) * self.to);
        BoundaryMove {
            bar: 0,
            segment,
            to: if self.forged { BoundaryTarget::Forged(to) } else { BoundaryTarget::Mark(to) },
            neighbor: if self.trades { Neighbor::TradesMetal } else { Neighbor::KeepsMetal },
        }
    }
}
