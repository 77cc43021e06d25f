//! The proposal: an order that keeps every rule that can be kept, in the fewest heats found.

use crate::bar::lengths::Lengths;
use crate::bar::progress::Progress;
use crate::fire::effort::minutes;
use crate::fire::hearth::{Fire, heat_minutes};
use crate::fire::heating::{Heating, Load};
use crate::job::circles::circle;
use crate::job::rules::Rule;
use crate::job::site::Site;
use crate::job::task::Task;
use fh_core::metal::Shape;
use fh_core::plan::{Form, Operation};
use std::cmp::Ordering;

/// How the next task is chosen where several may come next.
#[derive(Clone, Copy, PartialEq)]
enum Choice {
    /// The same sort of work all along the bar, from the datum end.
    BySort,
    /// One end of the bar after the other, from the datum end.
    FromDatum,
    /// The same from the far end.
    FromFar,
    /// Near to what is hot.
    Near,
}

/// Every choice; of those with the fewest heats the first is taken.
const CHOICES: [Choice; 4] = [Choice::BySort, Choice::FromDatum, Choice::FromFar, Choice::Near];

/// From so many tasks on only the first choice is tried.
const MANY: usize = 400;

/// Puts the tasks of a bar in order, by rules without a circle: their numbers, step after step.
pub(crate) fn schedule(site: &Site<'_>, fire: Option<&Fire>, tasks: &[Task], rules: &[Rule]) -> Vec<Vec<usize>> {
    let units = apart_where_they_wait(units(site, tasks), tasks.len(), rules);
    let graph = Graph::new(&units, tasks.len(), rules);
    let load = |unit: &Vec<usize>| {
        let own: Vec<Task> = unit.iter().map(|task| tasks[*task]).collect();
        let work = own.iter().map(|task| minutes(site, fire, task)).sum();
        Load::new(site, &own, work, heat_minutes(site, fire, &own))
    };
    let loads: Vec<Load> = units.iter().map(load).collect();
    let tried = if units.len() > MANY { &CHOICES[..1] } else { &CHOICES[..] };
    let bench = Bench { site, tasks, units: &units, loads: &loads, graph: &graph };
    let runs = tried.iter().map(|choice| bench.run(*choice));
    let best = runs.min_by(|one, other| one.heats.cmp(&other.heats).then(one.travel_mm.total_cmp(&other.travel_mm)));
    let mut order = best.map_or_else(Vec::new, |run| run.order);
    brush_late(tasks, &units, &graph, &mut order);
    order.into_iter().map(|unit| units[unit].clone()).collect()
}

/// Tasks that are one step: parts that lie on end and are drawn to one and the same section.
fn units(site: &Site<'_>, tasks: &[Task]) -> Vec<Vec<usize>> {
    let mut units: Vec<Vec<usize>> = Vec::new();
    let mut last_draw: Option<(usize, usize)> = None;
    for (number, task) in tasks.iter().enumerate() {
        let Some(at) = task.part.filter(|_| task.operation == Operation::Draw) else {
            match one_cut(site, tasks, number, &units) {
                Some(unit) => units[unit].push(number),
                None => units.push(vec![number]),
            }
            continue;
        };
        let joined = last_draw
            .filter(|(before, _)| site.beside(*before)[1] == Some(at) || are_rods_of_one_slit(site, *before, at))
            .filter(|(before, _)| drawn_alike(site, *before, at));
        let unit = joined.map_or(units.len(), |(_, unit)| unit);
        if joined.is_some() {
            units[unit].push(number);
        } else {
            units.push(vec![number]);
        }
        last_draw = Some((at, unit));
    }
    units
}

/// The units without those that would wait for each other in a circle: of these each task is a step of its own.
fn apart_where_they_wait(mut units: Vec<Vec<usize>>, tasks: usize, rules: &[Rule]) -> Vec<Vec<usize>> {
    loop {
        let mut unit_of = vec![0; tasks];
        for (unit, members) in units.iter().enumerate() {
            members.iter().for_each(|task| unit_of[*task] = unit);
        }
        let between = |rule: &Rule| Rule { before: unit_of[rule.before], after: unit_of[rule.after], ..*rule };
        let lifted: Vec<Rule> = rules.iter().map(between).filter(|rule| rule.before != rule.after).collect();
        let Some(circle) = circle(units.len(), &lifted) else { return units };
        let joined = circle.into_iter().map(|rule| lifted[rule].before).find(|unit| units[*unit].len() > 1);
        // Single tasks were freed of circles before.
        let Some(joined) = joined else { return units };
        let members = std::mem::take(&mut units[joined]);
        let mut members = members.into_iter();
        units[joined].extend(members.next());
        units.extend(members.map(|task| vec![task]));
    }
}

