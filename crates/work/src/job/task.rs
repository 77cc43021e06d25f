//! Tasks: what has to be done to each part of a plan, and nothing twice.

use crate::job::ends::is_free_end;
use crate::job::forging::forging;
use crate::job::hung::{closed_there, segment};
use crate::job::leaving::stays_off;
use crate::job::loose::loose_first;
use crate::job::neck;
use crate::job::part::{is_drilled, is_filed, is_filed_to_its_neck, is_sawn, met as met_by_scarf};
use crate::job::site::{Begun, Part, Site, extents, in_mm, in_mm2, least};
use crate::job::staged::Staged;
use crate::job::upsets::stages as upset_stages;
use fh_core::forms;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::{Bend, Form, JointKind, Member, Operation, Plan, SectionSpec, Segment};

/// One thing to be done to one part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Task {
    /// The bar, counted from 0.
    pub bar: usize,
    /// What is done.
    pub operation: Operation,
    /// The segment, counted through the bar; none where the whole bar or the whole piece is meant.
    pub part: Option<usize>,
    /// The joint it is done at, counted from 0.
    pub joint: Option<usize>,
    /// The shape on the way that it makes of its part, counted from 0; none where that is the finished one.
    pub to: Option<usize>,
}

impl Task {
    pub(crate) fn on(bar: usize, operation: Operation, part: usize) -> Self {
        Self { bar, operation, part: Some(part), joint: None, to: None }
    }

    pub(crate) fn whole(bar: usize, operation: Operation) -> Self {
        Self { bar, operation, part: None, joint: None, to: None }
    }
}

/// Whether a task is done hot: what is filed, sawn or drilled is not.
pub(crate) fn is_hot(site: &Site<'_>, task: &Task) -> bool {
    if let Some(joint) = task.joint {
        return task.operation.is_hot() || is_joined_hot(site, joint);
    }
    let part = task.part.and_then(|at| site.part(at));
    let is_cold = match task.operation {
        Operation::Trim => part.is_some_and(|part| is_filed(part) || is_sawn(site, part)),
        Operation::Punch => part.is_some_and(|part| is_drilled(site, part)),
        _ => false,
    };
    task.operation.is_hot() && !is_cold
}

/// Whether a joint is made hot: collars are, and rings that are closed there, and heads of tenons and rivets that are not thin.
fn is_joined_hot(site: &Site<'_>, joint: usize) -> bool {
    /// Heads of what is at least so thick are made hot, in mm: common practice, no source.
    const THICK: f64 = 6.0;
    let Some(joint) = site.plan.joints.get(joint) else { return false };
    let segment = |member: &Member| segment(site.plan, member);
    let thick = |segment: &Segment| match &segment.form {
        Form::Tenon(forms::Tenon { section: SectionSpec::Round(diameter), .. }) => diameter.mm(),
        Form::Tenon(_) => THICK,
        Form::Rivet(forms::Rivet { diameter, .. }) => diameter.mm(),
        _ => 0.0,
    };
    joint.kind == JointKind::Collar
        || closed_there(site.plan, joint).is_some()
        || joint.members().filter_map(segment).any(|segment| thick(segment) >= THICK)
}

/// The fewest heats that a task is done in: an upset that is too long to go in one, one for each stage; in mid-bar, where the bar
/// bends and is trued, two; a peak, one more to forge it; a sharp corner, one to bend it and one to square it; a weld, a welding heat and a second one; a scarf with the end that it meets, one for each of the two.
pub(crate) fn least_heats(site: &Site<'_>, task: &Task) -> usize {
    if let Some(joint) = task.joint {
        let is_weld = site.plan.joints.get(joint).is_some_and(|joint| joint.kind == JointKind::Weld);
        return if is_weld { 2 } else { 1 };
    }
    let Some(part) = task.part.and_then(|at| site.part(at)) else { return 1 };
    match task.operation {
        Operation::Upset => (upset_stages(site, part) + peak_heats(site, part)).max(least_to_upset(site, part)),
        // Bent round, and squared from outside, in two goes where its metal is driven up then: common practice, no source.
        Operation::Corner => 2 + usize::from(part.segment.form.is_driven_up()),
        Operation::Weld => 2,
        Operation::Scarf if met_by_scarf(site, part).is_some() => 2,
        _ => 1,
    }
}

