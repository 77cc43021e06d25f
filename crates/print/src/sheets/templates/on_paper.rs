//! Places of a template on paper.

use super::faces::Sample;
use crate::drawing::{Item, Point, at};

/// A place on paper: up is up.
pub(super) fn on_paper([x, y]: [f64; 2]) -> Point {
    at(x, -y)
}

pub(super) fn left_face(sample: &Sample) -> [f64; 2] {
    sample.aside(sample.left)
}

pub(super) fn right_face(sample: &Sample) -> [f64; 2] {
    sample.aside(-sample.right)
}

/// The places of both faces.
pub(super) fn edge_points(samples: &[Sample]) -> impl Iterator<Item = Point> {
    samples.iter().flat_map(|sample| [left_face(sample), right_face(sample)].map(on_paper))
}

/// Places along the lines of an item, close together.
pub(super) fn line_points(item: &Item) -> Vec<Point> {
    let points = match item {
        Item::Line { from, to, .. } => vec![*from, *to],
        Item::Polyline { points, .. } | Item::Polygon { points, .. } => points.clone(),
        Item::Text(_) => Vec::new(),
    };
    let between = |pair: &[Point]| {
        let [a, b] = [pair[0], pair[1]];
        let steps = ((b.x - a.x).hypot(b.y - a.y) / 1.5).ceil().clamp(1.0, 200.0) as u32;
        (0..=steps).map(move |step| {
            let share = f64::from(step) / f64::from(steps);
            at(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)
        })
    };
    points.windows(2).flat_map(between).collect()
}
