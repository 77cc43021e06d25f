//! The rules of order once more, pair by pair and slowly, from the words of the trade.
//!
//! Legs in the way of the anvil are left out: they are a matter of the piece in space, and are held by worked cases.

use super::did::Did;
use super::ends::raw_area;
use super::stubs::drawn_before;
use fh_core::balance::{Balance, BarBalance};
use fh_core::joints::Lookup;
use fh_core::metal::{Bent, FreeEnd, SectionSize, Shape};
use fh_core::plan::{Chain, Flat, Form, HeatRules, JointKind, Limits, Operation, Plan};
use fh_measure::WrittenLength;
use fh_work::Why;
use std::collections::BTreeSet;
use std::f64::consts::PI;
use tests::{mm, mm2};

use Operation as O;

/// What has less than this share of the bar's section at one of its ends is thin there.
const THIN_END: f64 = 0.5;

/// A broken rule: why, the step that comes too early, and the one it should wait for.
pub(crate) type Broken = (Why, usize, usize);

/// Everything that an order breaks: of what has to be done, `all`, by the steps as they are done.
pub(crate) fn broken(plan: &Plan, balance: &Balance, all: &[Did], steps: &[Vec<Did>]) -> BTreeSet<Broken> {
    let places: Vec<Option<[(usize, usize); 2]>> = all.iter().map(|did| first_and_last(*did, steps)).collect();
    let mut found = BTreeSet::new();
    for (before, after, why) in rules(plan, balance, all) {
        let (Some([_, last]), Some([first, _])) = (places[before], places[after]) else { continue };
        if first < last {
            found.insert((why, first.0, last.0));
        }
    }
    found
}

/// Whether some rules run in a circle, so that one of them must give way.
pub(crate) fn run_in_a_circle(plan: &Plan, balance: &Balance, all: &[Did]) -> bool {
    let rules = rules(plan, balance, all);
    let mut left: BTreeSet<usize> = (0..all.len()).collect();
    loop {
        let waits = |task: &usize| rules.iter().any(|(before, after, _)| after == task && left.contains(before));
        let free: Vec<usize> = left.iter().copied().filter(|task| !waits(task)).collect();
        if free.is_empty() {
            return !left.is_empty();
        }
        left.retain(|task| !free.contains(task));
    }
}

/// Where a thing is done for the first and for the last time.
fn first_and_last(did: Did, steps: &[Vec<Did>]) -> Option<[(usize, usize); 2]> {
    let places = steps.iter().enumerate().flat_map(|(step, list)| {
        let here = list.iter().enumerate().filter(|(_, other)| **other == did);
        here.map(move |(within, _)| (step, within)).collect::<Vec<_>>()
    });
    let all: Vec<(usize, usize)> = places.collect();
    Some([*all.first()?, *all.last()?])
}

/// Every pair of which one has to come before the other, and why.
fn rules(plan: &Plan, balance: &Balance, all: &[Did]) -> Vec<(usize, usize, Why)> {
    let worlds: Vec<World<'_>> = plan
        .bars
        .iter()
        .zip(&balance.bars)
        .enumerate()
        .map(|(index, (bar, balance))| World { plan, balance, index, flat: bar.flat(), all })
        .collect();
    let mut found = Vec::new();
    for (first, before) in all.iter().enumerate() {
        for (then, after) in all.iter().enumerate().filter(|(then, _)| *then != first) {
            let whys = match (before.is_of_piece(), after.is_of_piece()) {
                (false, false) if before.bar == after.bar => worlds[before.bar].whys(*before, *after),
                (_, true) => of_piece(plan, *before, *after).into_iter().collect(),
                _ => Vec::new(),
            };
            found.extend(whys.into_iter().map(|why| (first, then, why)));
        }
    }
    found
}

/// Bars are checked before they are joined, welds come before what is only held together, brush and wax after all.
fn of_piece(plan: &Plan, before: Did, after: Did) -> Option<Why> {
    let is_brush = |did: Did| did.joint.is_none() && did.operation == O::Brush;
    let is_wax = |did: Did| did.joint.is_none() && did.operation == O::Wax;
    if !before.is_of_piece() {
        let is_check = before.operation == O::Check && before.part.is_none();
        if !is_check {
            return None;
        }
        if is_brush(after) {
            return Some(Why::FinishLast);
        }
        let joint = plan.joints.get(after.joint?)?;
        let joins = joint.members().any(|member| Lookup::new(plan).bar(&member.bar) == Some(before.bar));
        return joins.then_some(Why::JoinLast);
    }
    if let (Some(first), Some(then)) = (before.joint, after.joint) {
        let is_weld = |at: usize| plan.joints.get(at).is_some_and(|joint| joint.kind == JointKind::Weld);
        return (is_weld(first) && !is_weld(then)).then_some(Why::WeldBeforeFit);
    }
    let finishes = (before.joint.is_some() && is_brush(after)) || (is_brush(before) && is_wax(after));
    finishes.then_some(Why::FinishLast)
}

