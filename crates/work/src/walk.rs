//! Going through the steps of an order: the bar, the fire and the tongs at each of them.

use crate::along::{beyond_the_step, still_along};
use crate::brief;
use crate::effort::minutes;
use crate::findings::Seen;
use crate::fire::heat_minutes;
use crate::heat_rules;
use crate::heating::{Heated, Heating, Lengths, Load};
use crate::held::{Hold, Need, first_to_hold, hold};
use crate::landmarks::{Measured, measured};
use crate::lay::lay;
use crate::legs::{self, Posed, WayToBend};
use crate::marks::{is_marking, laid_lines, mark_lines, slits_mm};
use crate::neck;
use crate::order::Ordered;
use crate::progress::Progress;
use crate::site::Site;
use crate::size::{Measure, Size};
use crate::sized::length_in_all;
use crate::sizes::sizes;
use crate::spots::{self, Spot};
use crate::state::state;
use crate::task::{Task, is_hot, least_heats};
use crate::tools::{Wanted, shoulder_fuller_mm, tongs, wanted};
use crate::words;
use crate::worked::{Setup, WorkedStep};
use fh_core::describe::repeat_lines;
use fh_core::plan::{AnvilPlace, HeatRules, JointKind, Operation};

/// What each step on a bar asks of a heat; none of the steps on the whole piece: at a joint, or what finishes it.
pub(crate) fn loads(setup: &Setup<'_, '_>) -> Vec<Option<Load>> {
    let is_finish = |task: &Task| task.part.is_none() && matches!(task.operation, Operation::Brush | Operation::Wax);
    let of = |ordered: &Ordered| {
        let at_joint = ordered.tasks.first().is_some_and(|task| task.joint.is_some());
        let of_piece = at_joint || (!ordered.tasks.is_empty() && ordered.tasks.iter().all(is_finish));
        let site = setup.sites.get(ordered.bar).filter(|_| !of_piece)?;
        let gives = heat_minutes(site, setup.fire, &ordered.tasks);
        let load = Load::new(site, &ordered.tasks, minutes_of(setup, ordered, Some(site)), gives);
        Some(Load { hot: spots::is_done_hot(&ordered.step, load.hot), ..load })
    };
    setup.ordered.iter().map(of).collect()
}

/// How many minutes a step takes: as the smith says, or as it is worked out.
fn minutes_of(setup: &Setup<'_, '_>, ordered: &Ordered, site: Option<&Site<'_>>) -> f64 {
    let worked_out = || site.map_or(0.0, |site| ordered.tasks.iter().map(|task| minutes(site, setup.fire, task)).sum());
    ordered.step.minutes.unwrap_or_else(worked_out)
}

/// What is known of a bar at a step before it is put into words.
struct Moment {
    /// The ways of its first bend.
    ways: Vec<WayToBend>,
    /// The thin parts to keep out of the fire.
    thin: Vec<String>,
    /// Where the parts lie when it is done.
    after: Lengths,
}

/// Going through the steps, one after the other.
pub(crate) struct Walk<'b, 'a> {
    setup: &'b Setup<'b, 'a>,
    /// What each step on a bar asks of a heat; none of the steps on the whole piece.
    loads: &'b [Option<Load>],
    progress: Vec<Progress>,
    pub(crate) heating: Heating,
    last_bar: Option<usize>,
    /// The tools of each step.
    pub(crate) tools: Vec<(usize, Vec<Wanted>)>,
    /// What was seen at each step.
    pub(crate) seen: Vec<Seen>,
    /// What runs into what in the finished bars, which is the plan's affair.
    finished: Vec<Option<Vec<(usize, usize)>>>,
}

