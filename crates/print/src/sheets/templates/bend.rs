//! The template of a run: its middle line and both faces at full scale, with joints, centers and numbers.

use super::drawn::{Drawn, faces, outline_points};
use super::faces::{Sample, inside_center, samples, turning};
use super::figure::{Figure, cross};
use super::flat_outline::with_path;
use super::measures;
use super::numbers::Numbers;
use super::on_paper::{edge_points, line_points, on_paper};
use super::plate::plate;
use super::runs::{Member, Run, Shown, runs};
use super::space::Plane;
use super::template::{Line, Template};
use super::tiles::tile_count;
use super::words::{angle_words, bent_words, size_words};
use crate::drawing::{Item, Point, Text, at};
use crate::pen::Pen;
use crate::sheets::sizes_in_words::mm_words;
use crate::sheets::type_sizes::FACT;
use fh_core::balance::BarBalance;
use fh_core::describe::segment_name;
use fh_core::forms;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::{Bar, Form, Plan, SocketAxis};
use fh_piece::vector::{Vector, cross as across, dot, length, minus};
use fh_piece::{Line as Course, Piece};
use uom::si::length::millimeter;

/// How far the line of a joint stands out beyond the metal.
const JOINT_MM: f64 = 2.0;
/// How far the line stands out where a bend begins or ends.
const TANGENT_MM: f64 = 3.5;
/// The center of a wider bend than this is not drawn.
const MOST_RADIUS_MM: f64 = 120.0;
/// The figures of a wider bend stand beside its arc, not at its center.
const NEAR_CENTER_MM: f64 = 50.0;
/// How much of a straight tail is drawn beside a bend: as much as a page has room for.
const TAILS_MM: [f64; 3] = [130.0, 70.0, 40.0];
/// How far a broken-off end runs to and fro.
const BREAK_MM: f64 = 1.4;

/// What templates of bends are made of.
pub(super) struct Bends<'a> {
    /// The plan.
    pub(super) plan: &'a Plan,
    /// The bar.
    pub(super) bar: &'a Bar,
    /// Its place among the bars.
    pub(super) index: usize,
    /// What follows for it.
    pub(super) worked: &'a BarBalance,
    /// The bent piece.
    pub(super) piece: &'a Piece,
}

