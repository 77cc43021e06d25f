//! The sizes that a step is to reach, cold and as they measure hot.

use crate::heat_rules::tolerance_mm;
use crate::neck;
use crate::progress::Progress;
use crate::site::{Part, Site, extents, in_mm, in_mm2, in_mm3};
use crate::state::shape_now;
use crate::task::{Task, operations, widest_mm2};
use crate::words::{hot_words, length_words};
use fh_core::metal::{Bent, HoleSize, Outline, RootSize, SectionSize, Shape};
use fh_core::plan::{Form, Gives, Operation, Plan, Target};

/// One size to reach.
#[derive(Clone, Debug, PartialEq)]
pub struct Size {
    /// What is measured: `thickness`, `angle`.
    pub what: String,
    /// The cold size in words.
    pub cold: String,
    /// The size as it stands on the hot bar; none of an angle, or of a metal whose growth is not known here.
    pub hot: Option<String>,
    /// How far it may be off in words; none where nothing is said.
    pub tolerance: Option<String>,
    /// The cold size in mm; none of an angle or a count.
    pub mm: Option<f64>,
    /// How far it may be off, in mm.
    pub tolerance_mm: f64,
}

impl Size {
    pub(crate) fn length(plan: &Plan, what: &str, mm: f64) -> Self {
        Self::with_tolerance(plan, what, mm, tolerance_mm(plan))
    }

    fn with_tolerance(plan: &Plan, what: &str, mm: f64, tolerance_mm: f64) -> Self {
        Self {
            what: what.to_owned(),
            cold: length_words(plan, mm),
            hot: hot_words(plan, mm),
            tolerance: (tolerance_mm > 0.0).then(|| format!("± {}", length_words(plan, tolerance_mm))),
            mm: Some(mm),
            tolerance_mm,
        }
    }

    fn words(what: &str, words: String) -> Self {
        Self { what: what.to_owned(), cold: words, hot: None, tolerance: None, mm: None, tolerance_mm: 0.0 }
    }

    /// It as it is measured: what is done cold is measured cold.
    pub(crate) fn when(self, hot: bool) -> Self {
        Self { hot: self.hot.filter(|_| hot), ..self }
    }

    /// A size that the smith wrote.
    pub(crate) fn written(plan: &Plan, target: &Target) -> Self {
        let tolerance = target.tolerance.as_ref().map_or_else(|| tolerance_mm(plan), fh_measure::WrittenLength::mm);
        let size = Self::with_tolerance(plan, &target.what, target.size.mm(), tolerance);
        Self { cold: target.size.text().to_owned(), ..size }
    }
}

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
                let cut = site.plan.units.marks.round(in_mm(site.balance.stock_length));
                vec![Size { cold: cut.text(), tolerance: None, ..length("cut length", cut.mm()) }]
            }
            O::Straighten => vec![length_of_the_piece(site, progress, now_mm)],
            _ => Vec::new(),
        };
    };
    let balance = part.balance;
    match task.operation {
        O::Isolate => {
            let between = balance.mark_end_shop.mm() - balance.mark_start_shop.mm();
            let left = neck::left(site, &neck::grooves(site, part));
            let left = left.into_iter().map(|(what, mm)| Size::with_tolerance(plan, what, mm, 0.0));
            let was_upset = operations(site, part).contains(&O::Upset);
            let block = if was_upset { upset_length_mm(site, part) } else { between };
            let what = if was_upset { "block, as it is upset" } else { "block, mark to mark" };
            std::iter::once(Size::with_tolerance(plan, what, block, 0.0)).chain(left).collect()
        }
        O::SetDown => set_down(site, part),
        O::Draw | O::Taper | O::Upset | O::Spread | O::Flatten => forged(site, part, progress),
        O::Trim => match &balance.shape {
            Some(Shape::Flag { outline, .. }) => {
                vec![length("length", in_mm(outline.length())), length("width", in_mm(outline.width()))]
            }
            _ => Vec::new(),
        },
        O::Split => split(site, part),
        O::Punch | O::Drift | O::Drill => {
            let mut all = hole(site, part, task.operation);
            all.extend(boss_around(site, part, progress));
            all
        }
        O::Scarf => named(site, part, &["scarf"]),
        _ if task.operation.is_bending() || task.operation == O::Twist => bent(site, part),
        _ => Vec::new(),
    }
}

