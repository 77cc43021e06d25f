//! Tasks: what has to be done to each part of a plan, and nothing twice.

use crate::lay::{is_filed, met_by_scarf, upset_stages};
use crate::neck;
use crate::site::{Part, Site, extents, in_mm, in_mm2, in_mm3};
use fh_core::forms;
use fh_core::metal::{Bent, RootSize, SectionSize, Shape};
use fh_core::plan::{Bend, Form, JointKind, Made, Member, Operation, Plan, RootSpec, SectionSpec, Segment};

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
}

impl Task {
    pub(crate) fn on(bar: usize, operation: Operation, part: usize) -> Self {
        Self { bar, operation, part: Some(part), joint: None }
    }

    pub(crate) fn whole(bar: usize, operation: Operation) -> Self {
        Self { bar, operation, part: None, joint: None }
    }
}

/// A block that has to become shorter than this share of its length is upset: common practice, no source.
const SHORTER: f64 = 0.95;

/// Whether a block that is spread is upset before: spreading lengthens, and nowhere makes a section larger.
fn is_gathered(site: &Site<'_>, part: Part<'_>) -> bool {
    let shorter = part.balance.forged_length < part.balance.stock_length * SHORTER;
    shorter || widest_mm2(part).is_some_and(|widest| widest > in_mm2(site.raw_section(part.at).area()))
}

/// The largest section of a flag or a boss before it is trimmed or pierced, in mm²; none of other parts.
pub(crate) fn widest_mm2(part: Part<'_>) -> Option<f64> {
    const PLACES: usize = 40;
    match part.balance.shape.as_ref()? {
        shape @ Shape::Flag { .. } => {
            let (finished, trimmed) = (in_mm3(part.balance.finished_volume), in_mm3(part.balance.trimmed_volume));
            let rough = ((finished + trimmed) / finished.max(1e-9)).sqrt();
            let section = |place: usize| in_mm2(shape.area_at((place as f64 + 0.5) / PLACES as f64));
            Some((0..PLACES).map(section).fold(0.0, f64::max) * rough)
        }
        Shape::Hole { outline, thickness, hole, .. } => {
            // The drift pushes its own width of metal aside.
            let is_drifted = matches!(part.segment.form, Form::Hole(forms::Hole { made: Made::Drifted, .. }));
            let opened = if is_drifted { in_mm(hole.width()) } else { 0.0 };
            Some((in_mm(outline.width()) - opened) * in_mm(*thickness))
        }
        _ => None,
    }
}

/// Whether a task is done hot: what is filed or drilled is not.
pub(crate) fn is_hot(site: &Site<'_>, task: &Task) -> bool {
    if let Some(joint) = task.joint {
        return task.operation.is_hot() || is_joined_hot(site, joint);
    }
    let part = task.part.and_then(|at| site.part(at));
    let is_cold = match task.operation {
        Operation::Trim => part.is_some_and(is_filed),
        Operation::Punch => part.is_some_and(|part| is_drilled(site, part)),
        _ => false,
    };
    task.operation.is_hot() && !is_cold
}

/// Whether a hole is so deep for its width that it is drilled, cold: a punch so thin bends and sticks.
pub(crate) fn is_drilled(site: &Site<'_>, part: Part<'_>) -> bool {
    /// Deeper than so many times its width: common practice, no source.
    const DEEP: f64 = 2.5;
    match (&part.balance.shape, &part.segment.form) {
        (Some(Shape::Split(size)), _) => match size.root {
            Some(RootSize::Hole(diameter)) => {
                let raw = site.raw_section(part.at);
                let [width, thickness] = extents(&raw);
                let deep = if size.side.sin().abs() > size.side.cos().abs() { thickness } else { width };
                deep > DEEP * in_mm(diameter)
            }
            _ => false,
        },
        (Some(Shape::Hole { hole, thickness, .. }), Form::Hole(forms::Hole { made: Made::Punched, .. })) => {
            in_mm(*thickness) > DEEP * in_mm(hole.width())
        }
        _ => false,
    }
}

