//! Going through the steps of an order: the bar, the fire and the tongs at each of them.

mod on_piece;

use crate::bar::been_hot::BeenHot;
use crate::bar::held::{Hold, Need, first_to_hold, hold};
use crate::bar::lengths::Lengths;
use crate::bar::progress::Progress;
use crate::bar::spots;
use crate::bar::spots::Spot;
use crate::bar::state::state;
use crate::fire::effort::minutes;
use crate::fire::hands::is_alone;
use crate::fire::hearth::heat_minutes;
use crate::fire::heating::{Heated, Heating, Load};
use crate::job::legs;
use crate::job::legs::Posed;
use crate::job::order::Ordered;
use crate::job::site::Site;
use crate::job::task::{Task, as_seen_by, staged};
use crate::says::careful::short_hold;
use crate::says::said::{Moment, measure, said, thin};
use crate::says::tight::tight;
use crate::says::tools::wanted;
use crate::says::wanted::{Wanted, driven_with, own, tongs};
use crate::says::words::distinct;
use crate::says::{brief, careful, words};
use crate::seen::Seen;
use crate::setup::Setup;
use crate::step::WorkedStep;
use crate::ways::{side_gripped, ways};
use fh_core::describe::short_name;
use fh_core::plan::{AnvilPlace, HeatWish, Operation};

/// What each step on a bar asks of a heat; none of the steps on the whole piece: at a joint, or what finishes it.
pub(crate) fn loads(setup: &Setup<'_, '_>) -> Vec<Option<Load>> {
    let is_finish = |task: &Task| task.part.is_none() && matches!(task.operation, Operation::Brush | Operation::Wax);
    let of = |ordered: &Ordered| {
        let at_joint = ordered.tasks.first().is_some_and(|task| task.joint.is_some());
        let of_piece = at_joint || (!ordered.tasks.is_empty() && ordered.tasks.iter().all(is_finish));
        let site = setup.sites.get(ordered.bar).filter(|_| !of_piece)?;
        let load = as_seen_by(site, &ordered.tasks, |site| {
            let gives = heat_minutes(site, setup.fire, &ordered.tasks);
            let minutes = [minutes_of(setup, ordered, Some(site)), gives];
            Load::new(site, &ordered.tasks, minutes, is_alone(setup.fire))
        });
        Some(Load { hot: spots::is_done_hot(&ordered.step, load.hot), ..load })
    };
    setup.ordered.iter().map(of).collect()
}

/// How many minutes a step takes: as the smith says, or as it is worked out.
fn minutes_of(setup: &Setup<'_, '_>, ordered: &Ordered, site: Option<&Site<'_>>) -> f64 {
    let worked_out = || site.map_or(0.0, |site| ordered.tasks.iter().map(|task| minutes(site, setup.fire, task)).sum());
    ordered.step.minutes.unwrap_or_else(worked_out)
}

/// Whether a step heats all of its bar evenly: nothing of it is kept cold, and nothing of it is gripped.
fn normalises(tasks: &[Task]) -> bool {
    tasks.iter().any(|task| task.operation == Operation::Normalise)
}

/// By so much of itself a heat may last longer or shorter: its start is read by eye, and so is how well the bar radiates
/// (docs/handbook/heat-model.md).
const HEAT_DOUBT: f64 = 0.2;

/// Going through the steps, one after the other.
pub(crate) struct Walk<'b, 'a> {
    setup: &'b Setup<'b, 'a>,
    /// What each step on a bar asks of a heat; none of the steps on the whole piece.
    loads: &'b [Option<Load>],
    progress: Vec<Progress>,
    pub(crate) heating: Heating,
    /// The same where a heat lasts as long as it may, and as short.
    doubted: [Heating; 2],
    /// How many heats each step opens at least and at most.
    pub(crate) new_heats: Vec<[usize; 2]>,
    last_bar: Option<usize>,
    /// The tools of each step.
    pub(crate) tools: Vec<(usize, Vec<Wanted>)>,
    /// What was seen at each step.
    pub(crate) seen: Vec<Seen>,
    /// What runs into what in the finished bars, which is the plan's affair.
    finished: Vec<Option<Vec<(usize, usize)>>>,
    /// What of each bar was in the fire before.
    been_hot: Vec<BeenHot>,
    /// Between which heats each bar is worked, as it was said so far.
    said_stop: Vec<Vec<String>>,
    /// The thin parts that were last to be kept out of the fire.
    said_thin: Vec<String>,
}