/// Sizes of the trade that the balance has worked out, by their names.
fn named(site: &Site<'_>, part: Part<'_>, names: &[&str]) -> Vec<Size> {
    let wanted = part.balance.derived.iter().filter(|derived| names.contains(&derived.name));
    wanted.filter_map(|derived| Some(Size::length(site.plan, derived.name, in_mm(derived.length?)))).collect()
}

fn section(plan: &Plan, place: &str, section: &SectionSize) -> Vec<Size> {
    let at = |what: &str| if place.is_empty() { what.to_owned() } else { format!("{what} {place}") };
    let length = |what: &str, size| Size::length(plan, &at(what), in_mm(size));
    match *section {
        SectionSize::Point => Vec::new(),
        SectionSize::Square { side, .. } => vec![length("square", side)],
        SectionSize::Round { diameter } => vec![length("diameter", diameter)],
        SectionSize::Flat { width, thickness, .. } | SectionSize::Oval { width, thickness } => {
            vec![length("width", width), length("thickness", thickness)]
        }
        SectionSize::Hexagon { across_flats } | SectionSize::Octagon { across_flats } => {
            vec![length("across flats", across_flats)]
        }
        SectionSize::Diamond { side } => vec![length("square on its corner", side)],
        SectionSize::HalfRound { width, height } => vec![length("width", width), length("height", height)],
        SectionSize::Edge { width } => vec![length("width of the edge", width)],
    }
}

fn set_down(site: &Site<'_>, part: Part<'_>) -> Vec<Size> {
    let plan = site.plan;
    match &part.balance.shape {
        Some(Shape::Shoulder { from, to, radius, .. }) => {
            let smaller = if to.area() < from.area() { to } else { from };
            let mut all = section(plan, "", smaller);
            all.push(Size::length(plan, "inside radius", in_mm(*radius)));
            all
        }
        Some(Shape::Prism { section: own, .. }) => section(plan, "", own),
        _ => Vec::new(),
    }
}

/// How long the piece is while it is straight: measured cold, and off by what its parts are off, in squares.
fn length_of_the_piece(site: &Site<'_>, progress: &Progress, now_mm: f64) -> Size {
    let is_on = |at: usize| !progress.stages[at].off;
    let forged = site.chains[0].1.iter().filter(|at| !Progress::start_of(site, **at)).count().max(1);
    let tolerance = tolerance_mm(site.plan) * (forged as f64).sqrt();
    let rest = site.chains[0].1.iter().filter(|at| is_on(**at) && !site.flat[**at].segment.form.is_finished());
    let what = match rest.map(|at| site.name(*at)).next() {
        Some(rest) => format!("length without “{rest}”, cold"),
        None => "length of the piece, cold".to_owned(),
    };
    Size { hot: None, ..Size::with_tolerance(site.plan, &what, now_mm, tolerance) }
}