/// The fewest heats of an upset: a gather in mid-bar, with bar on both sides of it, takes two; common practice, no source.
fn least_to_upset(site: &Site<'_>, part: Part<'_>) -> usize {
    if matches!(part.segment.form, Form::Rivet(_)) || is_free_end(site, part.at) { 1 } else { 2 }
}

/// How many heats more a peak takes than it is upset in: one to forge it on its sides, and one more where so short a length is hot
/// that it is cold at once.
fn peak_heats(site: &Site<'_>, part: Part<'_>) -> usize {
    /// What is hot over fewer times its thickness loses its heat to both sides at once: common practice, no source.
    const SHORT: f64 = 2.0;
    let Form::Peak(_) = part.segment.form else { return 0 };
    let thick = least(extents(&site.raw_section(part.at)));
    1 + usize::from(in_mm(part.balance.stock_length) < SHORT * thick)
}

/// Everything that has to be done to one bar, in the order of its segments.
pub(crate) fn bar_tasks(site: &Site<'_>) -> Vec<Task> {
    let mut tasks = Vec::new();
    for part in site.parts() {
        let of = |to, operation: &Operation| Task { to, ..Task::on(site.index, *operation, part.at) };
        tasks.extend(isolated_first(site, part).map(|operation| of(None, &operation)));
        for (to, operations) in on_the_way(site, part).iter().enumerate() {
            tasks.extend(operations.iter().map(|operation| of(Some(to), operation)));
        }
        tasks.extend(operations(site, part).iter().map(|operation| of(None, operation)));
    }
    if tasks.is_empty() {
        return tasks;
    }
    let count = |wanted: fn(Operation) -> bool| tasks.iter().filter(|task| wanted(task.operation)).count();
    let (shaped, bent) = (count(Operation::is_shaping), count(Operation::is_bending) + count(is_twist));
    let straighten = shaped > 0 && (bent > 0 || shaped > 1);
    tasks.insert(0, Task::whole(site.index, Operation::Mark));
    if straighten {
        tasks.push(Task::whole(site.index, Operation::Straighten));
    }
    if is_normalised(site, &tasks) {
        tasks.push(Task::whole(site.index, Operation::Normalise));
    }
    tasks.push(Task::whole(site.index, Operation::Check));
    tasks
}

/// Whether a bar is normalised after its last heat: of a steel that hardens what was in the fire. What is welded to another bar is
/// normalised after that weld, with the whole piece.
fn is_normalised(site: &Site<'_>, tasks: &[Task]) -> bool {
    let of_bar = |joint: &&fh_core::plan::Joint| joint.members().any(|member| member.bar == site.bar.name);
    let mut welds = site.plan.joints.iter().filter(|joint| joint.kind == JointKind::Weld).filter(of_bar);
    let hardens = site.plan.material().normalise.is_some();
    hardens && welds.next().is_none() && tasks.iter().any(|task| is_hot(site, task))
}

fn is_twist(operation: Operation) -> bool {
    operation == Operation::Twist
}

/// What is done at the joints, and to the whole piece at the end.
pub(crate) fn piece_tasks(plan: &Plan) -> Vec<Task> {
    let joint = |(index, joint): (usize, &fh_core::plan::Joint)| {
        let operation = if joint.kind == JointKind::Weld { Operation::Weld } else { Operation::Fit };
        Task { joint: Some(index), ..Task::whole(0, operation) }
    };
    // What cannot be welded gets no step for it: a finding says what to do in its place.
    let can_weld = plan.material().weld.is_some();
    let joints = plan.joints.iter().enumerate().filter(|(_, joint)| can_weld || joint.kind != JointKind::Weld);
    let mut tasks: Vec<Task> = joints.map(joint).collect();
    let loose: Vec<usize> = loose_first(plan).into_iter().map(|(first, _)| first).collect();
    let is_loose = |task: &Task| task.joint.is_some_and(|joint| loose.contains(&joint));
    tasks.sort_by_key(|task| (task.operation != Operation::Weld, !is_loose(task)));
    tasks.push(Task::whole(0, Operation::Brush));
    tasks.push(Task::whole(0, Operation::Wax));
    tasks
}

