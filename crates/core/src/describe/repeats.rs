//! Repeats in the smith's words: how many at what step, where the first one is, and what is left over.

use crate::balance::{BarBalance, LaidRepeat, laid_repeats};
use crate::metal::in_mm;
use crate::plan::{Bar, Form, PlanUnit, RepeatFrom};
use fh_measure::{Rounding, format_decimal};
use uom::si::f64::Length;

/// What lies below this, in mm, is no length worth a word.
const NOTHING_MM: f64 = 0.01;
/// How many places are told one by one.
const MOST_PLACES: usize = 40;

/// Two lines for each row of marks on a segment: how many at what step and where the first one is, and every place.
pub fn repeat_lines(unit: PlanUnit, bar: &Bar, worked: &BarBalance, at: usize) -> Vec<String> {
    let (Some(segment), Some(balance)) = (bar.segment(at), worked.segments.get(at)) else { return Vec::new() };
    let ends = segment_end_words(bar, worked, at);
    let mut lines = Vec::new();
    for laid in laid_repeats(segment, balance) {
        let count = repeat_count_words(&laid, unit);
        if laid.places.is_empty() {
            lines.push(format!("{}: {count}", laid.what));
            continue;
        }
        lines.push(format!("{}: {count}, {}", laid.what, repeat_first_words(&laid, unit, ends)));
        let middles = if laid.width.is_some() { "middles at" } else { "at" };
        lines.push(format!("{middles} {} from {}, forged", repeat_places_words(&laid, unit), ends[0]));
    }
    lines
}

/// How many there are and how far apart: `7 at 6 mm`, `4 side by side, 10 mm each`.
pub fn repeat_count_words(laid: &LaidRepeat, unit: PlanUnit) -> String {
    match (laid.count(), laid.step, laid.width) {
        (0, ..) => "none fits".to_owned(),
        (1, _, Some(width)) => format!("1, {} wide", step_words(width, unit)),
        (1, ..) => "1".to_owned(),
        (count, _, Some(width)) => format!("{count} side by side, {} each", step_words(width, unit)),
        (count, Some(step), _) => format!("{count} at {}", step_words(step, unit)),
        (count, None, None) => count.to_string(),
    }
}

/// Where the first one is, from the end that the row is stepped off from: `first 4.5 mm from its start`.
///
/// Of tools side by side it is the edge of the first. `start` and `end` are the words for the segment's two ends.
pub fn repeat_first_words(laid: &LaidRepeat, unit: PlanUnit, [start, end]: [&str; 2]) -> String {
    let (free, place) = match laid.from {
        RepeatFrom::Start | RepeatFrom::Middle => (laid.free_at_start, start),
        RepeatFrom::End => (laid.free_at_end, end),
    };
    let first = if laid.width.is_some() { "edge of the first" } else { "first" };
    if in_mm(free).abs() < NOTHING_MM {
        return format!("{first} at {place}");
    }
    let beyond = if in_mm(free) < 0.0 { "beyond" } else { "from" };
    format!("{first} {} {beyond} {place}", place_words(free.abs(), unit))
}

/// What the row leaves free: `1.5 mm free at each end`, `3 mm free at the end`; none where nothing is.
pub fn repeat_free_words(laid: &LaidRepeat, unit: PlanUnit) -> Option<String> {
    let (start, end) = (laid.free_at_start, laid.free_at_end);
    let words = |length: Length| place_words(length, unit);
    match (in_mm(start) > NOTHING_MM, in_mm(end) > NOTHING_MM) {
        _ if laid.places.is_empty() => None,
        (false, false) => None,
        (true, false) => Some(format!("{} free at the start", words(start))),
        (false, true) => Some(format!("{} free at the end", words(end))),
        (true, true) if words(start) == words(end) => Some(format!("{} free at each end", words(start))),
        (true, true) => Some(format!("{} free at the start, {} at the end", words(start), words(end))),
    }
}

/// The places from the segment's start, one after the other, with the unit behind the last: `4.5, 10.5, 16.5 mm`.
/// Of very many the first ones and the last.
pub fn repeat_places_words(laid: &LaidRepeat, unit: PlanUnit) -> String {
    let symbol = unit.length_unit().symbol();
    let bare = |place: &Length| {
        let words = place_words(*place, unit);
        words.strip_suffix(symbol).map_or(words.clone(), |bare| bare.trim_end().to_owned())
    };
    let mut places: Vec<_> = laid.places.iter().take(MOST_PLACES).map(bare).collect();
    if let Some(last) = laid.places.get(MOST_PLACES..).and_then(<[Length]>::last) {
        places.extend(["…".to_owned(), bare(last)]);
    }
    if places.is_empty() { String::new() } else { format!("{} {symbol}", places.join(", ")) }
}