/// What follows in the same heat.
#[derive(Default)]
struct Next {
    parts: Vec<usize>,
    spots: Vec<Spot>,
}

/// What has to be hot at a step; see [`WorkedStep`].
#[derive(Default)]
struct Hot {
    zone_mm: Option<[f64; 2]>,
    hot_mm: Option<[f64; 2]>,
    with_next_mm: Option<f64>,
}

impl Hot {
    /// Of a step and what follows in its heat, on the bar before and after it.
    fn new(site: &Site<'_>, heated: Heated, (own, next): (Vec<Spot>, Next), [before, after]: [&Lengths; 2]) -> Self {
        let with_next: Vec<Spot> = own.iter().chain(&next.spots).copied().collect();
        let is_one = heated.needs < 2;
        let in_all = spots::hot(site, &with_next, if is_one { before } else { after });
        // In its one heat all is hot that the next steps in that heat need.
        let spots = if is_one { with_next } else { own };
        Self {
            zone_mm: spots::hot(site, &spots, before),
            hot_mm: spots::hot(site, &spots, after),
            with_next_mm: in_all.filter(|_| !next.spots.is_empty()).map(|[from, to]| to - from),
        }
    }
}

impl<'b, 'a> Walk<'b, 'a> {
    pub(crate) fn new(setup: &'b Setup<'b, 'a>, loads: &'b [Option<Load>]) -> Self {
        Self {
            loads,
            progress: setup.sites.iter().map(Progress::start).collect(),
            heating: Heating::new(setup.plan, 0),
            doubted: [1.0 / (1.0 + HEAT_DOUBT), 1.0 / (1.0 - HEAT_DOUBT)]
                .map(|slower| Heating::new(setup.plan, 0).slower(slower)),
            new_heats: Vec::new(),
            last_bar: None,
            tools: Vec::new(),
            seen: Vec::new(),
            finished: vec![None; setup.sites.len()],
            been_hot: setup.sites.iter().map(|site| BeenHot::none(site.flat.len())).collect(),
            said_stop: vec![Vec::new(); setup.sites.len()],
            said_thin: Vec::new(),
            setup,
        }
    }

    /// The next step.
    pub(crate) fn step(&mut self, ordered: &Ordered) -> WorkedStep {
        let load = self.loads.get(self.seen.len()).and_then(Option::as_ref);
        match self.setup.sites.get(ordered.bar).zip(load) {
            Some((site, load)) => self.on_bar(ordered, site, load),
            None => self.on_piece(ordered),
        }
    }

