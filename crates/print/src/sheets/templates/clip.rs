//! Cuts a drawing to a rectangle, so that it can be printed in parts.

use super::figure::{around, bounds, union};
use crate::drawing::{Item, Point, Text, at};
use crate::paper::Area;
use crate::pen::Pen;

/// What of a drawing is cut at the edge of a part, and what stays whole.
pub(super) enum Piece<'a> {
    /// A line, cut where the part ends.
    Stroke(&'a Item),
    /// A cross at a center: whole on every part that has room for it.
    Cross(Vec<&'a Item>),
    /// Words, with the box that they stand in: whole on one part.
    Words(Vec<&'a Item>),
}

/// The items of a drawing as pieces, in order.
pub(super) fn pieces(items: &[Item]) -> Vec<Piece<'_>> {
    let mut pieces = Vec::new();
    let mut rest = items;
    while let Some((first, after)) = rest.split_first() {
        let second = after.first();
        let (piece, taken) = match (first, second) {
            (Item::Line { pen: Pen::JoinCross, .. }, Some(second @ Item::Line { pen: Pen::JoinCross, .. })) => {
                (Piece::Cross(vec![first, second]), 2)
            }
            (Item::Polygon { fill: Some(_), .. }, Some(second @ Item::Text(_))) => {
                (Piece::Words(vec![first, second]), 2)
            }
            (Item::Polygon { fill: Some(_), .. } | Item::Text(_), _) => (Piece::Words(vec![first]), 1),
            _ => (Piece::Stroke(first), 1),
        };
        pieces.push(piece);
        rest = rest.get(taken..).unwrap_or_default();
    }
    pieces
}

/// The space that some items take.
pub(super) fn space(items: &[&Item]) -> Option<Area> {
    items.iter().map(|item| bounds(item)).reduce(union)
}

/// What of a line lies within an area.
pub(super) fn clipped(item: &Item, area: Area) -> Vec<Item> {
    match item {
        Item::Line { from, to, pen } => stretches(&[*from, *to], area, *pen),
        Item::Polyline { points, pen } => stretches(points, area, *pen),
        Item::Polygon { points, pen: Some(pen), .. } => stretches(&closed(points), area, *pen),
        Item::Polygon { .. } | Item::Text(_) => Vec::new(),
    }
}

/// The corners of a line, the first of a closed one again at its end.
pub(super) fn corners(item: &Item) -> Vec<Point> {
    match item {
        Item::Line { from, to, .. } => vec![*from, *to],
        Item::Polyline { points, .. } => points.clone(),
        Item::Polygon { points, .. } => closed(points),
        Item::Text(Text { .. }) => Vec::new(),
    }
}

fn closed(points: &[Point]) -> Vec<Point> {
    points.iter().chain(points.first()).copied().collect()
}

/// How far a space has to be moved, right and down, to lie within an area.
pub(super) fn inward(space: Area, area: Area) -> [f64; 2] {
    let inward = |low: f64, high: f64, least: f64, most: f64| {
        (least - low).max(0.0).min((most - low).max(0.0)) + (most - high).min(0.0)
    };
    [inward(space.left, space.right, area.left, area.right), inward(space.top, space.bottom, area.top, area.bottom)]
}

/// Whether an area holds a place.
pub(super) fn holds(area: Area, point: Point) -> bool {
    point.x >= area.left && point.x <= area.right && point.y >= area.top && point.y <= area.bottom
}

/// The stretches of a line within an area.
fn stretches(points: &[Point], area: Area, pen: Pen) -> Vec<Item> {
    let space = around(points);
    if space.left >= area.left && space.right <= area.right && space.top >= area.top && space.bottom <= area.bottom {
        return vec![Item::Polyline { points: points.to_vec(), pen }];
    }
    let mut items = Vec::new();
    let mut now: Vec<Point> = Vec::new();
    for pair in points.windows(2) {
        let Some([from, to]) = within([pair[0], pair[1]], area) else { continue };
        if now.last() != Some(&from) {
            items.extend(polyline(std::mem::take(&mut now), pen));
            now.push(from);
        }
        now.push(to);
    }
    items.extend(polyline(now, pen));
    items
}

fn polyline(points: Vec<Point>, pen: Pen) -> Option<Item> {
    (points.len() > 1).then_some(Item::Polyline { points, pen })
}

/// The part of a straight line within an area, cut at each edge in turn (Liang and Barsky's way).
fn within([from, to]: [Point; 2], area: Area) -> Option<[Point; 2]> {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    let edges =
        [(-dx, from.x - area.left), (dx, area.right - from.x), (-dy, from.y - area.top), (dy, area.bottom - from.y)];
    for (speed, room) in edges {
        if speed == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if speed < 0.0 {
            enter = enter.max(room / speed);
        } else {
            leave = leave.min(room / speed);
        }
    }
    let place = |share: f64| match share {
        0.0 => from,
        1.0 => to,
        share => at(from.x + dx * share, from.y + dy * share),
    };
    (enter < leave).then(|| [place(enter), place(leave)])
}

#[cfg(test)]
mod tests {
    use super::*;

    const AREA: Area = Area { left: 0.0, top: 0.0, right: 10.0, bottom: 10.0 };

    #[test]
    fn a_line_is_cut_at_the_edges() {
        let cut = within([at(-5.0, 5.0), at(15.0, 5.0)], AREA);
        assert_eq!(cut, Some([at(0.0, 5.0), at(10.0, 5.0)]));
        assert_eq!(within([at(-5.0, 12.0), at(15.0, 12.0)], AREA), None);
        assert_eq!(within([at(2.0, 2.0), at(3.0, 3.0)], AREA), Some([at(2.0, 2.0), at(3.0, 3.0)]));
    }

    #[test]
    fn a_polyline_that_leaves_and_comes_back_is_two() {
        let points = [at(5.0, 5.0), at(5.0, 15.0), at(8.0, 15.0), at(8.0, 5.0)];
        let parts = stretches(&points, AREA, Pen::Outline);
        assert_eq!(parts.len(), 2, "{parts:?}");
    }
}