impl Bends<'_> {
    /// The templates of all runs; their straight tails are drawn shorter where a page has no room for long ones.
    pub(super) fn templates(&self, page: [f64; 2]) -> Vec<Template> {
        let by_tail = TAILS_MM.map(|tail| runs(self.index, self.bar, self.worked, self.piece, tail));
        let count = by_tail.iter().map(Vec::len).min().unwrap_or(0);
        let template = |number: usize| {
            let mut shorter = by_tail.iter().filter_map(|runs| self.template(runs.get(number)?, page));
            let first = shorter.next()?;
            if first.whole(page).is_some() {
                return Some(first);
            }
            shorter
                .fold(
                    (false, first),
                    |(fits, kept), next| {
                        if fits { (fits, kept) } else { (next.whole(page).is_some(), next) }
                    },
                )
                .1
                .into()
        };
        (0..count).filter_map(template).collect()
    }

    /// The template of a run, turned so that it takes the least paper; none where nothing of it is left to draw.
    fn template(&self, run: &Run, page: [f64; 2]) -> Option<Template> {
        let plane = self.plane(run)?;
        let [level, upright] = [plane, plane.quarter_turned()].map(|plane| self.drawn(run, &plane));
        let figures = [&level, &upright].map(|drawn| self.figure(drawn, run.split.is_some(), page));
        let least = |figure: &Figure| (tile_count(figure, page), figure.height);
        let figure = figures.into_iter().min_by(|a, b| {
            let ((few, low), (many, high)) = (least(a), least(b));
            few.cmp(&many).then(low.total_cmp(&high))
        })?;
        let first = run.split.or_else(|| Some(level.iter().find(|drawn| drawn.bends)?.member.segment))?;
        let name = with_path(self.bar, first, &self.name(run, &level));
        let lines = level.iter().filter_map(|drawn| self.line(drawn)).collect();
        Some(Template { name, figure, lines })
    }

    /// What a run is called: its split, or its bends.
    fn name(&self, run: &Run, drawn: &[Drawn<'_>]) -> String {
        if let Some(split) = run.split {
            return segment_name(self.bar, split);
        }
        let bends = drawn.iter().filter(|drawn| drawn.bends);
        let mut names: Vec<String> = bends.map(|drawn| segment_name(self.bar, drawn.member.segment)).collect();
        names.dedup();
        names.join(", ")
    }

    fn course(&self, segment: usize) -> Option<&Course> {
        self.piece.line(self.index, segment)
    }

    /// The plane of a run: its longest straight member lies level (of a split, the bar behind its root), and what was up or away from the smith is up.
    fn plane(&self, run: &Run) -> Option<Plane> {
        let of_bar = |member: &&Member| {
            let chain = |number| self.bar.place_of(number).map(|(chain, _)| chain);
            run.split.is_some_and(|split| chain(split) == chain(member.segment))
        };
        let courses = run.members.iter().filter_map(|member| self.course(member.segment));
        let straight = |course: &&Course| {
            let (Some(first), Some(last)) = (course.frames.first(), course.frames.last()) else { return false };
            first != last && course.frames.iter().all(|frame| dot(frame.along, first.along) > 1.0 - 1e-9)
        };
        let first = courses.clone().next()?.frames.first()?;
        let behind_root =
            run.members.iter().filter(of_bar).filter_map(|member| self.course(member.segment)).find(straight);
        let longest = courses.filter(straight).max_by(|a, b| reach(a).total_cmp(&reach(b)));
        // As it lies on the cards: they show it by its longest straight part, too.
        let level = behind_root.or(longest).and_then(|course| course.frames.first()).unwrap_or(first);
        let right = level.along;
        let up = across(run.normal, right);
        let (rises, recedes) = (dot(up, level.up), -dot(up, level.toward));
        let turned = |vector: Vector, keep: bool| if keep { vector } else { vector.map(|part| -part) };
        // It is seen from the side on which the smith stands, or from above: else it would lie as in a mirror.
        let seen_from = if dot(run.normal, level.toward).abs() > 0.5 { level.toward } else { level.up };
        let is_seen = |right: Vector, up: Vector| dot(across(right, up), seen_from) > 0.0;
        Some(match (rises, recedes) {
            (keeps, _) | (_, keeps) if keeps.abs() > 0.5 => {
                let up = turned(up, keeps > 0.0);
                Plane { origin: first.at, right: turned(right, is_seen(right, up)), up }
            }
            _ => Plane { origin: first.at, right, up: turned(up, is_seen(right, up)) },
        })
    }

    fn drawn(&self, run: &Run, plane: &Plane) -> Vec<Drawn<'_>> {
        let draw = |member: &Member| {
            let balance = self.worked.segments.get(member.segment)?;
            let shape = balance.shape.as_ref()?;
            let course = self.course(member.segment)?;
            let samples = shown_part(samples(course, balance, shape, plane), member.shown);
            let bends = samples.iter().any(|sample| differs(sample.ahead, samples[0].ahead));
            let plate = if member.shown.is_none() { plate(course, balance, shape, plane) } else { None };
            Some(Drawn { member: *member, balance, shape, samples, bends, plate, path: self.bar.path(member.segment) })
        };
        run.members.iter().filter_map(draw).collect()
    }

    fn line(&self, drawn: &Drawn<'_>) -> Option<Line> {
        let name = segment_name(self.bar, drawn.member.segment);
        let words = match (bent_words(self.plan, drawn.balance.bent.as_ref(), drawn.shape), drawn.member.shown) {
            (Some(bent), _) => format!("{name}: {bent}"),
            (None, Some(_)) => {
                let whole = drawn.balance.forged_length.get::<millimeter>();
                format!("{name}: {} long, shown shortened", mm_words(self.plan.units.length, whole))
            }
            (None, None) => match &self.bar.segment(drawn.member.segment)?.form {
                Form::Collar(forms::Collar { width, height, .. }) => {
                    format!("{name}: {} × {} inside", width.text(), height.text())
                }
                _ => name,
            },
        };
        Some(Line { number: drawn.path.clone(), words })
    }

    fn figure(&self, drawn: &[Drawn<'_>], split: bool, page: [f64; 2]) -> Figure {
        let mut items: Vec<Item> = drawn.iter().flat_map(faces).collect();
        let ends: Vec<Item> = drawn.iter().flat_map(|member| self.ends(member, drawn)).collect();
        let metal = drawn.iter().flat_map(|member| edge_points(&member.samples)).chain(outline_points(drawn));
        let mut numbers = Numbers::new(metal.chain(ends.iter().flat_map(line_points)).collect());
        items.extend(ends);
        let centers: Vec<Item> = drawn.iter().filter_map(center).flat_map(cross).collect();
        numbers.reserve(&centers);
        items.extend(centers);
        let unit = self.plan.units.length;
        // A ring is measured through its middle and nowhere else: what is written makes way.
        items.extend(if split { Vec::new() } else { measures::inside(unit, drawn, &mut numbers).unwrap_or_default() });
        let mut numbered = Vec::new();
        for member in drawn {
            let (figures, has_number) = self.figures(member, &mut numbers);
            items.extend(figures);
            numbered.push(has_number);
        }
        items.extend(measures::within(unit, drawn, split, &mut numbers));
        for (member, _) in drawn.iter().zip(&numbered).filter(|(_, numbered)| !**numbered) {
            items.extend(numbers.place(&member.samples, &member.path));
        }
        let over_all = measures::over_all(unit, drawn, &items, page[0]);
        let measured = Figure::of(items.iter().cloned().chain(over_all).collect());
        // In parts a dimension over all could be measured on none of them.
        if tile_count(&measured, page) == 1 { measured } else { Figure::of(items) }
    }

    /// The lines at both ends of a member: where it is joined to the next, where it ends, where it is broken off.
    fn ends(&self, drawn: &Drawn<'_>, all: &[Drawn<'_>]) -> Vec<Item> {
        let (Some(first), Some(last)) = (drawn.samples.first(), drawn.samples.last()) else { return Vec::new() };
        let find = |number: Option<usize>| all.iter().find(|other| Some(other.member.segment) == number);
        let next = find(self.bar.next_in_chain(drawn.member.segment));
        let before = all.iter().any(|other| self.bar.next_in_chain(other.member.segment) == Some(drawn.member.segment));
        let cut = |datum_part: bool| drawn.member.shown.is_some_and(|shown| shown.datum_part == datum_part);
        let mut items = Vec::new();
        items.extend(if cut(false) {
            vec![break_line(first)]
        } else if before {
            Vec::new()
        } else {
            vec![across_line(first, 0.0, Pen::Outline)]
        });
        items.extend(match next {
            _ if cut(true) => vec![break_line(last)],
            Some(next) => {
                let stands_out = if next.bends || drawn.bends { TANGENT_MM } else { JOINT_MM };
                vec![joint(last, next.samples.first(), stands_out)]
            }
            None => vec![across_line(last, 0.0, Pen::Outline)],
        });
        items
    }

    /// The angle of a bend and its radius or diameter, on its inside; what has no room there stands outside with the number of
    /// the bend before it. Whether the number stands there.
    fn figures(&self, drawn: &Drawn<'_>, numbers: &mut Numbers) -> (Vec<Item>, bool) {
        let unit = self.plan.units.length;
        let mut words = Vec::new();
        match (drawn.balance.bent, drawn.shape) {
            (Some(Bent::Curve { angle, inside_radius, .. }), _) => {
                words.push(format!("R {}", size_words(unit, inside_radius)));
                words.push(angle_words(angle));
            }
            (Some(Bent::Corner { .. }), Shape::Peak { corner, .. }) => {
                words.push(angle_words(corner.turn));
                if corner.inside_radius.get::<millimeter>() > 0.0 {
                    words.push(format!("inside R {}", size_words(unit, corner.inside_radius)));
                }
            }
            (Some(Bent::Ring { inside_diameter: size, .. }), _)
            | (Some(Bent::Socket { mandrel: size, axis: SocketAxis::Across, .. }), _) => {
                words.push(format!("Ø {}", size_words(unit, size)));
            }
            _ => {}
        }
        let text = |words: &str| Text::new(at(0.0, 0.0), FACT, words).centered().bold();
        let places = inside_places(drawn);
        let placed: Vec<Item> =
            words.iter().map_while(|words| numbers.words(&text(words), places.iter().copied())).collect();
        let rest = words.get(placed.len()..).unwrap_or_default().join(", ");
        let outside = if rest.is_empty() { None } else { numbers.pointed(&drawn.samples, &drawn.path, &text(&rest)) };
        let has_number = outside.is_some();
        (placed.into_iter().chain(outside.into_iter().flatten()).collect(), has_number)
    }
}