impl<'b, 'a> Walk<'b, 'a> {
    pub(crate) fn new(setup: &'b Setup<'b, 'a>, loads: &'b [Option<Load>]) -> Self {
        Self {
            loads,
            progress: setup.sites.iter().map(Progress::start).collect(),
            heating: Heating::new(setup.plan, 0),
            last_bar: None,
            tools: Vec::new(),
            seen: Vec::new(),
            finished: vec![None; setup.sites.len()],
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

    /// A step on the whole piece: at a joint, or what finishes it.
    fn on_piece(&mut self, ordered: &Ordered) -> WorkedStep {
        let site = self.setup.sites.first();
        let hot = site.is_some_and(|site| ordered.tasks.iter().any(|task| is_hot(site, task)));
        let hot = spots::is_done_hot(&ordered.step, hot);
        let least = site.map_or(1, |site| ordered.tasks.iter().map(|task| least_heats(site, task)).max().unwrap_or(1));
        if hot || self.last_bar.take().is_some() {
            self.heating = Heating::new(self.setup.plan, self.heating.heats);
        }
        let minutes = minutes_of(self.setup, ordered, site);
        let (parts, spots) = (Vec::new(), Vec::new());
        let heat_minutes = HeatRules::MINUTES;
        let load = Load { parts, spots, least, minutes, heat_minutes, hot, cools: true, alone: false, beside: true };
        let heated = self.heating.take(&load, &Lengths { starts: Vec::new(), lengths: Vec::new() }, ordered.step.heat);
        let tools = self.want(ordered, site);
        let task = ordered.tasks.first();
        self.seen.push(Seen { heated: Some(heated), ..Seen::default() });
        let caution = task.zip(site).and_then(|(task, site)| brief::caution(site, task, &[]));
        let kind = task.and_then(|task| self.setup.plan.joints.get(task.joint?)).map(|joint| joint.kind);
        let place = match kind {
            Some(JointKind::Tenon) => AnvilPlace::Vice,
            _ if hot => AnvilPlace::Face,
            _ => AnvilPlace::Bench,
        };
        WorkedStep {
            title: self.title(ordered, site),
            becomes: self.joint_words(ordered),
            minutes,
            lay: ordered.step.lay.clone().or_else(|| {
                task.zip(site).and_then(|(task, site)| lay(site, task, &[], self.progress.get(site.index)?))
            }),
            caution: ordered.step.caution.clone().or(caution),
            ..self.bare(ordered, None, heated, place, tools)
        }
    }

    fn on_bar(&mut self, ordered: &Ordered, site: &Site<'_>, load: &Load) -> WorkedStep {
        if self.last_bar != Some(site.index) {
            // Another bar goes into the fire.
            self.heating = Heating::new(self.setup.plan, self.heating.heats);
            self.last_bar = Some(site.index);
        }
        let before = Lengths::new(site, &self.progress[site.index]);
        let (heated, spots) = self.heat(ordered, load, &before);
        let (mut ways, stuck) = self.ways(ordered, site);
        first_to_hold(site, &before, &load.spots, &mut ways);
        let side = ways.first().and_then(side_gripped);
        let held = if load.hot { self.held(ordered, site, &before, side) } else { None };
        let measure = self.measure(ordered, site, &before, side);
        let was_off = self.progress[site.index].stages.iter().any(|stage| stage.off);
        ordered.tasks.iter().for_each(|task| self.progress[site.index].apply(site, task));
        let struck = self.struck(ordered, site);
        let after = Lengths::new(site, &self.progress[site.index]);
        let thin = self.thin(ordered, site, &before, held.as_ref());
        let tools = self.want(ordered, Some(site));
        let first = ordered.tasks.first();
        let place = first.map_or(AnvilPlace::Bench, |task| brief::place(site, task, &ways, held.as_ref()));
        let tongs = held.as_ref().filter(|_| place != AnvilPlace::Vice).and_then(|held| tongs(site, held));
        self.tools.push((self.seen.len(), tongs.into_iter().collect()));
        let tight = tight(site, &ordered.tasks, &self.progress[site.index], &after);
        self.seen.push(Seen { heated: Some(heated), hold: held, stuck, struck, was_off, tight });
        let is_hot = load.hot;
        WorkedStep {
            minutes: load.minutes,
            heat_minutes: is_hot.then_some(load.heat_minutes),
            zone_mm: spots::hot(site, &spots, &before).filter(|_| is_hot),
            hot_mm: spots::hot(site, &spots, &after).filter(|_| is_hot),
            hold: held,
            measure,
            ..self.said(
                ordered,
                site,
                &Moment { ways, thin, after },
                self.bare(ordered, Some(site.index), heated, place, tools),
            )
        }
    }

    /// Takes a step into the heat that is under way or into new ones, and what of the bar has to be hot for it.
    fn heat(&mut self, ordered: &Ordered, load: &Load, before: &Lengths) -> (Heated, Vec<Spot>) {
        let (last, was_alone) = (self.heating.heats, self.heating.is_alone());
        let heated = self.heating.take(load, before, ordered.step.heat);
        // In the heat of an upset what is beside the part is cool.
        let is_shared = was_alone && !load.alone && self.heating.heats == last;
        (heated, if is_shared { spots::alone(&load.spots) } else { load.spots.clone() })
    }

    /// What holds the bar before a step is done: never what is hot from the steps before it or for those after it in its heat.
    fn held(&self, ordered: &Ordered, site: &Site<'_>, before: &Lengths, side: Option<legs::Held>) -> Option<Hold> {
        let hot = self.heating.spots().iter().copied().chain(self.hot_for_the_next(site)).collect();
        hold(site, &self.progress[site.index], before, &Need { hot, tasks: &ordered.tasks, side })
    }

    /// What the steps that follow in the same heat need hot.
    fn hot_for_the_next(&self, site: &Site<'_>) -> Vec<Spot> {
        let number = self.seen.len();
        let (mut heating, mut progress) = (self.heating.clone(), self.progress[site.index].clone());
        let apply = |progress: &mut Progress, at: usize| {
            self.setup.ordered[at].tasks.iter().for_each(|task| progress.apply(site, task));
        };
        apply(&mut progress, number);
        let mut all = Vec::new();
        for (at, next) in self.setup.ordered.iter().enumerate().skip(number + 1) {
            let load = self.loads.get(at).and_then(Option::as_ref).filter(|_| next.bar == site.index);
            let Some(load) = load.filter(|load| load.hot || !load.cools) else { break };
            heating.take(load, &Lengths::new(site, &progress), next.step.heat);
            if heating.heats > self.heating.heats {
                break;
            }
            all.extend(load.spots.iter().filter(|_| load.hot));
            apply(&mut progress, at);
        }
        all
    }

    /// What is said of a step on a bar, on top of what every step has.
    fn said(&self, ordered: &Ordered, site: &Site<'_>, moment: &Moment, bare: WorkedStep) -> WorkedStep {
        let (step, tasks, progress) = (&ordered.step, &ordered.tasks, &self.progress[site.index]);
        let finished = site.chains[0].1.iter().filter(|at| site.flat[**at].segment.form.is_finished());
        let now_mm = finished.map(|at| moment.after.lengths[*at]).sum::<f64>();
        let more_bends = more_bends(site, progress);
        let each = |of: &dyn Fn(&Task) -> Option<String>| first_words(tasks, of);
        let lay = |task: &Task| {
            let ways: &[WayToBend] = if is_first_bend(tasks, task) { &moment.ways } else { &[] };
            lay(site, task, ways, progress)
        };
        let own = |target| Size::written(self.setup.plan, target).when(bare.is_hot());
        let reach = step.reach.as_ref().map(|all| all.iter().map(own).collect());
        let sizes = reach.unwrap_or_else(|| all_sizes(site, tasks, progress, now_mm));
        let lays_off = site.flat.len() > 1 && tasks.iter().any(is_marking);
        WorkedStep {
            title: self.title(ordered, Some(site)),
            becomes: distinct(tasks.iter().filter_map(|task| words::becomes(site, task))),
            lay: step.lay.clone().or_else(|| each(&lay)),
            edge: self.edge(ordered, site),
            up: up(ordered, site, bare.place),
            marks: if lays_off { mark_lines(site) } else { Vec::new() },
            laid: if lays_off { laid_lines(site) } else { Vec::new() },
            marked_view: lays_off.then(|| site.balance.marked_view()),
            slits_mm: slits_mm(site, progress, &moment.after),
            leave: step.leave.clone().or_else(|| each(&|task| brief::leave(site, task, more_bends))),
            check: step.check.clone().or_else(|| each(&|task| brief::check(site, task, &sizes, now_mm))),
            caution: step.caution.clone().or_else(|| each(&|task| brief::caution(site, task, &moment.thin))),
            sizes,
            necks_mm: neck::open_mm(site, progress, &moment.after),
            part_notes: Self::part_notes(ordered, site),
            stages: progress.stages.clone(),
            ..bare
        }
    }

    /// The edge that a step is worked over, in words.
    fn edge(&self, ordered: &Ordered, site: &Site<'_>) -> Option<String> {
        let own = ordered.step.edge.as_ref().map(|edge| edge.text().to_owned());
        let worked_out = || brief::edge_mm(site, ordered.tasks.first()?);
        own.or_else(|| worked_out().map(|mm| words::length_words(self.setup.plan, mm)))
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
            tool: ordered.step.tool.clone().unwrap_or(tool),
            place: ordered.step.place.unwrap_or(place),
            lay: ordered.step.lay.clone(),
            edge: None,
            up: None,
            sizes: Vec::new(),
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
            minutes: 0.0,
            heat_minutes: None,
            zone_mm: None,
            hot_mm: None,
            hold: None,
            stages: Vec::new(),
        }
    }

    fn title(&self, ordered: &Ordered, site: Option<&Site<'_>>) -> String {
        ordered.step.title.clone().unwrap_or_else(|| words::title(self.setup.plan, site, &ordered.tasks))
    }

    fn joint_words(&self, ordered: &Ordered) -> Vec<String> {
        let joints = ordered.tasks.iter().filter_map(|task| self.setup.plan.joints.get(task.joint?));
        distinct(joints.map(|joint| {
            let members: Vec<String> =
                joint.members().map(|member| format!("“{}” of {}", member.segment, member.bar)).collect();
            format!("{}: {}", joint.kind.name(), words::joined(&members))
        }))
    }

    /// The tools of a step, noted; the main ones in words.
    fn want(&mut self, ordered: &Ordered, site: Option<&Site<'_>>) -> String {
        let Some(site) = site else { return String::new() };
        let wanted: Vec<Wanted> = ordered.tasks.iter().flat_map(|task| wanted(site, task)).collect();
        let names = distinct(wanted.iter().map(|tool| tool.words.clone()));
        self.tools.push((self.seen.len(), wanted));
        names.join("; ")
    }

    /// The ways of the first bend of a step, and its bends that have none.
    fn ways(&self, ordered: &Ordered, site: &Site<'_>) -> (Vec<WayToBend>, Vec<usize>) {
        let bent = |task: &&Task| matches!(task.operation, Operation::Bend | Operation::Corner);
        let bends: Vec<usize> = ordered.tasks.iter().filter(bent).filter_map(|task| task.part).collect();
        // On a branch the others are in the way of every block: it is bent in the vice.
        let over_an_edge = |at: &usize| legs::is_bent_over_an_edge(site, *at) && site.split_of(*at).is_none();
        let on_bar: Vec<usize> = bends.into_iter().filter(over_an_edge).collect();
        let Some(first) = on_bar.first().filter(|_| legs::are_looked_at(site)) else { return (Vec::new(), Vec::new()) };
        let posed = Posed::new(site, &state(site, &self.progress[site.index]));
        let ways = posed.ways(site, *first);
        let stuck = |at: &usize| posed.ways(site, *at).is_empty();
        (ways, on_bar.into_iter().filter(stuck).collect())
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

    /// What the plan notes on the parts of a step; nothing where they are only necked.
    fn part_notes(ordered: &Ordered, site: &Site<'_>) -> Vec<String> {
        let works = |task: &&Task| task.operation != Operation::Isolate;
        let parts = ordered.tasks.iter().filter(works).filter_map(|task| site.part(task.part?));
        distinct(parts.filter_map(|part| part.segment.notes.clone()).filter(|note| !note.trim().is_empty()))
    }

    /// From where the places of a step are measured, in words.
    fn measure(&self, ordered: &Ordered, site: &Site<'_>, before: &Lengths, held: Option<legs::Held>) -> Vec<String> {
        let of = |task: &Task| measured(site, &self.progress[site.index], before, task, held);
        let mut all: Vec<Measured> = ordered.tasks.iter().flat_map(of).collect();
        let drawn = |task: &Task| task.operation == Operation::Draw;
        if ordered.tasks.len() > 1 && ordered.tasks.iter().all(drawn) {
            // Drawn to one section, only where it begins and where it ends matters.
            let parts: Vec<usize> = ordered.tasks.iter().filter_map(|task| task.part).collect();
            let ends = before.extent(parts.iter());
            all.retain(|measured| ends.iter().any(|end| (end - measured.at_mm).abs() < 1e-3));
        }
        let stamps =
            ordered.tasks.iter().filter(|task| task.operation == Operation::Stamp).filter_map(|task| task.part);
        let stamps = stamps.flat_map(|at| repeat_lines(self.setup.plan.units.length, site.bar, site.balance, at));
        distinct(all.iter().map(|measured| measured.words(self.setup.plan)).chain(stamps))
    }

    /// The names of thin forged parts so near to what is hot that they have to be kept from the fire.
    fn thin(&self, ordered: &Ordered, site: &Site<'_>, lengths: &Lengths, held: Option<&Hold>) -> Vec<String> {
        let worked: Vec<usize> = ordered.tasks.iter().filter_map(|task| task.part).collect();
        let reach = heat_rules::zone_mm(self.setup.plan) / 2.0;
        let [start, end] = lengths.extent(worked.iter());
        let is_near = |at: usize| {
            let [from, to] = lengths.extent([at].iter());
            // What lies toward the tongs stays out of the fire by itself.
            let by_the_tongs = held.is_some_and(|hold| {
                let [grip, _] = lengths.extent([hold.part].iter());
                (grip >= end && from >= end) || (grip < start && to <= start)
            });
            to > start - reach && from < end + reach && !by_the_tongs
        };
        let stages = &self.progress[site.index].stages;
        let forged = |at: &usize| stages[*at].forged && !stages[*at].off && !Progress::start_of(site, *at);
        let all = (0..site.flat.len()).filter(|at| !worked.contains(at)).filter(forged);
        all.filter(|at| is_near(*at) && brief::is_thin(site, *at)).map(|at| format!("“{}”", site.name(at))).collect()
    }
}

/// Steps that are set down all round in a gap less than twice as wide as their fuller: the step, the fuller and the gap in mm.
fn tight(site: &Site<'_>, tasks: &[Task], progress: &Progress, lengths: &Lengths) -> Vec<(usize, f64, f64)> {
    let of = |task: &Task| {
        let at = task.part.filter(|_| task.operation == Operation::SetDown)?;
        let fuller = shoulder_fuller_mm(site.part(at)?)?;
        let thin = beyond_the_step(site, at)?;
        // At a free end there is no gap: the groove goes through.
        let beyond = site.beside(thin).into_iter().flatten().find(|other| *other != at)?;
        let is_open = progress.stages[beyond].off || progress.stages[thin].forged;
        let gap = lengths.lengths[thin];
        (!is_open && gap < 2.0 * fuller).then_some((at, fuller, gap))
    };
    tasks.iter().filter_map(of).collect()
}

/// Whether a task is the first bend among others: the one that ways are looked for.
fn is_first_bend(tasks: &[Task], task: &Task) -> bool {
    let bends = |task: &&Task| matches!(task.operation, Operation::Bend | Operation::Corner);
    tasks.iter().find(bends) == Some(task)
}

/// Whether something of a bar is still to be bent.
fn more_bends(site: &Site<'_>, progress: &Progress) -> bool {
    site.parts().any(|part| part.balance.bent.is_some() && !progress.stages[part.at].bent)
}

/// The side of the bar that is up, in words; none in the vice, unless the smith says it.
fn up(ordered: &Ordered, site: &Site<'_>, place: AnvilPlace) -> Option<String> {
    let own = ordered.step.up.as_ref().map(|up| up.radians().to_degrees().rem_euclid(360.0));
    let worked_out = || brief::up_degrees(site, ordered.tasks.first().filter(|_| place != AnvilPlace::Vice)?);
    own.or_else(worked_out).map(words::side_up)
}

/// The side of the bar that is gripped for a way to bend; none where a vice holds it.
fn side_gripped(way: &WayToBend) -> Option<legs::Held> {
    (way.place != AnvilPlace::Vice).then_some(way.held)
}

fn distinct(all: impl Iterator<Item = String>) -> Vec<String> {
    let mut list: Vec<String> = Vec::new();
    for words in all {
        if !list.contains(&words) {
            list.push(words);
        }
    }
    list
}

/// What the tasks of a step say, each thing once.
fn first_words(tasks: &[Task], of: &dyn Fn(&Task) -> Option<String>) -> Option<String> {
    let said: Vec<String> = tasks.iter().filter_map(of).collect();
    let all = distinct(said.iter().flat_map(|text| words::sentences(text)).map(str::to_owned));
    (!all.is_empty()).then(|| all.join(" "))
}

/// The sizes of all tasks, with the part's name where there are several.
fn all_sizes(site: &Site<'_>, tasks: &[Task], progress: &Progress, now_mm: f64) -> Vec<Size> {
    let mut all: Vec<Size> = Vec::new();
    let parts = distinct(tasks.iter().filter_map(|task| task.part).map(|at| site.name(at)));
    for task in tasks {
        let is_hot = is_hot(site, task);
        for mut size in sizes(site, task, progress, now_mm) {
            size = size.when(is_hot);
            let is_length = size.measure == Measure::Length;
            if parts.len() > 1
                && is_length
                && let Some(at) = task.part
            {
                size.what = format!("{} of “{}”", size.what, site.name(at));
            }
            if !all.contains(&size) {
                all.push(size);
            }
        }
    }
    all.extend(in_all(site, tasks, progress));
    all
}

/// How long several parts are together, with what is drawn out along with them; none where it is one by itself.
fn in_all(site: &Site<'_>, tasks: &[Task], progress: &Progress) -> Option<Size> {
    let draws = |task: &&Task| matches!(task.operation, Operation::Draw | Operation::Taper);
    let worked: Vec<usize> = tasks.iter().filter(draws).filter_map(|task| task.part).collect();
    let along: Vec<usize> = worked.iter().flat_map(|at| still_along(site, *at, progress)).collect();
    let lengths = Lengths::new(site, progress);
    if let Some(name) = along.iter().rfind(|at| lengths.lengths[**at] > 1.0).map(|at| site.name(*at)) {
        let all: Vec<usize> = worked.into_iter().chain(along).collect();
        let what = format!("length in all, “{name}” drawn along");
        return Some(length_in_all(site, progress, &all, &what, lengths.length(&all)));
    }
    let is_drawn = |task: &&Task| task.operation == Operation::Draw;
    let drawn: Vec<usize> = tasks.iter().filter(is_drawn).filter_map(|task| task.part).collect();
    (drawn.len() > 1).then(|| length_in_all(site, progress, &drawn, "length in all", lengths.length(&drawn)))
}
