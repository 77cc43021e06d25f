//! The running totals above a row of the strip: level where they fit, upright where marks are close together.

use super::words::{BranchMark, StripHole, StripMark};
use crate::drawing::{Item, Point, Text, at};
use crate::fonts::{CAP_HEIGHT, Weight};
use crate::pen::{Gray, Pen};
use crate::sheets::spread::spread;
use crate::sheets::type_sizes::FIGURE;
use crate::typeset;

/// The height that leaders have to reach labels that were moved aside.
const LEADER_MM: f64 = 7.0;
/// The height of level labels with their leaders.
pub(super) const LEVEL_MM: f64 = LEADER_MM + FIGURE * CAP_HEIGHT + 1.4;
/// The farthest that a label may be moved from its mark before the row turns its labels upright, or sets them smaller.
const FARTHEST_MM: f64 = 24.0;
/// Upright labels of a row that would not fit the page otherwise.
pub(super) const CLOSER: f64 = 0.8 * FIGURE;
/// The space between two labels.
const GAP_MM: f64 = 2.5;
/// The space between two upright labels.
const UPRIGHT_GAP_MM: f64 = 1.5;
/// The space around a number in its box.
const BOX_PAD_MM: f64 = 0.9;
/// The space between box and total, as a share of the em: a box that touches its total reads as one figure.
const BOX_GAP: f64 = 0.36;
/// What stands in the box of a hole.
const HOLE: &str = "hole";

/// One label: a number in a box, and a running total. The datum has no number.
pub(super) struct Label {
    mark_x: f64,
    number: Option<String>,
    total: String,
    /// Whether its number stands in a frame instead of a black box: on a branch.
    framed: bool,
}

impl Label {
    /// The label of the datum end at `x`.
    pub(super) fn datum(x: f64) -> Self {
        Self { mark_x: x, number: None, total: "0".to_owned(), framed: false }
    }

    /// The label of a mark at `x`.
    pub(super) fn of(mark: &StripMark, x: f64) -> Self {
        Self { mark_x: x, number: Some(mark.number.clone()), total: typeset::printable(&mark.total), framed: false }
    }

    /// The label of a mark on a branch at `x`.
    pub(super) fn of_branch(mark: &BranchMark, x: f64) -> Self {
        Self { mark_x: x, number: Some(mark.path.clone()), total: typeset::printable(&mark.total), framed: true }
    }

    /// The label of the middle of a hole at `x`.
    pub(super) fn of_hole(hole: &StripHole, x: f64) -> Self {
        Self { mark_x: x, number: Some(HOLE.to_owned()), total: typeset::printable(&hole.total), framed: true }
    }

    /// The box of a number, and the ink in it.
    fn number_box(&self, corner: Point, opposite: Point) -> (Item, Gray) {
        if self.framed {
            (Item::rectangle(corner, opposite, Some(Gray::WHITE), Some(Pen::Leader)), Gray::BLACK)
        } else {
            (Item::rectangle(corner, opposite, Some(Gray::BLACK), None), Gray::WHITE)
        }
    }

    fn box_mm(&self, size: f64) -> f64 {
        let padded = |number: &String| typeset::width_mm(number, size, Weight::SemiBold) + 2.0 * BOX_PAD_MM;
        self.number.as_ref().map_or(0.0, padded)
    }

    /// Between the box and the total.
    fn gap_mm(&self, size: f64) -> f64 {
        if self.number.is_some() { BOX_GAP * size } else { 0.0 }
    }

    fn length_mm(&self, size: f64) -> f64 {
        self.box_mm(size) + self.gap_mm(size) + typeset::width_mm(&self.total, size, Weight::SemiBold)
    }
}

/// The labels of one row, placed.
pub(super) struct PlacedLabels {
    gave_up: bool,
    labels: Vec<Label>,
    places: Vec<f64>,
    size: f64,
    upright: bool,
}