/// The center that a bend is struck from, where it is near enough to be drawn.
fn center(drawn: &Drawn<'_>) -> Option<Point> {
    let radius = match (drawn.balance.bent?, drawn.shape) {
        (Bent::Curve { inside_radius, .. }, _) => inside_radius,
        (Bent::Corner { .. }, Shape::Peak { corner, .. }) => corner.inside_radius,
        (Bent::Ring { inside_diameter, .. }, _) => inside_diameter / 2.0,
        (Bent::Socket { mandrel, axis: SocketAxis::Across, .. }, _) => mandrel / 2.0,
        _ => return None,
    };
    let radius = radius.get::<millimeter>();
    if radius > MOST_RADIUS_MM {
        return None;
    }
    inside_center(&drawn.samples, radius).map(on_paper)
}

/// Places for figures on the inside of a bend, the best first: about its center, then further out from its middle.
fn inside_places(drawn: &Drawn<'_>) -> Vec<Point> {
    let Some(middle) = drawn.samples.get(drawn.samples.len() / 2) else { return Vec::new() };
    let toward = turning(&drawn.samples).signum();
    // Far from its arc a figure belongs to nothing.
    let near = |center: &Point| {
        let middle = on_paper(middle.middle);
        (center.x - middle.x).hypot(center.y - middle.y) <= NEAR_CENTER_MM
    };
    let about =
        center(drawn).filter(near).into_iter().flat_map(|center| [9.0, -6.0].map(|down| at(center.x, center.y + down)));
    let inside = if toward > 0.0 { middle.left } else { middle.right };
    let out = [7.0, 10.0, 13.0, 17.0].map(|mm| on_paper(middle.aside((inside + mm) * toward)));
    about.chain(out.map(|point| at(point.x, point.y + FACT * 0.33))).collect()
}

