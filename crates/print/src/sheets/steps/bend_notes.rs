//! The angle and the inside radius of a bend, written into its picture where they have room.

use crate::drawing::{Item, Point, Text, at};
use crate::fonts::CAP_HEIGHT;
use crate::sheets::sizes_in_words::mm_words;
use crate::sheets::templates::faces::Sample;
use crate::sheets::type_sizes::CAPTION;
use fh_core::balance::SegmentBalance;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::PlanUnit;
use uom::si::f64::Length;
use uom::si::length::millimeter;

/// The em of the angle.
const ANGLE: f64 = 4.8;
/// Free around the words.
const FREE_MM: f64 = 0.8;
/// The nearest and the farthest that the words stand from the bend.
const NEAR_MM: f64 = 2.0;
const FAR_MM: f64 = 35.0;
/// A view that shows the angle less truly than this, in radians, says nothing of it.
const TRUE: f64 = 0.03;

/// What is said of a bend.
#[derive(Clone)]
pub(super) struct BendNote {
    turn: f64,
    angle: String,
    radius: String,
}

/// The space that words take, from their top left to their bottom right.
#[derive(Clone, Copy)]
struct Space {
    low: Point,
    high: Point,
}

impl BendNote {
    /// Of a corner or a curve; none of other bends.
    pub(super) fn of(balance: &SegmentBalance, unit: PlanUnit) -> Option<Self> {
        let (turn, inside) = turn_and_radius(balance)?;
        let degrees = turn.abs().to_degrees();
        let figure = format!("{degrees:.1}");
        let figure = figure.trim_end_matches(".0");
        // Of a right angle it does not matter from where it is measured.
        let angle = if (degrees - 90.0).abs() < 0.05 { format!("{figure}°") } else { format!("turns {figure}°") };
        Some(Self { turn: turn.abs(), angle, radius: format!("radius {}", mm_words(unit, inside.get::<millimeter>())) })
    }

    /// Its words beside the bend, inside it where there is room; nothing where there is none.
    pub(super) fn items(
        &self,
        samples: &[Sample],
        metal: &[Vec<Point>],
        place: &impl Fn([f64; 2]) -> Point,
        room: [Point; 2],
    ) -> Vec<Item> {
        let Some(middle) = middle(samples, self.turn) else { return Vec::new() };
        let words: [&[(&str, f64)]; 2] = [&[(&self.angle, ANGLE), (&self.radius, CAPTION)], &[(&self.angle, ANGLE)]];
        for inside in [true, false] {
            // Outside, the radius would be read as that of the outside.
            for words in words.iter().skip(usize::from(!inside)) {
                if let Some(place) = free_place(words, middle, inside, metal, place, room) {
                    return set(words, place);
                }
            }
        }
        Vec::new()
    }
}

fn turn_and_radius(balance: &SegmentBalance) -> Option<(f64, Length)> {
    match (balance.bent?, &balance.shape) {
        (Bent::Curve { angle, inside_radius, .. }, _) => Some((angle, inside_radius)),
        (Bent::Corner { .. }, Some(Shape::Peak { corner, .. })) => Some((corner.turn, corner.inside_radius)),
        _ => None,
    }
}

/// The middle of a bend, and to which side it turns: 1 to the left. None where the view does not show its true angle.
fn middle(samples: &[Sample], wanted: f64) -> Option<(Sample, f64)> {
    let turn = |pair: &[Sample]| {
        let (a, b) = (pair[0].ahead, pair[1].ahead);
        (a[0] * b[1] - a[1] * b[0]).atan2(a[0] * b[0] + a[1] * b[1])
    };
    let turned: f64 = samples.windows(2).map(turn).sum();
    if (turned.abs() - wanted).abs() > TRUE {
        return None;
    }
    let mut sum = 0.0;
    let at = samples.windows(2).position(|pair| {
        sum += turn(pair).abs();
        sum >= wanted / 2.0 - 1e-9
    })?;
    Some((*samples.get(at + 1)?, turned.signum()))
}

/// The nearest place along the middle of the bend where words hide nothing: the middle of their space.
fn free_place(
    words: &[(&str, f64)],
    (sample, side): (Sample, f64),
    inside: bool,
    metal: &[Vec<Point>],
    place: &impl Fn([f64; 2]) -> Point,
    room: [Point; 2],
) -> Option<Point> {
    let side = if inside { side } else { -side };
    let face = if side > 0.0 { sample.left } else { sample.right };
    let [from, to] = [face, face + 1.0].map(|mm| place(sample.aside(mm * side)));
    let long = (to.x - from.x).hypot(to.y - from.y).max(1e-9);
    let [x, y] = [(to.x - from.x) / long, (to.y - from.y) / long];
    let steps = (0..=((FAR_MM - NEAR_MM) / 0.5) as usize).map(|step| NEAR_MM + 0.5 * step as f64);
    let places = steps.map(|mm| at(from.x + x * mm, from.y + y * mm));
    // What lies beyond other metal is read as belonging to that.
    let before = places.take_while(|place| !metal.iter().any(|outline| lies_in(*place, outline)));
    before.into_iter().find(|middle| Space::around(words, *middle).is_free(metal, room))
}

fn height(words: &[(&str, f64)]) -> f64 {
    words.iter().map(|(_, size)| size * 1.1).sum()
}

/// The words below each other, around a place.
fn set(words: &[(&str, f64)], middle: Point) -> Vec<Item> {
    let mut top = middle.y - height(words) / 2.0;
    let set = |(words, size): &(&str, f64)| {
        let line = at(middle.x, top + size * (0.55 + CAP_HEIGHT / 2.0));
        top += size * 1.1;
        Text::new(line, *size, words).centered().bold().into()
    };
    words.iter().map(set).collect()
}

impl Space {
    fn around(words: &[(&str, f64)], middle: Point) -> Self {
        let wide =
            words.iter().map(|(words, size)| Text::new(middle, *size, words).bold().width_mm()).fold(0.0, f64::max);
        let (x, y) = (wide / 2.0 + FREE_MM, height(words) / 2.0 + FREE_MM);
        Self { low: at(middle.x - x, middle.y - y), high: at(middle.x + x, middle.y + y) }
    }

    fn is_free(&self, metal: &[Vec<Point>], [low, high]: [Point; 2]) -> bool {
        let inside = self.low.x >= low.x && self.low.y >= low.y && self.high.x <= high.x && self.high.y <= high.y;
        inside && metal.iter().all(|outline| !self.touches(outline))
    }

    /// Whether an outline has a corner in it, or lies around one of its own.
    fn touches(&self, outline: &[Point]) -> bool {
        let holds = |point: &Point| {
            (self.low.x..=self.high.x).contains(&point.x) && (self.low.y..=self.high.y).contains(&point.y)
        };
        let middle = at((self.low.x + self.high.x) / 2.0, (self.low.y + self.high.y) / 2.0);
        let corners = [self.low, self.high, at(self.low.x, self.high.y), at(self.high.x, self.low.y), middle];
        outline.iter().any(holds) || corners.iter().any(|corner| lies_in(*corner, outline))
    }
}

/// Whether a place lies within an outline: a line from it to the right crosses the edge an odd number of times.
fn lies_in(place: Point, outline: &[Point]) -> bool {
    let edges = outline.iter().zip(outline.iter().cycle().skip(1));
    let crosses = |(a, b): &(&Point, &Point)| {
        (a.y > place.y) != (b.y > place.y) && place.x < a.x + (b.x - a.x) * (place.y - a.y) / (b.y - a.y)
    };
    edges.filter(crosses).count() % 2 == 1
}