    /// A step on a bar.
    fn on_bar(&mut self, ordered: &Ordered, site: &Site<'_>, load: &Load) -> WorkedStep {
        if self.last_bar != Some(site.index) {
            self.next_bar();
            self.last_bar = Some(site.index);
        }
        // What the step makes on the way stands for the finished shape in all that is said of it.
        let staged = staged(site, &ordered.tasks);
        let on_the_way = staged.as_ref().map(|staged| staged.site(site));
        let seen_site = on_the_way.as_ref().unwrap_or(site);
        let seen_progress = |progress: &Progress| progress.seen_by(staged.as_ref(), seen_site);
        let before = Lengths::new(site, &self.progress[site.index]);
        let heats_before = self.heating.heats;
        let (heated, spots) = self.heat(load, &before, ordered.step.heat);
        let seen_before = seen_progress(&self.progress[site.index]);
        let (mut ways, stuck) = ways(ordered, seen_site, &seen_before);
        first_to_hold(site, &before, &load.spots, &mut ways);
        let side = ways.first().and_then(side_gripped);
        let next = if load.hot { self.next_in_the_heat(site) } else { Next::default() };
        let is_gripped = load.hot && !normalises(&ordered.tasks);
        let held = if is_gripped { self.held(ordered, site, &before, (heated, side, &next)) } else { None };
        let hot_now = load.hot.then(|| self.hot_now(site, &before, (heated, &next)));
        let measure = measure(ordered, seen_site, &seen_before, &before, (side, hot_now));
        let was_off = self.progress[site.index].stages.iter().any(|stage| stage.off);
        let was_hot = self.been_hot[site.index].any();
        ordered.tasks.iter().for_each(|task| self.progress[site.index].apply(site, task));
        let struck = self.struck(ordered, site);
        let after = Lengths::new(site, &self.progress[site.index]);
        // Only what goes into the fire now is kept out of its heart.
        let fire = self.heating.heats > heats_before && is_gripped;
        let thin = fire
            .then(|| thin(ordered, site, &self.progress[site.index], &before, (held.as_ref(), &next.parts, hot_now)));
        let tools = self.want(ordered, Some(seen_site));
        let first = ordered.tasks.first();
        let place = first.map_or(AnvilPlace::Bench, |task| brief::place(seen_site, task, &ways, held.as_ref()));
        let tongs = held.as_ref().filter(|_| place != AnvilPlace::Vice).and_then(|held| tongs(site, held));
        self.tools.push((self.seen.len(), tongs.into_iter().collect()));
        let tight = tight(site, &ordered.tasks, &self.progress[site.index], &after);
        self.seen.push(Seen { heated: Some(heated), hold: held, stuck, struck, was_off, tight });
        let hot = if load.hot { Hot::new(site, heated, (spots, next), [&before, &after]) } else { Hot::default() };
        if load.hot {
            self.been_hot[site.index].note(&before, hot.zone_mm, self.heating.heats);
        }
        if !load.hot && load.cools {
            self.been_hot[site.index].cool();
        }
        let bare = self.bare(ordered, Some(site.index), heated, place, tools);
        let stop = if load.hot { self.stop_once(ordered, site, (held.as_ref(), was_off)) } else { None };
        let thin = self.thin_once(thin, heated.heat <= heats_before);
        let progress = &seen_progress(&self.progress[site.index]);
        let stages = self.progress[site.index].stages.clone();
        let site = seen_site;
        WorkedStep {
            minutes: load.minutes,
            heat_minutes: load.hot.then_some(load.heat_minutes),
            heat_celsius: self.celsius(ordered, load.hot),
            zone_mm: hot.zone_mm,
            hot_mm: hot.hot_mm,
            with_next_mm: hot.with_next_mm,
            hold: held,
            measure,
            stages,
            ..said(&Moment { ordered, site, progress, after, ways, thin, was_hot, held, stop }, bare)
        }
    }

    /// How hot a step comes out of the fire, and how cold it may get, in °C.
    fn celsius(&self, ordered: &Ordered, is_hot: bool) -> Option<[f64; 2]> {
        let fire = self.setup.fire.filter(|_| is_hot && !normalises(&ordered.tasks))?;
        Some([fire.start_for(&ordered.tasks), fire.stop_celsius(&ordered.tasks)])
    }

    /// Between which heats a step is worked, where no step before it on the bar said the same: the heat stands on each card. And how
    /// little is left to hold, once something was parted off.
    fn stop_once(
        &mut self,
        ordered: &Ordered,
        site: &Site<'_>,
        (held, was_off): (Option<&Hold>, bool),
    ) -> Option<String> {
        let said = &mut self.said_stop[site.index];
        let stop = careful::stop(site, &ordered.tasks).filter(|stop| !said.contains(stop));
        said.extend(stop.clone());
        stop.into_iter().chain(short_hold(site, held, was_off)).reduce(|all, more| all + " " + &more)
    }