impl PlacedLabels {
    /// Places the labels between `low` and `high`, upright ones no smaller and no larger than two ems. Where even the smallest
    /// upright ones have no room, none is placed.
    pub(super) fn place(mut labels: Vec<Label>, low: f64, high: f64, [least, largest]: [f64; 2]) -> Self {
        labels.sort_by(|a, b| a.mark_x.total_cmp(&b.mark_x));
        if let Some(places) = level_places(&labels, low, high) {
            return Self { gave_up: false, labels, places, size: FIGURE, upright: false };
        }
        for size in [FIGURE, CLOSER, 0.7 * FIGURE, least].into_iter().filter(|size| *size <= largest) {
            if let Some(places) = upright_places(&labels, [size, least], low, high) {
                return Self { gave_up: false, labels, places, size, upright: true };
            }
        }
        Self { gave_up: true, labels: Vec::new(), places: Vec::new(), size: FIGURE, upright: false }
    }

    /// Whether the marks were too close together to be labelled.
    pub(super) fn gave_up(&self) -> bool {
        self.gave_up
    }

    /// The height from the top of the labels down to the marks, in mm.
    pub(super) fn height_mm(&self) -> f64 {
        let longest = self.labels.iter().map(|label| label.length_mm(self.size)).fold(0.0, f64::max);
        LEADER_MM + if self.upright { longest } else { box_height(self.size) }
    }

    /// The same, and nothing where there is no label.
    pub(super) fn height_if_any_mm(&self) -> f64 {
        if self.labels.is_empty() { 0.0 } else { self.height_mm() }
    }

    /// The labels with their leaders below marks whose feet are at height `y`.
    pub(super) fn items_below(&self, y: f64) -> Vec<Item> {
        self.items_with_leaders(y, y + LEADER_MM - 0.6, y + self.height_mm())
    }

    /// The labels with their leaders, the tops of the marks at height `y`.
    pub(super) fn items(&self, y: f64) -> Vec<Item> {
        self.items_with_leaders(y, y - LEADER_MM + 0.6, y - LEADER_MM)
    }

    /// The labels with their feet at a height, each with its leader from its mark at height `y` to `head`.
    fn items_with_leaders(&self, y: f64, head: f64, foot: f64) -> Vec<Item> {
        let draw = |(label, x): (&Label, &f64)| {
            let mut items = vec![Item::line(at(label.mark_x, y), at(*x, head), Pen::Leader)];
            items.extend(if self.upright {
                self.upright_items(label, *x, foot)
            } else {
                self.level_items(label, *x, foot)
            });
            items
        };
        self.labels.iter().zip(&self.places).flat_map(draw).collect()
    }

    fn level_items(&self, label: &Label, x: f64, foot: f64) -> Vec<Item> {
        let left = x - label.length_mm(self.size) / 2.0;
        let (box_width, box_height) = (label.box_mm(self.size), box_height(self.size));
        let baseline = foot - (box_height - self.size * CAP_HEIGHT) / 2.0;
        let mut items = Vec::new();
        if let Some(number) = &label.number {
            let (corner, opposite) = (at(left, foot - box_height), at(left + box_width, foot));
            let (frame, ink) = label.number_box(corner, opposite);
            items.push(frame);
            let number = Text::new(at(left + box_width / 2.0, baseline), self.size, number);
            items.push(number.centered().bold().gray(ink).into());
        }
        let total_left = left + box_width + label.gap_mm(self.size);
        items.push(Text::new(at(total_left, baseline), self.size, &label.total).bold().into());
        items
    }