/// One bar, and everything that has to be done.
struct World<'a> {
    plan: &'a Plan,
    balance: &'a BarBalance,
    index: usize,
    flat: Vec<Flat<'a>>,
    all: &'a [Did],
}

fn bends(operation: Operation) -> bool {
    matches!(operation, O::Bend | O::Corner | O::Roll | O::Open)
}

fn bends_or_twists(operation: Operation) -> bool {
    bends(operation) || operation == O::Twist
}

fn necks(operation: Operation) -> bool {
    matches!(operation, O::Isolate | O::SetDown)
}

fn shapes(operation: Operation) -> bool {
    matches!(operation, O::Draw | O::Taper | O::Upset | O::Spread | O::Flatten | O::Scarf)
}

fn pierces(operation: Operation) -> bool {
    matches!(operation, O::Punch | O::Drift | O::Drill)
}

impl World<'_> {
    /// Why one thing on this bar has to come before another; none where it does not matter.
    fn whys(&self, before: Did, after: Did) -> Vec<Why> {
        let mut whys = Vec::new();
        let (first, then) = (before.operation, after.operation);
        if before.part.is_none() && first == O::Mark {
            whys.push(Why::MarkFirst);
        }
        if after.part.is_none() && then == O::Check {
            whys.push(Why::FinishLast);
        }
        match (before.part, after.part) {
            (None, Some(_)) if first == O::Straighten && bends_or_twists(then) => whys.push(Why::StraightFirst),
            (Some(_), None) if then == O::Straighten && is_hot_forging(first) => whys.push(Why::ForgeBeforeBend),
            (Some(one), Some(other)) if one == other => whys.extend(self.within(one, first, then)),
            (Some(one), Some(other)) => {
                whys.extend(self.neighbors(one, first, other, then));
                whys.extend(self.split(one, first, other, then));
                whys.extend(self.thin(one, first, other, then));
                whys.extend(self.tang_late(one, first, other, then));
                whys.extend(self.cut_off(one, first, other, then));
                whys.extend(self.scarf_late(one, first, other, then));
                whys.extend(self.stub_along(one, first, other, then));
                whys.extend(self.taper_last(one, first, other, then));
            }
            _ => {}
        }
        if let (Some(one), Some(other)) = (before.part, after.part)
            && self.chain(one) == self.chain(other)
        {
            whys.extend(self.bent(one, first, other, then));
        }
        whys
    }

    fn chain(&self, at: usize) -> Chain {
        self.flat[at].chain
    }

    fn is_split(&self, at: usize) -> bool {
        matches!(self.flat[at].segment.form, Form::Split(_))
    }

    /// Whether two parts lie in one chain, and how many places apart.
    fn apart(&self, one: usize, other: usize) -> Option<usize> {
        (self.chain(one) == self.chain(other)).then(|| self.flat[one].place.abs_diff(self.flat[other].place))
    }

    /// Whether a part is forged to a shape at all.
    fn is_shaped(&self, at: usize) -> bool {
        let own = |did: &&Did| did.bar == self.index && did.part == Some(at) && !did.is_of_piece();
        self.all.iter().filter(own).any(|did| shapes(did.operation))
    }

    /// What is done to one part, in the usual run of its forging.
    fn within(&self, at: usize, first: Operation, then: Operation) -> Option<Why> {
        if self.is_split(at) {
            return match (first, then) {
                (O::Punch, O::Split) => Some(Why::RootFirst),
                (O::Split, O::BendAside | O::Straighten | O::Open) => Some(Why::SplitFirst),
                (O::Straighten, O::Open) => Some(Why::StraightFirst),
                _ => None,
            };
        }
        if run(first) >= run(then) {
            return None;
        }
        Some(match (first, then) {
            (_, O::Brush | O::Stamp) => Why::FinishLast,
            (O::Brush, _) => Why::CleanFirst,
            (O::Stamp, _) => Why::StampBeforeBend,
            (O::Scarf, _) => Why::ScarfFirst,
            (O::Punch, O::Drift) => Why::SlitFirst,
            (first, _) if pierces(first) => Why::HoleBeforeBend,
            (_, then) if bends_or_twists(then) => Why::ForgeBeforeBend,
            (O::Upset, O::Isolate) => Why::UpsetFirst,
            (first, then) if necks(first) && shapes(then) => Why::IsolateFirst,
            (_, O::Trim) => Why::ForgeBeforeTrim,
            (_, then) if pierces(then) => Why::BossFirst,
            _ => Why::ForgeBeforeBend,
        })
    }

    /// A neck before the metal on its other side; what is upset before the rest of its chain is thinned.
    fn neighbors(&self, one: usize, first: Operation, other: usize, then: Operation) -> Vec<Why> {
        let mut whys = Vec::new();
        let is_beside = self.apart(one, other) == Some(1);
        if necks(first)
            && shapes(then)
            && then != O::Upset
            && is_beside
            && self.work_behind(one) != Some(other)
            && self.before_stub(one) != Some(other)
        {
            whys.push(Why::IsolateFirst);
        }
        let thins = necks(then) || (shapes(then) && !matches!(then, O::Upset | O::Scarf));
        if first == O::Upset && thins && self.apart(one, other).is_some() {
            whys.push(Why::UpsetFirst);
        }
        whys
    }

    /// The part that is worked while the rest of the bar is held, seen from a step down to what is thin between the two.
    fn work_behind(&self, at: usize) -> Option<usize> {
        let Some(Shape::Shoulder { from, to, .. }) = &self.balance.segments[at].shape else { return None };
        let goes_down = mm2(from.area()) > mm2(to.area());
        let next = |from: usize, ahead: bool| {
            let place = self.flat[from].place.checked_add_signed(if ahead { 1 } else { -1 })?;
            (0..self.flat.len())
                .find(|other| self.chain(*other) == self.chain(from) && self.flat[*other].place == place)
        };
        let thin = next(at, goes_down)?;
        let hold = next(thin, goes_down)?;
        let is_hold = matches!(self.flat[hold].segment.form, Form::Hold(_));
        let waits = is_hold && (self.runs_out_toward(thin, hold) || self.is_thin_toward(thin, hold));
        if waits { next(at, !goes_down) } else { None }
    }

    /// A step between the work and the rest of the bar comes after all forging but that of what is thin behind it.
    fn tang_late(&self, one: usize, first: Operation, other: usize, then: Operation) -> Option<Why> {
        if !shapes(first) || first == O::Scarf || !necks(then) || self.chain(one) != self.chain(other) {
            return None;
        }
        let work = self.work_behind(other)?;
        let is_thin_side = self.apart(one, other) == Some(1) && one != work;
        (!is_thin_side).then_some(Why::TangLate)
    }

    /// A thin lip comes after all other forging on its bar or branch; two lips may come in any order.
    fn scarf_late(&self, one: usize, first: Operation, other: usize, then: Operation) -> Option<Why> {
        let is_late = shapes(first) && first != O::Scarf && then == O::Scarf && self.apart(one, other).is_some();
        is_late.then_some(Why::ScarfLate)
    }

    /// What is drawn down before a step is set because what goes thin there is a stub.
    fn before_stub(&self, at: usize) -> Option<usize> {
        let draws = |other: usize| {
            let own = |did: &&Did| did.bar == self.index && did.part == Some(other) && !did.is_of_piece();
            self.all.iter().filter(own).any(|did| matches!(did.operation, O::Draw | O::Taper))
        };
        drawn_before(&self.flat, self.balance, at, draws)
    }

    /// A stub is drawn down along with the part beside it, before its step or its taper.
    fn stub_along(&self, one: usize, first: Operation, other: usize, then: Operation) -> Option<Why> {
        let is_meant = shapes(first) && (necks(then) || then == O::Taper);
        (is_meant && self.before_stub(other) == Some(one)).then_some(Why::StubAlong)
    }

    /// What is drawn beside the thin end of a taper comes before it, where no neck or step keeps the two apart.
    fn taper_last(&self, one: usize, first: Operation, other: usize, then: Operation) -> Option<Why> {
        let is_meant = first == O::Draw && then == O::Taper && self.apart(one, other) == Some(1);
        let is_late = is_meant && !self.is_necked(one) && !self.is_necked(other) && self.is_thin_toward(other, one);
        is_late.then_some(Why::TaperLast)
    }

    /// Whether a part has a neck or a step of its own.
    fn is_necked(&self, at: usize) -> bool {
        let own = |did: &&Did| did.bar == self.index && did.part == Some(at) && !did.is_of_piece();
        self.all.iter().filter(own).any(|did| necks(did.operation))
    }

    /// Whether a part has little left at its end toward another one of its chain; as the bar where it has no shape.
    fn is_thin_toward(&self, at: usize, other: usize) -> bool {
        let own = &self.balance.segments[at];
        let end = if self.flat[other].place > self.flat[at].place { 1.0 } else { 0.0 };
        own.shape.is_some() && mm2(own.area_at(end)) < THIN_END * raw_area(self.balance, at)
    }

    /// A split, its branches, and what is done to it when they are forged.
    fn split(&self, one: usize, first: Operation, other: usize, then: Operation) -> Vec<Why> {
        let holds = |split: usize, at: usize| {
            self.is_split(split) && (split + 1..split + self.flat[split].segment.count()).contains(&at)
        };
        let mut whys = Vec::new();
        if holds(one, other) {
            match first {
                O::Split => whys.push(Why::SplitFirst),
                O::BendAside if !bends_or_twists(then) => whys.push(Why::AsideFirst),
                O::Straighten if bends_or_twists(then) => whys.push(Why::StraightFirst),
                _ => {}
            }
        }
        if holds(other, one) && !bends_or_twists(first) {
            match then {
                O::Straighten => whys.push(Why::BackLast),
                O::Open => whys.push(Why::ForgeBeforeBend),
                _ => {}
            }
        }
        whys
    }

    /// What is thin after what one heat warms along with it and is much thicker.
    fn thin(&self, one: usize, first: Operation, other: usize, then: Operation) -> Option<Why> {
        if !shapes(first) || first == O::Scarf || !shapes(then) || self.chain(one) != self.chain(other) {
            return None;
        }
        // What goes thin toward the rest of the bar is forged last of all, once that is off.
        let holds = (0..self.flat.len())
            .filter(|at| self.apart(*at, one) == Some(1) && matches!(self.flat[*at].segment.form, Form::Hold(_)));
        if holds.into_iter().any(|hold| self.runs_out_toward(one, hold) || self.is_thin_toward(one, hold)) {
            return None;
        }
        let unit = self.plan.units.length;
        let limit = self.plan.limits.thin.as_ref().map_or_else(|| Limits::THIN.in_unit(unit), WrittenLength::mm);
        let zone = self.plan.work.heats.zone.as_ref();
        let zone = zone.map_or_else(|| HeatRules::ZONE.in_unit(unit), WrittenLength::mm);
        let least = |at: usize| thinnest(self.balance.segments[at].shape.as_ref()?);
        let (thick, thin) = (least(one)?, least(other)?);
        let (near, far) = (&self.balance.segments[one], &self.balance.segments[other]);
        let gap = mm(near.mark_start - far.mark_end).max(mm(far.mark_start - near.mark_end));
        (thin <= limit && thick > 1.5 * thin && gap < zone).then_some(Why::ThinLast)
    }

    /// What is cut off, and what waits for it or has to be done before.
    fn cut_off(&self, one: usize, first: Operation, other: usize, then: Operation) -> Vec<Why> {
        let cut = |at: usize, operation| match self.flat[at].segment.form {
            Form::Trim(_) => operation == O::Trim,
            Form::Hold(_) => operation == O::PartOff,
            _ => false,
        };
        let mut whys = Vec::new();
        let beside = self.apart(one, other) == Some(1);
        if cut(one, first) && beside {
            if shapes(then)
                && (self.runs_out_toward(other, one) || (first == O::PartOff && self.is_thin_toward(other, one)))
            {
                whys.push(Why::PartForEnd);
            }
            if bends(then) {
                whys.push(if first == O::Trim { Why::TrimBeforeBend } else { Why::PartForBend });
            }
        }
        if cut(other, then) && beside && then == O::Trim && shapes(first) && !self.runs_out_toward(one, other) {
            whys.push(Why::ForgeBeforeTrim);
        }
        if cut(other, then) && then == O::PartOff && (shapes(first) || necks(first)) {
            // A saw cut beside the rest of the bar falls with it, and frees what it frees.
            let trims = (0..self.flat.len())
                .filter(|at| self.apart(*at, other) == Some(1) && matches!(self.flat[*at].segment.form, Form::Trim(_)));
            let is_hold = |cut: usize| matches!(self.flat[cut].segment.form, Form::Hold(_));
            let waits = |cut: usize| self.runs_out_toward(one, cut) || (is_hold(cut) && self.is_thin_toward(one, cut));
            let frees = |cut: usize| self.apart(one, cut) == Some(1) && waits(cut);
            let freed = self.is_shaped(one) && std::iter::once(other).chain(trims).any(frees);
            whys.extend((!freed).then_some(Why::PartLate));
        }
        whys
    }

    /// Whether a part ends in a point, an edge or a finial on the side of another beside it.
    fn runs_out_toward(&self, at: usize, cut: usize) -> bool {
        let balance = &self.balance.segments[at];
        let far = self.flat[cut].place > self.flat[at].place;
        let is_nothing = mm2(balance.area_at(if far { 1.0 } else { 0.0 })) < 1e-6 * mm2(balance.area_at(0.5));
        match &balance.shape {
            Some(Shape::Taper { .. }) => is_nothing,
            Some(Shape::Ball { .. } | Shape::Cube { .. }) => true,
            Some(Shape::Flag { outline, .. }) => far != balance.reversed && outline.end_width(true).is_none(),
            Some(Shape::Split(split)) => split.free == if far { FreeEnd::Far } else { FreeEnd::Datum },
            _ => false,
        }
    }

    /// Bends, twists, holes and welds of one chain.
    fn bent(&self, one: usize, first: Operation, other: usize, then: Operation) -> Vec<Why> {
        let mut whys = Vec::new();
        if first == O::Twist && bends(then) {
            whys.push(Why::TwistFirst);
        }
        if bends(first) && then == O::Weld {
            whys.push(Why::CloseThenWeld);
        }
        if bends(first) && bends(then) && !self.closes(one) && self.closes(other) {
            whys.push(Why::CloseLast);
        }
        if first == O::Scarf && bends(then) && self.closes(other) && self.apart(one, other) == Some(1) {
            whys.push(Why::ScarfFirst);
        }
        let near = self.apart(one, other).is_some_and(|places| (1..=2).contains(&places));
        if pierces(first) && !self.is_split(one) && bends_or_twists(then) && near {
            whys.push(Why::HoleBeforeBend);
        }
        whys
    }

    /// Whether a part is a ring or a socket of more than three quarters of a turn.
    fn closes(&self, at: usize) -> bool {
        let round = match self.balance.segments[at].bent {
            Some(Bent::Ring { sweep, .. } | Bent::Socket { sweep, .. }) => sweep,
            _ => 0.0,
        };
        round > 1.5 * PI
    }
}