    /// The thin parts to keep out of the fire; none where a step goes on in the heat before and the same were told there.
    fn thin_once(&mut self, thin: Option<Vec<String>>, goes_on: bool) -> Vec<String> {
        let Some(thin) = thin else { return Vec::new() };
        if goes_on && self.said_thin == thin {
            return Vec::new();
        }
        self.said_thin.clone_from(&thin);
        thin
    }

    /// Another bar goes into the fire.
    fn next_bar(&mut self) {
        self.heating.next_bar();
        self.doubted.iter_mut().for_each(Heating::next_bar);
    }

    /// Takes a step into heats, and into those of the least and the most that may be counted.
    fn take(&mut self, load: &Load, at: &Lengths, wish: Option<HeatWish>) -> Heated {
        let new = self.doubted.each_mut().map(|heating| {
            let before = heating.heats;
            heating.take(load, at, wish);
            heating.heats - before
        });
        self.new_heats.push(new);
        self.heating.take(load, at, wish)
    }

    /// Takes a step into the heat that is under way or into new ones, and what of the bar has to be hot for it.
    fn heat(&mut self, load: &Load, before: &Lengths, wish: Option<HeatWish>) -> (Heated, Vec<Spot>) {
        let (last, was_alone) = (self.heating.heats, self.heating.is_alone());
        let heated = self.take(load, before, wish);
        // In the heat of an upset what is beside the part is cool.
        let is_shared = was_alone && !load.alone && self.heating.heats == last;
        (heated, if is_shared { spots::alone(&load.spots) } else { load.spots.clone() })
    }

    /// From where to where a bar is hot when a step begins, in mm: everywhere where the whole bar is meant.
    fn hot_now(&self, site: &Site<'_>, before: &Lengths, (heated, next): (Heated, &Next)) -> [f64; 2] {
        // Of more heats than one what follows is hot in the last alone.
        let follow = next.spots.iter().filter(|_| heated.needs < 2);
        let all: Vec<Spot> = self.heating.spots().iter().chain(follow).copied().collect();
        spots::hot(site, &all, before).unwrap_or([f64::NEG_INFINITY, f64::INFINITY])
    }

    /// What holds the bar before a step is done: never what is hot from the steps before it or for those after it in its heat.
    fn held(
        &self,
        ordered: &Ordered,
        site: &Site<'_>,
        before: &Lengths,
        (heated, side, next): (Heated, Option<legs::Held>, &Next),
    ) -> Option<Hold> {
        let hot = self.heating.all_spots().chain(next.spots.iter().copied()).collect();
        // What was hot before the first of its heats; what is hot in that one is not gripped.
        let (been_hot, heat) = (&self.been_hot[site.index], heated.heat);
        let welds = ordered.tasks.iter().any(|task| task.operation == Operation::Weld);
        let mut need = Need { hot, tasks: &ordered.tasks, side, by_hand: !welds };
        let mut held = hold(site, &self.progress[site.index], before, &need)?;
        let cold = |held: &Hold| been_hot.cold_run_mm(before, held.at_mm, held.cold_mm, heat);
        if held.by_hand && cold(&held) < Hold::HAND {
            need.by_hand = false;
            held = hold(site, &self.progress[site.index], before, &need)?;
        }
        let is_hot = if held.by_hand {
            BeenHot::is_near(been_hot, before, held.at_mm)
        } else {
            been_hot.is_hot_yet(before, held.at_mm, heat)
        };
        Some(Hold { cool_first: is_hot && held.length_mm > 0.0, ..held })
    }

