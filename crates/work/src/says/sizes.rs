//! The sizes that a step is to reach.

use crate::bar::progress::Progress;
use crate::bar::rough::rough_outline;
use crate::bar::state::shape_now;
use crate::job::neck;
use crate::job::part::written_between_mm;
use crate::job::site::{Part, Site, extents, in_mm};
use crate::job::task::{Task, operations};
use crate::job::upsets::upset_length_mm;
use crate::says::checks::is_scarfed;
use crate::says::dies;
use crate::says::necks;
use crate::says::notches;
use crate::says::plate_holes;
use crate::says::size::{Measure, Size};
use crate::says::sized::{Row, headed, peak, section_rows, sized};
use fh_core::forms;
use fh_core::metal::{Bent, HoleSize, RootSize, Shape, Standing};
use fh_core::plan::{Form, Operation, Plan, SizeName};
use std::f64::consts::FRAC_PI_2;
use uom::si::f64::Length;

/// The sizes that a task is to reach.
///
/// `progress` is how far the bar has come by then: what is still to be cut off or driven out is in the sizes.
pub(crate) fn sizes(site: &Site<'_>, task: &Task, progress: &Progress, now_mm: f64) -> Vec<Size> {
    use Operation as O;
    let plan = site.plan;
    let length = |what: &str, mm: f64| Size::length(plan, what, mm);
    let Some(part) = task.part.and_then(|at| site.part(at)) else {
        return match task.operation {
            O::Mark => {
                let cut = site.balance.cut_length_shop(site.plan.units.marks);
                vec![Size { cold: cut.text(), ..Size::bare(plan, "cut length", cut.mm()) }]
            }
            O::Straighten if is_scarfed(site, progress) => Vec::new(),
            O::Straighten => vec![length_of_the_piece(site, progress, now_mm)],
            _ => Vec::new(),
        };
    };
    let balance = part.balance;
    match task.operation {
        O::Isolate => {
            let between = balance.mark_end_shop.mm() - balance.mark_start_shop.mm();
            let left = necks::left(site, &neck::grooves(site, part));
            let left = left.into_iter().map(|(what, mm)| Size::bare(plan, &what, mm).of(Measure::Neck));
            let was_upset = operations(site, part).contains(&O::Upset);
            let block = if was_upset { upset_length_mm(site, part) } else { between };
            let what = if was_upset { "block, as it is upset" } else { "block, mark to mark" };
            std::iter::once(Size::bare(plan, what, block)).chain(left).collect()
        }
        O::SetDown => set_down(site, part),
        O::Draw | O::Taper | O::Upset | O::Spread | O::Flatten => forged(site, part, progress),
        O::Trim => match &balance.shape {
            Some(Shape::Flag { outline, .. }) => {
                let mut all = vec![
                    length("length", in_mm(outline.length())).of(Measure::Length),
                    length("width", in_mm(outline.width())).of(Measure::Width),
                ];
                all.extend(notches::sizes(site, part));
                all
            }
            _ => Vec::new(),
        },
        O::Split => split(site, part),
        O::BendAside if !site.is_closed_slit(part.at) => {
            vec![Size::words("angle between the branches", fh_core::describe::angle_words(FRAC_PI_2))]
        }
        O::Punch | O::Drift | O::Drill => {
            let mut all = hole(site, part, task.operation);
            all.extend(boss_around(site, part, progress));
            all
        }
        O::Dress => dies::sizes(site, part),
        O::Scarf => named(site, part, &[SizeName::Scarf]),
        _ if task.operation.is_bending() || task.operation == O::Twist => bent(site, part),
        _ => Vec::new(),
    }
}

/// Sizes of the trade that the balance has worked out, by their names.
fn named(site: &Site<'_>, part: Part<'_>, names: &[SizeName]) -> Vec<Size> {
    let wanted = part.balance.derived.iter().filter(|derived| names.contains(&derived.name));
    wanted.filter_map(|derived| Some(inside(site, part, derived.name.words(), derived.length?))).collect()
}

/// A size of a hole or a bend: off by what the plan gives it, or by the rule.
fn inside(site: &Site<'_>, part: Part<'_>, what: &str, size: Length) -> Size {
    let mm = in_mm(size);
    match written_between_mm(part, mm) {
        Some(between) => Size::between(site.plan, what, mm, between),
        None => Size::inside(site.plan, what, mm),
    }
}