/// How far a course reaches from its first place to its last, in mm.
fn reach(course: &Course) -> f64 {
    let (Some(first), Some(last)) = (course.frames.first(), course.frames.last()) else { return 0.0 };
    length(minus(last.at, first.at))
}

fn differs(a: [f64; 2], b: [f64; 2]) -> bool {
    (a[0] - b[0]).abs() + (a[1] - b[1]).abs() > 1e-6
}

/// The samples of the part that is drawn.
fn shown_part(mut samples: Vec<Sample>, shown: Option<Shown>) -> Vec<Sample> {
    let Some(Shown { mm, datum_part }) = shown else { return samples };
    if !datum_part {
        samples.reverse();
    }
    let mut kept: Vec<Sample> = Vec::new();
    let mut run = 0.0;
    for sample in samples {
        if let Some(before) = kept.last().copied() {
            let step = (sample.middle[0] - before.middle[0]).hypot(sample.middle[1] - before.middle[1]);
            if run + step >= mm {
                kept.push(between(&before, &sample, (mm - run) / step.max(1e-9)));
                break;
            }
            run += step;
        }
        kept.push(sample);
    }
    if !datum_part {
        kept.reverse();
    }
    kept
}

fn between(from: &Sample, to: &Sample, share: f64) -> Sample {
    let mix = |a: f64, b: f64| a + (b - a) * share;
    Sample {
        middle: [mix(from.middle[0], to.middle[0]), mix(from.middle[1], to.middle[1])],
        ahead: from.ahead,
        left: mix(from.left, to.left),
        right: mix(from.right, to.right),
    }
}

/// A line across the metal that stands out so far on both sides.
fn across_line(sample: &Sample, stands_out: f64, pen: Pen) -> Item {
    let [left, right] = [sample.aside(sample.left + stands_out), sample.aside(-sample.right - stands_out)];
    Item::line(on_paper(left), on_paper(right), pen)
}

/// The line where two segments meet, as wide as the wider of both on each side: at a step their middles lie apart.
fn joint(end: &Sample, start: Option<&Sample>, stands_out: f64) -> Item {
    let [x, y] = end.leftward();
    let off = |start: &Sample| (start.middle[0] - end.middle[0]) * x + (start.middle[1] - end.middle[1]) * y;
    let wider = |own: f64, other: Option<f64>| own.max(other.unwrap_or(own));
    let both = Sample {
        left: wider(end.left, start.map(|start| start.left + off(start))),
        right: wider(end.right, start.map(|start| start.right - off(start))),
        ..*end
    };
    across_line(&both, stands_out, Pen::MarkLine)
}

/// A zigzag where the bar goes on and is not drawn.
fn break_line(sample: &Sample) -> Item {
    let corner = |step: u32| {
        let share = f64::from(step) / 6.0;
        let place = sample.aside(sample.left + 1.5 - share * (sample.left + sample.right + 3.0));
        let ahead = if step.is_multiple_of(2) { -BREAK_MM } else { BREAK_MM };
        on_paper([place[0] + sample.ahead[0] * ahead, place[1] + sample.ahead[1] * ahead])
    };
    Item::Polyline { points: (0..=6).map(corner).collect(), pen: Pen::MarkLine }
}
