//! What is cut along the bar and through it, drawn on a row of the strip: slits, their roots, marks on branches, holes.

use super::rows::Row;
use super::words::{BranchMark, Root, Slit, StripHole};
use crate::drawing::{Item, Point, at};
use crate::pen::{Gray, Pen};
use std::f64::consts::TAU;

/// How far a mark on a branch, or the line through a hole, stands out beyond the bar.
const STAND_OUT_MM: f64 = 4.5;
/// How far the line through a hole stands out.
const HOLE_OUT_MM: f64 = 3.2;
/// Half the width of the cross at the middle of a hole.
const CROSS_MM: f64 = 3.0;
/// Corners of a drawn circle.
const CORNERS: u32 = 32;

/// Where things lie on paper in one row.
#[derive(Clone, Copy)]
pub(super) struct OnRow {
    /// The row.
    pub(super) row: Row,
    /// The bar's datum end, in mm to the right.
    pub(super) zero: f64,
    /// The upper edge of the bar.
    pub(super) top: f64,
    /// The lower edge of the bar.
    pub(super) bottom: f64,
    /// The height that the bar has in truth, in mm.
    pub(super) height_mm: f64,
}

impl OnRow {
    fn x(self, place: f64) -> f64 {
        self.zero + place
    }

    /// The height on paper of a place so far above the bar's middle.
    fn y(self, above: f64) -> f64 {
        let scale = if self.height_mm > 0.0 { (self.bottom - self.top) / self.height_mm } else { 1.0 };
        (self.top + self.bottom) / 2.0 - above * scale
    }

    /// A slit: its cuts, and its roots.
    pub(super) fn slit(self, slit: &Slit) -> Vec<Item> {
        let pen = if slit.on_face { Pen::CutLine } else { Pen::Dashed };
        let first = slit.roots.iter().map(|root| root.at_mm).filter(|at| *at - slit.start_mm < slit.end_mm - *at);
        let last = slit.roots.iter().map(|root| root.at_mm).filter(|at| *at - slit.start_mm > slit.end_mm - *at);
        let from = first.fold(slit.start_mm, f64::max).max(self.row.start);
        let to = last.fold(slit.end_mm, f64::min).min(self.row.end);
        if from >= to {
            return Vec::new();
        }
        let line = |cut: &f64| Item::line(at(self.x(from), self.y(*cut)), at(self.x(to), self.y(*cut)), pen);
        let mut items: Vec<Item> = slit.cuts_mm.iter().map(line).collect();
        let shown = slit.roots.iter().filter(|root| self.row.shows(root.at_mm));
        let cuts = slit.cuts_mm.iter().filter(|_| slit.on_face);
        items.extend(shown.flat_map(|root| cuts.clone().flat_map(move |cut| self.root(root, *cut))));
        items
    }

    fn root(self, root: &Root, cut: f64) -> Vec<Item> {
        let middle = at(self.x(root.at_mm), self.y(cut));
        let mut items =
            vec![Item::Polygon { points: circle(middle, root.radius_mm), fill: None, pen: Some(Pen::MarkLine) }];
        if root.is_hole {
            items.extend(cross(middle, root.radius_mm + 1.5));
        }
        items
    }

    /// A mark on a branch: across the branch, and out beyond the bar on the branch's side; with a spot where it is punched.
    pub(super) fn branch_mark(self, mark: &BranchMark) -> Vec<Item> {
        let x = self.x(mark.at_mm);
        let (inner, outer) = if mark.above {
            (self.y(mark.band_mm[0]), self.top - STAND_OUT_MM)
        } else {
            (self.y(mark.band_mm[1]), self.bottom + STAND_OUT_MM)
        };
        let line = Item::line(at(x, inner), at(x, outer), Pen::MarkLine);
        let middle = at(x, self.y(f64::midpoint(mark.band_mm[0], mark.band_mm[1])));
        let spot = mark.is_punched.then(|| punch_spot(middle));
        [line].into_iter().chain(spot).collect()
    }

    /// The middle of a hole: a line across that stands out toward its figure, and a cross. A root hole is drawn with its slit:
    /// there the line goes as far as the hole.
    pub(super) fn hole(self, hole: &StripHole) -> Vec<Item> {
        let x = self.x(hole.at_mm);
        let ys = hole.across_mm.iter().map(|across| self.y(*across));
        let (upper, lower) =
            ys.clone().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| (low.min(y), high.max(y)));
        let [over, under] = [self.top - HOLE_OUT_MM, self.bottom + HOLE_OUT_MM];
        let [from, to] = match (hole.above, hole.is_root) {
            (true, true) => [over, lower],
            (false, true) => [upper, under],
            (_, false) => [over, under],
        };
        let out = if hole.above { [over, self.top - STAND_OUT_MM] } else { [under, self.bottom + STAND_OUT_MM] };
        let mut items = vec![
            Item::line(at(x, from), at(x, to), Pen::CenterLine),
            Item::line(at(x, out[0]), at(x, out[1]), Pen::Leader),
        ];
        if !hole.is_root {
            items.extend(ys.flat_map(|y| {
                let along = Item::line(at(x - CROSS_MM, y), at(x + CROSS_MM, y), Pen::MarkLine);
                [along, Item::line(at(x, y - CROSS_MM), at(x, y + CROSS_MM), Pen::MarkLine)]
            }));
        }
        items
    }
}

/// A spot where the punch is set.
pub(super) fn punch_spot(middle: Point) -> Item {
    const RADIUS_MM: f64 = 0.9;
    Item::Polygon { points: circle(middle, RADIUS_MM), fill: Some(Gray::BLACK), pen: None }
}

fn circle(middle: Point, radius: f64) -> Vec<Point> {
    let corner = |step: u32| {
        let (sin, cos) = (TAU * f64::from(step) / f64::from(CORNERS)).sin_cos();
        at(middle.x + radius * cos, middle.y + radius * sin)
    };
    (0..CORNERS).map(corner).collect()
}

fn cross(middle: Point, half: f64) -> Vec<Item> {
    let (x, y) = (middle.x, middle.y);
    vec![
        Item::line(at(x - half, y), at(x + half, y), Pen::Dimension),
        Item::line(at(x, y - half), at(x, y + half), Pen::Dimension),
    ]
}
