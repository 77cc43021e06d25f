//! The outline of a segment: what is seen of its solid, or both faces of a stretch of it.

use crate::drawing::{Item, Point};
use crate::pen::Pen;
use crate::sheets::templates::faces::Sample;
use fh_piece::Seen;

/// The edges of what is seen with a pen, and the arrises between them thin.
pub(super) fn seen_edges(seen: &Seen, pen: Pen, place: &impl Fn([f64; 2]) -> Point) -> Vec<Item> {
    let on_paper = |points: &Vec<[f64; 2]>| points.iter().map(|point| place(*point)).collect::<Vec<Point>>();
    let edges =
        seen.outline.iter().map(|points| Item::Polygon { points: on_paper(points), fill: None, pen: Some(pen) });
    let arrises = seen.arrises.iter().map(|points| Item::Polyline { points: on_paper(points), pen: Pen::Hairline });
    edges.chain(arrises).collect()
}

/// Both faces of a stretch of a segment, around it.
pub(super) fn outline(samples: &[Sample]) -> Vec<[f64; 2]> {
    let left = samples.iter().map(|sample| sample.aside(sample.left));
    let right = samples.iter().rev().map(|sample| sample.aside(-sample.right));
    left.chain(right).collect()
}
