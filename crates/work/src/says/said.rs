//! What is said of a step on a bar: from the plan, or from the bar as it is by then.

use crate::bar::held::Hold;
use crate::bar::lengths::Lengths;
use crate::bar::progress::{Progress, still_along};
use crate::job::legs::WayToBend;
use crate::job::order::Ordered;
use crate::job::site::{Site, extents, least};
use crate::job::task::{Task, is_hot};
use crate::job::{heat_rules, legs, part};
use crate::says::aim::aim;
use crate::says::landmarks::{Measured, measured};
use crate::says::lay::bent::turned_by_a_twist;
use crate::says::lay::lay;
use crate::says::marks::{is_marking, laid_lines, mark_lines, slits_mm};
use crate::says::size::{Measure, Size};
use crate::says::sized::length_in_all;
use crate::says::sizes::sizes;
use crate::says::words::distinct;
use crate::says::{brief, careful, checks, necks, words};
use crate::step::WorkedStep;
use fh_core::describe::{repeat_lines, short_name};
use fh_core::plan::{AnvilPlace, Chain, Form, Operation};

/// What is worked cold by hand on a bar that was in the fire begins so; what hardens never sees water.
fn cool_first(site: &Site<'_>) -> String {
    let how =
        if site.plan.material().quench.may { "Cool it first" } else { "Let it cool in still air, never in water" };
    format!("{how}, and test it.")
}

/// A bar at a step.
pub(crate) struct Moment<'m, 'a> {
    pub(crate) ordered: &'m Ordered,
    pub(crate) site: &'m Site<'a>,
    /// How far it is when the step is done.
    pub(crate) progress: &'m Progress,
    /// Where its parts lie then.
    pub(crate) after: Lengths,
    /// The ways of its first bend.
    pub(crate) ways: Vec<WayToBend>,
    /// The thin parts to keep out of the fire.
    pub(crate) thin: Vec<String>,
    /// Whether anything of it was in the fire before.
    pub(crate) was_hot: bool,
    /// What is held.
    pub(crate) held: Option<Hold>,
    /// Between which heats the metal is worked, where the steps before did not say so already.
    pub(crate) stop: Option<String>,
}

/// A step with what is said of it, on top of what every step has.
pub(crate) fn said(moment: &Moment<'_, '_>, bare: WorkedStep) -> WorkedStep {
    let Moment { ordered, site, progress, .. } = *moment;
    let (step, tasks, plan) = (&ordered.step, &ordered.tasks, site.plan);
    let finished = site.chains[0].1.iter().filter(|at| site.flat[**at].segment.form.is_finished());
    let now_mm = finished.map(|at| moment.after.lengths[*at]).sum::<f64>();
    let more_bends = more_bends(site, progress);
    let each = |of: &dyn Fn(&Task) -> Option<String>| first_words(tasks, of);
    let own = |target| Size::written(plan, target).when(bare.is_hot());
    let reach = step.reach.as_ref().map(|all| all.iter().map(own).collect());
    let sizes = reach.unwrap_or_else(|| all_sizes(site, tasks, progress, now_mm));
    let lays_off = site.flat.len() > 1 && tasks.iter().any(is_marking);
    WorkedStep {
        title: step.title.as_deref().map_or_else(|| words::title(plan, Some(site), tasks), short_name),
        becomes: distinct(tasks.iter().filter_map(|task| words::becomes(site, task))),
        lay: step.lay.clone().or_else(|| how_it_lies(moment, bare.place)),
        edge: edge(ordered, site),
        up: up(ordered, site, bare.place),
        marks: if lays_off { mark_lines(site) } else { Vec::new() },
        laid: if lays_off { laid_lines(site) } else { Vec::new() },
        marked_view: lays_off.then(|| site.balance.marked_view()),
        slits_mm: slits_mm(site, progress, &moment.after),
        leave: step.leave.clone().or_else(|| each(&|task| brief::leave(site, task, more_bends))),
        check: step.check.clone().or_else(|| {
            each(&|task| {
                let is_spoken_for = checks::is_spoken_for(site, tasks, task);
                checks::check(site, task, &sizes, (progress, now_mm)).filter(|_| !is_spoken_for)
            })
        }),
        caution: step.caution.clone().or_else(|| caution(moment, bare.is_hot())),
        aim: each(&|task| aim(site, task, progress)),
        sizes,
        necks_mm: necks::open_mm(site, progress, &moment.after),
        stages: progress.stages.clone(),
        ..bare
    }
}