/// Whether a joint is made hot: collars are, and heads of tenons and rivets that are not thin.
fn is_joined_hot(site: &Site<'_>, joint: usize) -> bool {
    /// Heads of what is at least so thick are made hot, in mm: common practice, no source.
    const THICK: f64 = 6.0;
    let Some(joint) = site.plan.joints.get(joint) else { return false };
    let segment = |member: &Member| {
        let bar = site.plan.bars.iter().find(|bar| bar.name == member.bar)?;
        bar.flat().into_iter().map(|flat| flat.segment).find(|segment| segment.name == member.segment)
    };
    let thick = |segment: &Segment| match &segment.form {
        Form::Tenon(forms::Tenon { section: SectionSpec::Round(diameter), .. }) => diameter.mm(),
        Form::Tenon(_) => THICK,
        Form::Rivet(forms::Rivet { diameter, .. }) => diameter.mm(),
        _ => 0.0,
    };
    joint.kind == JointKind::Collar || joint.members().filter_map(segment).any(|segment| thick(segment) >= THICK)
}

/// The fewest heats that a task is done in: an upset that is too long to go in one, one for each stage; a weld, a welding heat
/// and a second one; a scarf with the end that it meets, one for each of the two.
pub(crate) fn least_heats(site: &Site<'_>, task: &Task) -> usize {
    if let Some(joint) = task.joint {
        let is_weld = site.plan.joints.get(joint).is_some_and(|joint| joint.kind == JointKind::Weld);
        return if is_weld { 2 } else { 1 };
    }
    let Some(part) = task.part.and_then(|at| site.part(at)) else { return 1 };
    match task.operation {
        Operation::Upset => upset_stages(site, part),
        Operation::Weld => 2,
        Operation::Scarf if met_by_scarf(site, part).is_some() => 2,
        _ => 1,
    }
}

/// A difference of sizes that no hammer is lifted for, as a share.
const ALIKE: f64 = 0.02;

