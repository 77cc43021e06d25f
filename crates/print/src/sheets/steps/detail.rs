//! A worked bend by itself, larger: what is worked, and a little of what is beside it.

use super::faces::Faces;
use crate::drawing::{Item, Point};
use crate::pen::{Gray, Pen};
use crate::sheets::templates::faces::Sample;

/// How much is shown beside what is worked, in mm of the piece.
const BESIDE_MM: f64 = 50.0;
/// How far a broken-off end runs to and fro, on paper.
const BREAK_MM: f64 = 0.9;
/// More places than this are no bend.
const MOST_WORKED: usize = 2_000;

/// A stretch of a segment, perhaps broken off at its ends.
pub(super) struct Stretch {
    pub(super) faces: Faces,
    broken: [bool; 2],
}

/// What is worked and what lies beside it; nothing where nothing is worked.
pub(super) fn stretches(all: &[Faces]) -> Vec<Stretch> {
    let own = all.iter().filter(|faces| faces.worked);
    let worked: Vec<[f64; 2]> = own.flat_map(|faces| &faces.samples).map(|sample| sample.middle).collect();
    // Every few places are enough to measure from.
    let every = worked.len().div_ceil(MOST_WORKED).max(1);
    let near = |sample: &Sample| {
        let [x, y] = sample.middle;
        worked.iter().step_by(every).any(|[to_x, to_y]| (x - to_x).hypot(y - to_y) <= BESIDE_MM)
    };
    all.iter().flat_map(|faces| near_stretches(faces, &near)).collect()
}

/// The stretches of one segment that are near enough.
fn near_stretches(faces: &Faces, near: &impl Fn(&Sample) -> bool) -> Vec<Stretch> {
    let shown: Vec<bool> = faces.samples.iter().map(|sample| faces.worked || near(sample)).collect();
    let last = shown.len().saturating_sub(1);
    let (mut all, mut start) = (Vec::new(), 0);
    for run in shown.chunk_by(|one, next| one == next) {
        let end = start + run.len() - 1;
        if run[0] && run.len() > 1 {
            let own = Faces {
                samples: faces.samples[start..=end].to_vec(),
                worked: faces.worked,
                bent: faces.bent,
                note: faces.note.clone(),
                seen: faces.seen.clone().filter(|_| end + 1 - start == faces.samples.len()),
            };
            all.push(Stretch { faces: own, broken: [start > 0, end < last] });
        }
        start = end + 1;
    }
    all
}

impl Stretch {
    /// A whole segment.
    pub(super) fn whole(faces: Faces) -> Self {
        Self { faces, broken: [false, false] }
    }

    /// Its metal and its edges.
    pub(super) fn drawn(&self, place: &impl Fn([f64; 2]) -> Point) -> Vec<Item> {
        if self.broken == [false, false] {
            return self.faces.drawn(place);
        }
        let samples = &self.faces.samples;
        let side = |sign: f64| {
            move |sample: &Sample| place(sample.aside(if sign > 0.0 { sample.left } else { -sample.right }))
        };
        let left: Vec<Point> = samples.iter().map(side(1.0)).collect();
        let right: Vec<Point> = samples.iter().map(side(-1.0)).collect();
        let metal = left.iter().chain(right.iter().rev()).copied().collect();
        let ends = [(left.first(), right.first()), (left.last(), right.last())];
        let ends = ends.into_iter().zip(self.broken).filter_map(|((from, to), broken)| Some(end(*from?, *to?, broken)));
        let mut items = vec![Item::Polygon { points: metal, fill: Some(Gray::WHITE), pen: None }];
        items.extend(ends);
        items.extend([left.clone(), right.clone()].map(|points| Item::Polyline { points, pen: Pen::MarkLine }));
        items
    }
}

/// An end of a stretch: straight across, or broken off.
fn end(from: Point, to: Point, broken: bool) -> Item {
    if !broken {
        return Item::line(from, to, Pen::MarkLine);
    }
    let (across_x, across_y) = (to.x - from.x, to.y - from.y);
    let long = across_x.hypot(across_y).max(1e-9);
    let aside = [-across_y / long * BREAK_MM, across_x / long * BREAK_MM];
    let between = |share: f64, to: f64| Point {
        x: from.x + across_x * share + aside[0] * to,
        y: from.y + across_y * share + aside[1] * to,
    };
    let points = vec![from, between(0.4, 0.0), between(0.42, 1.0), between(0.58, -1.0), between(0.6, 0.0), to];
    Item::Polyline { points, pen: Pen::Hairline }
}