/// The unit that a cut belongs to: what is trimmed beside the rest of the bar falls with it, in one and the same cut.
fn one_cut(site: &Site<'_>, tasks: &[Task], number: usize, units: &[Vec<usize>]) -> Option<usize> {
    let is_cut = |task: &Task| {
        let form = task.part.map(|at| &site.flat[at].segment.form);
        matches!(
            (task.operation, form),
            (Operation::PartOff, Some(Form::Hold(_))) | (Operation::Trim, Some(Form::Trim(_)))
        )
    };
    let own = tasks[number];
    let beside = site.beside(own.part.filter(|_| is_cut(&own))?);
    let is_other = |task: &Task| is_cut(task) && beside.contains(&task.part) && task.operation != own.operation;
    units.iter().position(|unit| unit.iter().any(|task| is_other(&tasks[*task])))
}

/// Whether two parts are branches of one slit that is closed at both ends: only together do they grow longer.
fn are_rods_of_one_slit(site: &Site<'_>, one: usize, other: usize) -> bool {
    let split = |at: usize| site.split_of(at).map(|(split, _)| split);
    split(one).is_some_and(|at| split(other) == Some(at) && site.is_closed_slit(at))
}

/// Whether two parts have one section all along, and the same.
fn drawn_alike(site: &Site<'_>, one: usize, other: usize) -> bool {
    let section = |at: usize| match site.part(at)?.balance.shape {
        Some(Shape::Prism { section, .. }) => Some(section),
        _ => None,
    };
    section(one).is_some_and(|own| section(other) == Some(own))
}

/// What is brushed is brushed just before it is closed in, not while it still goes into the fire.
fn brush_late(tasks: &[Task], units: &[Vec<usize>], graph: &Graph, order: &mut Vec<usize>) {
    let brushed: Vec<usize> = order
        .iter()
        .copied()
        .filter(|unit| units[*unit].iter().all(|task| tasks[*task].operation == Operation::Brush))
        .collect();
    for unit in brushed {
        order.retain(|other| *other != unit);
        let waiting = |other: &usize| graph.after[unit].contains(other);
        let place = order.iter().position(waiting).unwrap_or(order.len());
        order.insert(place, unit);
    }
}

/// Which units wait for which.
struct Graph {
    after: Vec<Vec<usize>>,
    waits: Vec<usize>,
}

impl Graph {
    fn new(units: &[Vec<usize>], tasks: usize, rules: &[Rule]) -> Self {
        let mut unit_of = vec![0; tasks];
        for (unit, members) in units.iter().enumerate() {
            members.iter().for_each(|task| unit_of[*task] = unit);
        }
        let (mut after, mut waits) = (vec![Vec::new(); units.len()], vec![0; units.len()]);
        for rule in rules {
            let (before, then) = (unit_of[rule.before], unit_of[rule.after]);
            if before != then {
                after[before].push(then);
                waits[then] += 1;
            }
        }
        Self { after, waits }
    }
}

/// What an order is made from.
struct Bench<'b, 's> {
    site: &'b Site<'s>,
    tasks: &'b [Task],
    units: &'b [Vec<usize>],
    loads: &'b [Load],
    graph: &'b Graph,
}

/// One order, and what it costs.
struct Run {
    heats: usize,
    /// How far the fire moves along the bar.
    travel_mm: f64,
    order: Vec<usize>,
}

/// What a unit costs of the fire, the least first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Cost {
    /// Nothing: it goes with what is hot, or all is cold.
    Nothing,
    /// A new heat.
    Heat,
    /// It is done cold, and what is hot cools meanwhile.
    Cooling,
}

/// What the next unit is chosen by: the least first.
struct Key {
    /// Whether it looks at finished work, or is put on it.
    finishes: bool,
    reluctant: bool,
    /// Whether it does not finish what the unit before it began on the same part.
    elsewhere: bool,
    cost: Cost,
    /// Whether it is spread wide, and in the way of what is drawn beside it; or lets the bar cool to be measured.
    late: bool,
    rank: [f64; 2],
    unit: usize,
}