fn set_down(site: &Site<'_>, part: Part<'_>) -> Vec<Size> {
    let plan = site.plan;
    let size = |row: Row| Size::length(plan, &row.what, row.mm).of(row.measure);
    let from_rows = |rows: Vec<Row>| rows.into_iter().map(size).collect();
    match &part.balance.shape {
        Some(Shape::Shoulder { from, to, radius, .. }) => {
            let smaller = if to.area() < from.area() { to } else { from };
            let mut all: Vec<Size> = from_rows(section_rows("", smaller));
            all.push(Size::inside(plan, "inside radius", in_mm(*radius)));
            all
        }
        // A tenon, to the gauge that it is drawn out to afterwards.
        Some(shape @ Shape::Prism { .. }) => {
            let sizes = sized(site, part, shape).into_iter();
            sizes.filter(|size| size.measure != Measure::Length).map(|size| Size { follows: None, ..size }).collect()
        }
        _ => part.balance.standing.map_or_else(Vec::new, |left| beside_left(plan, &left)),
    }
}

/// What is left beside a peak that is left, and how far apart the walls are.
fn beside_left(plan: &Plan, left: &Standing) -> Vec<Size> {
    let beside = Size::length(plan, "left beside it", in_mm(left.corner.thickness)).of(Measure::Thickness);
    let top = left.set_downs().and_then(|found| found.top);
    let walls = top.map(|top| Size::bare(plan, "from wall to wall", in_mm(top)).of(Measure::Length));
    std::iter::once(beside).chain(walls).collect()
}

/// How long the piece is while it is straight, measured cold.
fn length_of_the_piece(site: &Site<'_>, progress: &Progress, now_mm: f64) -> Size {
    let is_on = |at: usize| !progress.stages[at].off;
    let rest = site.chains[0].1.iter().filter(|at| is_on(**at) && !site.flat[**at].segment.form.is_finished());
    let what = match rest.map(|at| site.name(*at)).next() {
        Some(rest) => format!("length without “{rest}”, cold"),
        None => "length of the piece, cold".to_owned(),
    };
    Size { hot: None, ..Size::bare(site.plan, &what, now_mm).of(Measure::Length) }
}

fn forged(site: &Site<'_>, part: Part<'_>, progress: &Progress) -> Vec<Size> {
    let plan = site.plan;
    if let Form::Rivet(forms::Rivet { diameter, grip, allowance }) = &part.segment.form {
        return headed(site, part, diameter.length(), grip.length() + allowance.length());
    }
    if !progress.is_shaped(site, part.at) {
        // Before the last blow it has no shape of its own but its length.
        return upset_block(site, part);
    }
    let lengths = progress.lengths(site);
    match shape_now(site, progress, part.at, &lengths) {
        Some(Shape::Peak { section, corner }) => peak(site, part, &section, &corner, lengths[part.at]),
        Some(Shape::Ball { diameter }) => vec![Size::length(plan, "diameter", in_mm(diameter)).of(Measure::Across)],
        Some(Shape::Cube { side }) => vec![Size::length(plan, "side", in_mm(side)).of(Measure::Across)],
        Some(Shape::Flag { outline, root, tip, .. }) => {
            let outline = rough_outline(part, progress.stages[part.at].trimmed).unwrap_or(outline);
            sized(site, part, &Shape::plate(outline, root, tip))
        }
        Some(shape @ (Shape::Prism { .. } | Shape::Taper { .. } | Shape::Hole { .. })) => sized(site, part, &shape),
        _ => vec![Size::bare(plan, "length", lengths[part.at]).of(Measure::Length)],
    }
}

/// A block that is made thicker before it is forged to its shape: as thick as that needs, or as short.
fn upset_block(site: &Site<'_>, part: Part<'_>) -> Vec<Size> {
    let raw = extents(&site.raw_section(part.at));
    let (stock, short) = (in_mm(part.balance.stock_length), upset_length_mm(site, part));
    let swell = (stock / short.max(1e-6)).sqrt();
    let [width, thickness] = raw.map(|side| side * swell);
    let size = |what: &str, mm: f64| Size::bare(site.plan, what, mm);
    let mut all = vec![size("thickness, about", thickness), size("length, about", short).of(Measure::Length)];
    if (width - thickness).abs() > 0.05 * thickness {
        all.insert(0, size("width, about", width));
    }
    all
}