/// How the bar is laid and struck, and which side is meant by its top where a twist has turned it.
fn how_it_lies(moment: &Moment<'_, '_>, place: AnvilPlace) -> Option<String> {
    let Moment { ordered, site, progress, .. } = *moment;
    // What is cut off beside the rest of the bar falls with it, and is told with the cut.
    let is_cut = |task: &Task| task.operation == Operation::Trim && is_waste(site, task);
    let is_told = |task: &Task| task.operation == Operation::PartOff && ordered.tasks.iter().any(is_cut);
    let of = |task: &Task| {
        let ways: &[WayToBend] = if is_first_bend(&ordered.tasks, task) { &moment.ways } else { &[] };
        lay(site, task, ways, progress).filter(|_| !is_told(task))
    };
    let words = first_words(&ordered.tasks, &of);
    let is_turned = up(ordered, site, place).is_some()
        && ordered.tasks.iter().any(|task| task.part.is_some_and(|at| turned_by_a_twist(site, progress, at)));
    let turned =
        is_turned.then(|| "The twist has turned this end: its top is still the side that was marked.".to_owned());
    let all: Vec<String> = turned.into_iter().chain(words).collect();
    (!all.is_empty()).then(|| all.join(" "))
}

/// Whether a task cuts off what falls as waste.
fn is_waste(site: &Site<'_>, task: &Task) -> bool {
    task.part.is_some_and(|at| matches!(site.flat[at].segment.form, Form::Trim(_)))
}

/// What to be careful of.
fn caution(moment: &Moment<'_, '_>, is_hot: bool) -> Option<String> {
    let Moment { ordered, site, .. } = *moment;
    let by_hand = |task: &Task| {
        task.part.is_some()
            && matches!(task.operation, Operation::Drill | Operation::Punch | Operation::Stamp | Operation::Trim)
    };
    let cool = (!is_hot && moment.was_hot && ordered.tasks.iter().any(by_hand)).then(|| cool_first(site));
    let words = first_words(&ordered.tasks, &|task| {
        careful::caution(site, task, &moment.thin, moment.held.map(|hold| hold.part))
    });
    let all: Vec<String> = cool.into_iter().chain(words).chain(moment.stop.clone()).collect();
    (!all.is_empty()).then(|| all.join(" "))
}

/// The edge that a step is worked over, in words.
fn edge(ordered: &Ordered, site: &Site<'_>) -> Option<String> {
    let own = ordered.step.edge.as_ref().map(|edge| edge.text().to_owned());
    let worked_out = || brief::edge_mm(site, ordered.tasks.first()?);
    own.or_else(|| worked_out().map(|mm| words::length_words(site.plan, mm)))
}

/// From where the places of a step are measured, in words; `progress` and `before` are those of the bar before it, `hot` is from
/// where to where it is hot then, in mm, none where it is cold.
pub(crate) fn measure(
    ordered: &Ordered,
    site: &Site<'_>,
    progress: &Progress,
    before: &Lengths,
    (held, hot): (Option<legs::Held>, Option<[f64; 2]>),
) -> Vec<String> {
    let of = |task: &Task| measured(site, progress, before, task, (held, hot));
    let mut all: Vec<Measured> = ordered.tasks.iter().flat_map(of).collect();
    let drawn = |task: &Task| task.operation == Operation::Draw;
    if ordered.tasks.len() > 1 && ordered.tasks.iter().all(drawn) {
        // Drawn to one section, only where it begins and where it ends matters.
        let parts: Vec<usize> = ordered.tasks.iter().filter_map(|task| task.part).collect();
        let ends = before.extent(parts.iter());
        all.retain(|measured| ends.iter().any(|end| (end - measured.at_mm).abs() < 1e-3));
    }
    let stamps = ordered.tasks.iter().filter(|task| task.operation == Operation::Stamp).filter_map(|task| task.part);
    let stamps = stamps.flat_map(|at| repeat_lines(site.plan.units.length, site.bar, site.balance, at));
    distinct(all.iter().map(|measured| measured.words(site.plan)).chain(stamps))
}

/// A finished part of less than such a share of what is heated for the step is through and burns before that is hot: common practice,
/// no source.
const SLIGHT: f64 = 0.5;

/// How thick the bar is that a task forges when it goes into the fire, in mm; none of lighter work, whose heat is short.
fn heated_mm(site: &Site<'_>, task: &Task) -> Option<f64> {
    let is_heavy = task.operation.is_shaping() || matches!(task.operation, Operation::Isolate | Operation::Weld);
    task.part.filter(|_| is_heavy).map(|at| least(extents(&site.raw_section(at))))
}