impl Key {
    fn order(&self, other: &Self) -> Ordering {
        let cools = |key: &Self| key.cost == Cost::Cooling;
        let firmly = |key: &Self| (key.finishes, cools(key), key.reluctant, key.elsewhere, key.cost, key.late);
        let firmly = firmly(self).cmp(&firmly(other));
        let ranks = self.rank[0].total_cmp(&other.rank[0]).then(self.rank[1].total_cmp(&other.rank[1]));
        firmly.then(ranks).then(self.unit.cmp(&other.unit))
    }
}

impl Bench<'_, '_> {
    /// One order by one choice.
    fn run(&self, choice: Choice) -> Run {
        let mut waits = self.graph.waits.clone();
        let mut ready: Vec<usize> = (0..self.units.len()).filter(|unit| waits[*unit] == 0).collect();
        let mut progress = Progress::start(self.site);
        let mut heating = Heating::new(self.site.plan, 0);
        let mut lengths = Lengths::new(self.site, &progress);
        let mut run = Run { heats: 0, travel_mm: 0.0, order: Vec::with_capacity(self.units.len()) };
        let mut hot: Option<f64> = None;
        loop {
            let last = run.order.last().copied();
            let key = |unit: &usize| Key {
                elsewhere: !last.is_some_and(|last| self.finishes(last, *unit)),
                ..self.key(*unit, choice, &heating, &lengths, hot)
            };
            let keys = ready.iter().map(key);
            let Some(next) = keys.min_by(Key::order).map(|key| key.unit) else { break };
            ready.retain(|unit| *unit != next);
            heating.take(&self.loads[next], &lengths, None);
            if self.loads[next].hot {
                let place = self.middle(next, &lengths);
                run.travel_mm += hot.map_or(0.0, |hot| (place - hot).abs());
                hot = Some(place);
            }
            for task in &self.units[next] {
                progress.apply(self.site, &self.tasks[*task]);
            }
            lengths = Lengths::new(self.site, &progress);
            run.order.push(next);
            for after in &self.graph.after[next] {
                waits[*after] -= 1;
                if waits[*after] == 0 {
                    ready.push(*after);
                }
            }
        }
        // What waits for itself, because two cuts are one step, is done all the same.
        let left: Vec<usize> = (0..self.units.len()).filter(|unit| waits[*unit] > 0).collect();
        run.order.extend(left);
        run.heats = heating.heats;
        run
    }

    /// The middle of the parts of a unit, in mm along the bar.
    fn middle(&self, unit: usize, lengths: &Lengths) -> f64 {
        let [start, end] = lengths.extent(self.loads[unit].parts.iter());
        (start + end) / 2.0
    }

    fn key(&self, unit: usize, choice: Choice, heating: &Heating, lengths: &Lengths, hot: Option<f64>) -> Key {
        let load = &self.loads[unit];
        let operation = self.units[unit].first().map_or(Operation::Own, |task| self.tasks[*task].operation);
        let (sort, place) = (f64::from(sort(operation)), self.middle(unit, lengths));
        let rank = match choice {
            Choice::BySort => [sort, place],
            Choice::FromDatum => [place, sort],
            Choice::FromFar => [-place, sort],
            Choice::Near => [hot.map_or(place, |hot| (place - hot).abs()), sort],
        };
        // Lines are cut into a part once it is no longer gripped.
        let finishes = matches!(operation, Operation::Stamp | Operation::Check);
        let cost = match (load.hot, load.cools && heating.is_hot()) {
            (true, _) if !heating.fits(load, lengths) => Cost::Heat,
            (false, true) => Cost::Cooling,
            _ => Cost::Nothing,
        };
        // The rest of the bar is kept to hold by as long as anything else can be done.
        let reluctant = operation == Operation::PartOff;
        let late = operation == Operation::Spread || load.trues;
        Key { finishes, reluctant, elsewhere: true, cost, late, rank, unit }
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
        O::Punch | O::Drift | O::Drill => 5,
        O::Trim | O::Scarf => 6,
        O::Straighten => 7,
        O::PartOff | O::DressEdges => 8,
        O::Stamp => 9,
        O::Twist => 10,
        O::Bend | O::Corner | O::Open => 11,
        O::Brush => 12,
        O::Roll => 13,
        O::Weld => 14,
        O::Check | O::Fit | O::Own => 15,
        O::Wax => 16,
    }
}
