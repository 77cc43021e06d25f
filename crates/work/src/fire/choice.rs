//! What comes next where several steps may: what is done with what is hot, and four ways of going on where that decides nothing.

use crate::bar::lengths::Lengths;
use crate::bar::progress::Progress;
use crate::fire::bench::Bench;
use crate::fire::heating::Heating;
use crate::job::ends::is_free_end;
use fh_core::plan::Operation;
use std::cmp::Ordering;

/// How the next task is chosen where several may come next.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Choice {
    /// The same sort of work all along the bar, from the datum end; of bends those at the ends first.
    BySort,
    /// One end of the bar after the other, from the datum end.
    FromDatum,
    /// The same from the far end.
    FromFar,
    /// Near to what is hot.
    Near,
}

/// Every choice; of orders alike that of the first is taken.
pub(crate) const CHOICES: [Choice; 4] = [Choice::BySort, Choice::FromDatum, Choice::FromFar, Choice::Near];

/// What a unit costs of the fire, the least first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Cost {
    /// Nothing: it goes with what is hot, or all is cold.
    Nothing,
    /// A new heat.
    Heat,
    /// It is done cold, and what is hot cools meanwhile.
    Cooling,
}

/// What the next unit is chosen by: the least first.
pub(crate) struct Key {
    /// Whether it looks at finished work, or is put on it.
    finishes: bool,
    reluctant: bool,
    /// Whether it does not finish what the unit before it began on the same part.
    elsewhere: bool,
    cost: Cost,
    /// Whether it is spread wide, and in the way of what is drawn beside it; or lets the bar cool to be measured.
    late: bool,
    rank: [f64; 2],
    pub(crate) unit: usize,
}

impl Key {
    pub(crate) fn order(&self, other: &Self) -> Ordering {
        let cools = |key: &Self| key.cost == Cost::Cooling;
        let firmly = |key: &Self| (key.finishes, cools(key), key.reluctant, key.elsewhere, key.cost, key.late);
        let firmly = firmly(self).cmp(&firmly(other));
        let ranks = self.rank[0].total_cmp(&other.rank[0]).then(self.rank[1].total_cmp(&other.rank[1]));
        firmly.then(ranks).then(self.unit.cmp(&other.unit))
    }
}

impl Bench<'_, '_> {
    /// What a unit costs of the fire now.
    pub(crate) fn cost(&self, unit: usize, heating: &Heating, lengths: &Lengths) -> Cost {
        let load = &self.loads[unit];
        match (load.hot, load.cools && heating.is_hot()) {
            (true, _) if !heating.fits(load, lengths) => Cost::Heat,
            (false, true) => Cost::Cooling,
            _ => Cost::Nothing,
        }
    }

    /// What a unit of such a cost is chosen by after another one, `last`, was done; `hot` is the middle of what is hot, in mm. It is late
    /// where it is in the way of what is still to be drawn beside it.
    pub(crate) fn key(
        &self,
        (unit, cost, late): (usize, Cost, bool),
        (choice, last): (Choice, Option<usize>),
        lengths: &Lengths,
        hot: Option<f64>,
    ) -> Key {
        let operation = self.units[unit].first().map_or(Operation::Own, |task| self.tasks[*task].operation);
        let (sort, place) = (f64::from(sort(operation)), self.middle(unit, lengths));
        let rank = match choice {
            Choice::BySort => self.by_sort(unit, operation, place),
            Choice::FromDatum => [place, sort],
            Choice::FromFar => [-place, sort],
            Choice::Near => [hot.map_or(place, |hot| (place - hot).abs()), sort],
        };
        // Lines are cut into a part once it is no longer gripped.
        let finishes = matches!(operation, Operation::Stamp | Operation::Check);
        // The rest of the bar is kept to hold by as long as anything else can be done.
        let reluctant = operation == Operation::PartOff;
        let elsewhere = !last.is_some_and(|last| self.finishes(last, unit));
        Key { finishes, reluctant, elsewhere, cost, late, rank, unit }
    }

    /// By the sort of work, then along the bar; what is bent at an end before the bends farther in.
    fn by_sort(&self, unit: usize, operation: Operation, place: f64) -> [f64; 2] {
        let part = self.units[unit].first().and_then(|task| self.tasks[*task].part);
        let is_end = operation == Operation::Bend && part.is_some_and(|at| is_free_end(self.site, at));
        [f64::from(sort(operation)) - if is_end { 0.5 } else { 0.0 }, place]
    }

    /// Whether a unit waits, where it may, while it costs no more: the bar is trued and measured last; what is spread wide is in the way of
    /// what is still to be drawn beside it.
    pub(crate) fn is_late(&self, unit: usize, progress: &Progress) -> bool {
        let task = self.units[unit].first().map(|task| self.tasks[*task]);
        let drawn_beside = || {
            let beside = task.and_then(|task| task.part).map_or([None, None], |at| self.site.beside(at));
            beside.into_iter().flatten().any(|at| !progress.is_shaped(self.site, at))
        };
        self.loads[unit].trues || (task.is_some_and(|task| task.operation == Operation::Spread) && drawn_beside())
    }

    /// Whether a unit finishes hot what another has begun on the same part: a slit is drifted, what is spread is trimmed.
    fn finishes(&self, begun: usize, unit: usize) -> bool {
        let only = |unit: usize| self.units[unit].first().map(|task| self.tasks[*task]);
        self.loads[unit].hot
            && only(begun).zip(only(unit)).is_some_and(|(begun, then)| {
                let pair = (begun.operation, then.operation);
                let one = [(Operation::Punch, Operation::Drift), (Operation::Spread, Operation::Trim)];
                begun.part == then.part && one.contains(&pair)
            })
    }
}

/// The usual run of the work, where nothing else decides: common practice, no source.
fn sort(operation: Operation) -> u8 {
    use Operation as O;
    match operation {
        O::Mark => 0,
        O::Upset => 1,
        O::Isolate | O::SetDown => 2,
        O::Split | O::BendAside => 3,
        O::Draw | O::Taper | O::Spread | O::Flatten => 4,
        O::Punch | O::Drift | O::Drill | O::Dress => 5,
        O::Trim | O::Scarf => 6,
        O::Straighten => 7,
        O::PartOff | O::DressEdges => 8,
        O::Stamp => 9,
        O::Twist => 10,
        O::Bend | O::Corner | O::Open => 11,
        O::Brush => 12,
        O::Roll => 13,
        O::Weld => 14,
        O::Normalise => 15,
        O::Check | O::Fit | O::Own => 16,
        O::Wax => 17,
    }
}
