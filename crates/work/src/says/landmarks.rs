//! Landmarks: from what can still be seen or felt on the bar a place is measured, when the datum itself has moved.

use crate::bar::lengths::Lengths;
use crate::bar::progress::Progress;
use crate::job::along::followers;
use crate::job::legs::Held;
use crate::job::neck::{grooves, size_at};
use crate::job::scarf::farther_mm;
use crate::job::site::{Site, extents, in_mm};
use crate::job::task::Task;
use crate::says::marks::is_struck;
use crate::says::necks::{OpenGroove, open_grooves, pushed_between};
use crate::says::words::{length_words, partly_hot_words};
use fh_core::balance::HoleMark;
use fh_core::metal::{FreeEnd, Shape};
use fh_core::plan::{Chain, Form, Operation, Plan};

/// How near a landmark has to be to a place to be the place, in mm.
const AT: f64 = 0.05;

/// A place on the bar that a step works from.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Measured {
    /// Where it is on the bar, in mm.
    pub(crate) at_mm: f64,
    /// What the place is: `the start of “hook”`.
    place: String,
    /// From where it is measured: `the shoulder “stop”`.
    from: String,
    /// How far it is from there, cold, in mm; 0 where it can be seen itself.
    distance_mm: f64,
    /// How much of that is hot, in mm.
    hot_mm: f64,
}

impl Measured {
    /// It in words, with the distance as it measures hot.
    pub(crate) fn words(&self, plan: &Plan) -> String {
        let Self { place, from, distance_mm, hot_mm, .. } = self;
        if *distance_mm <= 0.0 {
            return format!("{place}: {from}");
        }
        format!("{place}: {} from {from}", cold_and_hot(plan, *distance_mm, *hot_mm))
    }
}

/// A length as it measures cold, and with so many mm of it hot where that is known and reads differently.
fn cold_and_hot(plan: &Plan, mm: f64, of_it_hot_mm: f64) -> String {
    let cold = length_words(plan, mm);
    let hot = partly_hot_words(plan, mm, of_it_hot_mm).filter(|hot| *hot != cold);
    hot.map_or_else(|| cold.clone(), |hot| format!("{cold} ({hot} hot)"))
}

/// How much of a stretch of bar between two places is hot, in mm.
fn hot_of(hot: Option<[f64; 2]>, one: f64, other: f64) -> f64 {
    hot.map_or(0.0, |[from, to]| (one.max(other).min(to) - one.min(other).max(from)).max(0.0))
}

/// Something that can be seen or felt.
struct Landmark {
    at: f64,
    words: String,
    is_mark: bool,
    /// Whether it is an end of the bar or the branch.
    is_end: bool,
    /// Whether it is a neck, or a step beside metal that is still to be forged.
    is_rough: bool,
    /// Whether a mark is no longer where it was laid off.
    has_moved: bool,
    /// How far beyond its true place it was laid off, rounded, in mm; none of what is not as it was laid off.
    rounded: Option<f64>,
}

impl Landmark {
    fn felt(at: f64, words: String) -> Self {
        Self { at, words, is_mark: false, is_end: false, is_rough: false, has_moved: false, rounded: None }
    }

    /// The mark at the end of a part.
    fn mark(site: &Site<'_>, before: usize, at: f64) -> Self {
        let segment = &site.balance.segments[before];
        let struck = site.balance.struck_mm(before).unwrap_or_default();
        let rounded = Some(struck - in_mm(segment.end_on_bar()));
        // Half a step of the marks is rounding.
        let has_moved = (at - struck).abs() > site.plan.units.marks.step_mm() / 2.0 + AT;
        let text = site.balance.mark_text(before).unwrap_or_default();
        let words = format!("mark {}, struck at {text}", site.path(before));
        Self { is_mark: true, has_moved, rounded, ..Self::felt(at, words) }
    }
}