/// Everything that has to be done to one bar, in the order of its segments.
pub(crate) fn bar_tasks(site: &Site<'_>) -> Vec<Task> {
    let mut tasks = Vec::new();
    for part in site.parts() {
        tasks.extend(operations(site, part).iter().map(|operation| Task::on(site.index, *operation, part.at)));
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
    tasks.push(Task::whole(site.index, Operation::Check));
    tasks
}

fn is_twist(operation: Operation) -> bool {
    operation == Operation::Twist
}

/// What is done at the joints, and to the whole piece at the end.
pub(crate) fn piece_tasks(plan: &Plan) -> Vec<Task> {
    let joint = |(index, joint): (usize, &fh_core::plan::Joint)| {
        let operation = if joint.kind == JointKind::Weld { Operation::Weld } else { Operation::Fit };
        Task { bar: 0, operation, part: None, joint: Some(index) }
    };
    // What cannot be welded gets no step for it: a finding says what to do in its place.
    let can_weld = plan.material().weld.is_some();
    let joints = plan.joints.iter().enumerate().filter(|(_, joint)| can_weld || joint.kind != JointKind::Weld);
    let mut tasks: Vec<Task> = joints.map(joint).collect();
    tasks.sort_by_key(|task| task.operation != Operation::Weld);
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

fn worked_out(site: &Site<'_>, part: Part<'_>) -> Vec<Operation> {
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
    if !part.segment.repeats.is_empty() {
        all.push(Operation::Stamp);
    }
    if let Form::Collar(_) = part.segment.form {
        // Whatever its bend says, it is wrapped round its bundle.
        all.push(Operation::Bend);
    } else if let (Some(bend), Some(bent)) = (&part.segment.bend, part.balance.bent) {
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

/// What the hammer does to a segment while the bar is straight.
pub(crate) fn forging(site: &Site<'_>, part: Part<'_>, shape: &Shape) -> Vec<Operation> {
    use Operation as O;
    let raw = site.raw_section(part.at);
    match (&part.segment.form, shape) {
        (Form::Drawn(_) | Form::Collar(_), Shape::Prism { section, .. }) => draw(&raw, section),
        (Form::Taper(_), Shape::Taper { from, to, .. }) => {
            let mean = in_mm3(shape.volume()) / in_mm(shape.length()).max(1e-9);
            match () {
                () if alike(&raw, from) && alike(&raw, to) => Vec::new(),
                () if mean > in_mm2(raw.area()) * (1.0 + ALIKE) => vec![O::Upset],
                () => vec![O::Taper],
            }
        }
        (Form::Shoulder(_), _) => vec![O::SetDown],
        (Form::Flag(forms::Flag { trim, .. }), _) => {
            let trim = trim.is_some().then_some(O::Trim);
            // Spreading lengthens: what has to become shorter is upset first.
            let upset = is_gathered(site, part).then_some(O::Upset);
            upset.into_iter().chain([O::Isolate, O::Spread]).chain(trim).collect()
        }
        (Form::Peak(_), Shape::Peak { .. }) => {
            let mean = in_mm3(shape.volume()) / in_mm(shape.length()).max(1e-9);
            if mean > in_mm2(raw.area()) * (1.0 + ALIKE) { vec![O::Upset] } else { vec![O::Isolate, O::Draw] }
        }
        (Form::Hole(forms::Hole { made, .. }), Shape::Hole { outline, thickness, .. }) => {
            let [width, thick] = extents(&raw);
            let as_stock =
                (in_mm(outline.width()) / width - 1.0).abs() < ALIKE && (in_mm(*thickness) / thick - 1.0).abs() < ALIKE;
            let mut all = if as_stock { Vec::new() } else { vec![O::Isolate, O::Flatten] };
            if is_gathered(site, part) && !as_stock {
                all.insert(0, O::Upset);
            }
            match made {
                Made::Punched => all.push(O::Punch),
                Made::Drifted => all.extend([O::Punch, O::Drift]),
                Made::Drilled => all.push(O::Drill),
            }
            all
        }
        (Form::Tenon(_), _) => vec![O::SetDown, O::Draw],
        (Form::Rivet(_), _) => vec![O::Upset],
        (Form::Weld(_), _) if site.plan.material().weld.is_none() => Vec::new(),
        (Form::Weld(_), _) => vec![O::Scarf],
        (Form::Split(forms::Split { root, .. }), Shape::Split(_)) => split(site, part, root.as_ref()),
        (Form::Ball(_) | Form::Cube(_), Shape::Ball { diameter: size } | Shape::Cube { side: size }) => {
            let is_thicker = in_mm(*size) > neck::least(extents(&raw)) * (1.0 + ALIKE);
            is_thicker.then_some(O::Upset).into_iter().chain([O::Isolate, O::Draw]).collect()
        }
        (Form::Trim(_), _) => vec![O::Trim],
        (Form::Hold(_), _) => vec![O::PartOff],
        _ => Vec::new(),
    }
}

/// How one section becomes another along an even length.
fn draw(raw: &SectionSize, section: &SectionSize) -> Vec<Operation> {
    let ([from_width, from_thick], [width, thick]) = (extents(raw), extents(section));
    match () {
        () if alike(raw, section) => Vec::new(),
        () if in_mm2(section.area()) > in_mm2(raw.area()) * (1.0 + ALIKE) => vec![Operation::Upset],
        // A flat that is drawn on edge grows thicker, but nowhere wider than the bar is: that is drawn, not spread.
        () if width.max(thick) > from_width.max(from_thick) * (1.0 + ALIKE) => vec![Operation::Spread],
        () => vec![Operation::Draw],
    }
}

fn split(site: &Site<'_>, part: Part<'_>, root: Option<&RootSpec>) -> Vec<Operation> {
    let mut all = Vec::new();
    if let Some(RootSpec::Hole(_)) = root {
        all.push(Operation::Punch);
    }
    all.push(Operation::Split);
    let Some(Shape::Split(size)) = &part.balance.shape else { return all };
    let below = part.at + 1..part.at + part.segment.count();
    let is_forged = below.filter_map(|at| site.part(at)).any(|below| {
        let shape = below.balance.shape.as_ref();
        let is_struck = |operation: &Operation| {
            operation.is_shaping() || matches!(operation, Operation::Isolate | Operation::SetDown)
        };
        shape.is_some_and(|shape| forging(site, below, shape).iter().any(is_struck))
    });
    if is_forged {
        all.extend([Operation::BendAside, Operation::Straighten]);
    }
    if size.opening.is_some() {
        all.push(Operation::Open);
    }
    all
}

/// Whether two sections are alike enough that nothing is forged.
fn alike(first: &SectionSize, second: &SectionSize) -> bool {
    let ([width, thick], [other_width, other_thick]) = (extents(first), extents(second));
    let same = |one: f64, other: f64| (one - other).abs() <= ALIKE * one.max(other);
    let areas = (in_mm2(first.area()), in_mm2(second.area()));
    same(width, other_width) && same(thick, other_thick) && same(areas.0, areas.1)
}