    fn upright_items(&self, label: &Label, x: f64, foot: f64) -> Vec<Item> {
        let (box_length, half) = (label.box_mm(self.size), box_height(self.size) / 2.0);
        let baseline = x + self.size * CAP_HEIGHT / 2.0;
        let mut items = Vec::new();
        if let Some(number) = &label.number {
            let (corner, opposite) = (at(x - half, foot - box_length), at(x + half, foot));
            let (frame, ink) = label.number_box(corner, opposite);
            items.push(frame);
            let number = Text::new(at(baseline, foot - box_length / 2.0), self.size, number);
            items.push(number.centered().bold().upward().gray(ink).into());
        }
        let start = at(baseline, foot - box_length - label.gap_mm(self.size));
        items.push(Text::new(start, self.size, &label.total).bold().upward().into());
        items
    }
}

/// The height of the box around a number, at right angles to its run.
fn box_height(size: f64) -> f64 {
    size * CAP_HEIGHT + 2.0 * 0.7
}

/// Places for level labels, unless they have no room or would stand too far from their marks.
fn level_places(labels: &[Label], low: f64, high: f64) -> Option<Vec<f64>> {
    let widths: Vec<f64> = labels.iter().map(|label| label.length_mm(FIGURE)).collect();
    let apart: Vec<f64> = widths.windows(2).map(|pair| (pair[0] + pair[1]) / 2.0 + GAP_MM).collect();
    let first = widths.first().map_or(0.0, |width| width / 2.0);
    let last = widths.last().map_or(0.0, |width| width / 2.0);
    let wanted = wanted(labels);
    let places = spread(&wanted, &apart, low + first, high - last)?;
    all_near(&places, &wanted).then_some(places)
}

/// Places for upright labels of a size, unless they have no room or would stand too far from their marks. The smallest
/// may stand anywhere: there is no better way left.
fn upright_places(labels: &[Label], [size, least]: [f64; 2], low: f64, high: f64) -> Option<Vec<f64>> {
    let pitch = box_height(size) + UPRIGHT_GAP_MM * size / FIGURE;
    let apart = vec![pitch; labels.len().saturating_sub(1)];
    let wanted = wanted(labels);
    let places = spread(&wanted, &apart, low + pitch / 2.0, high - pitch / 2.0)?;
    (size <= least || all_near(&places, &wanted)).then_some(places)
}

fn all_near(places: &[f64], wanted: &[f64]) -> bool {
    places.iter().zip(wanted).all(|(place, want)| (place - want).abs() <= FARTHEST_MM)
}

fn wanted(labels: &[Label]) -> Vec<f64> {
    labels.iter().map(|label| label.mark_x).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheets::type_sizes::SMALLEST;

    #[test]
    fn a_box_keeps_clear_of_its_total() {
        let label = |x: f64, total: &str| Label {
            mark_x: x,
            number: Some("1".to_owned()),
            total: total.to_owned(),
            framed: false,
        };
        let level = PlacedLabels::place(vec![label(50.0, "1 35/64 in")], 0.0, 200.0, [SMALLEST, FIGURE]);
        let upright = PlacedLabels::place(
            (0..12).map(|at| label(50.0 + f64::from(at), "45 mm")).collect(),
            0.0,
            200.0,
            [SMALLEST, FIGURE],
        );
        // Between the box and the first figure at least the width of a 1, so that they do not read as one number.
        let least = typeset::width_mm("1", SMALLEST, Weight::SemiBold) * 0.6;
        for (labels, is_level) in [(level, true), (upright, false)] {
            let items = labels.items(100.0);
            let boxes = items.iter().filter_map(|item| match item {
                Item::Polygon { points, fill: Some(Gray::BLACK), .. } => Some(points.clone()),
                _ => None,
            });
            let totals = items.iter().filter_map(|item| match item {
                Item::Text(text) if text.content() != "1" => Some(text.at),
                _ => None,
            });
            for (corners, total) in boxes.zip(totals) {
                let gap = if is_level {
                    total.x - corners.iter().map(|corner| corner.x).fold(f64::NEG_INFINITY, f64::max)
                } else {
                    corners.iter().map(|corner| corner.y).fold(f64::INFINITY, f64::min) - total.y
                };
                assert!(gap > least && gap > 0.9, "{gap}");
            }
        }
    }
}
