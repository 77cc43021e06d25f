//! Hatching: what is worked in a step, told apart without color.

use crate::drawing::{Item, Point, at};
use crate::pen::Pen;

/// From one line to the next, measured along the bar.
const APART_MM: f64 = 2.0;
/// An area wider than this many lines is no area of a strip.
const MOST_LINES: f64 = 2_000.0;

/// Slanting lines within a closed outline.
pub(super) fn hatch(outline: &[Point]) -> Vec<Item> {
    let slants = outline.iter().map(slant);
    let (low, high) =
        slants.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), slant| (low.min(slant), high.max(slant)));
    if !(high - low).is_finite() || (high - low) / APART_MM > MOST_LINES {
        return Vec::new();
    }
    let (first, last) = ((low / APART_MM).ceil() as i64, (high / APART_MM).floor() as i64);
    (first..=last).flat_map(|line| lines_at(outline, line as f64 * APART_MM + APART_MM / 3.0)).collect()
}

/// Which of the slanting lines a place lies on.
fn slant(point: &Point) -> f64 {
    point.x + point.y
}

/// The stretches of one slanting line inside: from each crossing of the outline to the next.
fn lines_at(outline: &[Point], wanted: f64) -> Vec<Item> {
    let next = outline.iter().cycle().skip(1);
    let mut crossings: Vec<Point> =
        outline.iter().zip(next).filter_map(|(from, to)| crossing(from, to, wanted)).collect();
    crossings.sort_by(|one, other| one.x.total_cmp(&other.x));
    let pairs = crossings.chunks_exact(2);
    pairs.map(|pair| Item::line(pair[0], pair[1], Pen::Leader)).collect()
}

fn crossing(from: &Point, to: &Point, wanted: f64) -> Option<Point> {
    let (start, end) = (slant(from), slant(to));
    if (start < wanted) == (end < wanted) {
        return None;
    }
    let share = (wanted - start) / (end - start);
    Some(at(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_keep_inside() {
        let square = [at(0.0, 0.0), at(10.0, 0.0), at(10.0, 10.0), at(0.0, 10.0)];
        let lines = hatch(&square);
        assert!(lines.len() >= 8, "{lines:?}");
        for line in lines {
            let Item::Line { from, to, .. } = line else { continue };
            for place in [from, to] {
                assert!((-1e-9..=10.0 + 1e-9).contains(&place.x) && (-1e-9..=10.0 + 1e-9).contains(&place.y));
            }
        }
    }

    #[test]
    fn what_is_no_area_has_none() {
        assert!(hatch(&[]).is_empty());
        assert!(hatch(&[at(0.0, 0.0), at(f64::NAN, 1.0), at(1.0, 1.0)]).len() < 10);
        assert!(hatch(&[at(0.0, 0.0), at(1e30, 1.0), at(1.0, 1.0)]).is_empty());
    }
}