/// A place: to a tenth of a millimetre, or to 1/64 in.
fn place_words(place: Length, unit: PlanUnit) -> String {
    match unit {
        PlanUnit::Inch => unit.finest().round(in_mm(place)).text(),
        PlanUnit::Millimeter => format_decimal(in_mm(place), unit.length_unit(), 1),
    }
}

/// A step, finer than a place because it adds up; in inches as a fraction where it is one.
fn step_words(step: Length, unit: PlanUnit) -> String {
    let nearest = Rounding::SIXTY_FOURTH_INCH.round(in_mm(step));
    match unit {
        PlanUnit::Inch if (nearest.mm() - in_mm(step)).abs() < NOTHING_MM / 10.0 => nearest.text(),
        PlanUnit::Inch => format_decimal(in_mm(step), unit.length_unit(), 3),
        PlanUnit::Millimeter => format_decimal(in_mm(step), unit.length_unit(), 2),
    }
}

/// The words for the two ends of a segment that rows are measured from: a shoulder beside it is named.
pub fn segment_end_words(bar: &Bar, balance: &BarBalance, at: usize) -> [&'static str; 2] {
    let Some(here) = balance.segments.get(at) else { return ["its start", "its end"] };
    let (start, end) = (here.forged_start, here.forged_start + here.forged_length);
    let before = at.checked_sub(1).filter(|before| {
        balance.segments.get(*before).is_some_and(|before| touch(before.forged_start + before.forged_length, start))
    });
    let after =
        Some(at + 1).filter(|after| balance.segments.get(*after).is_some_and(|after| touch(end, after.forged_start)));
    let is_shoulder = |beside: Option<usize>| {
        let segment = beside.and_then(|beside| bar.segment(beside));
        segment.is_some_and(|segment| matches!(segment.form, Form::Shoulder(_)))
    };
    [
        if is_shoulder(before) { "the shoulder" } else { "its start" },
        if is_shoulder(after) { "the shoulder" } else { "its end" },
    ]
}

fn touch(one: Length, other: Length) -> bool {
    in_mm(one - other).abs() < NOTHING_MM
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::balance::lay_repeat;
    use crate::metal::mm;
    use serde_json::json;

    fn told(repeat: serde_json::Value, length_mm: f64, unit: PlanUnit) -> [String; 4] {
        let laid = lay_repeat(&serde_json::from_value(repeat).unwrap(), mm(length_mm));
        [
            repeat_count_words(&laid, unit),
            repeat_first_words(&laid, unit, ["the shoulder", "its end"]),
            repeat_free_words(&laid, unit).unwrap_or_default(),
            repeat_places_words(&laid, unit),
        ]
    }

    #[test]
    fn a_row_is_told_with_its_step_and_its_first() {
        let row = json!({ "what": "chisel lines", "from": "middle", "step": "6 mm" });
        let places = "4.5, 10.5, 16.5, 22.5, 28.5, 34.5, 40.5 mm";
        let margin = json!({ "what": "chisel lines", "from": "middle", "step": "6 mm", "margin": "4 mm" });
        let words = ["7 at 6 mm", "first 4.5 mm from the shoulder", "4.5 mm free at each end", places];
        assert_eq!(told(margin, 45.0, PlanUnit::Millimeter), words);
        assert_eq!(told(row, 42.0, PlanUnit::Millimeter)[1..3], ["first at the shoulder", ""]);
        let inches = json!({ "what": "dots", "count": 4, "from": "end" });
        let words = ["4 at 0.333 in", "first at its end", "", "0, 21/64, 43/64, 1 in"];
        assert_eq!(told(inches, 25.4, PlanUnit::Inch), words);
    }

    #[test]
    fn tools_side_by_side_are_told_by_the_edge_of_the_first() {
        let row = json!({ "what": "fuller", "width": "10 mm" });
        let words = ["4 side by side, 10 mm each", "edge of the first at the shoulder", "5 mm free at the end"];
        assert_eq!(told(row, 45.0, PlanUnit::Millimeter)[..3], words);
        let none = json!({ "what": "fuller", "width": "50 mm" });
        assert_eq!(told(none, 45.0, PlanUnit::Millimeter)[0], "none fits");
    }

    #[test]
    fn a_row_that_runs_off_says_so() {
        let row = json!({ "what": "lines", "step": "6 mm", "count": 7, "from": "middle" });
        assert_eq!(told(row, 30.0, PlanUnit::Millimeter)[1], "first 3 mm beyond the shoulder");
    }
}
