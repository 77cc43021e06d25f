//! Whether a polygon is simple: its sides meet only where one ends and the next begins.

use crate::metal::{self, chord_area};
use crate::plan::CornerSpec;

type Point = [f64; 2];

/// What is wrong with a polygon's corners, in words; corners are counted from 1.
pub(super) fn fault(corners: &[CornerSpec]) -> Option<String> {
    let places: Vec<Point> = corners.iter().map(|corner| corner.at.each_ref().map(|at| at.mm())).collect();
    if corners.iter().all(|corner| corner.arc.is_none()) {
        return fault_of_straight(&places);
    }
    if chord_area(&places) == 0.0 {
        return Some("its corners lie on one line: on which side an arc bulges is not said".to_owned());
    }
    let twice = places.iter().zip(places.iter().cycle().skip(1)).position(|(a, b)| a == b);
    if let Some(side) = twice {
        return Some(on_one_another(side, places.len()));
    }
    if let Some((first, second)) = metal::sides_that_meet(corners) {
        return Some(meets_itself(first, second));
    }
    // An arc round all the other corners: what is hollow of it is more than there is.
    let is_inside_out = metal::signed_area(corners) * chord_area(&places) <= 0.0;
    is_inside_out.then(|| "its hollow arcs take away all of it".to_owned())
}

fn on_one_another(side: usize, count: usize) -> String {
    format!("the corners {} and {} lie on one another", side + 1, (side + 1) % count + 1)
}

fn meets_itself(first: usize, second: usize) -> String {
    let message = "the outline crosses or touches itself: the side from corner";
    format!("{message} {} meets the side from corner {}", first + 1, second + 1)
}

fn fault_of_straight(corners: &[Point]) -> Option<String> {
    let sides: Vec<(Point, Point)> = corners.iter().copied().zip(corners.iter().copied().cycle().skip(1)).collect();
    let next = |side: usize| (side + 1) % sides.len();
    if let Some(side) = sides.iter().position(|(start, end)| start == end) {
        return Some(on_one_another(side, sides.len()));
    }
    for (first, &(a, b)) in sides.iter().enumerate() {
        for (second, &(c, d)) in sides.iter().enumerate().skip(first + 1) {
            let cross = if second == next(first) {
                folds_back(a, b, d)
            } else if first == next(second) {
                folds_back(c, d, b)
            } else {
                meet(a, b, c, d)
            };
            if cross {
                return Some(meets_itself(first, second));
            }
        }
    }
    None
}

/// Above 0 where `c` lies to the left of the way from `a` to `b`.
fn left_of(a: Point, b: Point, c: Point) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/// Whether the way from `a` over `b` to `c` turns right back on itself at `b`.
fn folds_back(a: Point, b: Point, c: Point) -> bool {
    let onward = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]);
    left_of(a, b, c) == 0.0 && onward < 0.0
}

/// Whether the side from `a` to `b` and that from `c` to `d` have a point in common.
fn meet(a: Point, b: Point, c: Point, d: Point) -> bool {
    let (c_side, d_side) = (left_of(a, b, c), left_of(a, b, d));
    let (a_side, b_side) = (left_of(c, d, a), left_of(c, d, b));
    let crosses = c_side * d_side < 0.0 && a_side * b_side < 0.0;
    crosses
        || (c_side == 0.0 && within(a, b, c))
        || (d_side == 0.0 && within(a, b, d))
        || (a_side == 0.0 && within(c, d, a))
        || (b_side == 0.0 && within(c, d, b))
}

/// Whether a point on the line through `a` and `b` lies between them.
fn within(a: Point, b: Point, point: Point) -> bool {
    (0..2).all(|axis| point[axis] >= a[axis].min(b[axis]) && point[axis] <= a[axis].max(b[axis]))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn simple_outlines_pass() {
        let square = [[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [0.0, 10.0]];
        let notched = [[0.0, -5.0], [20.0, -5.0], [12.0, 0.0], [20.0, 5.0], [0.0, 5.0]];
        let corner_on_a_straight_side = [[0.0, 0.0], [5.0, 0.0], [10.0, 0.0], [5.0, 8.0]];
        assert_eq!(fault_of_straight(&square), None);
        assert_eq!(fault_of_straight(&notched), None);
        assert_eq!(fault_of_straight(&corner_on_a_straight_side), None);
    }

    #[test]
    fn outlines_that_meet_themselves_are_named() {
        let bow_tie = [[0.0, 0.0], [10.0, 10.0], [10.0, 0.0], [0.0, 10.0]];
        let spike = [[0.0, 0.0], [10.0, 0.0], [5.0, 0.0], [5.0, 5.0]];
        let line = [[0.0, 0.0], [10.0, 0.0], [20.0, 0.0]];
        let touching = [[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [5.0, 0.0], [0.0, 10.0]];
        let twice = [[0.0, 0.0], [0.0, 0.0], [10.0, 0.0], [5.0, 5.0]];
        assert!(
            fault_of_straight(&bow_tie)
                .is_some_and(|words| words.contains("side from corner 1 meets the side from corner 3"))
        );
        assert!(fault_of_straight(&spike).is_some());
        assert!(fault_of_straight(&line).is_some());
        assert!(fault_of_straight(&touching).is_some());
        assert_eq!(fault_of_straight(&twice).as_deref(), Some("the corners 1 and 2 lie on one another"));
    }
}