fn forged(site: &Site<'_>, part: Part<'_>, progress: &Progress) -> Vec<Size> {
    let plan = site.plan;
    let length = |what: &str, mm: f64| Size::length(plan, what, mm);
    if let Form::Rivet { diameter, grip, allowance } = &part.segment.form {
        // One head is made; the other stands out yet.
        let shank = grip.mm() + allowance.mm();
        return vec![length("diameter", diameter.mm()), length("shank under the head", shank)];
    }
    let lengths = progress.lengths(site);
    let is_forged = progress.is_shaped(site, part.at);
    let now_mm = if is_forged { lengths[part.at] } else { in_mm(part.balance.forged_length) };
    let long = length("length", now_mm);
    // Before the last blow it has no shape of its own but its length.
    let shape = is_forged.then(|| shape_now(site, progress, part.at, &lengths)).flatten();
    match &shape {
        Some(Shape::Prism { section: own, .. }) => section(plan, "", own).into_iter().chain([long]).collect(),
        Some(Shape::Peak { section: own, corner }) => {
            let peak = in_mm(corner.peak_volume() / corner.width / corner.length()) * 2.0;
            let over = in_mm(corner.thickness) + peak;
            let beside = section(plan, "of the bar beside it", own);
            beside.into_iter().chain([length("thickness over the swelling", over), long]).collect()
        }
        Some(Shape::Taper { from, to, .. }) => {
            let (from, to) = if part.balance.reversed { (to, from) } else { (from, to) };
            let mut all = section(plan, "at its start", from);
            all.extend(section(plan, "at its end", to));
            all.push(long);
            all
        }
        Some(Shape::Flag { outline, root, tip }) => {
            let (rough, outline) = untrimmed(part, progress).map_or((1.0, outline.clone()), |it| it);
            let long = length("length", now_mm * rough);
            let (root, tip) = (in_mm(*root), in_mm(*tip));
            let mut all = if (root - tip).abs() < 1e-9 {
                vec![length("thickness", root)]
            } else {
                vec![length("thickness at the root", root), length("thickness at the tip", tip)]
            };
            all.extend([length("width", in_mm(outline.width())), long]);
            all
        }
        Some(Shape::Hole { outline, thickness, .. }) => {
            vec![length("thickness", in_mm(*thickness)), length("width", in_mm(outline.width())), long]
        }
        None if !is_forged => upset_block(site, part),
        Some(Shape::Ball { diameter }) => vec![length("diameter", in_mm(*diameter))],
        Some(Shape::Cube { side }) => vec![length("side", in_mm(*side))],
        _ => vec![long],
    }
}

/// By how much a flag is longer and wider before it is trimmed, the same all round as on its template, and its outline then;
/// none where nothing is to be trimmed.
fn untrimmed(part: Part<'_>, progress: &Progress) -> Option<(f64, Outline)> {
    let Some(Shape::Flag { outline, .. }) = &part.balance.shape else { return None };
    let (finished, trimmed) = (in_mm3(part.balance.finished_volume), in_mm3(part.balance.trimmed_volume));
    let is_rough = trimmed > 0.0 && !progress.stages[part.at].trimmed;
    let factor = ((finished + trimmed) / finished.max(1e-9)).sqrt();
    let wide = outline.scaled(Gives::Width, factor);
    is_rough.then(|| (factor, wide.unwrap_or_else(|| outline.clone())))
}

/// A block that is made thicker before it is forged to its shape: as thick as that needs, or as short.
fn upset_block(site: &Site<'_>, part: Part<'_>) -> Vec<Size> {
    let raw = extents(&site.raw_section(part.at));
    let (stock, short) = (in_mm(part.balance.stock_length), upset_length_mm(site, part));
    let swell = (stock / short.max(1e-6)).sqrt();
    let [width, thickness] = raw.map(|side| side * swell);
    let size = |what: &str, mm: f64| Size::length(site.plan, what, mm);
    let mut all = vec![size("thickness, about", thickness), size("length, about", short)];
    if (width - thickness).abs() > 0.05 * thickness {
        all.insert(0, size("width, about", width));
    }
    all
}

/// How long a block is once it is upset, in mm: as short as it will be, or as a ball or a cube needs it thick.
pub(crate) fn upset_length_mm(site: &Site<'_>, part: Part<'_>) -> f64 {
    let raw = extents(&site.raw_section(part.at));
    match &part.balance.shape {
        Some(Shape::Ball { diameter: size } | Shape::Cube { side: size }) => {
            in_mm(part.balance.stock_length) * (neck::least(raw) / in_mm(*size)).powi(2)
        }
        _ => {
            // A little in hand over the largest section that is spread from it.
            let whole = in_mm2(site.raw_section(part.at).area()) * in_mm(part.balance.stock_length);
            let needed = widest_mm2(part).map_or(f64::INFINITY, |widest| whole / (1.05 * widest.max(1e-6)));
            needed.min(in_mm(part.balance.forged_length))
        }
    }
}