/// What has to be done to a segment, in the order in which it has to be done.
///
/// Every step of an order asks this of every part: it is worked out once for each.
pub(crate) fn operations<'s>(site: &'s Site<'_>, part: Part<'_>) -> &'s [Operation] {
    site.operations.get(part.at).map_or(&[], |known| known.get_or_init(|| worked_out(site, part)))
}

/// A block that is isolated for its finished shape is isolated before the first one on the way.
fn isolated_first(site: &Site<'_>, part: Part<'_>) -> Option<Operation> {
    let has_via = !part.segment.via.is_empty();
    let asked = || from_the_bar(site, part).into_iter().chain(made_of(site, part.at, Some(0)));
    has_via.then(asked).into_iter().flatten().find(|operation| *operation == Operation::Isolate)
}

/// What has to be done for each shape that a segment has on the way.
pub(crate) fn on_the_way<'s>(site: &'s Site<'_>, part: Part<'_>) -> &'s [Vec<Operation>] {
    let of = |to: usize| {
        let mut all = made_of(site, part.at, Some(to));
        all.retain(|operation| *operation != Operation::Isolate);
        all
    };
    let all = || (0..part.segment.via.len()).map(of).collect();
    site.on_the_way.get(part.at).map_or(&[], |known| known.get_or_init(all))
}

/// What has to be done for a shape on the way, or for the finished one where there are some.
fn made_of(site: &Site<'_>, at: usize, to: Option<usize>) -> Vec<Operation> {
    let staged = Staged::new(site, vec![(at, to)]);
    let seen = staged.site(site);
    seen.part(at).map_or_else(Vec::new, |part| made(&seen, part))
}

/// What some tasks see of their bar: the shape that they make, and the one before it; none where no part of them has shapes on the
/// way.
pub(crate) fn staged(site: &Site<'_>, tasks: &[Task]) -> Option<Staged> {
    let mut of: Vec<(usize, Option<usize>)> = Vec::new();
    for task in tasks {
        // It is isolated as the bar is, for the shape that it will have.
        let is_seen = |at: &usize| site.begun(*at).is_none() && site.passes_through(*at);
        let Some(at) = task.part.filter(is_seen).filter(|_| task.operation != Operation::Isolate) else { continue };
        match of.iter_mut().find(|(part, _)| *part == at) {
            // Of several the last is what it becomes in the step.
            Some((_, to)) => *to = to.zip(task.to).map(|(one, other)| one.max(other)),
            None => of.push((at, task.to)),
        }
    }
    (!of.is_empty()).then(|| Staged::new(site, of))
}

/// Asks something of a bar as some tasks see it.
pub(crate) fn as_seen_by<T>(site: &Site<'_>, tasks: &[Task], ask: impl FnOnce(&Site<'_>) -> T) -> T {
    match staged(site, tasks) {
        Some(staged) => ask(&staged.site(site)),
        None => ask(site),
    }
}

fn worked_out(site: &Site<'_>, part: Part<'_>) -> Vec<Operation> {
    if site.begun(part.at).is_none() && site.passes_through(part.at) {
        return made_of(site, part.at, None);
    }
    made(site, part)
}

fn made(site: &Site<'_>, part: Part<'_>) -> Vec<Operation> {
    let all = from_the_bar(site, part);
    match site.begun(part.at) {
        Some(begun) if !begun.is_first => from_another(begun, all),
        _ => all,
    }
}

