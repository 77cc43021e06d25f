//! The holes of a spread plate on its template: each at its place with a cross, and in words how it is made and where it lies.

use super::figure::{circle, cross};
use super::lie::Lie;
use super::template::Line;
use super::words::{hole_words, size_words};
use crate::drawing::{Item, Text, at};
use crate::pen::Pen;
use crate::sheets::type_sizes::BODY;
use fh_core::metal::{HoleInPlate, HoleSize};
use fh_core::plan::PlanUnit;
use fh_measure::{in_mm, mm};

/// Points on a whole turn of a hole that is not round.
const TURN_POINTS: usize = 96;
/// From a hole's rim to its number.
const NUMBER_MM: f64 = 1.0;

/// The holes; where there are more than one, each with its number.
pub(super) fn hole_items(holes: &[HoleInPlate], lie: Lie) -> Vec<Item> {
    let is_one = holes.len() == 1;
    holes.iter().enumerate().flat_map(|(index, hole)| one_hole(hole, (!is_one).then_some(index + 1), lie)).collect()
}

fn one_hole(hole: &HoleInPlate, number: Option<usize>, lie: Lie) -> Vec<Item> {
    let middle = lie.place(hole.middle_mm());
    let rim = match &hole.hole {
        HoleSize::Round { diameter } => circle(middle, in_mm(*diameter) / 2.0, Pen::Outline),
        _ => lie.polygon(&hole.points_mm(TURN_POINTS), Pen::Outline),
    };
    let beside = hole.points_mm(TURN_POINTS).into_iter().map(|point| lie.place(point).x).fold(middle.x, f64::max);
    let place = at(beside + NUMBER_MM, middle.y - NUMBER_MM);
    let number = number.map(|number| Item::from(Text::new(place, BODY, &number.to_string()).bold()));
    std::iter::once(rim).chain(cross(middle)).chain(number).collect()
}

/// How each is made and where its middle lies: `hole Ø 5 mm, drilled; 12 mm from the root, 8 mm away from you`.
pub(super) fn hole_lines(unit: PlanUnit, holes: &[HoleInPlate]) -> Vec<Line> {
    let is_one = holes.len() == 1;
    let words = |(index, hole): (usize, &HoleInPlate)| {
        let across = match in_mm(hole.across) {
            across if across.abs() < 0.005 => "on the base line".to_owned(),
            across if across > 0.0 => format!("{} from the base line, away from you", size_words(unit, mm(across))),
            across => format!("{} from the base line, towards you", size_words(unit, mm(-across))),
        };
        let of = format!("{}, {}", hole_words(unit, &hole.hole), hole.made.name());
        let place = format!("middle {} from the root, {across}", size_words(unit, hole.at));
        let number = if is_one { String::new() } else { format!("{}: ", index + 1) };
        Line { number: String::new(), words: format!("{number}{of}; {place}") }
    };
    holes.iter().enumerate().map(words).collect()
}
