//! A member of a run as it is drawn: its faces, its middle line, its outline.

use super::faces::{Sample, apex, turning};
use super::figure::cross;
use super::on_paper::{left_face, line_points, on_paper, right_face};
use super::plate::Plate;
use super::runs::Member;
use crate::drawing::{Item, Point};
use crate::pen::Pen;
use fh_core::balance::SegmentBalance;
use fh_core::metal::Shape;

/// A member of a run as it is drawn.
pub(super) struct Drawn<'a> {
    pub(super) member: Member,
    pub(super) balance: &'a SegmentBalance,
    pub(super) shape: &'a Shape,
    pub(super) samples: Vec<Sample>,
    /// Whether its line bends.
    pub(super) bends: bool,
    /// What is flat and lies on its width.
    pub(super) plate: Option<Plate>,
    pub(super) path: String,
}

impl Drawn<'_> {
    /// The lines of its metal's edge.
    pub(super) fn outline(&self) -> Vec<Item> {
        let is_edge = |item: &Item| match item {
            Item::Line { pen, .. } | Item::Polyline { pen, .. } => *pen == Pen::Outline,
            Item::Polygon { pen, .. } => *pen == Some(Pen::Outline),
            Item::Text(_) => false,
        };
        faces(self).into_iter().filter(is_edge).collect()
    }
}

/// Places along the outside of sharp corners, and along outlines and holes.
pub(super) fn outline_points(drawn: &[Drawn<'_>]) -> Vec<Point> {
    let own = |member: &&Drawn<'_>| member.plate.is_some() || apex(&member.samples, member.balance).is_some();
    let outlines = drawn.iter().filter(own).flat_map(faces);
    outlines.flat_map(|item| line_points(&item)).collect()
}

/// Both faces and the middle line.
pub(super) fn faces(drawn: &Drawn<'_>) -> Vec<Item> {
    let line = |place: fn(&Sample) -> [f64; 2], pen| {
        let points = drawn.samples.iter().map(|sample| on_paper(place(sample))).collect();
        Item::Polyline { points, pen }
    };
    let middle = line(|sample| sample.middle, Pen::CenterLine);
    if let Some(plate) = &drawn.plate {
        return flat_items(plate).into_iter().chain([middle]).collect();
    }
    let mut items = vec![line(left_face, Pen::Outline), line(right_face, Pen::Outline)];
    if let Some(apex) = apex(&drawn.samples, drawn.balance) {
        let outside = if turning(&drawn.samples) > 0.0 { right_face } else { left_face };
        let ends = [drawn.samples.first(), drawn.samples.last()].map(|end| end.map(outside).unwrap_or(apex));
        let points = [ends[0], apex, ends[1]].map(on_paper).to_vec();
        let index = if turning(&drawn.samples) > 0.0 { 1 } else { 0 };
        items[index] = Item::Polyline { points, pen: Pen::Outline };
    }
    items.push(middle);
    items
}

/// The outline of what lies on its width, and its holes with a cross.
fn flat_items(plate: &Plate) -> Vec<Item> {
    let closed = |points: &[[f64; 2]]| {
        let points = points.iter().copied().map(on_paper).collect();
        Item::Polygon { points, fill: None, pen: Some(Pen::Outline) }
    };
    let mut items = vec![closed(&plate.outline)];
    for (hole, middle) in &plate.holes {
        items.push(closed(hole));
        items.extend(cross(on_paper(*middle)));
    }
    items
}