/// What is forged hot while the bar is straight. Cutting off and welding have their own rules.
fn is_hot_forging(operation: Operation) -> bool {
    let cold = matches!(operation, O::Mark | O::Drill | O::Stamp | O::Brush | O::Wax | O::Fit | O::Check | O::Own);
    !cold && !bends_or_twists(operation) && !matches!(operation, O::PartOff | O::Trim | O::Weld)
}

/// The usual run of the work on one part.
fn run(operation: Operation) -> u8 {
    match operation {
        O::Upset => 0,
        O::Isolate | O::SetDown => 1,
        O::Draw | O::Taper | O::Spread | O::Flatten | O::Scarf => 2,
        O::Trim | O::PartOff | O::Punch | O::Drill => 3,
        O::Drift => 4,
        O::Stamp => 5,
        O::Brush => 6,
        O::Bend | O::Corner | O::Roll | O::Twist | O::Open => 7,
        _ => 8,
    }
}

/// How thin a shape is where it is thinnest, in mm; a point is thin for so short a length that it is not meant.
fn thinnest(shape: &Shape) -> Option<f64> {
    let least = |section: &SectionSize| mm(section.section().width()).min(mm(section.section().thickness()));
    Some(match shape {
        Shape::Flag { root, tip, .. } => mm(*root).min(mm(*tip)),
        Shape::Hole { thickness, .. } => mm(*thickness),
        Shape::Prism { section, .. } | Shape::Peak { section, .. } | Shape::Shoulder { to: section, .. } => {
            least(section)
        }
        Shape::Taper { from, to, .. } if to.is_end() => least(from),
        Shape::Taper { from, to, .. } if from.is_end() => least(to),
        Shape::Taper { from, to, .. } => least(from).min(least(to)),
        Shape::Ball { diameter } => mm(*diameter),
        Shape::Cube { side } => mm(*side),
        Shape::Split(_) => return None,
    })
}