/// The places that a task works from, each measured from the nearest landmark; `held` is the side that lies on the anvil for
/// a bend, `hot` from where to where the bar is hot then, in mm, none where it is cold.
pub(crate) fn measured(
    site: &Site<'_>,
    progress: &Progress,
    lengths: &Lengths,
    task: &Task,
    (held, hot): (Option<Held>, Option<[f64; 2]>),
) -> Vec<Measured> {
    let Some(at) = task.part else { return Vec::new() };
    let mut wanted = wanted(site, lengths, task.operation, at);
    if bends_over(task.operation) {
        // A bend begins on the side that is held; what ends at the bar's end is bent from its other end.
        match held {
            Some(Held::Far) => wanted = wanted.pop().into_iter().collect(),
            None if hangs_by_its_far_end(site, at) => wanted = wanted.pop().into_iter().collect(),
            _ => wanted.truncate(1),
        }
    }
    if wanted.is_empty() || !progress.is_there(site, at) {
        return Vec::new();
    }
    if matches!(task.operation, Operation::Draw | Operation::Taper) {
        // Toward what is drawn out along with it there is no line to work to.
        let along: Vec<usize> =
            followers(site, at).into_iter().filter(|other| !progress.stages[*other].forged).collect();
        let ends = along.iter().flat_map(|other| lengths.extent([*other].iter())).collect::<Vec<f64>>();
        wanted.retain(|(_, place)| !ends.iter().any(|end| (end - place).abs() < AT));
    }
    if wanted.is_empty() {
        return Vec::new();
    }
    let mut marks = landmarks(site, progress, lengths, at);
    if matches!(task.operation, Operation::Punch | Operation::Drill | Operation::Split) {
        marks.extend(punched_middles(site, progress, lengths, at));
    }
    let open = open_grooves(site, progress, lengths);
    let nearest = |place: f64| {
        let far = |mark: &&Landmark| (mark.at - place).abs();
        marks.iter().min_by(|one, other| far(one).total_cmp(&far(other)).then(other.is_mark.cmp(&one.is_mark)))
    };
    let measured = |(words, place): (String, f64)| {
        let mark = nearest(place)?;
        let here = (mark.at - place).abs() < AT;
        let distance_mm = (mark.at - place).abs() + pushed_between(&open, mark.at, place);
        Some(Measured {
            at_mm: place,
            place: words,
            from: if here && mark.is_mark { mark_now(site, mark, (&marks, &open), hot) } else { mark.words.clone() },
            distance_mm: if here { 0.0 } else { distance_mm },
            hot_mm: hot_of(hot, mark.at, place),
        })
    };
    // That a part ends where the bar does goes without saying.
    let ends = marks.iter().filter(|mark| mark.is_end);
    let ends: Vec<&str> = ends.map(|mark| mark.words.as_str()).collect();
    let says_something = |measured: &Measured| {
        measured.place != measured.from && (measured.distance_mm > 0.0 || !ends.contains(&measured.from.as_str()))
    };
    wanted.into_iter().filter_map(measured).filter(says_something).collect()
}

/// A mark as it is found now: by its number, and where the bar has grown by what is felt next to it.
fn mark_now(
    site: &Site<'_>,
    mark: &Landmark,
    (all, open): (&[Landmark], &[OpenGroove]),
    hot: Option<[f64; 2]>,
) -> String {
    // Beside a neck or a step metal has moved: from there nothing is measured until it is forged.
    let felt = all.iter().filter(|other| !other.is_mark && !other.is_rough);
    let near = felt.min_by(|one, other| (one.at - mark.at).abs().total_cmp(&(other.at - mark.at).abs()));
    let pushed = near.map_or(0.0, |near| pushed_between(open, near.at, mark.at));
    match near.filter(|_| mark.has_moved || pushed > AT) {
        Some(near) => {
            // From the end as it was cut to the mark as it was struck.
            let struck = near.rounded.and(mark.rounded).unwrap_or(0.0);
            let now_mm = (near.at - mark.at - struck).abs() + pushed;
            let now = cold_and_hot(site.plan, now_mm, hot_of(hot, near.at, mark.at));
            // What a groove has pushed out is worked out, and no size.
            let about = if pushed > AT { "about " } else { "" };
            format!("{}, now {about}{now} from {}", mark.words, near.words)
        }
        None => mark.words.clone(),
    }
}

