//! What a check looks at: one bar of a plan, with words for its lengths in the plan's unit.

use super::compare::apart;
use super::{Finding, Place, Severity};
use crate::balance::{BarBalance, SegmentBalance};
use crate::describe::part_name_in;
use crate::metal::{Shape, in_mm};
use crate::plan::{Bar, Chain, Flat, InBoth, Plan, PlanUnit, Segment};
use fh_measure::{LengthUnit, WrittenLength, format_decimal};
use uom::si::f64::Length;

/// One bar of a plan, or one branch on it, and what follows for it.
pub(super) struct Scene<'a> {
    pub(super) plan: &'a Plan,
    pub(super) bar: &'a Bar,
    pub(super) balance: &'a BarBalance,
    pub(super) index: usize,
    /// The chain that is looked at.
    pub(super) chain: Chain,
    /// The segments of the chain, counted through the bar.
    members: &'a [usize],
    /// Every segment, counted through the bar.
    flat: &'a [Flat<'a>],
}

/// One segment of the bar in every respect.
#[derive(Clone, Copy)]
pub(super) struct Seen<'a> {
    pub(super) at: usize,
    pub(super) segment: &'a Segment,
    pub(super) balance: &'a SegmentBalance,
    pub(super) shape: &'a Shape,
}

impl<'a> Scene<'a> {
    pub(super) fn new(
        plan: &'a Plan,
        (index, bar, flat): (usize, &'a Bar, &'a [Flat<'a>]),
        balance: &'a BarBalance,
        (chain, members): (Chain, &'a [usize]),
    ) -> Self {
        Self { plan, bar, balance, index, chain, members, flat }
    }

    /// The segments of the chain whose shape is settled.
    pub(super) fn segments(&self) -> impl Iterator<Item = Seen<'a>> + use<'a> {
        let (flat, all) = (self.flat, &self.balance.segments);
        self.members.iter().filter_map(move |at| {
            let balance = all.get(*at)?;
            Some(Seen { at: *at, segment: flat.get(*at)?.segment, balance, shape: balance.shape.as_ref()? })
        })
    }

    /// The segments of the chain as they are written, settled or not.
    pub(super) fn written(&self) -> impl Iterator<Item = (usize, &'a Segment)> + use<'a> {
        let flat = self.flat;
        self.members.iter().filter_map(move |at| Some((*at, flat.get(*at)?.segment)))
    }

    /// Whether the bar itself is looked at, not a branch.
    pub(super) fn is_bar(&self) -> bool {
        self.chain == Chain::Bar
    }

    /// A length in the plan's unit, fine enough for a finding.
    pub(super) fn length(&self, length: Length) -> String {
        self.millimeters(in_mm(length))
    }

    /// A length in mm in the plan's unit, fine enough for a finding.
    pub(super) fn millimeters(&self, mm: f64) -> String {
        in_unit(mm, self.plan.units.length)
    }

    /// A length in mm in the plan's unit, rounded up: what is said to be enough is enough.
    pub(super) fn millimeters_or_more(&self, mm: f64) -> String {
        let finest = match self.plan.units.length {
            PlanUnit::Inch => LengthUnit::Inch.mm() / 1000.0,
            PlanUnit::Millimeter => 0.1,
        };
        self.millimeters((mm / finest - 1e-9).ceil() * finest)
    }

    /// A length in mm in the plan's unit, rounded down: what is said to be allowed is allowed.
    pub(super) fn millimeters_or_less(&self, mm: f64) -> String {
        let finest = match self.plan.units.length {
            PlanUnit::Inch => LengthUnit::Inch.mm() / 1000.0,
            PlanUnit::Millimeter => 0.1,
        };
        self.millimeters((mm / finest + 1e-9).floor() * finest)
    }

    /// A limit in mm: the smith's own, or the default in the round numbers of the plan's unit.
    pub(super) fn limit(&self, own: Option<&WrittenLength>, default: InBoth) -> f64 {
        own.map_or_else(|| default.in_unit(self.plan.units.length), WrittenLength::mm)
    }

    /// A segment by its name, with that of its branch.
    pub(super) fn name(&self, at: usize) -> String {
        part_name_in(self.flat, at)
    }

    /// Two lengths in mm in the plan's unit, with as many figures as it takes for them to read differently.
    pub(super) fn apart(&self, lengths: [f64; 2]) -> [String; 2] {
        in_unit_apart(lengths, self.plan.units.length)
    }

    /// The place of a segment.
    pub(super) fn place(&self, segment: Option<usize>) -> Place {
        Place { bar: Some(self.index), segment }
    }
}

/// A length in mm in a unit, fine enough for a finding.
pub(super) fn in_unit(mm: f64, unit: PlanUnit) -> String {
    format_decimal(mm, unit.length_unit(), decimals(unit))
}

/// Two lengths in mm in a unit, with as many figures as it takes for them to read differently.
pub(super) fn in_unit_apart(lengths: [f64; 2], unit: PlanUnit) -> [String; 2] {
    apart(lengths, decimals(unit), |mm, decimals| format_decimal(mm, unit.length_unit(), decimals))
}

/// The decimals that are fine enough for a finding.
fn decimals(unit: PlanUnit) -> usize {
    match unit {
        PlanUnit::Inch => 3,
        PlanUnit::Millimeter => 1,
    }
}

/// A volume in the plan's unit, to three figures or more.
pub(super) fn volume(mm3: f64, unit: PlanUnit) -> String {
    match unit {
        PlanUnit::Inch => format!("{:.3} in³", mm3 / LengthUnit::Inch.mm().powi(3)),
        PlanUnit::Millimeter if mm3 >= 1000.0 => format!("{:.2} cm³", mm3 / 1000.0),
        PlanUnit::Millimeter => format!("{mm3:.0} mm³"),
    }
}

/// An area in the plan's unit, to three figures or more.
pub(super) fn area(mm2: f64, unit: PlanUnit) -> String {
    match unit {
        PlanUnit::Inch => format!("{:.3} in²", mm2 / LengthUnit::Inch.mm().powi(2)),
        PlanUnit::Millimeter if mm2 < 100.0 => format!("{mm2:.1} mm²"),
        PlanUnit::Millimeter => format!("{mm2:.0} mm²"),
    }
}

/// A count of times with so many decimals: `6.0`.
pub(super) fn times(count: f64, decimals: usize) -> String {
    format!("{count:.decimals$}")
}

/// A limit in words without needless figures: `3` for `3.0`.
pub(super) fn plain(words: &str) -> &str {
    if words.contains('.') { words.trim_end_matches('0').trim_end_matches('.') } else { words }
}

/// Shorthand of a finding's fixed parts.
pub(super) struct Rule {
    pub(super) id: &'static str,
    pub(super) severity: Severity,
    pub(super) reason: &'static str,
}

impl Rule {
    /// A finding of this rule.
    pub(super) fn at(&self, place: Place, message: String, remedy: String) -> Finding {
        Finding { id: self.id, severity: self.severity, place, message, reason: self.reason, remedy }
    }
}