fn split(site: &Site<'_>, part: Part<'_>) -> Vec<Size> {
    let plan = site.plan;
    let Some(Shape::Split(size)) = &part.balance.shape else { return Vec::new() };
    let mut all = vec![Size::length(plan, "length of the slit", in_mm(size.slit))];
    let count = size.cuts.len();
    all.extend(size.cuts.iter().enumerate().map(|(index, cut)| {
        let what = if count > 1 { format!("cut {} from the edge", index + 1) } else { "cut from the edge".to_owned() };
        Size::length(plan, &what, in_mm(*cut))
    }));
    if let Some(RootSize::Radius(radius)) = size.root {
        all.push(Size::length(plan, "radius at the root", in_mm(radius)));
    }
    all
}

fn hole(site: &Site<'_>, part: Part<'_>, operation: Operation) -> Vec<Size> {
    let plan = site.plan;
    match &part.balance.shape {
        Some(Shape::Split(size)) => match size.root {
            Some(RootSize::Hole(diameter)) => vec![Size::length(plan, "diameter of the hole", in_mm(diameter))],
            _ => Vec::new(),
        },
        Some(Shape::Hole { hole, .. }) => match operation {
            Operation::Punch => named(site, part, &["slit", "punch"]).into_iter().take(1).collect(),
            _ => match *hole {
                HoleSize::Round { diameter } => vec![Size::length(plan, "diameter of the hole", in_mm(diameter))],
                HoleSize::Square { side } => vec![Size::length(plan, "side of the hole", in_mm(side))],
                HoleSize::Slot { length, width } => {
                    vec![
                        Size::length(plan, "length of the hole", in_mm(length)),
                        Size::length(plan, "width of the hole", in_mm(width)),
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
        Some(Shape::Hole { outline, thickness, .. }) if was_flattened && progress.stages[part.at].pierced => {
            let size = |what: &str, length| Size::length(site.plan, what, in_mm(length));
            vec![size("thickness", *thickness), size("width", outline.width()), size("length", outline.length())]
        }
        _ => Vec::new(),
    }
}

fn bent(site: &Site<'_>, part: Part<'_>) -> Vec<Size> {
    let plan = site.plan;
    let length = |what: &str, size| Size::length(plan, what, in_mm(size));
    let angle = |radians: f64| Size::words("angle, off straight", format!("{:.0}°", radians.to_degrees()));
    if let Form::Collar { width, height, .. } = &part.segment.form {
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
            let inner = crate::site::mm(spiral.inner_mm);
            all.extend([length("radius at the eye, to mid-bar", inner)]);
            all.extend([length("radius where it opens, to mid-bar", crate::site::mm(spiral.outer_mm))]);
            all
        }
        Some(Bent::Socket { mandrel, .. }) => vec![length("inside diameter", mandrel)],
        Some(Bent::Twist { angle }) => {
            let hand = if angle < 0.0 { "" } else { ", right-handed" };
            vec![Size::words("turns", format!("{}{hand}", turns(angle / std::f64::consts::TAU)))]
        }
        None => match &part.balance.shape {
            Some(Shape::Split(split)) => split.opening.map_or_else(Vec::new, |opening| {
                let mut all = vec![
                    length("across the middles of the branches", opening.radius * 2.0),
                    length("length", part.balance.forged_length),
                ];
                if opening.turns != 0.0 {
                    all.insert(0, Size::words("turns", turns(opening.turns)));
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
    let text = text.trim_end_matches('0').trim_end_matches('.').to_owned();
    if count < 0.0 { format!("{text}, left-handed") } else { text }
}