/// The places that an operation on a part is measured to, in mm along the bar as it is now.
fn wanted(site: &Site<'_>, lengths: &Lengths, operation: Operation, at: usize) -> Vec<(String, f64)> {
    use Operation as O;
    let (start, end) = (lengths.starts[at], lengths.starts[at] + lengths.lengths[at]);
    let name = site.name(at);
    let those = |wanted: &dyn Fn(bool) -> bool| -> Vec<(String, f64)> {
        let [before, after] = site.beside(at);
        let places = [(before, format!("the start of “{name}”"), start), (after, format!("the end of “{name}”"), end)];
        let wanted =
            places.into_iter().enumerate().filter(|(side, (beside, ..))| beside.is_some() && wanted(*side == 1));
        wanted.map(|(_, (_, words, place))| (words, place)).collect()
    };
    let both = || those(&|_| true);
    let shape = site.part(at).and_then(|part| part.balance.shape.as_ref());
    match operation {
        O::Trim if !matches!(site.flat[at].segment.form, Form::Trim(_)) => Vec::new(),
        O::SetDown => set_down(site, at, start, end),
        // Only where it is necked a mark is worked at.
        O::Isolate => those(&|at_end| has_groove(site, at, at_end)),
        O::Draw | O::Taper | O::Twist | O::Trim | O::PartOff | O::Upset => both(),
        operation if bends_over(operation) => both(),
        O::Split | O::Punch if matches!(shape, Some(Shape::Split(_))) => {
            let Some(Shape::Split(size)) = shape else { return Vec::new() };
            // The slit runs into its holes: where they are says how long it is.
            let roots = root_holes(site, lengths, at);
            if !roots.is_empty() {
                let called = |(index, _): (usize, &f64)| match operation {
                    O::Split if index > 0 || size.opens() == FreeEnd::Datum => {
                        format!("the end of the slit in “{name}”")
                    }
                    O::Split => format!("the start of the slit in “{name}”"),
                    _ => format!("the middle of the root hole in “{name}”"),
                };
                let mut all: Vec<_> = roots.iter().enumerate().map(|root| (called(root), *root.1)).collect();
                // A branch that leaves the bar is cut free at its other end.
                if operation == O::Split && site.has_leaving_branch(at) {
                    let end = if size.opens() == FreeEnd::Datum { start } else { end };
                    all.push((format!("the free end of the slit in “{name}”"), end));
                }
                return all;
            }
            let ends = [
                (format!("the start of the slit in “{name}”"), start),
                (format!("the end of the slit in “{name}”"), end),
            ];
            let keep = match size.opens() {
                _ if site.has_leaving_branch(at) => 0..2,
                FreeEnd::Datum => 1..2,
                FreeEnd::Far => 0..1,
                FreeEnd::Neither => 0..2,
            };
            ends.into_iter().enumerate().filter(|(index, _)| keep.contains(index)).map(|(_, end)| end).collect()
        }
        O::Punch | O::Drill => match site.part(at).and_then(|part| part.balance.hole_share()) {
            Some(share) => vec![(format!("the middle of the hole in “{name}”"), start + share * (end - start))],
            None => Vec::new(),
        },
        _ => Vec::new(),
    }
}

/// Where the middles of the holes at the ends of a slit lie on the bar as it is now, in mm: what is not slit yet has not grown.
fn root_holes(site: &Site<'_>, lengths: &Lengths, at: usize) -> Vec<f64> {
    let Some(part) = site.part(at) else { return Vec::new() };
    let from_start = |hole: &HoleMark| lengths.starts[at] + in_mm(hole.middle - part.balance.mark_start);
    let holes = site.balance.laid_off().holes.into_iter().filter(|hole| hole.segment == at && hole.root.is_some());
    holes.map(|hole| from_start(&hole)).collect()
}

/// The middles of a part's holes as they were punched with the marks, while its surface is as it came from the rack.
fn punched_middles(site: &Site<'_>, progress: &Progress, lengths: &Lengths, at: usize) -> Vec<Landmark> {
    if !progress.marked || site.flat[at].chain != Chain::Bar || !is_untouched(site, progress, at) {
        return Vec::new();
    }
    let Some(part) = site.part(at) else { return Vec::new() };
    let datum = site.bar.datum_name();
    let is_drilled = progress.stages[at].pierced;
    let landmark = |hole: HoleMark| {
        let along = in_mm(hole.middle - part.balance.mark_start) / in_mm(part.balance.stock_length).max(1e-9);
        let now = lengths.starts[at] + along * lengths.lengths[at];
        let half_a_step = site.plan.units.marks.step_mm() / 2.0 + AT;
        let what = if is_drilled { "the root hole, its middle" } else { "its punch mark," };
        Landmark {
            at: now,
            words: format!("{what} {} from the {datum}", hole.shop.text()),
            is_mark: true,
            has_moved: (now - hole.shop.mm()).abs() > half_a_step,
            rounded: Some(hole.shop.mm() - in_mm(hole.middle)),
            ..Landmark::felt(now, String::new())
        }
    };
    site.balance.laid_off().holes.into_iter().filter(|hole| hole.segment == at).map(landmark).collect()
}

