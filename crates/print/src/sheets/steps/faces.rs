//! One segment on paper: its metal, and what is said of its bend.

use super::bend_notes::BendNote;
use super::hatch::hatch;
use super::outline::{outline, seen_edges};
use crate::drawing::{Item, Point, at};
use crate::pen::{Gray, Pen};
use crate::sheets::templates::faces::Sample;
use fh_piece::Seen as Outline;

/// One segment on paper, in mm, up before down.
#[derive(Clone)]
pub(super) struct Faces {
    pub(super) samples: Vec<Sample>,
    pub(super) worked: bool,
    /// Whether it is bent so that a picture tells it.
    pub(super) bent: bool,
    /// What is said of it where it is bent.
    pub(super) note: Option<BendNote>,
    /// What is seen of the whole of it; none of a stretch.
    pub(super) seen: Option<Outline>,
}

impl Faces {
    /// Its outline, in one line round all its metal.
    pub(super) fn outline(&self) -> Vec<[f64; 2]> {
        self.seen.as_ref().map_or_else(|| outline(&self.samples), Outline::area)
    }

    /// The whole segment: hatched where it is worked.
    pub(super) fn drawn(&self, place: &impl Fn([f64; 2]) -> Point) -> Vec<Item> {
        let points: Vec<Point> = self.outline().into_iter().map(place).collect();
        let (fill, pen) = if self.worked { (Gray::LIGHT, Pen::Outline) } else { (Gray::WHITE, Pen::MarkLine) };
        let mut items = vec![Item::Polygon { points: points.clone(), fill: Some(fill), pen: None }];
        if self.worked {
            items.extend(hatch(&points));
        }
        match &self.seen {
            Some(seen) => items.extend(seen_edges(seen, pen, place)),
            None => items.push(Item::Polygon { points, fill: None, pen: Some(pen) }),
        }
        items
    }
}

/// The outlines of some faces on paper, with places along them as close as words are small.
pub(super) fn outlines<'a>(
    all: impl Iterator<Item = &'a Faces>,
    place: &impl Fn([f64; 2]) -> Point,
) -> Vec<Vec<Point>> {
    all.map(|faces| close_places(&faces.outline().into_iter().map(place).collect::<Vec<_>>())).collect()
}

/// A closed line with a place on each so many mm of it.
fn close_places(outline: &[Point]) -> Vec<Point> {
    const APART_MM: f64 = 0.8;
    const MOST: f64 = 2_000.0;
    let between = |(from, to): (&Point, &Point)| {
        let steps = ((to.x - from.x).hypot(to.y - from.y) / APART_MM).ceil().clamp(1.0, MOST) as usize;
        let (from, to) = (*from, *to);
        (0..steps).map(move |step| {
            let share = step as f64 / steps as f64;
            at(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share)
        })
    };
    outline.iter().zip(outline.iter().cycle().skip(1)).flat_map(between).collect()
}
