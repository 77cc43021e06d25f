//! Cuts a drawing to a rectangle, so that it can be printed in parts.

use super::figure::{around, bounds};
use crate::drawing::{Item, Point, at};
use crate::paper::Area;
use crate::pen::Pen;

/// What of an item lies within an area. Words and filled areas are kept whole where their middle lies in `own`, moved
/// inside where they would be cut; lines are cut.
pub(super) fn clipped(item: &Item, area: Area, own: Area) -> Vec<Item> {
    match item {
        Item::Line { from, to, pen } => stretches(&[*from, *to], area, *pen),
        Item::Polyline { points, pen } => stretches(points, area, *pen),
        Item::Polygon { points, fill: None, pen: Some(pen) } => {
            let closed: Vec<Point> = points.iter().chain(points.first()).copied().collect();
            stretches(&closed, area, *pen)
        }
        Item::Polygon { .. } | Item::Text(_) => whole(item, area, own).into_iter().collect(),
    }
}

/// Words or a filled area, where its middle belongs to this part.
fn whole(item: &Item, area: Area, own: Area) -> Option<Item> {
    let space = bounds(item);
    let middle = at((space.left + space.right) / 2.0, (space.top + space.bottom) / 2.0);
    if !holds(own, middle) {
        return None;
    }
    let inward = |low: f64, high: f64, least: f64, most: f64| {
        (least - low).max(0.0).min((most - low).max(0.0)) + (most - high).min(0.0)
    };
    let dx = inward(space.left, space.right, area.left, area.right);
    let dy = inward(space.top, space.bottom, area.top, area.bottom);
    Some(item.clone().shifted(dx, dy))
}

fn holds(area: Area, point: Point) -> bool {
    point.x >= area.left && point.x < area.right && point.y >= area.top && point.y < area.bottom
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