fn split(site: &Site<'_>, part: Part<'_>) -> Vec<Size> {
    let plan = site.plan;
    let Some(Shape::Split(size)) = &part.balance.shape else { return Vec::new() };
    let what = match size.root {
        Some(RootSize::Hole(_)) => "length of the slit, with its hole",
        _ => "length of the slit",
    };
    // Along the bar: in a branch it is stretched with the marks.
    let mut all = vec![Size::inside(plan, what, in_mm(part.balance.stock_length)).of(Measure::Length)];
    let count = size.cuts.len();
    all.extend(size.cuts.iter().enumerate().map(|(index, cut)| {
        let what = if count > 1 { format!("cut {} from the edge", index + 1) } else { "cut from the edge".to_owned() };
        Size::inside(plan, &what, in_mm(*cut))
    }));
    if let Some(RootSize::Radius(radius)) = size.root {
        all.push(Size::inside(plan, "radius at the root", in_mm(radius)));
    }
    all
}

fn hole(site: &Site<'_>, part: Part<'_>, operation: Operation) -> Vec<Size> {
    match &part.balance.shape {
        Some(Shape::Split(size)) => match size.root {
            Some(RootSize::Hole(diameter)) => vec![inside(site, part, "diameter of the hole", diameter)],
            _ => Vec::new(),
        },
        Some(Shape::Flag { .. }) => plate_holes::sizes(site, part, operation),
        Some(Shape::Hole { hole, .. }) => match operation {
            Operation::Punch => named(site, part, &[SizeName::Slit, SizeName::Punch]).into_iter().take(1).collect(),
            _ => match *hole {
                HoleSize::Round { diameter } => vec![inside(site, part, "diameter of the hole", diameter)],
                HoleSize::Square { side } => vec![inside(site, part, "side of the hole", side)],
                HoleSize::Slot { length, width } => {
                    vec![
                        inside(site, part, "length of the hole", length).of(Measure::Length),
                        inside(site, part, "width of the hole", width),
                    ]
                }
            },
        },
        _ => Vec::new(),
    }
}

/// The boss once its hole is made, where it was flattened for it.
fn boss_around(site: &Site<'_>, part: Part<'_>, progress: &Progress) -> Vec<Size> {
    let was_flattened = operations(site, part).contains(&Operation::Flatten);
    match &part.balance.shape {
        Some(shape @ Shape::Hole { .. }) if was_flattened && progress.stages[part.at].pierced => {
            sized(site, part, shape)
        }
        _ => Vec::new(),
    }
}

fn bent(site: &Site<'_>, part: Part<'_>) -> Vec<Size> {
    let plan = site.plan;
    let length = |what: &str, size| inside(site, part, what, size);
    let angle = |radians: f64| Size::words("angle, off straight", fh_core::describe::angle_words(radians));
    if let Form::Collar(forms::Collar { width, height, .. }) = &part.segment.form {
        return vec![length("inside width", width.length()), length("inside height", height.length())];
    }
    match part.balance.bent {
        Some(Bent::Curve { angle: turn, inside_radius, .. }) => {
            vec![angle(turn), length("inside radius", inside_radius)]
        }
        Some(Bent::Ring { inside_diameter, .. }) => vec![length("inside diameter", inside_diameter)],
        Some(Bent::Corner { .. }) => match &part.balance.shape {
            Some(Shape::Peak { corner, .. }) => vec![
                angle(corner.turn),
                length("inside radius", corner.inside_radius),
                Size::words("outside", "sharp".to_owned()),
            ],
            _ => Vec::new(),
        },
        Some(Bent::Scroll { spiral, .. }) => {
            let mut all = vec![Size::words("turns", turns(spiral.turns))];
            let inner = crate::job::site::mm(spiral.inner_mm);
            all.extend([length("radius at the eye, to mid-bar", inner)]);
            all.extend([length("radius where it opens, to mid-bar", crate::job::site::mm(spiral.outer_mm))]);
            all
        }
        Some(Bent::Socket { mandrel, .. }) => vec![length("inside diameter", mandrel)],
        Some(Bent::Twist { angle }) => {
            vec![Size::words("turns", handed_turns(angle / std::f64::consts::TAU))]
        }
        None => match &part.balance.shape {
            Some(Shape::Split(split)) => split.opening.map_or_else(Vec::new, |opening| {
                let mut all = vec![
                    length("across the middles of the branches", opening.radius * 2.0),
                    Size::bare(plan, "length", in_mm(part.balance.forged_length)).of(Measure::Length),
                ];
                if opening.turns != 0.0 {
                    all.insert(0, Size::words("turns", handed_turns(opening.turns)));
                }
                all
            }),
            _ => Vec::new(),
        },
    }
}

/// A count of turns without needless figures.
fn turns(count: f64) -> String {
    let text = format!("{:.2}", count.abs());
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// The turns of a twist with their hand: more than 0 are right-handed.
fn handed_turns(count: f64) -> String {
    format!("{}, {}-handed", turns(count), if count < 0.0 { "left" } else { "right" })
}