/// What is left to do of a shape that is made from another one on the way.
fn from_another(begun: &Begun, mut all: Vec<Operation>) -> Vec<Operation> {
    let bends = |operation: Operation| operation.is_bending() || operation == Operation::Twist;
    // The block was isolated for the first of its shapes.
    all.retain(|operation| *operation != Operation::Isolate);
    if begun.keeps_form {
        all.retain(|it| {
            bends(*it) || matches!(it, Operation::Brush | Operation::Dress | Operation::Stamp | Operation::Weld)
        });
        if begun.was_bent && begun.keeps_bend {
            all.retain(|operation| !bends(*operation));
        }
    }
    let is_straightened = !begun.keeps_form || !all.iter().any(|operation| bends(*operation));
    if begun.was_bent && !begun.keeps_bend && is_straightened {
        all.insert(0, Operation::Straighten);
    }
    all
}

fn from_the_bar(site: &Site<'_>, part: Part<'_>) -> Vec<Operation> {
    let Some(shape) = &part.balance.shape else { return Vec::new() };
    let mut all = forging(site, part, shape);
    if all.first().is_some_and(|first| first.is_shaping() && *first != Operation::Upset)
        && is_stepped(site, part, shape)
    {
        all.insert(0, Operation::Isolate);
    }
    if neck::grooves(site, part).is_empty() {
        all.retain(|operation| *operation != Operation::Isolate);
    }
    if stays_off(site, part.at) {
        all.retain(|operation| *operation != Operation::Straighten);
    }
    if !part.balance.dressed.is_empty() {
        all.push(Operation::Dress);
    }
    if !part.segment.repeats.is_empty() {
        all.push(Operation::Stamp);
    }
    if let Form::Collar(_) = part.segment.form {
        // Whatever its bend says, it is wrapped round its bundle.
        all.push(Operation::Bend);
    } else if let (Some(bend), Some(bent)) = (&part.segment.bend, part.balance.bent) {
        // A file reaches the end of a ring while it is straight, and the bar is cold then anyway.
        if is_filed_to_its_neck(site, part) {
            all.push(Operation::Trim);
        }
        if is_closed_in(bent) {
            all.push(Operation::Brush);
        }
        all.push(match bend {
            Bend::Curve { .. } | Bend::Ring { .. } | Bend::Scroll { .. } => Operation::Bend,
            Bend::Corner { .. } => Operation::Corner,
            Bend::Socket { .. } => Operation::Roll,
            Bend::Twist { .. } => Operation::Twist,
        });
    }
    if let Form::Weld(_) = part.segment.form
        && site.plan.material().weld.is_some()
    {
        let joined = site.plan.joints.iter().filter(|joint| joint.kind == JointKind::Weld);
        let is_joined =
            |member: &fh_core::plan::Member| member.bar == site.bar.name && member.segment == part.segment.name;
        if !joined.flat_map(fh_core::plan::Joint::members).any(is_joined) {
            all.push(Operation::Weld);
        }
    }
    all
}

/// Whether a part is thinned right beside bar that stays as it is, with no shoulder between them: only a neck at the mark
/// keeps the one from the other.
fn is_stepped(site: &Site<'_>, part: Part<'_>, shape: &Shape) -> bool {
    // Common practice, no source: less than this is evened out by the hammer.
    const STEP: f64 = 0.8;
    let raw = in_mm2(site.raw_section(part.at).area());
    site.beside(part.at).into_iter().enumerate().any(|(side, beside)| {
        let as_stock = beside.and_then(|at| site.part(at)).is_some_and(|beside| beside.segment.form.is_as_stock());
        let near = if (side == 1) == part.balance.reversed { 0.0 } else { 1.0 };
        let area = in_mm2(shape.area_at(near));
        as_stock && area < STEP * raw && area > 1e-3 * raw
    })
}

/// Whether a bend closes metal in that no brush reaches afterwards.
fn is_closed_in(bent: Bent) -> bool {
    match bent {
        Bent::Socket { .. } => true,
        Bent::Scroll { spiral, .. } => spiral.turns > 1.0,
        _ => false,
    }
}