/// Whether a part lies on a branch that is free toward the datum, and is bent from its other end.
fn hangs_by_its_far_end(site: &Site<'_>, at: usize) -> bool {
    site.branch_free(at) == Some(FreeEnd::Datum)
}

/// The line of a step: where its thicker side begins, or the end of a tenon toward the bar.
fn set_down(site: &Site<'_>, at: usize, start: f64, end: f64) -> Vec<(String, f64)> {
    if let Form::Peak(_) = site.flat[at].segment.form {
        let name = site.name(at);
        return vec![(format!("the start of “{name}”"), start), (format!("the end of “{name}”"), end)];
    }
    let line = format!("the line of the step “{}”", site.name(at));
    let thick_at_start = match site.part(at).and_then(|part| part.balance.shape.as_ref()) {
        Some(Shape::Shoulder { from, to, .. }) => from.area() > to.area(),
        _ => site.beside(at)[0].is_some(),
    };
    vec![(line, if thick_at_start { start } else { end })]
}

fn bends_over(operation: Operation) -> bool {
    matches!(operation, Operation::Bend | Operation::Corner | Operation::Roll)
}

/// What can be seen or felt on the chain of a part.
fn landmarks(site: &Site<'_>, progress: &Progress, lengths: &Lengths, at: usize) -> Vec<Landmark> {
    let (chain, _) = site.place[at];
    let members = &site.chains[chain].1;
    let mut all = Vec::new();
    let there: Vec<usize> = members.iter().copied().filter(|at| !progress.stages[*at].off).collect();
    let (Some(first), Some(last)) = (there.first(), there.last()) else { return all };
    let end = |at: usize| lengths.starts[at] + lengths.lengths[at];
    let on_bar = chain == 0;
    let [datum, far] = if on_bar {
        [format!("the {}", site.bar.datum_name()), "the far end".to_owned()]
    } else {
        branch_ends(site, at).map(str::to_owned)
    };
    // A scarf is forged out farther than what counts of it.
    let farther = |at: usize| scarf_mm(site, progress, at);
    all.push(Landmark { is_end: true, ..Landmark::felt(lengths.starts[*first] - farther(*first), datum) });
    let rounded = cut_over(site, progress, *last);
    let far = Landmark::felt(end(*last) + rounded.unwrap_or(0.0) + farther(*last), far);
    all.push(Landmark { is_end: true, rounded, ..far });
    for pair in there.windows(2) {
        let (before, after) = (pair[0], pair[1]);
        let place = lengths.starts[after];
        if let Some(words) = felt(site, progress, before, after) {
            let is_rough = !around(site, before, after).into_iter().all(|at| progress.is_shaped(site, at));
            all.push(Landmark { is_rough, ..Landmark::felt(place, words) });
        } else if on_bar
            && progress.marked
            && is_untouched(site, progress, before)
            && is_untouched(site, progress, after)
            && is_struck(site, before, after)
        {
            all.push(Landmark::mark(site, before, place));
        }
    }
    all
}

/// By how much a scarf that is forged, and not welded yet, lies farther out than what counts of it, in mm; 0 of other parts.
fn scarf_mm(site: &Site<'_>, progress: &Progress, at: usize) -> f64 {
    let stage = progress.stages[at];
    let part = site.part(at).filter(|_| stage.forged && !stage.welded);
    part.map_or(0.0, |part| farther_mm(site, part))
}