/// The names of thin forged parts so near to what a step puts into the fire that they have to be kept out of it; `follow` are
/// the parts that are worked in the same heat after it, `hot` is from where to where the bar is hot then.
pub(crate) fn thin(
    ordered: &Ordered,
    site: &Site<'_>,
    progress: &Progress,
    lengths: &Lengths,
    (held, follow, hot): (Option<&Hold>, &[usize], Option<[f64; 2]>),
) -> Vec<String> {
    let worked: Vec<usize> = ordered.tasks.iter().filter_map(|task| task.part).chain(follow.iter().copied()).collect();
    let reach = heat_rules::zone_mm(site.plan) / 2.0;
    let [start, end] = lengths.extent(worked.iter());
    let thick = ordered.tasks.iter().filter_map(|task| heated_mm(site, task)).fold(0.0, f64::max);
    let burns = |at: usize| {
        let [from, to] = lengths.extent([at].iter());
        let is_hot = hot.is_some_and(|[hot_from, hot_to]| to.min(hot_to) - from.max(hot_from) > 1e-6);
        // What lies toward the tongs stays out of the fire by itself, but for what is hot with what is worked.
        let by_the_tongs = held.is_some_and(|hold| {
            let [grip, _] = lengths.extent([hold.part].iter());
            (grip >= end && from >= end) || (grip < start && to <= start)
        });
        let is_near = to > start - reach && from < end + reach && !by_the_tongs;
        let is_step = matches!(site.flat[at].segment.form, Form::Shoulder(_));
        let is_slight = !is_step && part::least_mm(site, at).is_some_and(|least| least < SLIGHT * thick);
        (part::is_thin(site, at) && (is_hot || is_near)) || (is_hot && is_slight)
    };
    let forged = |at: &usize| {
        let stage = progress.stages[*at];
        stage.forged && !stage.off && !Progress::start_of(site, *at)
    };
    let all = (0..site.flat.len()).filter(|at| !worked.contains(at)).filter(forged);
    all.filter(|at| burns(*at)).map(|at| format!("“{}”", site.name(at))).collect()
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

/// How long several parts are together, with what is drawn out along with them: on the bar, and on each branch by itself, for
/// branches lie side by side; nothing of what is one by itself.
fn in_all(site: &Site<'_>, tasks: &[Task], progress: &Progress) -> Vec<Size> {
    let of = |operation: fn(Operation) -> bool| -> Vec<usize> {
        tasks.iter().filter(|task| operation(task.operation)).filter_map(|task| task.part).collect()
    };
    let worked = of(|operation| matches!(operation, Operation::Draw | Operation::Taper));
    let drawn = of(|operation| operation == Operation::Draw);
    let lies_on = |chain: usize| move |at: &usize| site.place.get(*at).is_some_and(|(own, _)| *own == chain);
    let chains: Vec<usize> = (0..site.chains.len()).filter(|chain| worked.iter().any(lies_on(*chain))).collect();
    let sizes = chains.iter().filter_map(|chain| {
        let [worked, drawn] = [&worked, &drawn].map(|all| all.iter().copied().filter(lies_on(*chain)).collect());
        let of = branch_name(site, *chain).filter(|_| chains.len() > 1);
        in_all_of(site, progress, (worked, drawn), &of.map_or_else(String::new, |of| format!(" of “{of}”")))
    });
    sizes.collect()
}

/// What a branch is called; none of the bar.
fn branch_name(site: &Site<'_>, chain: usize) -> Option<String> {
    let Chain::Branch { split, branch } = site.chains.get(chain)?.0 else { return None };
    Some(site.flat.get(split)?.segment.form.branches().get(branch)?.title(branch))
}

/// How long the parts of one branch or of the bar are together; none where it is one by itself.
fn in_all_of(
    site: &Site<'_>,
    progress: &Progress,
    (worked, drawn): (Vec<usize>, Vec<usize>),
    of: &str,
) -> Option<Size> {
    let lengths = Lengths::new(site, progress);
    let along: Vec<usize> = worked.iter().flat_map(|at| still_along(site, *at, progress)).collect();
    if let Some(name) = along.iter().rfind(|at| lengths.lengths[**at] > 1.0).map(|at| site.name(*at)) {
        let all: Vec<usize> = worked.into_iter().chain(along).collect();
        let what = format!("length in all{of}, with “{name}”");
        return Some(length_in_all(site, progress, &all, &what, lengths.length(&all)));
    }
    let what = format!("length in all{of}");
    (drawn.len() > 1).then(|| length_in_all(site, progress, &drawn, &what, lengths.length(&drawn)))
}