    /// What the steps that follow in the same heat need hot.
    fn next_in_the_heat(&self, site: &Site<'_>) -> Next {
        let number = self.seen.len();
        let (mut heating, mut progress) = (self.heating.clone(), self.progress[site.index].clone());
        let apply = |progress: &mut Progress, at: usize| {
            self.setup.ordered[at].tasks.iter().for_each(|task| progress.apply(site, task));
        };
        apply(&mut progress, number);
        let mut all = Next::default();
        for (at, next) in self.setup.ordered.iter().enumerate().skip(number + 1) {
            let load = self.loads.get(at).and_then(Option::as_ref).filter(|_| next.bar == site.index);
            let Some(load) = load.filter(|load| load.hot || !load.cools) else { break };
            let is_alone = heating.is_alone() && !load.alone;
            let heated = heating.take(load, &Lengths::new(site, &progress), next.step.heat);
            if heated.heat > self.heating.heats {
                break;
            }
            if load.hot {
                all.spots.extend(if is_alone { spots::alone(&load.spots) } else { load.spots.clone() });
                all.parts.extend(&load.parts);
            }
            // What is cut goes on in another heat.
            if heating.heats > self.heating.heats {
                break;
            }
            apply(&mut progress, at);
        }
        all
    }

    /// A step with what every step has.
    fn bare(
        &self,
        ordered: &Ordered,
        bar: Option<usize>,
        heated: Heated,
        place: AnvilPlace,
        tool: String,
    ) -> WorkedStep {
        WorkedStep {
            step: ordered.step.clone(),
            bar,
            tasks: ordered.tasks.clone(),
            title: String::new(),
            becomes: Vec::new(),
            because: Vec::new(),
            before: Vec::new(),
            tool: ordered.step.tool.clone().unwrap_or(tool),
            place: ordered.step.place.unwrap_or(place),
            lay: ordered.step.lay.clone(),
            edge: None,
            up: None,
            sizes: Vec::new(),
            aim: None,
            measure: Vec::new(),
            marks: Vec::new(),
            laid: Vec::new(),
            marked_view: None,
            slits_mm: Vec::new(),
            necks_mm: Vec::new(),
            heat_with: None,
            part_notes: Vec::new(),
            leave: ordered.step.leave.clone(),
            check: ordered.step.check.clone(),
            caution: ordered.step.caution.clone(),
            heat: if heated.needs == 0 { self.heating.heats } else { heated.heat },
            needs: heated.needs,
            brushed_in: None,
            minutes: 0.0,
            heat_minutes: None,
            heat_celsius: None,
            zone_mm: None,
            hot_mm: None,
            with_next_mm: None,
            hold: None,
            held_bar: None,
            stages: Vec::new(),
        }
    }

    /// What a step is called: the smith's own title as it is shown, or what it does.
    fn title(&self, ordered: &Ordered, site: Option<&Site<'_>>) -> String {
        let own = ordered.step.title.as_deref();
        let title = |site: &Site<'_>| words::title(self.setup.plan, Some(site), &ordered.tasks);
        let made = || site.map_or_else(|| words::title(self.setup.plan, None, &ordered.tasks), title);
        own.map_or_else(made, short_name)
    }

    /// The tools of a step, noted; the main ones in words.
    fn want(&mut self, ordered: &Ordered, site: Option<&Site<'_>>) -> String {
        let Some(site) = site else { return String::new() };
        let mut wanted: Vec<Wanted> = ordered.tasks.iter().flat_map(|task| wanted(site, task)).collect();
        let names = distinct(wanted.iter().map(|tool| tool.words.clone()));
        wanted.extend(ordered.step.tool.iter().flat_map(|words| own(words)));
        wanted.extend(driven_with(&wanted));
        self.tools.push((self.seen.len(), wanted));
        names.join("; ")
    }

    /// Parts that run into each other after a step and do not in the finished bar.
    fn struck(&mut self, ordered: &Ordered, site: &Site<'_>) -> Vec<(usize, usize)> {
        let bends = |task: &Task| task.operation.is_bending();
        if !legs::are_looked_at(site)
            || !ordered.tasks.iter().any(bends)
            || self.progress[site.index].stages.iter().filter(|stage| stage.bent).count() < 2
        {
            return Vec::new();
        }
        let finished = self.finished[site.index].get_or_insert_with(|| Posed::new(site, site.balance).overlaps());
        let now = Posed::new(site, &state(site, &self.progress[site.index])).overlaps();
        now.into_iter().filter(|pair| !finished.contains(pair)).collect()
    }
}
