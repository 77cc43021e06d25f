//! One strip of sheet at full scale, its notches along its upper edge.

use super::notches::{END_MM, Group, Notch};
use crate::drawing::{Item, Point, Text, at};
use crate::fonts::Weight;
use crate::pen::{Gray, Pen};
use crate::sheets::flow::Block;
use crate::sheets::paragraph::lines;
use crate::sheets::sizes_in_words::mm_words;
use crate::sheets::type_sizes::{BODY, CAPTION, FACT};
use fh_core::plan::PlanUnit;

/// The deepest notch that a page has room for.
pub(super) const DEEPEST_MM: f64 = 60.0;
/// Between two gauges on a strip.
const BETWEEN_MM: f64 = 6.0;
/// Under the notches, for their words.
const WORDS_MM: f64 = 26.0;
/// The lines that say what a gauge is for at most; a strip is as wide as its gauges ask for.
const MOST_LINES: usize = 12;
/// From one of these lines to the next.
const LINE_MM: f64 = 4.0;
/// The lines that a strip has room for in any case.
const USUAL_LINES: usize = 2;
/// Under a strip, for its measure.
const MEASURE_MM: f64 = 5.5;

/// The gauges of one strip.
#[derive(Default)]
pub(super) struct Row {
    groups: Vec<Group>,
}

impl Row {
    pub(super) fn is_empty(&self) -> bool {
        self.groups.is_empty()
    }

    /// How long the strip is.
    fn length_mm(&self) -> f64 {
        let gaps = BETWEEN_MM * self.groups.len().saturating_sub(1) as f64;
        2.0 * END_MM + gaps + self.groups.iter().map(Group::width_mm).sum::<f64>()
    }

    /// Whether one gauge more has room on the strip.
    pub(super) fn has_room(&self, group: &Group, width: f64) -> bool {
        self.is_empty() || self.length_mm() + BETWEEN_MM + group.width_mm() <= width
    }

    pub(super) fn add(&mut self, group: Group) {
        self.groups.push(group);
    }
}

/// The strip with its words.
pub(super) fn row_block(row: &Row, unit: PlanUnit, width: f64) -> Block {
    let depth = row.groups.iter().map(Group::deepest_mm).fold(0.0, f64::max);
    let told = row.groups.iter().map(|group| what_lines(group).len()).max().unwrap_or(0);
    let more = LINE_MM * told.saturating_sub(USUAL_LINES) as f64;
    let (length, height) = (row.length_mm().min(width), depth + WORDS_MM + more);
    let mut outline = vec![at(0.0, height), at(0.0, 0.0)];
    let mut words = Vec::new();
    let mut left = END_MM;
    for (index, group) in row.groups.iter().enumerate() {
        if index > 0 {
            let x = left - BETWEEN_MM / 2.0;
            words.push(Item::line(at(x, depth + 1.0), at(x, height - 1.0), Pen::Hairline));
        }
        words.extend(group_words(group, left, depth));
        let mut x = left;
        for notch in &group.notches {
            outline.extend(notch_corners(notch, x, depth));
            words.extend(notch_words(notch, x + notch.cell_mm() / 2.0, depth));
            x += notch.cell_mm();
        }
        left += group.width_mm() + BETWEEN_MM;
    }
    outline.extend([at(length, 0.0), at(length, height)]);
    let mut items = vec![Item::Polygon { points: outline, fill: None, pen: Some(Pen::MarkLine) }];
    items.extend(words);
    let measure = format!("strip {} long, {} wide", mm_words(unit, length), mm_words(unit, height));
    items.push(Text::new(at(0.0, height + 4.2), CAPTION, &measure).gray(Gray::DARK).into());
    Block { height: height + MEASURE_MM, items }
}

/// The four corners of a notch, from the left.
fn notch_corners(notch: &Notch, left: f64, depth: f64) -> [Point; 4] {
    let middle = left + notch.cell_mm() / 2.0;
    let (from, to) = (middle - notch.mm / 2.0, middle + notch.mm / 2.0);
    [at(from, 0.0), at(from, depth), at(to, depth), at(to, 0.0)]
}

/// `go` and the size under a notch.
fn notch_words(notch: &Notch, middle: f64, depth: f64) -> [Item; 2] {
    [
        Text::new(at(middle, depth + 5.0), BODY, notch.kind).centered().bold().into(),
        Text::new(at(middle, depth + 9.2), CAPTION, &notch.words).centered().bold().into(),
    ]
}

/// What a gauge is for, in lines.
fn what_lines(group: &Group) -> Vec<String> {
    lines(&group.what, CAPTION, Weight::Regular, group.width_mm(), MOST_LINES)
}

/// The cold size, and what it is for.
fn group_words(group: &Group, left: f64, depth: f64) -> Vec<Item> {
    let room = group.width_mm();
    let size = crate::typeset::shorten(&group.size, FACT, Weight::SemiBold, room);
    let mut items: Vec<Item> = vec![Text::new(at(left, depth + 15.6), FACT, &size).bold().into()];
    for (index, line) in what_lines(group).iter().enumerate() {
        items.push(Text::new(at(left, depth + 19.8 + LINE_MM * index as f64), CAPTION, line).into());
    }
    items
}
