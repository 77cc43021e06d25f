//! Cutting a polygon off at the edges of the window, so that a bar of a thousand kilometres is no more work than a short one.

use egui::{Pos2, Rect, pos2};

/// The part of a polygon that lies in a rectangle: edge by edge, what lies outside is cut off.
pub(super) fn clipped(points: Vec<Pos2>, to: Rect) -> Vec<Pos2> {
    if points.iter().all(|point| to.contains(*point)) {
        return points;
    }
    let points = cut(&points, |at| at.x - to.left());
    let points = cut(&points, |at| to.right() - at.x);
    let points = cut(&points, |at| at.y - to.top());
    cut(&points, |at| to.bottom() - at.y)
}

/// A polygon without corners too close to be told apart: a line around them would grow thorns.
pub(super) fn without_crowding(points: Vec<Pos2>) -> Vec<Pos2> {
    const CLOSE: f32 = 0.75;
    let mut kept: Vec<Pos2> = Vec::with_capacity(points.len());
    for point in points {
        if kept.last().is_none_or(|last| last.distance(point) > CLOSE) {
            kept.push(point);
        }
    }
    while kept.len() > 1 && kept.first().zip(kept.last()).is_some_and(|(first, last)| first.distance(*last) <= CLOSE) {
        kept.pop();
    }
    kept
}

/// The edge of a polygon as open lines, parted at its sharp corners: a line bent round one would grow a thorn.
pub(super) fn parted(points: &[Pos2]) -> Vec<Vec<Pos2>> {
    let count = points.len();
    let at = |index: usize| points.get(index % count.max(1)).copied().unwrap_or_default();
    let is_sharp = |index: usize| {
        let (back, on) = (at(index + count - 1) - at(index), at(index + 1) - at(index));
        back.normalized().dot(on.normalized()) > 0.5
    };
    let Some(first) = (0..count).find(|index| is_sharp(*index)) else {
        let around = points.iter().chain(points.first()).copied().collect();
        return vec![around];
    };
    let mut lines = vec![vec![at(first)]];
    for index in first + 1..=first + count {
        if let Some(line) = lines.last_mut() {
            line.push(at(index));
        }
        if is_sharp(index % count) && index < first + count {
            lines.push(vec![at(index)]);
        }
    }
    lines
}

/// The part of a polygon that lies at or above 0 of a linear measure.
fn cut(points: &[Pos2], inside: impl Fn(Pos2) -> f32) -> Vec<Pos2> {
    let mut kept = Vec::with_capacity(points.len() + 4);
    let before = points.iter().cycle().skip(points.len().saturating_sub(1));
    for (from, to) in before.zip(points) {
        let (at_from, at_to) = (inside(*from), inside(*to));
        if (at_from < 0.0) != (at_to < 0.0) {
            let share = at_from / (at_from - at_to);
            kept.push(pos2(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share));
        }
        if at_to >= 0.0 {
            kept.push(*to);
        }
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rect() -> Rect {
        Rect::from_min_max(pos2(0.0, 0.0), pos2(100.0, 100.0))
    }

    #[test]
    fn what_lies_inside_stays() {
        let points = vec![pos2(10.0, 10.0), pos2(90.0, 10.0), pos2(50.0, 90.0)];
        assert_eq!(clipped(points.clone(), rect()), points);
    }

    #[test]
    fn a_bar_far_longer_than_the_window_is_cut_at_its_edges() {
        let points = vec![pos2(-1e6, 40.0), pos2(1e6, 40.0), pos2(1e6, 60.0), pos2(-1e6, 60.0)];
        let kept = clipped(points, rect());
        assert_eq!(Rect::from_points(&kept), Rect::from_min_max(pos2(0.0, 40.0), pos2(100.0, 60.0)));
    }

    #[test]
    fn corners_too_close_are_one() {
        let points = vec![pos2(0.0, 0.0), pos2(0.1, 0.0), pos2(9.0, 0.0), pos2(9.0, 9.0), pos2(0.0, 0.2)];
        assert_eq!(without_crowding(points), [pos2(0.0, 0.0), pos2(9.0, 0.0), pos2(9.0, 9.0)]);
    }

    #[test]
    fn an_edge_is_parted_at_sharp_corners_only() {
        let square = [pos2(0.0, 0.0), pos2(9.0, 0.0), pos2(9.0, 9.0), pos2(0.0, 9.0)];
        assert_eq!(parted(&square).len(), 1);
        let point = [pos2(0.0, 5.0), pos2(60.0, 0.0), pos2(60.0, 10.0)];
        assert_eq!(parted(&point), [vec![pos2(0.0, 5.0), pos2(60.0, 0.0), pos2(60.0, 10.0), pos2(0.0, 5.0)]]);
        assert!(parted(&[]).concat().is_empty());
    }

    #[test]
    fn what_lies_outside_is_gone() {
        assert!(clipped(vec![pos2(200.0, 0.0), pos2(300.0, 0.0), pos2(250.0, 50.0)], rect()).is_empty());
        assert!(clipped(Vec::new(), rect()).is_empty());
    }
}
