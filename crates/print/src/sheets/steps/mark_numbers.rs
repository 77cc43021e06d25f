//! The numbers of the marks over their lines on the bar: moved apart where they are crowded, with a line to each mark.

use crate::drawing::{Item, Text, at};
use crate::pen::Pen;
use crate::sheets::flow::Block;
use crate::sheets::spread::spread;

/// The em of the numbers.
const NUMBER: f64 = 4.2;
/// From the numbers down to the bar.
const LEADER_MM: f64 = 4.0;
/// Between two numbers.
const GAP_MM: f64 = 1.3;
/// The farthest that a number stands beside its mark.
const FARTHEST_MM: f64 = 9.0;
/// How far a number may stand out before the bar, where its scale is named.
const OVERHANG_MM: f64 = 4.0;
/// Between the end of a leader and its number.
const FREE_MM: f64 = 0.6;

/// The numbers over a bar, each with where its mark stands along it on paper; nothing where there are none.
///
/// Where there is no room near the marks for all of them, every second one is numbered, or every third, and the last in any case.
pub(super) fn block(marks: &[(f64, &str)], width: f64) -> Block {
    let placed = (1..=marks.len()).find_map(|every| placed(&every_so_many(marks, every), width));
    let items: Vec<Item> = placed.unwrap_or_default().iter().flat_map(items).collect();
    if items.is_empty() { Block::default() } else { Block { height: NUMBER + LEADER_MM, items } }
}

/// Every so many of the marks, counted back from the last.
fn every_so_many<'a>(marks: &[(f64, &'a str)], every: usize) -> Vec<(f64, &'a str)> {
    let mut kept: Vec<(f64, &str)> = marks.iter().rev().step_by(every).copied().collect();
    kept.reverse();
    kept
}

/// A number with where it stands and where its mark is.
struct Placed<'a> {
    words: &'a str,
    at: f64,
    mark: f64,
}

fn placed<'a>(marks: &[(f64, &'a str)], width: f64) -> Option<Vec<Placed<'a>>> {
    let wide: Vec<f64> = marks.iter().map(|(_, words)| text(0.0, words).width_mm()).collect();
    let apart: Vec<f64> = wide.windows(2).map(|two| (two[0] + two[1]) / 2.0 + GAP_MM).collect();
    let wanted: Vec<f64> = marks.iter().map(|(mark, _)| *mark).collect();
    let [first, last] = [wanted.first()?, wanted.last()?];
    let end = width - wide.last().map_or(0.0, |wide| wide / 2.0);
    let places = spread(&wanted, &apart, first.min(0.0) - OVERHANG_MM, (last + FARTHEST_MM).min(end))?;
    let is_near = places.iter().zip(&wanted).all(|(at, wanted)| (at - wanted).abs() <= FARTHEST_MM);
    if !is_near {
        return None;
    }
    let number = |((mark, words), at): (&(f64, &'a str), f64)| Placed { words, at, mark: *mark };
    Some(marks.iter().zip(places).map(number).collect())
}

fn text(x: f64, words: &str) -> Text {
    Text::new(at(x, NUMBER * 0.85), NUMBER, words).centered().bold()
}

fn items(number: &Placed<'_>) -> [Item; 2] {
    let from = at(number.at, NUMBER * 0.85 + FREE_MM);
    let to = at(number.mark, NUMBER + LEADER_MM);
    [text(number.at, number.words).into(), Item::line(from, to, Pen::Leader)]
}