/// By how much the bar is longer at its far end than it should be, in mm: it was cut rounded up; none once that end was worked
/// on.
fn cut_over(site: &Site<'_>, progress: &Progress, last: usize) -> Option<f64> {
    let is_the_end = site.chains[0].1.last() == Some(&last);
    let stage = progress.stages[last];
    let is_as_cut = is_the_end && is_untouched(site, progress, last) && !stage.upset && !stage.trimmed;
    let cut = || match site.bar.length {
        // Cut already: it is as long as it is.
        Some(_) => 0.0,
        None => site.balance.cut_length_shop(site.plan.units.marks).mm() - in_mm(site.balance.stock_length),
    };
    is_as_cut.then(cut)
}

/// The parts on both sides of a place, and beyond a shoulder the one that it steps to.
fn around(site: &Site<'_>, before: usize, after: usize) -> Vec<usize> {
    let is_shoulder = |at: &usize| matches!(site.flat[*at].segment.form, Form::Shoulder(_));
    let beyond = [before, after].into_iter().filter(is_shoulder).flat_map(|at| site.beside(at)).flatten();
    [before, after].into_iter().chain(beyond).collect()
}

/// What the ends of a branch are called, from the datum on.
fn branch_ends(site: &Site<'_>, at: usize) -> [&'static str; 2] {
    let (root, tip) = ("the root of the slit", "the free end of the branch");
    match site.branch_free(at) {
        Some(FreeEnd::Datum) => [tip, root],
        Some(FreeEnd::Far) | None => [root, tip],
        Some(FreeEnd::Neither) => ["the start of the slit", "the end of the slit"],
    }
}

/// What is felt between two parts: a shoulder or a neck.
fn felt(site: &Site<'_>, progress: &Progress, before: usize, after: usize) -> Option<String> {
    let shoulder = |at: usize| {
        let form = &site.flat[at].segment.form;
        (matches!(form, Form::Shoulder(_)) && progress.stages[at].forged)
            || (matches!(form, Form::Tenon(_)) && (progress.stages[at].isolated || progress.stages[at].forged))
    };
    if let Some(at) = [before, after].into_iter().find(|at| shoulder(*at)) {
        return Some(format!("the shoulder “{}”", site.name(at)));
    }
    let is_along = |at: usize| progress.stages[at].along && !progress.stages[at].forged;
    if (is_along(before) && is_untouched(site, progress, after))
        || (is_along(after) && is_untouched(site, progress, before))
    {
        return Some("the step where the bar is full again".to_owned());
    }
    let is_necked = |at: usize, at_end: bool| progress.stages[at].isolated && has_groove(site, at, at_end);
    let ends = [(before, true), (after, false)];
    let (at, at_end) = ends.into_iter().find(|(at, at_end)| is_necked(*at, *at_end))?;
    let place = format!("the {} of “{}”", if at_end { "end" } else { "start" }, site.name(at));
    // Once it is forged, the step to the bar beside it is felt, where there is one.
    let is_forged = progress.stages[at].forged || progress.stages[at].on_the_way().is_some();
    if is_forged && !is_a_step(site, progress, before, after) {
        return None;
    }
    Some(if is_forged { place } else { format!("the neck at {place}") })
}

/// Whether a finger feels where one part ends and the next begins.
fn is_a_step(site: &Site<'_>, progress: &Progress, before: usize, after: usize) -> bool {
    /// A step of so many mm is felt: common practice, no source.
    const FELT: f64 = 0.8;
    let size = |at: usize, at_end: bool| {
        let part = site.part(at).filter(|_| progress.is_shaped(site, at));
        part.map_or_else(|| extents(&site.raw_section(at)), |part| size_at(site, part, at_end))
    };
    let [one, other] = [size(before, true), size(after, false)];
    [0, 1].into_iter().any(|way| (one[way] - other[way]).abs() > FELT)
}

/// Whether a block has a neck at one of its ends.
fn has_groove(site: &Site<'_>, at: usize, at_end: bool) -> bool {
    site.part(at).is_some_and(|part| grooves(site, part).iter().any(|groove| groove.at_end == at_end))
}

/// Whether a part's surface is as it came from the rack, so that a mark on it can still be seen.
fn is_untouched(site: &Site<'_>, progress: &Progress, at: usize) -> bool {
    let stage = progress.stages[at];
    let start = Progress::start_of(site, at);
    stage.forged == start && stage.on_the_way().is_none() && !stage.along && !stage.cut && !stage.bent
}
