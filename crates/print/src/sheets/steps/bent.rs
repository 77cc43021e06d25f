//! What the bar, or the whole piece, looks like once something of it is bent.

use super::hatch::hatch;
use crate::drawing::{Item, Point, Text, at};
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::templates::faces::{Sample, samples};
use crate::sheets::templates::space::Plane;
use crate::sheets::type_sizes::CAPTION;
use fh_core::balance::Balance;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::Plan;
use fh_piece::vector::Vector;
use fh_piece::{Quality, piece};

/// The tallest picture.
const TALLEST_MM: f64 = 36.0;
/// Free above and below it.
const GAP_MM: f64 = 1.5;
/// What reaches farther than this, in mm, is not drawn.
const FARTHEST_MM: f64 = 1e6;

/// From the side, as the smith sees it, and from above.
const VIEWS: [(&str, Vector, Vector); 2] =
    [("side", [1.0, 0.0, 0.0], [0.0, 0.0, 1.0]), ("above", [1.0, 0.0, 0.0], [0.0, 1.0, 0.0])];

/// A bar or a piece as it is now.
pub(super) struct Now<'a> {
    pub(super) plan: &'a Plan,
    pub(super) balance: &'a Balance,
}

/// One segment on paper, in mm, up before down.
struct Faces {
    samples: Vec<Sample>,
    worked: bool,
}

/// A view of it on paper.
struct Seen {
    name: String,
    scale: f64,
    bounds: [[f64; 2]; 2],
    faces: Vec<Faces>,
}

impl Now<'_> {
    /// Whether something is bent that a picture tells.
    pub(super) fn is_bent(&self) -> bool {
        let segments = self.balance.bars.iter().flat_map(|bar| &bar.segments);
        let mut bends = segments.filter(|segment| segment.shape.is_some()).filter_map(|segment| segment.bent);
        bends.any(|bent| !matches!(bent, Bent::Twist { .. }))
    }

    /// The picture from where it shows most, named at the left; nothing where it cannot be drawn.
    pub(super) fn block(&self, worked: &dyn Fn(usize) -> bool, names_mm: f64, width: f64) -> Block {
        let room = [width - names_mm, TALLEST_MM];
        let mut best: Option<Seen> = None;
        for (name, right, up) in VIEWS {
            let plane = Plane { origin: [0.0; 3], right, up };
            let Some(seen) = self.seen(name, worked, plane, room) else { continue };
            // From the side, as it was on the strip, unless it shows clearly more from above.
            if best.as_ref().is_none_or(|best| seen.area() > 1.2 * best.area()) {
                best = Some(seen);
            }
        }
        best.map_or_else(Block::default, |seen| seen.block(names_mm))
    }

    /// One view of it, laid along the page where it stands upright.
    fn seen(&self, name: &str, worked: &dyn Fn(usize) -> bool, plane: Plane, room: [f64; 2]) -> Option<Seen> {
        let faces = self.faces(worked, plane);
        let [low, high] = bounds(&faces)?;
        if high[1] - low[1] > 1.3 * (high[0] - low[0]) {
            let faces = self.faces(worked, plane.quarter_turned());
            let bounds = bounds(&faces)?;
            return Some(Seen { name: format!("{name}, laid"), scale: scale_of(bounds, room), bounds, faces });
        }
        let bounds = [low, high];
        Some(Seen { name: name.to_owned(), scale: scale_of(bounds, room), bounds, faces })
    }

    fn faces(&self, worked: &dyn Fn(usize) -> bool, plane: Plane) -> Vec<Faces> {
        let piece = piece(self.plan, self.balance, Quality::Lines);
        let of_line = |line: &fh_piece::Line| {
            let balance = self.balance.bars.get(line.bar)?.segments.get(line.segment)?;
            let shape = balance.shape.as_ref().filter(|shape| !matches!(shape, Shape::Split(_)))?;
            let samples = samples(line, balance, shape, &plane);
            let sound = samples.iter().all(|sample| sample.middle.iter().all(|mm| mm.abs() < FARTHEST_MM));
            (sound && samples.len() > 1).then(|| Faces { samples, worked: worked(line.segment) })
        };
        piece.lines.iter().filter_map(of_line).collect()
    }
}

impl Seen {
    /// How much of it is seen, in mm².
    fn area(&self) -> f64 {
        let [low, high] = self.bounds;
        (high[0] - low[0]) * (high[1] - low[1])
    }

    fn block(&self, names_mm: f64) -> Block {
        let ([low, high], scale) = (self.bounds, self.scale);
        let place = |[x, y]: [f64; 2]| at(names_mm + (x - low[0]) * scale, GAP_MM + (high[1] - y) * scale);
        let mut items = Vec::new();
        for worked in [false, true] {
            let own = self.faces.iter().filter(|faces| faces.worked == worked);
            own.for_each(|faces| items.extend(drawn(faces, &place)));
        }
        let height = ((high[1] - low[1]) * scale + 2.0 * GAP_MM).max(3.0 * CAPTION);
        let words = if scale > 0.999 { "full size".to_owned() } else { format!("1 : {:.1}", 1.0 / scale) };
        for (line, words) in [self.name.as_str(), words.as_str()].iter().enumerate() {
            let y = GAP_MM + CAPTION * (0.8 + 1.2 * line as f64);
            items.push(Text::new(at(0.0, y), CAPTION, words).gray(Gray::DARK).into());
        }
        Block { height, items }
    }
}

/// The scale at which it fits, never larger than it is.
fn scale_of([low, high]: [[f64; 2]; 2], [width, height]: [f64; 2]) -> f64 {
    (width / (high[0] - low[0]).max(1e-6)).min(height / (high[1] - low[1]).max(1e-6)).min(1.0)
}

/// The lowest and the highest place of all; none where there is nothing.
fn bounds(all: &[Faces]) -> Option<[[f64; 2]; 2]> {
    let mut found: Option<[[f64; 2]; 2]> = None;
    for [x, y] in all.iter().flat_map(|faces| outline(&faces.samples)) {
        if !(x.is_finite() && y.is_finite()) {
            return None;
        }
        let [low, high] = found.get_or_insert([[x, y], [x, y]]);
        (*low, *high) = ([low[0].min(x), low[1].min(y)], [high[0].max(x), high[1].max(y)]);
    }
    found
}

/// Both faces of a segment, around it.
fn outline(samples: &[Sample]) -> Vec<[f64; 2]> {
    let left = samples.iter().map(|sample| sample.aside(sample.left));
    let right = samples.iter().rev().map(|sample| sample.aside(-sample.right));
    left.chain(right).collect()
}

fn drawn(faces: &Faces, place: &impl Fn([f64; 2]) -> Point) -> Vec<Item> {
    let points: Vec<Point> = outline(&faces.samples).into_iter().map(place).collect();
    if !faces.worked {
        let pen = Some(Pen::MarkLine);
        return vec![Item::Polygon { points, fill: Some(Gray::WHITE), pen }];
    }
    let mut items = vec![Item::Polygon { points: points.clone(), fill: Some(Gray::LIGHT), pen: None }];
    items.extend(hatch(&points));
    items.push(Item::Polygon { points, fill: None, pen: Some(Pen::Outline) });
    items
}
